//! Readings of a run's spent bath and rinse waters. They are added, never changed.

use crate::text;
use crate::{Bench, StoreError};
use dyeing::{
    Plan,
    balance::{DyeBalance, Start, WaterEvent, WaterNote, WrittenWaters, standing, waters},
};
use rusqlite::{Connection, params};

/// A water is clear below this share of the dye put in, unless the person says otherwise.
pub const CLEAR: f64 = 0.001;

impl Bench {
    /// Adds a reading of a run's waters, the standards they are read by, or what corrects or
    /// withdraws an earlier one (`of`). When this returns it is on the disk; a reading that the
    /// balance can't use is refused, so that the balance can always be worked out.
    ///
    /// # Errors
    /// There is no such run, `of` names none that still counts, the reading can't be used, or the
    /// database can't be written.
    pub fn note_water(
        &mut self,
        run: i64,
        what: &WaterNote,
        of: Option<u32>,
        now_s: i64,
    ) -> Result<(), StoreError> {
        let start = self.bath_of_run(run)?;
        let change = self.change()?;
        let mut events = of_run(&change, run)?;
        let earlier = of.map(|of| standing(&events).into_iter().find(|s| s.number == of));
        match (&earlier, what) {
            (Some(None), _) | (None, WaterNote::Withdrawn(_)) => {
                return Err(StoreError::input(
                    "reading",
                    text::waters::that_reading_was_taken_back_already(),
                ));
            }
            (Some(Some(earlier)), what) if earlier.what == *what => return Ok(()),
            _ => {}
        }
        let event = WaterEvent {
            number: events.len() as u32 + 1,
            noted_s: now_s,
            what: what.clone(),
            of,
        };
        events.push(event.clone());
        usable(&start, &waters(&events))?;
        insert(&change, run, &event)?;
        change.commit().map_err(StoreError::database(
            text::doing::note_a_reading_of_a_water(),
        ))
    }

    /// Everything that was read of a run's waters, in the order in which it was noted.
    ///
    /// # Errors
    /// The database can't be read, or holds a reading that can't be understood.
    pub fn water_events(&self, run: i64) -> Result<Vec<WaterEvent>, StoreError> {
        of_run(&self.database, run)
    }

    /// Where the dye of a run went, a rinse being clear that holds less than a share `below` of it;
    /// nothing if no water was read.
    ///
    /// # Errors
    /// There is no such run, `below` is no share, or the database can't be read.
    pub fn balance_of_run(&self, run: i64, below: f64) -> Result<Option<DyeBalance>, StoreError> {
        let read = waters(&self.water_events(run)?);
        if is_empty(&read) {
            return Ok(None);
        }
        let start = self.bath_of_run(run)?;
        DyeBalance::of(&start, &read, below)
            .map(Some)
            .map_err(|error| StoreError::input("balance", error.to_string()))
    }

    /// The bath of a run as its recipe makes it.
    ///
    /// # Errors
    /// There is no such run, or the database can't be read.
    pub fn bath_of_run(&self, run: i64) -> Result<Start, StoreError> {
        let unknown = StoreError::Unknown {
            what: text::thing::run(),
            id: run,
        };
        let Some(kept) = self.run(run)? else {
            return Err(unknown);
        };
        let recipe = self.recipe(&kept.recipe, Some(kept.revision))?;
        let recipe = recipe.ok_or(unknown)?.recipe;
        let plan = Plan::of(&recipe).map_err(|error| StoreError::Stored {
            what: text::thing::recipe(),
            cause: error.to_string(),
        })?;
        Ok(Start::of(&recipe, &plan))
    }
}

fn is_empty(waters: &WrittenWaters) -> bool {
    waters.bath.is_none() && waters.rinse.is_empty()
}

/// Fails for readings of which no balance can be made.
fn usable(start: &Start, waters: &WrittenWaters) -> Result<(), StoreError> {
    // Standards alone are looked at by a water that is none.
    let made = if is_empty(waters) {
        match &waters.calibration {
            Some(calibration) => calibration.check(start),
            None => Ok(()),
        }
    } else {
        DyeBalance::of(start, waters, CLEAR).map(|_| ())
    };
    made.map_err(StoreError::Water)
}

fn of_run(database: &Connection, run: i64) -> Result<Vec<WaterEvent>, StoreError> {
    type Row = (u32, String, Option<u32>, i64);
    let read = || -> rusqlite::Result<Vec<Row>> {
        database
            .prepare_cached(
                "SELECT number, content, of_event, noted_s FROM water_reading
                 WHERE run_id = ?1 ORDER BY number",
            )?
            .query_map([run], |row| {
                Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?))
            })?
            .collect()
    };
    let rows = read().map_err(StoreError::database(text::doing::read_what_waters_held()))?;
    rows.into_iter()
        .map(|(number, content, of, noted_s)| {
            Ok(WaterEvent {
                number,
                noted_s,
                what: note(&content)?,
                of,
            })
        })
        .collect()
}

/// What was noted, from what is kept of it.
pub(crate) fn note(content: &str) -> Result<WaterNote, StoreError> {
    serde_json::from_str(content).map_err(odd)
}

fn insert(change: &Connection, run: i64, event: &WaterEvent) -> Result<(), StoreError> {
    let content = serde_json::to_string(&event.what).map_err(odd)?;
    change
        .prepare_cached(
            "INSERT INTO water_reading (run_id, number, content, of_event, noted_s)
             VALUES (?1, ?2, ?3, ?4, ?5)",
        )
        .and_then(|mut insert| {
            insert.execute(params![run, event.number, content, event.of, event.noted_s])
        })
        .map_err(StoreError::database(
            text::doing::note_a_reading_of_a_water(),
        ))?;
    Ok(())
}

fn odd(error: serde_json::Error) -> StoreError {
    StoreError::Stored {
        what: text::thing::reading_of_a_water(),
        cause: error.to_string(),
    }
}
