//! What is taken from lots: by hand, by runs, and back again. Rows are added, never changed.

use crate::text;
use crate::{
    Bench, Lot, StoreError,
    materials::{lots, named, odd, short},
};
use dyeing::stock::{Stock, StockUnit};
use rusqlite::{Connection, OptionalExtension, params};

impl Bench {
    /// Notes that so much was taken from a lot.
    ///
    /// # Errors
    /// There is no such lot, it is counted by another unit, or the database can't be written.
    pub fn use_lot(
        &mut self,
        lot: i64,
        amount: Stock,
        words: &str,
        now: &str,
    ) -> Result<(), StoreError> {
        short("words", words)?;
        let change = self.change()?;
        let unit = unit_of(&change, lot)?;
        if unit != amount.unit {
            return Err(StoreError::input(
                "used",
                text::stock::this_lot_is_counted_in_so_write(match unit {
                    StockUnit::Gram => text::stock::weight_as_30_g(),
                    StockUnit::Millilitre => text::stock::volume_as_30_ml(),
                    StockUnit::Bottle => text::stock::bottles_as_1_bottle(),
                    StockUnit::Piece => text::stock::pieces_as_2_pieces(),
                }),
            ));
        }
        take(&change, lot, None, Some(amount.amount), words, now)
            .map_err(StoreError::database(text::doing::keep_a_material()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::keep_a_material()))
    }

    /// Notes that nothing is left of a lot.
    ///
    /// # Errors
    /// There is no such lot, or the database can't be written.
    pub fn use_up(&mut self, lot: i64, words: &str, now: &str) -> Result<(), StoreError> {
        short("words", words)?;
        let change = self.change()?;
        unit_of(&change, lot)?;
        take(&change, lot, None, None, words, now)
            .map_err(StoreError::database(text::doing::keep_a_material()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::keep_a_material()))
    }

    /// Notes that something wasn't taken after all; nothing new if that was noted before.
    ///
    /// # Errors
    /// Nothing was taken under that number, or the database can't be written.
    pub fn return_to_lot(&mut self, taken: i64, now: &str) -> Result<(), StoreError> {
        let change = self.change()?;
        let keep = || -> rusqlite::Result<bool> {
            let lot: Option<i64> = change
                .query_row(
                    "SELECT lot_id FROM stock_event WHERE id = ?1 AND kind <> 'taken_back'",
                    [taken],
                    |row| row.get(0),
                )
                .optional()?;
            let Some(lot) = lot else { return Ok(false) };
            change.execute(
                "INSERT INTO stock_event (lot_id, kind, of_event, words, made_at)
                 SELECT ?1, 'taken_back', ?2, '', ?3
                 WHERE NOT EXISTS (SELECT 1 FROM stock_event WHERE of_event = ?2)",
                params![lot, taken, now],
            )?;
            Ok(true)
        };
        if !keep().map_err(StoreError::database(text::doing::keep_a_material()))? {
            return Err(StoreError::Unknown {
                what: text::thing::note_of_something_taken(),
                id: taken,
            });
        }
        change
            .commit()
            .map_err(StoreError::database(text::doing::keep_a_material()))
    }
}

/// Takes what a run's bath needs from the lots of materials of the same names, the oldest first.
pub(crate) fn take_for_run(
    change: &Connection,
    run: i64,
    plan: &dyeing::Plan,
    now: &str,
) -> Result<(), StoreError> {
    let agents = plan.after.iter().map(|after| &after.line);
    for line in plan.lines.iter().chain(agents) {
        let Some(material) = named(change, &line.name)
            .map_err(StoreError::database(text::doing::keep_a_material()))?
        else {
            continue;
        };
        let lots = lots(change, material)?;
        let there: Vec<&Lot> = lots.iter().filter(|lot| !lot.is_used_up).collect();
        // Lots of one unit at a time; a material is counted by one, as a rule.
        let Some(newest) = there.last() else { continue };
        let unit = newest.came.amount.unit;
        let there: Vec<&Lot> = there
            .into_iter()
            .filter(|lot| lot.came.amount.unit == unit)
            .collect();
        let Some(wanted) = Stock::for_line(line, unit) else {
            continue;
        };
        let left: Vec<f64> = there.iter().map(|lot| lot.left.amount).collect();
        for (lot, amount) in there.iter().zip(dyeing::stock::drawn(&left, wanted.amount)) {
            if amount > 0.0 {
                take(change, lot.id, Some(run), Some(amount), "", now)
                    .map_err(StoreError::database(text::doing::keep_a_material()))?;
            }
        }
    }
    Ok(())
}

fn unit_of(database: &Connection, lot: i64) -> Result<StockUnit, StoreError> {
    let unit: Option<String> = database
        .query_row("SELECT unit FROM lot WHERE id = ?1", [lot], |row| {
            row.get(0)
        })
        .optional()
        .map_err(StoreError::database(text::doing::read_its_materials()))?;
    let unit = unit.ok_or(StoreError::Unknown {
        what: text::thing::lot(),
        id: lot,
    })?;
    StockUnit::of_key(&unit).ok_or_else(|| odd(&unit))
}

fn take(
    change: &Connection,
    lot: i64,
    run: Option<i64>,
    amount: Option<f64>,
    words: &str,
    now: &str,
) -> rusqlite::Result<()> {
    let kind = if amount.is_some() { "used" } else { "used_up" };
    change
        .prepare_cached(
            "INSERT INTO stock_event (lot_id, run_id, kind, amount, words, made_at)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
        )?
        .execute(params![lot, run, kind, amount, words.trim(), now])?;
    Ok(())
}
