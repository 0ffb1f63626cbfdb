//! Tables of dyes, fibres, goods and materials in a second language: what the program tells of them is
//! compiled with a few texts of a translation, and spoken.

use std::path::{Path, PathBuf};
use std::process::Command;

const TABLES: [&str; 4] = [
    "known_classes",
    "known_fibres",
    "known_goods",
    "known_materials",
];

/// Texts in German for a few entries; the rest isn't translated.
const TRANSLATED: [(&str, &str); 4] = [
    (
        "known_classes",
        "reactive-warm = warm färbender Reaktivfarbstoff\nvat-stage-1-add = ohne Luft hineinzubringen.\n",
    ),
    ("known_fibres", "cotton = Baumwolle\n"),
    ("known_goods", "tea-towel-many = Geschirrtücher\n"),
    ("known_materials", "glaubers-salt = Glaubersalz\n"),
];

fn written(root: &Path) {
    std::fs::write(root.join("languages"), "en English\nde Deutsch\n").expect("a file");
    for language in ["en", "de"] {
        std::fs::create_dir_all(root.join(language).join("dyeing")).expect("a folder");
    }
    let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../text/en/dyeing");
    for table in TABLES {
        let file = format!("{table}.ftl");
        std::fs::copy(source.join(&file), root.join("en/dyeing").join(&file)).expect("a copy");
    }
    for (table, texts) in TRANSLATED {
        let file = format!("{table}.ftl");
        std::fs::write(root.join("de/dyeing").join(file), texts).expect("a file");
    }
}

/// What a program says that has those texts and speaks German.
fn spoken(root: &Path, asked: &[(&str, &str)]) -> String {
    let text = wording::compile(root, "dyeing", "crate::language", &TABLES).expect("texts");
    let says: String = asked
        .iter()
        .map(|(table, name)| {
            format!("println!(\"{{}}\", text::{table}::said({name:?}).unwrap());\n")
        })
        .collect();
    let program = format!(
        "#![allow(dead_code)]\nfn language() -> &'static str {{ \"de\" }}\nmod text {{\n{text}}}\nfn main() {{\n{says}}}\n"
    );
    let (source, out) = (root.join("said.rs"), root.join("said"));
    std::fs::write(&source, program).expect("a file");
    let rustc = std::env::var_os("RUSTC").map_or(PathBuf::from("rustc"), PathBuf::from);
    let compiled = Command::new(rustc)
        .args(["--edition", "2024", "-o"])
        .args([&out, &source])
        .output()
        .expect("the compiler runs");
    let faults = String::from_utf8_lossy(&compiled.stderr);
    assert!(compiled.status.success(), "{faults}");
    let said = Command::new(out).output().expect("it runs");
    String::from_utf8(said.stdout).expect("UTF-8")
}

#[test]
fn a_second_language_shows_its_own_names_and_english_where_it_has_none() {
    let root = tempfile::tempdir().unwrap();
    written(root.path());
    let said = spoken(
        root.path(),
        &[
            ("known_classes", "reactive-warm"),
            ("known_classes", "vat-stage-1-add"),
            ("known_classes", "direct"),
            ("known_fibres", "cotton"),
            ("known_fibres", "wool"),
            ("known_goods", "tea-towel-many"),
            ("known_goods", "tea-towel"),
            ("known_materials", "glaubers-salt"),
            ("known_materials", "soda-ash"),
        ],
    );
    let lines: Vec<&str> = said.lines().collect();
    assert_eq!(
        lines,
        [
            "warm färbender Reaktivfarbstoff",
            "ohne Luft hineinzubringen.",
            "direct dye",
            "Baumwolle",
            "wool",
            "Geschirrtücher",
            "tea towel",
            "Glaubersalz",
            "soda ash",
        ]
    );
}

/// What a recipe file says is found by keys, which no text can change: it is valid in any language.
#[test]
fn recipes_use_the_words_of_the_tables() {
    for (word, key) in [("Rayon", "viscose"), (" COTTON ", "cotton")] {
        assert_eq!(dyeing::fibre::find(word).unwrap().key, key);
    }
    for (word, key) in [
        ("sodium sulphate", "glauber's salt"),
        ("Glauber's salt", "glauber's salt"),
    ] {
        assert_eq!(dyeing::material::find(word).unwrap().key, key);
    }
    assert_eq!(dyeing::goods::find("t-shirt").unwrap().name(), "T-shirt");
    assert_eq!(dyeing::class::find("Vat").unwrap().name(), "vat dye");
}
