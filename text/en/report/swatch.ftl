## swatch.rs

the-patches = The patches of { $name }
