//! Phones: switching the local network on and off, codes, devices; and the page on which one is paired.

pub(crate) mod code;
pub(crate) mod pair;
pub(crate) mod revoke;
pub(crate) mod show;
pub(crate) mod switch;
