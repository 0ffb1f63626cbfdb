## material.rs

material = material
