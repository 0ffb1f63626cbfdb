## recipes.rs

there-is-no-such-recipe = There is no such recipe.
the-recipe-was-changed-in-the-meantime = The recipe was changed in the meantime: you saw revision { $upon }, the newest is { $number }. Nothing was changed; look at the recipe again and repeat your change.
a-recipe-of-more-than-bytes-isnt = A recipe of more than { $most_bytes } bytes isn't taken; make it shorter.
