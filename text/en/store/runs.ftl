## runs.rs

there-is-no-such-recipe = There is no such recipe.
there-is-no-trial = There is no trial "{ $slug }".
by-revision = "{ $title }" by { $recipe }, revision { $number }
