## waters.rs

that-reading-was-taken-back-already = That reading was taken back already, so it can't be changed.
