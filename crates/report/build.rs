//! Compiles the texts of reports.

fn main() {
    wording::build("../../text", "report");
}
