//! Compiles the texts of this crate.

fn main() {
    wording::build("../../text", "locale");
}
