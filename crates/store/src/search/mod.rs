//! Searching the notebook by words.

mod marks;
mod readable;
mod words;

pub use marks::{Part, marked};

use crate::text;
use crate::{Bench, StoreError, Thing};
use readable::Readable;
use rusqlite::params;
use std::collections::HashMap;
use words::Words;

/// What a find belongs to.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub enum FoundIn {
    /// A trial, by slug.
    Trial(String),
    /// A plan, by slug.
    Plan(String),
    /// A recipe, by slug.
    Recipe(String),
    /// A run, by number.
    Run(i64),
    /// A material, by number.
    Material(i64),
}

/// Something in the notebook that has all the words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Found {
    /// What it belongs to.
    pub place: FoundIn,
    /// Its title.
    pub title: String,
    /// Some of the text around the first of the words.
    pub around: String,
}

/// So many rows with the words are looked at, newest first.
const MOST_ROWS: u32 = 400;
/// So many things are found at most.
const MOST_FOUND: usize = 40;
/// So many lines of a thing are shown.
const MOST_LINES: usize = 3;
/// Letters of text around a word.
const AROUND: usize = 160;

impl Bench {
    /// What has all of the words, or beginnings of words, the newest first; nothing for no words.
    /// What lies in the bin is left out.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn search(&self, text: &str) -> Result<Vec<Found>, StoreError> {
        let words = Words::of(text);
        if words.is_empty() {
            return Ok(Vec::new());
        }
        type Row = (String, String, String, String);
        let read = || -> rusqlite::Result<Vec<Row>> {
            self.database
                .prepare_cached(
                    "SELECT kind, target, title, body FROM notebook WHERE notebook MATCH ?1
                     ORDER BY rowid DESC LIMIT ?2",
                )?
                .query_map(params![words.asked(), MOST_ROWS], |row| {
                    Ok((
                        row.get(0)?,
                        text_of(row.get_ref(1)?),
                        row.get(2)?,
                        row.get(3)?,
                    ))
                })?
                .collect()
        };
        let rows = read().map_err(StoreError::database(text::doing::search_its_notebook()))?;
        let mut at: HashMap<FoundIn, usize> = HashMap::new();
        let mut found: Vec<Found> = Vec::new();
        for (kind, target, title, body) in rows {
            let Some(place) = place(&kind, &target) else {
                continue;
            };
            let body = || Readable::of(&kind, &body);
            match at.get(&place) {
                // Of several texts of one thing the first that has a word is shown, else what was
                // written of it first.
                Some(known) if words.first(&found[*known].around).is_none() => {
                    found[*known].around = snippet(&body(), &words);
                }
                Some(_) => {}
                None if found.len() == MOST_FOUND || self.lies_in_bin(&place)? => {}
                None => {
                    at.insert(place.clone(), found.len());
                    let body = body();
                    let shown = snippet(&body, &words);
                    found.push(Found {
                        place,
                        title: match title.as_str() {
                            "" => body.name.unwrap_or(target),
                            title => title.to_owned(),
                        },
                        around: shown,
                    });
                }
            }
        }
        Ok(found)
    }

    fn lies_in_bin(&self, place: &FoundIn) -> Result<bool, StoreError> {
        self.is_binned(match place {
            FoundIn::Trial(slug) => Thing::Trial(slug),
            FoundIn::Plan(slug) => Thing::Plan(slug),
            FoundIn::Recipe(slug) => Thing::Recipe(slug),
            FoundIn::Run(_) | FoundIn::Material(_) => return Ok(false),
        })
    }
}

/// Slugs are text, numbers of runs and materials are not.
fn text_of(value: rusqlite::types::ValueRef<'_>) -> String {
    match value {
        rusqlite::types::ValueRef::Integer(number) => number.to_string(),
        rusqlite::types::ValueRef::Text(text) => String::from_utf8_lossy(text).into_owned(),
        _ => String::new(),
    }
}

fn place(kind: &str, target: &str) -> Option<FoundIn> {
    let slug = target.to_owned();
    Some(match kind {
        "trial" => FoundIn::Trial(slug),
        "plan" => FoundIn::Plan(slug),
        "recipe" => FoundIn::Recipe(slug),
        "run" => FoundIn::Run(target.parse().ok()?),
        "material" => FoundIn::Material(target.parse().ok()?),
        _ => return None,
    })
}

/// What a thing is about, and the first of its lines that have a word which that lacks; without such
/// a line, what it says first.
fn snippet(read: &Readable, words: &Words) -> String {
    let more = words.lacking(&read.head);
    let mut lines = read.lines.iter().filter(|line| more.first(line).is_some());
    let shown: Vec<String> = lines
        .by_ref()
        .take(MOST_LINES)
        .map(|line| around(line, &more))
        .collect();
    let rest = match shown.is_empty() {
        true if read.head.is_empty() => read.lines.join(" · "),
        true => String::new(),
        false => shown.join(" · "),
    };
    let parts = [around(&read.head, words), around(&rest, words)];
    let parts = parts.into_iter().filter(|part| !part.is_empty());
    parts.collect::<Vec<_>>().join(" · ")
}

/// Some of a text around the first of the words that it has.
fn around(text: &str, words: &Words) -> String {
    let place = words.first(text).unwrap_or_default();
    let at = text[..place.start].chars().count();
    let from = at.saturating_sub(AROUND / 3);
    let shown: String = text.chars().skip(from).take(AROUND).collect();
    let (before, after) = (
        if from > 0 { "… " } else { "" },
        if text.chars().count() > from + AROUND {
            " …"
        } else {
            ""
        },
    );
    format!("{before}{}{after}", shown.trim())
}

#[cfg(test)]
mod tests {
    use super::*;

    const NAPKINS: &str = include_str!("../../../../docs/recipes/napkins.toml");

    #[test]
    fn a_recipe_is_shown_in_words_with_the_line_that_was_looked_for() {
        let read = Readable::of("recipe", NAPKINS);
        let shown = |asked: &str| snippet(&read, &Words::of(asked));
        let head = "Warm reactive dye on cotton, 250 g of goods in 5 pieces";
        assert_eq!(shown("SODA, ash!"), format!("{head} · soda ash: 12 g/L"));
        assert_eq!(shown("cotton"), head);
        assert_eq!(shown("cotton blue"), format!("{head} · blue: 0.5 % owf"));
    }

    /// A word within another is none: `ash` isn't what `washed` has.
    #[test]
    fn the_line_is_shown_that_the_index_found() {
        let read = Readable {
            name: None,
            head: "Is it washed out?".into(),
            lines: vec!["crème fixative".into(), "soda ash".into()],
        };
        let shown = |asked: &str| snippet(&read, &Words::of(asked));
        assert_eq!(shown("ash"), "Is it washed out? · soda ash");
        assert_eq!(shown("creme"), "Is it washed out? · crème fixative");
        assert_eq!(shown("wash"), "Is it washed out?");
    }

    #[test]
    fn long_texts_are_cut_around_the_word() {
        let long = format!("{} madder {}", "early ".repeat(60), "late ".repeat(60));
        let around = around(&long, &Words::of("madder"));
        assert!(around.starts_with("… ") && around.ends_with(" …") && around.contains("madder"));
        assert!(around.chars().count() <= AROUND + 4);
    }
}
