## trials.rs

arms-pieces = "{ $title }" ({ $slug }), { $arms } arms, { $pieces } pieces
