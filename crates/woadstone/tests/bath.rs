//! `woadstone bath` as a person or a script runs it.

#![allow(clippy::unwrap_used, reason = "functions that only tests call")]

use std::{
    path::{Path, PathBuf},
    process::{Command, Output},
};

fn bath(recipe: &Path, more: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_woadstone"))
        .arg("bath")
        .arg(recipe)
        .args(more)
        .output()
        .unwrap()
}

fn examples() -> Vec<PathBuf> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../docs/recipes");
    let entries = std::fs::read_dir(folder).unwrap();
    entries.map(|entry| entry.unwrap().path()).collect()
}

fn said(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).unwrap()
}

/// A recipe for 250 g of goods, with some of it otherwise.
fn written(folder: &Path, class: &str, fibre: &str, goods: &str, more: &str) -> PathBuf {
    let path = folder.join("recipe.toml");
    let text = format!(
        "name = \"test\"\nclass = \"{class}\"\nfibre = \"{fibre}\"\ngoods = {{ weight = \"{goods}\" }}\n{more}\n"
    );
    std::fs::write(&path, text).unwrap();
    path
}

#[test]
fn every_example_is_worked_out() {
    assert!(examples().len() >= 3);
    for path in examples() {
        let done = bath(&path, &[]);
        let text = said(&done.stdout);
        assert!(done.status.success(), "{}", said(&done.stderr));
        for part in [
            "Dye bath:",
            "Where the dye goes",
            "Temperature",
            "Run sheet",
            "Cautions",
            "Usual fastness",
        ] {
            assert!(text.contains(part), "{}: {part}", path.display());
        }
        assert!(!text.contains("(s)"), "{text}");
    }
}

/// No figure has more digits than a kitchen's scale or jug shows: three, below 1 two.
#[test]
fn amounts_have_as_many_digits_as_a_kitchen_can_weigh() {
    for path in examples() {
        let text = said(&bath(&path, &[]).stdout);
        let amounts = text
            .lines()
            .filter(|l| l.contains(" ml") || l.contains(" g"));
        for word in amounts.flat_map(str::split_whitespace) {
            let number = word.trim_matches(|c: char| !c.is_ascii_digit());
            if number.parse::<f64>().is_ok_and(|n| n < 1000.0) {
                let digits = number.trim_start_matches(['0', '.']).replace('.', "");
                assert!(digits.len() <= 3, "{word} in {text}");
            }
        }
    }
}

#[test]
fn json_has_what_the_text_has() {
    for path in examples() {
        let done = bath(&path, &["--json"]);
        let plan: serde_json::Value = serde_json::from_slice(&done.stdout).unwrap();
        for key in [
            "baths",
            "lines",
            "uptake",
            "programme",
            "steps",
            "checks",
            "cautions",
            "cost",
        ] {
            assert!(!plan[key].is_null(), "{}: {key}", path.display());
        }
        assert!(plan["steps"].as_array().unwrap().len() > 5);
        assert!(
            plan["baths"]["liquor"].as_f64().unwrap() > 0.0,
            "millilitres"
        );
    }
}

#[test]
fn a_lot_is_worked_out_with_what_does_not_scale() {
    let napkins = examples()
        .into_iter()
        .find(|p| p.ends_with("napkins.toml"))
        .unwrap();
    let text = said(&bath(&napkins, &["--goods", "10 kg"]).stdout);
    assert!(
        text.contains("From the sample to this lot") && text.contains("baths"),
        "{text}"
    );
    let done = bath(&napkins, &["--goods", "10 kg", "--json"]);
    let lot: serde_json::Value = serde_json::from_slice(&done.stdout).unwrap();
    assert!(lot["plan"]["lines"][0]["solid_g"].as_f64().unwrap() > 79.9);
    assert!(!lot["scaling"].as_array().unwrap().is_empty());
    let refused = bath(&napkins, &["--goods", "a glug"]);
    assert!(!refused.status.success());
}

/// Each bit of nonsense gets a sentence on what is wrong and what is usual; what can't be worked
/// out at all ends with a failure.
#[test]
fn nonsense_gets_a_sentence() {
    let home = tempfile::tempdir().unwrap();
    let blue = "dye = [{ name = \"blue\", amount = \"1 % owf\" }]\n";
    let ratio = "water = { liquor_ratio = \"20:1\" }\n";
    for (class, fibre, goods, more, worked_out, parts) in [
        (
            "direct",
            "cotton",
            "0 g",
            format!("{ratio}{blue}"),
            false,
            ["0 g", "usually 130 to 200 g"],
        ),
        (
            "direct",
            "cotton",
            "250 g",
            format!("{ratio}dye = [{{ name = \"blue\", amount = \"300 % owf\" }}]"),
            true,
            ["wrong: The dyes make 300 % owf", "0.1 to 4 % owf is usual"],
        ),
        (
            "direct",
            "cotton",
            "250 g",
            format!("water = {{ volume = \"5 L\" }}\npot = {{ capacity = \"2 L\" }}\n{blue}"),
            true,
            ["doesn't fit into a pot of 2 L", "dye in 4 baths"],
        ),
        (
            "direct",
            "cotton",
            "250 g",
            format!("{ratio}{blue}auxiliary = [{{ name = \"salt\", amount = \"1//3 cup\" }}]"),
            false,
            ["\"1//3 cup\", at character 3", "1//3 cup\n  ^"],
        ),
        (
            "reactive-warm",
            "polyester",
            "250 g",
            format!("{ratio}{blue}"),
            true,
            ["doesn't dye polyester", "usually dyed with disperse dye"],
        ),
        (
            "acid-levelling",
            "silk",
            "50 g",
            format!("{ratio}{blue}process = {{ hold = \"100 C\" }}"),
            true,
            ["too hot for silk", "80 to 85 °C"],
        ),
    ] {
        let done = bath(&written(home.path(), class, fibre, goods, &more), &[]);
        let text = said(&done.stdout) + &said(&done.stderr);
        assert_eq!(done.status.success(), worked_out, "{text}");
        for part in parts {
            assert!(text.contains(part), "\"{part}\" is not in: {text}");
        }
    }
}

#[test]
fn files_that_are_no_recipe_are_refused_in_words() {
    let home = tempfile::tempdir().unwrap();
    let missing = bath(&home.path().join("nothing.toml"), &[]);
    assert!(!missing.status.success() && said(&missing.stderr).contains("nothing.toml"));
    let picture = home.path().join("picture.toml");
    std::fs::write(&picture, [0xff, 0xd8, 0xff, 0xe0]).unwrap();
    let refused = bath(&picture, &[]);
    assert!(!refused.status.success() && said(&refused.stderr).contains("not text in UTF-8"));
    let nameless = written(
        home.path(),
        "direct",
        "cotton",
        "250 g",
        "water = { liquor_ratio = \"20:1\" }\ndye = [{ name = \" \", amount = \"1 % owf\" }]",
    );
    assert!(said(&bath(&nameless, &[]).stderr).contains("the dye has no name"));
}

/// A file of `docs/rinses` with the napkins.
fn rinsed(readings: &Path, more: &[&str]) -> Output {
    let docs = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs");
    let path = docs.join(readings);
    let mut arguments = vec!["--rinses", path.to_str().unwrap()];
    arguments.extend(more);
    bath(&docs.join("recipes/napkins.toml"), &arguments)
}

#[test]
fn readings_of_rinses_tell_where_the_dye_went() {
    for name in ["napkins", "photometer"] {
        let file = PathBuf::from(format!("rinses/{name}.toml"));
        let text = said(&rinsed(&file, &[]).stdout);
        for part in [
            "Where the dye went (share",
            "put in         3.25 g",
            "spent bath     1",
            "rinse 3 ",
            "% usual for a warm reactive dye at this liquor ratio",
            "would bring a rinse below 0.1 % of the dye",
            "note: 500 ml of the liquor is missing",
        ] {
            assert!(text.contains(part), "{name}: \"{part}\" is not in: {text}");
        }
        let done = rinsed(&file, &["--json"]);
        let both: serde_json::Value = serde_json::from_slice(&done.stdout).unwrap();
        let middle = |what: &str| both["balance"][what]["middle"].as_f64().unwrap();
        let whole = middle("in_bath") + middle("washed_out") + middle("fixed");
        assert!((whole - 1.0).abs() < 1e-12);
        assert_eq!(both["balance"]["waters"].as_array().unwrap().len(), 4);
        assert_eq!(both["plan"]["name"], "green napkins");
        let clear = said(&rinsed(&file, &["--clear-below", "20"]).stdout);
        assert!(
            clear.contains("less than 20 % of the dye: it was clear"),
            "{clear}"
        );
    }
}

#[test]
fn readings_that_make_no_sense_are_refused_in_words() {
    let home = tempfile::tempdir().unwrap();
    let file = home.path().join("rinses.toml");
    for (toml, parts) in [
        (
            "[[rinse]]\nvolume = \"-5 L\"\nlooks_like = \"1:50\"",
            ["rinse 1, volume: \"-5 L\"", "can't be below 0\n-5 L\n^"],
        ),
        (
            "[[rinse]]\nvolume = \"5\"\nlooks_like = \"1:50\"",
            ["rinses.toml: rinse 1, volume", "unit"],
        ),
        (
            "[calibration]\nstandards = [\"0 mg/L = 0\", \"5 mg/L = 0.1\", \"9 mg/L = 0.2\"]\n[bath]\nvolume = \"5 L\"\nabsorbance = 0.4",
            ["spent bath, absorbance", "dilute the sample"],
        ),
        (
            "[[rinse]]\nvolume = \"5 L\"\nlooks_like = \"2:1\"",
            ["rinse 1, looks like", "1:1 is undiluted"],
        ),
        ("[[rinse]", ["line 1 of the readings", "can't be used"]),
    ] {
        std::fs::write(&file, toml).unwrap();
        let done = rinsed(&file, &[]);
        assert_eq!(done.status.code(), Some(3), "{toml}");
        let sentence = said(&done.stderr);
        for part in parts {
            assert!(sentence.contains(part), "\"{part}\" is not in: {sentence}");
        }
    }
    let jars = PathBuf::from("rinses/napkins.toml");
    let share = rinsed(&jars, &["--clear-below", "200"]);
    assert!(said(&share.stderr).contains("above 0 and below 1"));
    let alone = bath(&examples()[0], &["--clear-below", "1"]);
    assert!(
        !alone.status.success(),
        "nothing to be clear without readings"
    );
}
