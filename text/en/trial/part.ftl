## part.rs

the-part-is-write-whole-pale = the part is "{ $value }"; write whole, pale or deep
