//! Compiles the texts of reports.

fn main() -> Result<(), wording::WordingError> {
    wording::build("../../text", "report")
}
