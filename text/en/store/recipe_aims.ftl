## recipe_aims.rs

there-is = There is no { $table } "{ $slug }".
there-is-no-such-recipe = There is no such recipe.
nothing-in-particular = nothing in particular
