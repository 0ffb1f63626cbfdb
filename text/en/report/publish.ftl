## publish.rs

load = load { $l }
