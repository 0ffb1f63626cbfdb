//! What this crate says to people: one function for each message of `text/*/photo`, in a module for
//! each file.

// Without raw pictures nothing says what is wrong with one; the check with them sees whether any
// other message is left over.
#![cfg_attr(not(feature = "raw"), allow(dead_code))]

include!(concat!(env!("OUT_DIR"), "/text.rs"));
