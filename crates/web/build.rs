//! Compiles the texts of pages, and those of their scripts.

fn main() {
    wording::build("../../text", "web");
    wording::build_script("../../text", "scripts");
}
