## recipes.rs

a-recipe-of-more-than-bytes-isnt = A recipe of more than { $most_bytes } bytes isn't taken; make it shorter.
