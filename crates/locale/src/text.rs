//! What this crate says to people: one function for each message of `text/*/locale`, in a module for
//! each file.

include!(concat!(env!("OUT_DIR"), "/text.rs"));
