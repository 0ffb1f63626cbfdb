//! Plural categories, from the plural rules of the Unicode CLDR (version 46, from memory).
//!
//! A rule looks at a number as it is written, since "1" and "1.0" can differ.

/// The condition on `n`, a number as it is written, for a category of a language, as Rust; none if
/// the language has no such category, an error if its rules aren't known here.
pub(crate) fn condition(language: &str, category: &str) -> Result<Option<&'static str>, String> {
    let one = match language {
        // i = 1 and v = 0.
        "en" | "de" | "nl" | "sv" | "fi" | "et" => "n == \"1\"",
        // n = 1.
        "da" | "nb" | "no" | "hu" | "tr" | "el" | "bg" => "n.parse() == Ok(1.0)",
        // i = 0 or 1.
        "fr" => {
            "n.starts_with(['0', '1']) && n.split(['.', ',']).next().is_some_and(|whole| whole.len() == 1)"
        }
        "ja" | "ko" | "th" | "vi" | "zh" | "id" => return Ok(None),
        _ => {
            return Err(format!(
                "the plural categories of the language {language} aren't known; add them to wording::plural from the CLDR"
            ));
        }
    };
    Ok((category == "one").then_some(one))
}

/// Whether a variant's key is a plural category rather than a value.
pub(crate) fn is_category(key: &str) -> bool {
    ["zero", "one", "two", "few", "many", "other"].contains(&key)
}
