## hydrate.rs

above-0-and-at-most-500-100 = above 0 and at most 500; 100 is the standard
