## hydrate.rs

above-0-and-at-most-500-100 = above 0 and at most 500; 100 is the standard
strength = strength
regain = regain
n-0-to-50 = 0 to 50
