//! The person's own charts.

use crate::text;
use crate::{Bench, StoreError, journal};
use photo::ChartReference;
use rusqlite::{OptionalExtension, Row, params};
use trial::ChartId;

/// A chart that was kept.
#[derive(Debug, Clone, PartialEq)]
pub struct KeptChart {
    /// Its number.
    pub id: ChartId,
    /// Its name, in the person's words.
    pub name: String,
    /// Name of the file its values came in.
    pub file_name: String,
    /// The values of its patches.
    pub reference: ChartReference,
    /// When it was added, RFC 3339.
    pub added_at: String,
}

/// The longest name of a chart, letters.
const LONGEST_NAME: usize = 80;

impl Bench {
    /// Keeps a chart under a name: `content` is CGATS text or CSV, spectra or Lab,
    /// with a row a patch.
    ///
    /// # Errors
    /// The name is empty, too long or taken, the values can't be read or make no
    /// chart that photos can be read by, or the database can't be written.
    pub fn add_chart(
        &mut self,
        name: &str,
        file_name: &str,
        content: &[u8],
        now: &str,
    ) -> Result<ChartId, StoreError> {
        let name = name.trim();
        if name.is_empty() || name.chars().count() > LONGEST_NAME {
            return Err(StoreError::input(
                "name",
                text::charts::give_the_chart_a_name_of_1(LONGEST_NAME),
            ));
        }
        let unusable = |cause: String| {
            let sentence = match file_name {
                "" => text::charts::it_gives_no_chart(cause),
                file => text::charts::file_gives_no_chart(file, cause),
            };
            StoreError::input("chart", sentence)
        };
        let reference =
            ChartReference::from_bytes(content).map_err(|error| unusable(sentence(&error)))?;
        photo::chart_is_usable(&reference).map_err(|refusal| unusable(refusal.message))?;
        let change = self.change()?;
        let added = || -> rusqlite::Result<Option<ChartId>> {
            let taken = change
                .query_row("SELECT 1 FROM chart WHERE name = ?1", [name], |_| Ok(()))
                .optional()?;
            if taken.is_some() {
                return Ok(None);
            }
            change.execute(
                "INSERT INTO chart (name, file_name, content, added_at) VALUES (?1, ?2, ?3, ?4)",
                params![name, file_name, content, now],
            )?;
            let id = ChartId(change.last_insert_rowid());
            let detail = text::charts::chart_rows(
                id,
                name,
                reference.rows(),
                reference.columns(),
                file_name,
            );
            journal::note(&change, now, "chart added", &detail)?;
            Ok(Some(id))
        };
        let id = added()
            .map_err(StoreError::database(text::doing::keep_a_chart()))?
            .ok_or_else(|| {
                StoreError::input(
                    "name",
                    text::charts::there_is_a_chart_called_already_give(name),
                )
            })?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::keep_a_chart()))?;
        Ok(id)
    }

    /// Every chart that was kept, by name.
    ///
    /// # Errors
    /// The database can't be read, or holds a chart that can't be understood.
    pub fn charts(&self) -> Result<Vec<KeptChart>, StoreError> {
        let read = || -> rusqlite::Result<Vec<Stored>> {
            self.database
                .prepare_cached(
                    "SELECT id, name, file_name, content, added_at FROM chart ORDER BY name",
                )?
                .query_map([], stored)?
                .collect()
        };
        let stored = read().map_err(StoreError::database(text::doing::read_its_charts()))?;
        stored.into_iter().map(Stored::into_kept).collect()
    }

    /// The chart of that number, if there is one.
    ///
    /// # Errors
    /// As of [`Bench::charts`].
    pub fn chart(&self, id: ChartId) -> Result<Option<KeptChart>, StoreError> {
        self.database
            .prepare_cached(
                "SELECT id, name, file_name, content, added_at FROM chart WHERE id = ?1",
            )
            .and_then(|mut query| query.query_row([id.0], stored).optional())
            .map_err(StoreError::database(text::doing::read_its_charts()))?
            .map(Stored::into_kept)
            .transpose()
    }
}

/// A chart whose values are still as they came.
struct Stored {
    id: i64,
    name: String,
    file_name: String,
    content: Vec<u8>,
    added_at: String,
}

fn stored(row: &Row<'_>) -> rusqlite::Result<Stored> {
    Ok(Stored {
        id: row.get(0)?,
        name: row.get(1)?,
        file_name: row.get(2)?,
        content: row.get(3)?,
        added_at: row.get(4)?,
    })
}

impl Stored {
    fn into_kept(self) -> Result<KeptChart, StoreError> {
        let reference =
            ChartReference::from_bytes(&self.content).map_err(|error| StoreError::Stored {
                what: text::thing::chart(),
                cause: error.to_string(),
            })?;
        Ok(KeptChart {
            id: ChartId(self.id),
            name: self.name,
            file_name: self.file_name,
            reference,
            added_at: self.added_at,
        })
    }
}

/// An error's text as the end of a sentence.
fn sentence(error: &impl std::fmt::Display) -> String {
    let text = error.to_string();
    if text.ends_with(['.', '!', '?']) {
        text
    } else {
        text + "."
    }
}
