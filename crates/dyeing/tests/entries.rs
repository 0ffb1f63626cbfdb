//! Broken files of entries: each fault is told with its line, its character and what to do.

use dyeing::entries::{Unread, read};
use dyeing::recipe::Written;
use proptest::prelude::*;

const NAPKINS: &str = include_str!("../../../docs/recipes/napkins.toml");

fn fault(text: &str) -> Unread {
    read::<Written>(text, "the recipe").expect_err(text)
}

/// The recipe of the handbook with one line written otherwise.
fn with(line: &str, broken: &str) -> String {
    assert!(NAPKINS.contains(line), "{line}");
    NAPKINS.replacen(line, broken, 1)
}

/// Line, character and a part of the sentence for each way to break a file.
#[test]
fn each_fault_names_its_line_and_what_to_do() {
    let mut wrong = Vec::new();
    for (text, line, column, says) in [
        (
            with("class = \"reactive-warm\"", "class = reactive-warm"),
            3,
            9,
            "text needs quotation marks at both ends",
        ),
        (
            with("weight = \"250 g\" ", "weight = 250 g "),
            8,
            10,
            "a number with a unit is text",
        ),
        (
            with("name = \"green napkins\"", "name = \"green napkins"),
            2,
            22,
            "no quotation mark at its end",
        ),
        (
            with("fibre = \"cotton\"", "fibre"),
            4,
            6,
            "a name, a = and a value",
        ),
        (
            with("fibre = \"cotton\"", "fibre ="),
            4,
            8,
            "a name, a = and a value",
        ),
        (
            with("[goods]", "[goods"),
            7,
            7,
            "a heading stands in brackets",
        ),
        (
            with("[[dye]]", "[[dye]"),
            19,
            7,
            "a heading stands in brackets",
        ),
        (
            with(
                "fibre = \"cotton\"",
                "fibre = \"cotton\"\nfibre = \"linen\"",
            ),
            5,
            1,
            "this entry is there twice",
        ),
        (
            with("pieces = 5", "pieces = \"5\""),
            9,
            10,
            "the text \"5\" stands here, where the file needs a whole number",
        ),
        (
            with("pieces = 5", "pieces = -5"),
            9,
            10,
            "the number -5 doesn't fit here",
        ),
        (
            with("pieces = 5", "pieces = 05"),
            9,
            10,
            "this is no number",
        ),
        (
            with("capacity = \"8 L\"", "capacity = 8"),
            15,
            12,
            "the number 8 stands here, where the file needs text in quotation marks",
        ),
        (
            with("liquor_ratio =", "liqour_ratio ="),
            12,
            1,
            "Did you mean liquor_ratio?",
        ),
        (
            with("liquor_ratio =", "colour ="),
            12,
            1,
            "there is no entry colour here. Those that there are: liquor_ratio, volume",
        ),
        (
            with("amount = \"0.8 % owf\"\n", ""),
            19,
            1,
            "the entry amount is missing",
        ),
        (
            with(
                "[water]\nliquor_ratio = \"20:1\"",
                "water = { liquor_ratio = \"20:1\"",
            ),
            13,
            1,
            "have no } before this",
        ),
        (
            with("[goods]", "list = [1 2]\n[goods]"),
            7,
            9,
            "put a comma between two values",
        ),
        (
            with("[goods]", "a = { b = 1 c = 2 }\n[goods]"),
            7,
            15,
            "put a comma between two entries",
        ),
        (with("[goods]", "list = [1, 2\n[goods]"), 8, 1, ""),
        (
            with("name = \"green napkins\"", "name = \"green \\napkins \\q\""),
            2,
            25,
            "a backslash in text is written twice",
        ),
        (with("[goods]", "a = = 5\n[goods]"), 7, 5, "a = too many"),
        (
            with("[goods]", "just words\n[goods]"),
            7,
            6,
            "One of them is missing",
        ),
        (
            with("[goods]", "€ = 5\n[goods]"),
            7,
            1,
            "a name of letters, digits, - and _ stands before the =",
        ),
        (
            with("currency = \"EUR\"", "currency = \u{201c}EUR\u{201d}"),
            5,
            12,
            "quotation marks in such a file are straight",
        ),
        (
            with("currency = \"EUR\"", "kitchen = \"uk\""),
            5,
            11,
            "isn't a word that can stand here",
        ),
        (with("[goods]", "goods = 5\n[goods]"), 8, 2, ""),
    ] {
        let fault = fault(&text);
        let said = fault.to_string();
        let begins = format!("line {line} of the recipe can't be used, at character {column}: ");
        let shown = text.lines().nth(line - 1).expect("the line").trim();
        let last = said.lines().last().expect("lines");
        let is_told = said.starts_with(&begins)
            && fault.sentence().contains(says)
            && said.contains(shown)
            && last.starts_with("The parser says: ");
        if !is_told {
            wrong.push(format!("{begins}… {says} …\n{said}\n"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn the_mark_stands_below_the_fault_also_in_a_long_line_with_tabs() {
    let fault_of = |line: &str| {
        let said = fault(&format!("name = \"x\"\n{line}"))
            .pointed()
            .expect("a line");
        let (line, mark) = said.split_once('\n').expect("two lines");
        let at = mark.chars().position(|c| c == '^').expect("a mark");
        line.chars().nth(at)
    };
    assert_eq!(fault_of("class = direct"), Some('d'));
    assert_eq!(fault_of("\tclass\t=\tdirect"), Some('d'));
    assert_eq!(
        fault_of(&format!("class = {}direct", " ".repeat(200))),
        Some('d')
    );
    assert_eq!(
        fault_of(&format!("class = direct{}", "é".repeat(200))),
        Some('d')
    );
}

/// Words that begin like true, false, inf and nan, which the parser takes for these.
#[test]
fn any_word_without_quotation_marks_is_told_of_as_such() {
    for word in [
        "five",
        "false_red",
        "tin",
        "true_red",
        "indigo",
        "infinite",
        "natural",
        "nan_o",
        "vat",
    ] {
        let said = fault(&format!("name = {word}")).to_string();
        assert!(
            said.contains("text needs quotation marks at both ends"),
            "{said}"
        );
    }
}

#[test]
fn an_empty_file_says_what_is_missing() {
    for text in ["", "\n\n", "# nothing yet"] {
        let said = fault(text).to_string();
        assert!(said.starts_with("line 1 of the recipe"), "{said}");
        assert!(said.contains("is missing. Add it."), "{said}");
    }
}

proptest! {
    #[test]
    fn any_text_is_read_or_told_of(text in "[a-z0-9=\"'\\[\\]{}#., \n\r\t\\\\é€-]{0,80}") {
        if let Err(fault) = read::<Written>(&text, "the recipe") {
            let said = fault.to_string();
            prop_assert!(fault.line >= 1 && fault.line <= text.lines().count() + 1);
            prop_assert!(said.lines().count() <= 4, "{}", said);
        }
    }
}
