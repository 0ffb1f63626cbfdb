//! Where in a text the words of a search stand.

use super::words::Words;

/// A part of a text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Part<'t> {
    /// The part as it stands.
    pub text: &'t str,
    /// Whether it is one of the words, or its beginning.
    pub is_match: bool,
}

/// A text in parts, cut where the asked words begin and end: `soda ash` for `SOD` gives `sod`, `a ash`.
/// Words match from their beginning and whatever the capitals and accents.
pub fn marked<'t>(text: &'t str, asked: &str) -> Vec<Part<'t>> {
    let words = Words::of(asked);
    let mut parts = Vec::new();
    let mut from = 0;
    for place in words.places(text) {
        parts.extend(part(&text[from..place.start], false));
        from = place.end;
        parts.extend(part(&text[place], true));
    }
    parts.extend(part(&text[from..], false));
    parts
}

fn part(text: &str, is_match: bool) -> Option<Part<'_>> {
    (!text.is_empty()).then_some(Part { text, is_match })
}

#[cfg(test)]
mod tests {
    use super::marked;
    use proptest::prelude::*;

    /// Parts with the marked ones in brackets.
    fn shown(text: &str, asked: &str) -> String {
        let parts = marked(text, asked).into_iter();
        parts
            .map(|part| match part.is_match {
                true => format!("[{}]", part.text),
                false => part.text.to_owned(),
            })
            .collect()
    }

    #[test]
    fn words_are_marked_where_they_begin() {
        for (text, asked, marked) in [
            ("soda ash: 12 g/L", "SODA, ash", "[soda] [ash]: 12 g/L"),
            ("Sodas and hot soda", "sod", "[Sod]as and hot [sod]a"),
            ("bathroom bath", "bat bathr", "[bathr]oom [bat]h"),
            ("absorb", "sorb", "absorb"),
            ("Rêve straße", "rêve STRASSE", "[Rêve] straße"),
            ("İndigo", "indi", "[İndi]go"),
            ("crème fixative", "creme", "[crème] fixative"),
            ("cre\u{300}me\u{301}.", "Crème", "[cre\u{300}me\u{301}]."),
            ("creme", "crème", "[creme]"),
            ("washed, soda ash", "ash", "washed, soda [ash]"),
            ("", "soda", ""),
        ] {
            assert_eq!(shown(text, asked), marked, "{text} {asked}");
        }
    }

    proptest! {
        #[test]
        fn nothing_is_lost(text in ".{0,40}", asked in ".{0,12}") {
            let all: String = marked(&text, &asked).iter().map(|part| part.text).collect();
            prop_assert_eq!(all, text);
        }
    }
}
