//! Searching the notebook: by words, and for readings near a colour.

use crate::{Bench, StoreError, Thing};
use rusqlite::params;
use std::collections::HashMap;
use trial::near::{FURTHEST_DE00, box_around, distance_de00};

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

/// A reading near a colour.
#[derive(Debug, Clone, PartialEq)]
pub struct NearReading {
    /// CIEDE2000 from the colour that was asked for.
    pub de00: f64,
    /// The reading's CIELAB.
    pub lab: [f64; 3],
    /// Slug and title of its trial.
    pub trial: (String, String),
    /// Name of its arm.
    pub arm: String,
    /// Code of its piece.
    pub piece: String,
    /// Rounds the piece had been through.
    pub stage: u32,
    /// What it was got from, as it is kept: `photo`, `spectrum`, `lab`.
    pub source: String,
}

const SEARCH: &str = "search its notebook";
/// So many rows with the words are looked at, newest first.
const MOST_ROWS: u32 = 400;
/// So many things are found at most.
const MOST_FOUND: usize = 40;
/// More words than this are no search.
const MOST_WORDS: usize = 12;
/// Letters of text around a word.
const AROUND: usize = 160;
/// So many readings in a box are looked at.
const MOST_IN_BOX: u32 = 20_000;
/// The first distance at which readings are looked for, CIEDE2000; it grows until there are enough.
const FIRST_DE00: f64 = 0.02;
/// By how much it grows: twice takes in eight times as many readings.
const GROWTH: f64 = 1.5;

impl Bench {
    /// What has all of the words, or beginnings of words, the newest first; nothing for no words.
    /// What lies in the bin is left out.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn search(&self, text: &str) -> Result<Vec<Found>, StoreError> {
        let words = words(text);
        if words.is_empty() {
            return Ok(Vec::new());
        }
        let asked: Vec<String> = words.iter().map(|word| format!("\"{word}\"*")).collect();
        type Row = (String, String, String, String);
        let read = || -> rusqlite::Result<Vec<Row>> {
            self.database
                .prepare_cached(
                    "SELECT kind, target, title, body FROM notebook WHERE notebook MATCH ?1
                     ORDER BY rowid DESC LIMIT ?2",
                )?
                .query_map(params![asked.join(" "), MOST_ROWS], |row| {
                    Ok((
                        row.get(0)?,
                        text_of(row.get_ref(1)?),
                        row.get(2)?,
                        row.get(3)?,
                    ))
                })?
                .collect()
        };
        let rows = read().map_err(StoreError::database(SEARCH))?;
        let mut at: HashMap<FoundIn, usize> = HashMap::new();
        let mut found: Vec<Found> = Vec::new();
        for (kind, target, title, body) in rows {
            let Some(place) = place(&kind, &target) else {
                continue;
            };
            let body = plain(&body, &kind);
            match at.get(&place) {
                // Of several texts of one thing the first that has a word is shown, else what was
                // written of it first.
                Some(known) if !has_any(&found[*known].around, &words) => {
                    found[*known].around = around(&body.text, &words);
                }
                Some(_) => {}
                None if found.len() == MOST_FOUND || self.lies_in_bin(&place)? => {}
                None => {
                    at.insert(place.clone(), found.len());
                    found.push(Found {
                        place,
                        title: match title.as_str() {
                            "" => body.name.unwrap_or(target),
                            title => title.to_owned(),
                        },
                        around: around(&body.text, &words),
                    });
                }
            }
        }
        Ok(found)
    }

    /// The readings that lie nearest to a CIELAB colour under a view, such as `D65/10`, the nearest
    /// first: `most` at most, none further than [`FURTHEST_DE00`]. Readings that no longer count
    /// and what lies in the bin are left out.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn readings_near(
        &self,
        lab: [f64; 3],
        view: &str,
        most: usize,
    ) -> Result<Vec<NearReading>, StoreError> {
        let mut within = FIRST_DE00;
        loop {
            let mut ids = self
                .in_box(lab, within, view)
                .map_err(StoreError::database(SEARCH))?;
            ids.retain(|(de00, _)| *de00 <= within);
            let is_last = within >= FURTHEST_DE00;
            if ids.len() >= most || is_last {
                ids.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
                let found = self
                    .counting(lab, &ids, most)
                    .map_err(StoreError::database(SEARCH))?;
                if found.len() >= most || is_last {
                    return Ok(found);
                }
            }
            within = (GROWTH * within).min(FURTHEST_DE00);
        }
    }

    fn lies_in_bin(&self, place: &FoundIn) -> Result<bool, StoreError> {
        self.is_binned(match place {
            FoundIn::Trial(slug) => Thing::Trial(slug),
            FoundIn::Plan(slug) => Thing::Plan(slug),
            FoundIn::Recipe(slug) => Thing::Recipe(slug),
            FoundIn::Run(_) | FoundIn::Material(_) => return Ok(false),
        })
    }

    /// Distance and number of the readings in the box around a colour.
    fn in_box(&self, lab: [f64; 3], within: f64, view: &str) -> rusqlite::Result<Vec<(f64, i64)>> {
        let [l, a, b] = box_around(lab, within);
        self.database
            .prepare_cached(
                "SELECT id, low_l, low_a, low_b FROM view_number CROSS JOIN reading_colour
                 WHERE view = ?7 AND high_l >= ?1 AND low_l <= ?2 AND high_a >= ?3 AND low_a <= ?4
                    AND high_b >= ?5 AND low_b <= ?6 AND low_view = number LIMIT ?8",
            )?
            .query_map(
                params![l[0], l[1], a[0], a[1], b[0], b[1], view, MOST_IN_BOX],
                |row| {
                    let other = [row.get(1)?, row.get(2)?, row.get(3)?];
                    Ok((distance_de00(lab, other), row.get(0)?))
                },
            )?
            .collect()
    }

    /// Of readings by distance from a colour the first `most` that count, with what they are of.
    fn counting(
        &self,
        asked: [f64; 3],
        ids: &[(f64, i64)],
        most: usize,
    ) -> rusqlite::Result<Vec<NearReading>> {
        let mut query = self.database.prepare_cached(
            "SELECT cielab_l, cielab_a, cielab_b, trial.slug, trial.title, arm.name, piece.code,
                coalesce(corrected_stage.stage, reading.stage), reading.source
             FROM reading JOIN piece ON piece.id = reading.piece_id
             JOIN arm ON arm.id = piece.arm_id JOIN trial ON trial.id = piece.trial_id
             LEFT JOIN marking ON marking.id = reading.marking_id
             LEFT JOIN corrected_stage ON corrected_stage.photo_id = marking.photo_id
             WHERE reading.id = ?1
                AND NOT EXISTS (SELECT 1 FROM withdrawal WHERE reading_id = reading.id)
                AND NOT EXISTS (SELECT 1 FROM marking AS later
                    JOIN outcome ON outcome.marking_id = later.id
                    WHERE later.photo_id = marking.photo_id AND later.id > marking.id
                        AND outcome.refusal_code IS NULL)
                AND NOT EXISTS (SELECT 1 FROM binned WHERE kind = 'photo' AND thing = marking.photo_id)
                AND NOT EXISTS (SELECT 1 FROM binned WHERE kind = 'trial' AND thing = trial.id)",
        )?;
        let mut found = Vec::new();
        for (_, id) in ids {
            if found.len() == most {
                break;
            }
            let rows = query.query_map([id], |row| {
                let lab = [row.get(0)?, row.get(1)?, row.get(2)?];
                Ok(NearReading {
                    // The index knows colours in single precision only.
                    de00: distance_de00(asked, lab),
                    lab,
                    trial: (row.get(3)?, row.get(4)?),
                    arm: row.get(5)?,
                    piece: row.get(6)?,
                    stage: row.get(7)?,
                    source: row.get(8)?,
                })
            })?;
            found.extend(rows.collect::<rusqlite::Result<Vec<_>>>()?);
        }
        found.sort_by(|a: &NearReading, b| a.de00.total_cmp(&b.de00));
        Ok(found)
    }
}

/// Words of letters and digits, as the index takes them apart.
fn words(text: &str) -> Vec<String> {
    let words = text.split(|c: char| !c.is_alphanumeric());
    let words = words.filter(|word| !word.is_empty());
    words.map(str::to_owned).take(MOST_WORDS).collect()
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

/// A text as a person reads it, and the name that it gives itself.
struct Plain {
    text: String,
    name: Option<String>,
}

/// A text without the signs and names of entries of a file, which recipes and plans are.
fn plain(body: &str, kind: &str) -> Plain {
    let entry = match kind {
        "recipe" => "name = ",
        "plan" => "title = ",
        _ => {
            let words: Vec<&str> = body.split_whitespace().collect();
            return Plain {
                text: words.join(" "),
                name: None,
            };
        }
    };
    let bare = |value: &str| -> String {
        let value: String = value.chars().filter(|c| !"\"[]{}".contains(*c)).collect();
        value.trim().trim_end_matches(',').to_owned()
    };
    let lines = body.lines().map(str::trim);
    let name = lines.clone().find_map(|line| line.strip_prefix(entry));
    let values = lines
        .filter(|line| !line.starts_with(['#', '[']))
        .map(|line| {
            let line = line.split(" #").next().unwrap_or_default();
            bare(line.split_once(" = ").map_or(line, |(_, value)| value))
        });
    let values: Vec<String> = values.filter(|value| !value.is_empty()).collect();
    Plain {
        text: values.join(" · "),
        name: name.map(|value| bare(value.split(" #").next().unwrap_or_default())),
    }
}

/// Whether a text has any of the words.
fn has_any(text: &str, words: &[String]) -> bool {
    let small = text.to_lowercase();
    words
        .iter()
        .any(|word| small.contains(&word.to_lowercase()))
}

/// Some of a text around the first of the words that it has.
fn around(text: &str, words: &[String]) -> String {
    let small = text.to_lowercase();
    let letters = |end: usize| small.get(..end).map_or(0, |s| s.chars().count());
    let at = words
        .iter()
        .filter_map(|word| small.find(&word.to_lowercase()))
        .min()
        .map_or(0, letters);
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

    #[test]
    fn files_read_as_words() {
        let recipe = include_str!("../../../docs/recipes/napkins.toml");
        let Plain { text, name } = plain(recipe, "recipe");
        assert_eq!(name.unwrap(), "green napkins");
        assert!(
            text.starts_with("green napkins · reactive-warm · cotton"),
            "{text}"
        );
        assert!(!text.contains('=') && !text.contains('"') && !text.contains('#'));
        let words = words("SODA, ash!");
        assert_eq!(words, ["SODA", "ash"]);
        let around = around(&text, &words);
        assert!(
            around.contains("soda ash") && around.starts_with("… "),
            "{around}"
        );
        assert!(around.chars().count() <= AROUND + 4);
    }
}
