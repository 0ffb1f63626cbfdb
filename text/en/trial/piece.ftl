## piece.rs

the-role-is-not-known-use-test = the role "{ $value }" is not known; use test, keeper or witness
