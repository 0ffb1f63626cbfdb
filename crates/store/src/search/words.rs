//! The words of a search and where a text has them, as the index takes texts apart: words match from
//! their beginning, whatever their capitals and accents.

use std::ops::Range;
use unicode_normalization::UnicodeNormalization;

/// More words than this are no search.
const MOST_WORDS: usize = 12;

/// Words that are looked for.
#[derive(Debug, Clone)]
pub(super) struct Words(Vec<Word>);

#[derive(Debug, Clone)]
struct Word {
    written: String,
    folded: Vec<char>,
}

impl Words {
    /// The first words of letters and digits that were typed.
    pub(super) fn of(typed: &str) -> Self {
        let words = typed.split(|c| !is_of_word(c)).map(|written| Word {
            written: written.to_owned(),
            folded: written.chars().flat_map(folded).collect(),
        });
        let words = words.filter(|word| !word.folded.is_empty());
        Self(words.take(MOST_WORDS).collect())
    }

    pub(super) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// What the index is asked: all of them, each as a word or its beginning.
    pub(super) fn asked(&self) -> String {
        let asked = self.0.iter().map(|word| format!("\"{}\"*", word.written));
        asked.collect::<Vec<_>>().join(" ")
    }

    /// Those that a text lacks.
    pub(super) fn lacking(&self, text: &str) -> Self {
        let lacks = |word: &Word| Self(vec![word.clone()]).first(text).is_none();
        Self(self.0.iter().filter(|word| lacks(word)).cloned().collect())
    }

    /// The first place where a text has one of them, in bytes.
    pub(super) fn first(&self, text: &str) -> Option<Range<usize>> {
        self.places(text).next()
    }

    /// Each place where a text has one of them, the longest that does, in bytes.
    pub(super) fn places<'a>(&'a self, text: &'a str) -> impl Iterator<Item = Range<usize>> + 'a {
        let mut before = None::<char>;
        let mut end = 0;
        text.char_indices().filter_map(move |(at, letter)| {
            let begins = before.replace(letter).is_none_or(|c| !is_of_word(c));
            if at < end || !begins {
                return None;
            }
            let longest = self.0.iter().filter_map(|word| word.begins(&text[at..]));
            end = at + longest.max()?;
            Some(at..end)
        })
    }
}

impl Word {
    /// How many bytes of a text it takes that begins with it.
    fn begins(&self, text: &str) -> Option<usize> {
        let mut left = self.folded.as_slice();
        for (at, letter) in text.char_indices() {
            // An accent that stands for itself belongs to the letter before it.
            if left.is_empty() && !is_accent(letter) {
                return Some(at);
            }
            for c in folded(letter) {
                left = left.strip_prefix(&[c])?;
            }
        }
        left.is_empty().then_some(text.len())
    }
}

/// A letter as it is compared: small, without its accents.
fn folded(letter: char) -> impl Iterator<Item = char> {
    let small = letter.to_lowercase().nfd();
    small.filter(|c| !is_accent(*c))
}

fn is_of_word(c: char) -> bool {
    c.is_alphanumeric() || is_accent(c)
}

/// Whether it is one of the combining diacritical marks, Unicode's block U+0300 to U+036F.
fn is_accent(c: char) -> bool {
    ('\u{300}'..='\u{36f}').contains(&c)
}

#[cfg(test)]
mod tests {
    use super::Words;

    /// The index is what matches: marks have to agree with it, word by word.
    #[test]
    fn a_text_has_a_word_where_the_index_finds_it() {
        let index = rusqlite::Connection::open_in_memory().unwrap();
        index
            .execute_batch(
                "CREATE VIRTUAL TABLE t USING fts5(body, tokenize = 'unicode61 remove_diacritics 2');",
            )
            .unwrap();
        let texts = [
            "Is it washed out?",
            "soda ash: 12 g/L",
            "crème fixative",
            "cre\u{300}me",
            "Übergang ins Grüne",
            "İndigo",
            "straße",
            "Tiếng Việt",
            "smørgås",
            "0.5 % owf, 12g",
            "Ångström",
        ];
        for text in texts {
            index
                .execute("DELETE FROM t", [])
                .and_then(|_| index.execute("INSERT INTO t VALUES (?1)", [text]))
                .unwrap();
            for asked in [
                "ash",
                "sod",
                "creme",
                "crème",
                "CRE\u{300}ME",
                "eme",
                "uber",
                "grun",
                "indigo",
                "strasse",
                "straße",
                "tieng",
                "viet",
                "smorgas",
                "smørgas",
                "5",
                "12",
                "2g",
                "angstrom",
                "wash",
                "is",
                "fix",
            ] {
                let words = Words::of(asked);
                let query = "SELECT count(*) FROM t WHERE t MATCH ?1";
                let found: i64 = index
                    .query_row(query, [words.asked()], |row| row.get(0))
                    .unwrap();
                let has = words.first(text).is_some();
                assert_eq!(has, found == 1, "{asked} in {text}");
            }
        }
    }

    #[test]
    fn signs_are_no_words() {
        for typed in ["", "  ", "!?", "\u{301}", "\"*\""] {
            assert!(Words::of(typed).is_empty(), "{typed:?}");
        }
        assert_eq!(Words::of("SODA, ash!").asked(), "\"SODA\"* \"ash\"*");
    }
}
