//! Materials and their lots: what came and what is left. Rows are added, never changed.

use crate::material::{Lot, Material, MaterialKind, NewLot, NewMaterial, Taken};
use crate::text;
use crate::{Bench, StoreError, journal};
use dyeing::stock::{Stock, StockUnit};
use rusqlite::{Connection, OptionalExtension, Row, params};

/// Longer than this is no name or note, characters.
const MOST_TEXT: usize = 2000;

impl Bench {
    /// Puts a material on the shelf and gives its number.
    ///
    /// # Errors
    /// It has no name or another one's, a text is too long, or the database can't be written.
    pub fn add_material(&mut self, new: &NewMaterial, now: &str) -> Result<i64, StoreError> {
        let name = new.name.trim();
        if name.is_empty() {
            return Err(StoreError::input(
                "name",
                text::materials::the_material_has_no_name_give(),
            ));
        }
        short("name", name)?;
        short("notes", &new.notes)?;
        let change = self.change()?;
        if named(&change, name)
            .map_err(StoreError::database(text::doing::keep_a_material()))?
            .is_some()
        {
            return Err(StoreError::input(
                "name",
                text::materials::there_is_a_material_called_already_add(name),
            ));
        }
        change
            .execute(
                "INSERT INTO material (kind, name, notes, made_at) VALUES (?1, ?2, ?3, ?4)",
                params![new.kind.key(), name, new.notes.trim(), now],
            )
            .and_then(|_| {
                let id = change.last_insert_rowid();
                journal::note(&change, now, "material added", name).map(|()| id)
            })
            .map_err(StoreError::database(text::doing::keep_a_material()))
            .and_then(|id| {
                change
                    .commit()
                    .map_err(StoreError::database(text::doing::keep_a_material()))
                    .map(|()| id)
            })
    }

    /// Puts a lot of a material on the shelf and gives its number.
    ///
    /// # Errors
    /// There is no such material, a text is too long, or the database can't be written.
    pub fn add_lot(&mut self, material: i64, new: &NewLot, now: &str) -> Result<i64, StoreError> {
        for (field, text) in [
            ("price", &new.price),
            ("price", &new.currency),
            ("supplier", &new.supplier),
            ("lot-notes", &new.notes),
        ] {
            short(field, text)?;
        }
        let change = self.change()?;
        let keep = || -> rusqlite::Result<Option<i64>> {
            let name: Option<String> = change
                .query_row(
                    "SELECT name FROM material WHERE id = ?1",
                    [material],
                    |row| row.get(0),
                )
                .optional()?;
            let Some(name) = name else {
                return Ok(None);
            };
            change.execute(
                "INSERT INTO lot (material_id, received_on, amount, unit, price, supplier, notes, made_at, currency)
                 VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)",
                params![
                    material,
                    new.received_on,
                    new.amount.amount,
                    new.amount.unit.key(),
                    new.price.trim(),
                    new.supplier.trim(),
                    new.notes.trim(),
                    now,
                    new.currency.trim(),
                ],
            )?;
            let id = change.last_insert_rowid();
            let detail = text::materials::of_lot(new.amount, &name, id);
            journal::note(&change, now, "lot added", &detail)?;
            Ok(Some(id))
        };
        let id = keep().map_err(StoreError::database(text::doing::keep_a_material()))?;
        let id = id.ok_or(StoreError::Unknown {
            what: text::thing::material(),
            id: material,
        })?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::keep_a_material()))?;
        Ok(id)
    }

    /// Every material with its lots, by kind and name.
    ///
    /// # Errors
    /// The database can't be read, or holds a lot that can't be understood.
    pub fn materials(&self) -> Result<Vec<Material>, StoreError> {
        let mut all = self.select_materials(None)?;
        let order = |kind| MaterialKind::ALL.iter().position(|k| *k == kind);
        all.sort_by_key(|m| (order(m.kind), m.name.to_lowercase()));
        Ok(all)
    }

    /// The material of that number, if there is one.
    ///
    /// # Errors
    /// The database can't be read, or holds a lot that can't be understood.
    pub fn material(&self, id: i64) -> Result<Option<Material>, StoreError> {
        Ok(self.select_materials(Some(id))?.pop())
    }

    fn select_materials(&self, id: Option<i64>) -> Result<Vec<Material>, StoreError> {
        let read = || -> rusqlite::Result<Vec<(i64, String, String, String)>> {
            self.database
                .prepare_cached(
                    "SELECT id, kind, name, notes FROM material WHERE ?1 IS NULL OR id = ?1",
                )?
                .query_map([id], |row| {
                    Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?))
                })?
                .collect()
        };
        let rows = read().map_err(StoreError::database(text::doing::read_its_materials()))?;
        rows.into_iter()
            .map(|(id, kind, name, notes)| {
                Ok(Material {
                    id,
                    kind: MaterialKind::of_key(&kind).ok_or_else(|| odd(&kind))?,
                    name,
                    notes,
                    lots: lots(&self.database, id)?,
                })
            })
            .collect()
    }
}

pub(crate) fn short(field: &'static str, text: &str) -> Result<(), StoreError> {
    let length = text.chars().count();
    if length <= MOST_TEXT {
        return Ok(());
    }
    Err(StoreError::input(
        field,
        text::materials::this_text_has_characters_is_the_most(length, MOST_TEXT),
    ))
}

pub(crate) fn odd(value: &str) -> StoreError {
    StoreError::Stored {
        what: text::thing::material(),
        cause: format!("\"{value}\""),
    }
}

/// Number of the material of a name, capitals or not.
pub(crate) fn named(database: &Connection, name: &str) -> rusqlite::Result<Option<i64>> {
    database
        .prepare_cached("SELECT id FROM material WHERE name = ?1 COLLATE NOCASE")?
        .query_row([name.trim()], |row| row.get(0))
        .optional()
}

pub(crate) fn lots(database: &Connection, material: i64) -> Result<Vec<Lot>, StoreError> {
    let read = || -> rusqlite::Result<Vec<(i64, NewLot, String)>> {
        database
            .prepare_cached(
                "SELECT id, received_on, amount, unit, price, supplier, notes, currency FROM lot
                 WHERE material_id = ?1 ORDER BY received_on, id",
            )?
            .query_map([material], came)?
            .collect()
    };
    let rows = read().map_err(StoreError::database(text::doing::read_its_materials()))?;
    rows.into_iter()
        .map(|(id, mut came, unit)| {
            let unit = StockUnit::of_key(&unit).ok_or_else(|| odd(&unit))?;
            came.amount.unit = unit;
            let taken = taken(database, id, unit)
                .map_err(StoreError::database(text::doing::read_its_materials()))?;
            let counts = || taken.iter().filter(|t| !t.is_taken_back);
            let is_used_up = counts().any(|t| t.amount.is_none());
            let used: f64 = counts().filter_map(|t| t.amount).map(|s| s.amount).sum();
            let left = if is_used_up {
                0.0
            } else {
                came.amount.amount - used
            };
            Ok(Lot {
                id,
                came,
                left: Stock { amount: left, unit },
                is_used_up,
                taken,
            })
        })
        .collect()
}

/// A lot's row with its unit as it is kept.
fn came(row: &Row<'_>) -> rusqlite::Result<(i64, NewLot, String)> {
    let lot = NewLot {
        received_on: row.get(1)?,
        amount: Stock {
            amount: row.get(2)?,
            unit: StockUnit::Gram,
        },
        price: row.get(4)?,
        currency: row.get(7)?,
        supplier: row.get(5)?,
        notes: row.get(6)?,
    };
    Ok((row.get(0)?, lot, row.get(3)?))
}

fn taken(database: &Connection, lot: i64, unit: StockUnit) -> rusqlite::Result<Vec<Taken>> {
    database
        .prepare_cached(
            "SELECT stock_event.id, amount, run.id, run.title, words, made_at,
                EXISTS (SELECT 1 FROM stock_event AS back WHERE back.of_event = stock_event.id)
             FROM stock_event LEFT JOIN run ON run.id = run_id
             WHERE lot_id = ?1 AND kind <> 'taken_back' ORDER BY stock_event.id",
        )?
        .query_map([lot], |row| {
            let amount: Option<f64> = row.get(1)?;
            let run: Option<i64> = row.get(2)?;
            let title: Option<String> = row.get(3)?;
            Ok(Taken {
                id: row.get(0)?,
                amount: amount.map(|amount| Stock { amount, unit }),
                run: run.zip(title),
                words: row.get(4)?,
                made_at: row.get(5)?,
                is_taken_back: row.get(6)?,
            })
        })?
        .collect()
}
