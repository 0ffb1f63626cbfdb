//! Compiles the texts of the pages.

fn main() -> Result<(), wording::WordingError> {
    wording::build("../../text", "web")
}
