//! What pages say: one function for each message of `text/*/web`, in a module for each file.

include!(concat!(env!("OUT_DIR"), "/text.rs"));
