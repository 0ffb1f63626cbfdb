//! The pale and the deep part of a reading, as rows.

use crate::{StoreError, json};
use photo::{Split, SplitPart};
use rusqlite::{Connection, Row, params};
use trial::{Part, PartReading, SplitReading};

/// The columns of both parts, to stand behind those of a reading.
pub(crate) const COLUMNS: &str = "pale.cielab_l, pale.cielab_a, pale.cielab_b, pale.causes,
    pale.share, pale.pixels, deep.cielab_l, deep.cielab_a, deep.cielab_b, deep.causes,
    deep.share, deep.pixels,
    CASE WHEN pale.reading_id IS NOT NULL THEN
        (SELECT json_extract(doubt.together, '$.misses') FROM doubt
         WHERE doubt.marking_id = reading.marking_id)
    END";

/// Joins a reading with its parts.
pub(crate) const BESIDE: &str = "LEFT JOIN part AS pale
        ON pale.reading_id = reading.id AND pale.part = 'pale'
    LEFT JOIN part AS deep ON deep.reading_id = reading.id AND deep.part = 'deep'";

/// How many columns one part takes.
const WIDTH: usize = 6;

/// Both parts, their lists still text.
pub(crate) struct StoredSplit {
    pale: StoredPart,
    deep: StoredPart,
    misses: Option<String>,
}

struct StoredPart {
    lab: [f64; 3],
    causes: String,
    share: f64,
    pixels: i64,
}

impl StoredSplit {
    /// Takes [`COLUMNS`], the first of which is `at`; none where the piece is dyed in one.
    pub(crate) fn of(row: &Row<'_>, at: usize) -> rusqlite::Result<Option<Self>> {
        let (Some(pale), Some(deep)) = (part(row, at)?, part(row, at + WIDTH)?) else {
            return Ok(None);
        };
        let misses = row.get(at + 2 * WIDTH)?;
        Ok(Some(Self { pale, deep, misses }))
    }

    pub(crate) fn into_split(self) -> Result<SplitReading, StoreError> {
        let misses = self.misses.as_deref().map(json::misses).transpose()?;
        Ok(SplitReading {
            pale: self.pale.into_part()?,
            deep: self.deep.into_part()?,
            misses: misses.unwrap_or_default(),
        })
    }
}

impl StoredPart {
    fn into_part(self) -> Result<PartReading, StoreError> {
        Ok(PartReading {
            lab: self.lab,
            causes: json::causes(&self.causes)?,
            share: self.share,
            // The table refuses negative counts.
            pixels: self.pixels.unsigned_abs(),
        })
    }
}

fn part(row: &Row<'_>, at: usize) -> rusqlite::Result<Option<StoredPart>> {
    let causes: Option<String> = row.get(at + 3)?;
    Ok(match causes {
        None => None,
        Some(causes) => Some(StoredPart {
            lab: [row.get(at)?, row.get(at + 1)?, row.get(at + 2)?],
            causes,
            share: row.get(at + 4)?,
            pixels: row.get(at + 5)?,
        }),
    })
}

/// What a reader says of a resist-dyed area; none where a figure is missing.
pub(crate) fn told(split: &Split) -> Option<SplitReading> {
    Some(SplitReading {
        pale: told_part(&split.pale)?,
        deep: told_part(&split.deep)?,
        // They stand with the photo's doubt and are kept there once.
        misses: Vec::new(),
    })
}

fn told_part(part: &SplitPart) -> Option<PartReading> {
    let lab = part.lab.to_array();
    let mut numbers = lab.iter().chain(part.cov.iter().flatten());
    let sound = numbers.all(|x| x.is_finite()) && (0.0..=1.0).contains(&part.share);
    sound.then_some(PartReading {
        lab,
        causes: part.parts,
        share: part.share,
        pixels: part.pixels,
    })
}

/// Adds the parts of a reading, within its change.
pub(crate) fn insert(
    change: &Connection,
    reading: i64,
    split: &SplitReading,
) -> rusqlite::Result<()> {
    for part in [Part::Pale, Part::Deep] {
        let Some(read) = split.part(part) else {
            continue;
        };
        let [l, a, b] = read.lab;
        change
            .prepare_cached(
                "INSERT INTO part (reading_id, part, cielab_l, cielab_a, cielab_b, causes,
                    share, pixels)
                 VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
            )?
            .execute(params![
                reading,
                part.as_str(),
                l,
                a,
                b,
                json::causes_text(&read.causes),
                read.share,
                i64::try_from(read.pixels).unwrap_or(i64::MAX),
            ])?;
    }
    Ok(())
}
