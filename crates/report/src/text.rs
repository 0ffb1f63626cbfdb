//! What reports and prints say: one function for each message of `text/*/report`, in a module for
//! each file.

include!(concat!(env!("OUT_DIR"), "/text.rs"));
