//! Where in a text the words of a search stand.

/// A part of a text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Part<'t> {
    /// The part as it stands.
    pub text: &'t str,
    /// Whether it is one of the words, or its beginning.
    pub is_match: bool,
}

/// A text in parts, cut where the asked words begin and end: `soda ash` for `SOD` gives `sod`, `a ash`.
/// Words match from their beginning and whatever the capitals.
pub fn marked<'t>(text: &'t str, asked: &str) -> Vec<Part<'t>> {
    let words: Vec<Vec<char>> = super::words(asked).iter().map(|word| small(word)).collect();
    let mut parts = Vec::new();
    let (mut from, mut before) = (0, None::<char>);
    let mut letters = text.char_indices();
    while let Some((at, letter)) = letters.next() {
        let begins = before.is_none_or(|c| !c.is_alphanumeric());
        before = Some(letter);
        let Some(end) = begins.then(|| longest(&text[at..], &words)).flatten() else {
            continue;
        };
        parts.extend(part(&text[from..at], false));
        parts.extend(part(&text[at..at + end], true));
        from = at + end;
        while letters.offset() < from {
            before = letters.next().map(|(_, letter)| letter);
        }
    }
    parts.extend(part(&text[from..], false));
    parts
}

fn part(text: &str, is_match: bool) -> Option<Part<'_>> {
    (!text.is_empty()).then_some(Part { text, is_match })
}

fn small(word: &str) -> Vec<char> {
    word.chars().flat_map(char::to_lowercase).collect()
}

/// How many bytes the longest of the words takes that a text begins with.
fn longest(text: &str, words: &[Vec<char>]) -> Option<usize> {
    words.iter().filter_map(|word| begins(text, word)).max()
}

fn begins(text: &str, word: &[char]) -> Option<usize> {
    let mut left = word;
    for (at, letter) in text.char_indices() {
        if left.is_empty() {
            return Some(at);
        }
        for c in letter.to_lowercase() {
            left = left.strip_prefix(&[c])?;
        }
    }
    left.is_empty().then_some(text.len())
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
            ("İndigo", "x", "İndigo"),
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
