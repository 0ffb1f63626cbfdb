//! Texts in two languages, compiled and spoken.

use std::cell::Cell;
use std::path::Path;
use wording::{compile, compile_script};

thread_local! {
    static SPOKEN: Cell<&'static str> = const { Cell::new("en") };
}

fn language() -> &'static str {
    SPOKEN.get()
}

/// The compiler's output, kept to be compiled here: see `the_output_is_what_is_compiled_here`.
mod text {
    include!("two_languages/expected.rs");
}

fn in_language<T>(name: &'static str, say: impl FnOnce() -> T) -> T {
    SPOKEN.set(name);
    let said = say();
    SPOKEN.set("en");
    said
}

#[test]
fn the_output_is_what_is_compiled_here() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/two_languages");
    let rust = compile(&root, "shop", "crate::language", &["wool"]).unwrap();
    assert_eq!(rust, include_str!("two_languages/expected.rs"), "{rust}");
}

#[test]
fn values_stand_where_the_text_has_them() {
    assert_eq!(text::yarn::soak_first(), "Soak the yarn first");
    assert_eq!(
        text::yarn::half_full(80, "<madder>"),
        "The pot is 80 % full of <madder>."
    );
    assert_eq!(text::yarn::braces(), "{blue} and \"red\"");
}

/// Plural categories of English and Dutch: one where i = 1 and v = 0, so not "1.0"
/// (Unicode CLDR, plural rules; from memory).
#[test]
fn numbers_choose_among_texts() {
    let left = |count: &str| text::yarn::skeins_left(count, "red");
    assert_eq!(left("0"), "No skein of red is left.");
    assert_eq!(left("1"), "One skein of red is left.");
    assert_eq!(left("1.0"), "1.0 skeins of red are left.");
    assert_eq!(
        text::yarn::skeins_left(21, "red"),
        "21 skeins of red are left."
    );
}

#[test]
fn another_language_is_spoken_as_far_as_it_goes() {
    in_language("nl", || {
        assert_eq!(text::yarn::soak_first(), "Week het garen eerst");
        assert_eq!(text::yarn::skeins_left(1, "rood"), "Er is één streng rood.");
        assert_eq!(
            text::yarn::skeins_left(0, "rood"),
            "Er zijn 0 strengen rood."
        );
        // Not translated.
        assert_eq!(
            text::yarn::half_full(8, "water"),
            "The pot is 8 % full of water."
        );
    });
}

/// Texts of a table's entries are found by name.
#[test]
fn a_table_is_told_in_another_language_as_far_as_it_goes() {
    assert_eq!(text::wool::said("merino-about"), Some("Fine and soft."));
    assert_eq!(text::wool::said("cotton"), None);
    assert_eq!(text::wool::NAMES, ["merino", "merino-about", "longhair"]);
    in_language("nl", || {
        assert_eq!(text::wool::said("merino"), Some("merinowol"));
        assert_eq!(text::wool::said("longhair"), Some("long-haired wool"));
    });
}

#[test]
fn what_is_looked_up_by_name_has_no_variables() {
    let root = tempfile::tempdir().unwrap();
    std::fs::write(root.path().join("languages"), "en English\n").unwrap();
    std::fs::create_dir_all(root.path().join("en/shop")).unwrap();
    std::fs::write(root.path().join("en/shop/wool.ftl"), "a = { $n } g\n").unwrap();
    let compiled = |tables| compile(root.path(), "shop", "crate::language", tables);
    assert!(compiled(&[]).is_ok());
    let fault = compiled(&["wool"]).expect_err("a fault").to_string();
    assert!(
        fault.contains("message a: what is told of a table"),
        "{fault}"
    );
}

/// Run by node where there is one, in `e2e/`; here only what is written is held.
#[test]
fn scripts_get_a_module_with_plurals_of_the_language() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/two_languages");
    let english = compile_script(&root, "shop", "en").unwrap();
    let dutch = compile_script(&root, "shop", "nl").unwrap();
    for line in [
        "const rules = new Intl.PluralRules(\"en\");",
        "export const soakFirst = () => `Soak the yarn first`;",
        "export const halfFull = (share, what) => `The pot is ${share} % full of ${what}.`;",
        "export const skeinsLeft = (count, colour) => `${String(count) === \"0\" ? \
         `No skein of ${colour} is left` : rules.select(count) === \"one\" ? \
         `One skein of ${colour} is left` : `${count} skeins of ${colour} are left`}.`;",
    ] {
        assert!(
            english.lines().any(|said| said == line),
            "{line}: {english}"
        );
    }
    assert!(dutch.contains("PluralRules(\"nl\")"), "{dutch}");
    assert!(dutch.contains("`Week het garen eerst`"), "{dutch}");
    assert!(dutch.contains("`The pot is ${share}"), "{dutch}");
}

/// What `compile` says of an English text and, if there is one, its translation.
fn fault(english: &str, other: Option<(&str, &str)>) -> String {
    let root = tempfile::tempdir().expect("a folder");
    let write = |language: &str, text: &str| {
        let folder = root.path().join(language).join("shop");
        std::fs::create_dir_all(&folder).expect("a folder");
        std::fs::write(folder.join("yarn.ftl"), text).expect("a file");
    };
    let languages = format!(
        "en English\n{}\n",
        other.map_or("", |(language, _)| language)
    );
    std::fs::write(root.path().join("languages"), languages).expect("a file");
    write("en", english);
    if let Some((language, text)) = other {
        write(language, text);
    }
    let fault = compile(root.path(), "shop", "crate::language", &[]).expect_err("a fault");
    let said = fault.to_string();
    assert!(said.contains("yarn.ftl"), "{said}");
    said
}

#[test]
fn faults_name_the_file_and_the_message() {
    for (english, other, says) in [
        ("this is no message\n", None, "isn't Fluent"),
        ("a = 1\na = 2\n", None, "message a: it is there twice"),
        ("move = Move\n", None, "message move: Rust keeps"),
        ("a = { $type }\n", None, "Rust keeps the word type"),
        ("a = A\n  .title = B\n", None, "make each a message"),
        ("-brand = W\n", None, "write the words out"),
        ("a = { NUMBER($n) }\n", None, "only variables"),
        ("a = { \"\\u00e9\" }\n", None, "write the letter itself"),
        (
            "a = A\n",
            Some(("nl", "b = B\n")),
            "message b: there is no such message in English",
        ),
        (
            "a = A\n",
            Some(("nl", "a = { $n }\n")),
            "has no variable $n",
        ),
        (
            "a = { $n ->\n [one] x\n *[other] y\n }\n",
            Some(("pl", "a = { $n ->\n [one] x\n *[other] y\n }\n")),
            "plural categories of the language pl",
        ),
    ] {
        let said = fault(english, other);
        assert!(said.contains(says), "{english}: {said}");
    }
}

/// Every text of the program can be said in a second language: with the program's own texts
/// standing for a translation, each becomes a function that asks for the language.
#[test]
fn all_that_the_program_says_can_be_translated() {
    let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../text/en");
    let root = tempfile::tempdir().unwrap();
    std::fs::write(root.path().join("languages"), "en English\nnl Nederlands\n").unwrap();
    let mut spoken = 0;
    for of in std::fs::read_dir(source).unwrap() {
        let of = of.unwrap();
        let name = of.file_name().into_string().unwrap();
        for language in ["en", "nl"] {
            let folder = root.path().join(language).join(&name);
            std::fs::create_dir_all(&folder).unwrap();
            for file in std::fs::read_dir(of.path()).unwrap() {
                let file = file.unwrap();
                std::fs::copy(file.path(), folder.join(file.file_name())).unwrap();
            }
        }
        let rust = compile(root.path(), &name, "crate::language", &[]).unwrap();
        let functions = rust.matches("pub fn ").count();
        let asking = rust.matches("match crate::language() {").count();
        assert_eq!(functions, asking, "{name}");
        spoken += functions;
    }
    assert!(spoken > 3000, "{spoken}");
}

#[test]
fn no_texts_are_no_modules() {
    let root = tempfile::tempdir().unwrap();
    let fault = compile(root.path(), "shop", "crate::language", &[]).expect_err("a fault");
    assert!(fault.to_string().contains("languages"), "{fault}");
    std::fs::write(root.path().join("languages"), "en English\n").unwrap();
    let rust = compile(root.path(), "shop", "crate::language", &[]).unwrap();
    assert_eq!(rust, "const _: fn() -> &'static str = crate::language;\n");
}
