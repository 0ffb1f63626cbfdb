//! Searching the notebook for readings near a colour.

mod walk;

use crate::text;
use crate::{Bench, StoreError};
use rusqlite::{CachedStatement, OptionalExtension};
use trial::near::distance_de00;
use walk::Walk;

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

/// The index knows colours in single precision only; what it takes for nearer may be further by
/// less than this.
const ROUNDED_DE00: f64 = 1e-4;

impl Bench {
    /// The readings that lie nearest to a CIELAB colour under a view, such as `D65/10`, the nearest
    /// first: `most` at most, none further than [`trial::near::FURTHEST_DE00`]. Readings that no longer count
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
        self.nearest(lab, view, most)
            .map_err(StoreError::database(text::doing::search_its_notebook()))
    }

    fn nearest(
        &self,
        lab: [f64; 3],
        view: &str,
        most: usize,
    ) -> rusqlite::Result<Vec<NearReading>> {
        let mut query = self.database.prepare_cached(COUNTING)?;
        let mut walk = Walk::from(&self.database, lab, view)?;
        let mut found: Vec<NearReading> = Vec::new();
        while let Some((de00, id)) = walk.next()? {
            if found.len() >= most && de00 > found[most - 1].de00 + ROUNDED_DE00 {
                break;
            }
            if let Some(near) = counting(&mut query, lab, id)? {
                let at = found.partition_point(|other| other.de00 <= near.de00);
                found.insert(at, near);
            }
        }
        found.truncate(most);
        Ok(found)
    }
}

/// A reading with what it is of, if it counts.
const COUNTING: &str = "
    SELECT cielab_l, cielab_a, cielab_b, trial.slug, trial.title, arm.name, piece.code,
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
        AND NOT EXISTS (SELECT 1 FROM binned WHERE kind = 'trial' AND thing = trial.id)";

fn counting(
    query: &mut CachedStatement<'_>,
    asked: [f64; 3],
    id: i64,
) -> rusqlite::Result<Option<NearReading>> {
    let read = |row: &rusqlite::Row<'_>| {
        let lab = [row.get(0)?, row.get(1)?, row.get(2)?];
        Ok(NearReading {
            de00: distance_de00(asked, lab),
            lab,
            trial: (row.get(3)?, row.get(4)?),
            arm: row.get(5)?,
            piece: row.get(6)?,
            stage: row.get(7)?,
            source: row.get(8)?,
        })
    };
    query.query_row([id], read).optional()
}
