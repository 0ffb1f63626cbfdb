//! Compiles the texts of the pages.

fn main() {
    wording::build("../../text", "web");
}
