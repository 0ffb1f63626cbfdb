//! Rendered photographs, looked at with unrelated decoders.

mod decode;
mod file;
mod photograph;
mod wild;
