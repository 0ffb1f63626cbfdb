//! Compiles the texts of this crate.

fn main() {
    let tables = [
        "known_classes",
        "known_fibres",
        "known_goods",
        "known_materials",
    ];
    wording::build_with_tables("../../text", "dyeing", &tables);
}
