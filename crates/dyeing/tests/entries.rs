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

/// A file of our own with a value of each kind; `mass` says itself what it can't take.
#[derive(Debug, serde::Deserialize)]
#[allow(dead_code, reason = "only read")]
struct Kinds {
    share: Option<f64>,
    pieces: Option<u8>,
    seed: Option<u32>,
    weight: Option<String>,
    mass: Option<dyeing::Mass>,
    waters: Option<dyeing::balance::WrittenWaters>,
}

fn told_of(line: &str) -> String {
    let read = read::<Kinds>(line, "the file");
    read.expect_err(line).to_string()
}

/// Figures as other languages and print write them, and ones that are too great.
#[test]
fn figures_are_told_of_by_how_they_are_written() {
    let mut wrong = Vec::new();
    for (line, says) in [
        ("share = 2,0", "a number has a point, not a comma"),
        ("share = -0,5 # little", "a number has a point, not a comma"),
        ("share = 1.000,5", "no sign between its thousands"),
        ("share = 1 000", "without zeros ahead and spaces within"),
        (
            "share = 1\u{a0}000",
            "without zeros ahead and spaces within",
        ),
        (
            "share = \u{2212}3.5",
            "a minus in such a file is the hyphen",
        ),
        ("pieces = \u{2013}3", "a minus in such a file is the hyphen"),
        ("share =\u{a0}5", "a sign that isn't seen stands here"),
        ("\u{a0}share = 5", "a sign that isn't seen stands here"),
        ("weight = 250\u{a0}g", "a number with a unit is text"),
        ("weight = \"250\" g", "a unit, stands between the marks"),
        ("weight = '250' g", "a unit, stands between the marks"),
        ("pieces = five", "a number is written in figures"),
        (
            "pieces = 300",
            "the number 300 doesn't fit here, where the file needs a whole number from 0 to 255.",
        ),
        ("seed = 5000000000", "a whole number from 0 to 4294967295."),
        (
            "seed = 99999999999999999999",
            "a whole number from 0 to 4294967295.",
        ),
        ("seed = -5", "a whole number from 0 upward"),
        (
            "seed = 2026-11-27",
            "the date or time 2026-11-27 stands here",
        ),
        ("weight = 12:30", "the date or time 12:30 stands here"),
        (
            "waters = { bath = 5 }",
            "where the file needs entries in { }",
        ),
    ] {
        let told = told_of(line);
        if !told.contains(says) || !told.contains("\nThe parser says: ") {
            wrong.push(format!("{line}: … {says} …\n{told}\n"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// What a value says itself is no word of the parser's.
#[test]
fn what_a_value_says_of_itself_is_the_sentence() {
    let why = dyeing::Mass::try_from(-5.0)
        .expect_err("below 0")
        .to_string();
    let told = told_of("mass = -5.0");
    let begins = format!("line 1 of the file can't be used, at character 8: {why}\n");
    assert!(told.starts_with(&begins), "{told}");
    assert!(!told.contains("parser"), "{told}");
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
