//! What a person reads of the entries of `data/`, in the language that is spoken.
//!
//! Each is a message of `text/*/dyeing/known_*.ftl`, named after the entry's key.

/// How a text is found by its name.
pub(crate) type Said = fn(&str) -> Option<&'static str>;

/// The text of an entry, or of a part of it: `known(said, "glauber's salt", "")` asks for
/// `glaubers-salt`, and with the part `about` for `glaubers-salt-about`.
pub(crate) fn known(said: Said, key: &str, part: &str) -> &'static str {
    maybe_known(said, key, part).expect("tests look for the texts of every entry")
}

/// A text that not every entry has.
pub(crate) fn maybe_known(said: Said, key: &str, part: &str) -> Option<&'static str> {
    said(&name(key, part))
}

/// The name of the message for a part of an entry: letters and figures of the key, with one hyphen
/// for whatever stands between them.
pub(crate) fn name(key: &str, part: &str) -> String {
    let mut name = String::new();
    for c in key.to_lowercase().chars().filter(|c| *c != '\'') {
        match c.is_ascii_alphanumeric() {
            true => name.push(c),
            false if !name.ends_with('-') => name.push('-'),
            false => {}
        }
    }
    if !part.is_empty() {
        name.push('-');
        name.push_str(part);
    }
    name
}

/// Holds the texts of a table to its entries: each name that is asked for has a text, and no other
/// text is there.
#[cfg(test)]
pub(crate) fn hold(said: Said, texts: &[&str], asked: impl IntoIterator<Item = (String, bool)>) {
    let mut wanted = std::collections::BTreeSet::new();
    for (name, is_needed) in asked {
        match said(&name) {
            Some(text) => assert!(!text.trim().is_empty(), "{name}"),
            None => assert!(!is_needed, "there is no text {name}"),
        }
        assert!(wanted.insert(name.clone()), "{name} is asked for twice");
    }
    for name in texts {
        assert!(wanted.contains(*name), "nothing asks for the text {name}");
    }
}

#[cfg(test)]
mod tests {
    use super::name;

    #[test]
    fn names_hold_letters_figures_and_hyphens() {
        assert_eq!(name("glauber's salt", ""), "glaubers-salt");
        assert_eq!(name("T-shirt", "many"), "t-shirt-many");
        assert_eq!(name("skein of 50 g", ""), "skein-of-50-g");
    }
}
