//! Checks of the person's set-up, with the photos they rest on.

use crate::text;
use crate::{Bench, StoreError, journal, json, vault::Kept};
use rusqlite::{Connection, params};
use trial::setup::SetupCheck;

/// A check to be kept.
#[derive(Debug, Clone, Copy)]
pub struct NewSetupCheck<'a> {
    /// The set-up's name, in the person's words.
    pub name: &'a str,
    /// Light and observer of its readings, such as `D65/10`.
    pub view: &'a str,
    /// What was found.
    pub check: &'a SetupCheck,
    /// Name and whole content of each photo's file, in the order checked.
    pub photos: &'a [(String, Vec<u8>)],
}

/// A check that was kept.
#[derive(Debug, Clone, PartialEq)]
pub struct KeptSetupCheck {
    /// Its number; later checks have greater ones.
    pub id: i64,
    /// The set-up's name.
    pub name: String,
    /// Light and observer of its readings, such as `D65/10`.
    pub view: String,
    /// What was found.
    pub check: SetupCheck,
    /// Its photos, in the order checked.
    pub photos: Vec<SetupPhoto>,
    /// When it was made, RFC 3339.
    pub made_at: String,
}

/// A photo of a check.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SetupPhoto {
    /// The file's name as it came.
    pub name: String,
    /// SHA-256 of the file, its address in the vault.
    pub hash: String,
}

impl Bench {
    /// Keeps a check with its photos and gives its number. Nothing is kept if
    /// anything goes wrong.
    ///
    /// # Errors
    /// A name or a photo is empty, a photo is given twice, or the vault or the
    /// database can't be written.
    pub fn keep_setup_check(
        &mut self,
        new: NewSetupCheck<'_>,
        now: &str,
    ) -> Result<i64, StoreError> {
        refuse_unsound(&new)?;
        let result = json::setup_check_text(new.check)?;
        let vault = self.vault.clone();
        let change = self.change()?;
        let mut kept: Vec<Kept> = Vec::with_capacity(new.photos.len());
        let mut put = || -> Result<(), StoreError> {
            for (name, bytes) in new.photos {
                let photo = vault.put(bytes)?;
                let twice = kept.iter().any(|other| other.hash == photo.hash);
                kept.push(photo);
                if twice {
                    return Err(StoreError::input(
                        "photos",
                        text::setup_checks::came_twice_leave_one_out_lay(name),
                    ));
                }
            }
            Ok(())
        };
        let added = put().and_then(|()| {
            insert(&change, &new, &result, &kept, now)
                .and_then(|id| change.commit().map(|()| id))
                .map_err(StoreError::database(text::doing::keep_a_set_up_check()))
        });
        if added.is_err() {
            for photo in &kept {
                self.take_back(photo);
            }
        }
        added
    }

    /// The newest check, by which the next trial is planned; none if the set-up was
    /// never checked.
    ///
    /// # Errors
    /// The database can't be read, or holds a check that can't be understood.
    pub fn latest_setup_check(&self) -> Result<Option<KeptSetupCheck>, StoreError> {
        Ok(self.read_setup_checks(1)?.pop())
    }

    /// Every check, newest first.
    ///
    /// # Errors
    /// As for [`Bench::latest_setup_check`].
    pub fn setup_checks(&self) -> Result<Vec<KeptSetupCheck>, StoreError> {
        self.read_setup_checks(-1)
    }

    /// The newest checks; a `most` below 0 takes all.
    fn read_setup_checks(&self, most: i64) -> Result<Vec<KeptSetupCheck>, StoreError> {
        let mut query = self
            .database
            .prepare_cached(
                "SELECT id, name, view, result, made_at FROM setup_check
                 ORDER BY id DESC LIMIT ?1",
            )
            .map_err(StoreError::database(text::doing::read_its_set_up_checks()))?;
        let rows = query
            .query_map([most], |row| {
                let text = |column| row.get::<_, String>(column);
                Ok((row.get(0)?, text(1)?, text(2)?, text(3)?, text(4)?))
            })
            .and_then(Iterator::collect::<rusqlite::Result<Vec<_>>>)
            .map_err(StoreError::database(text::doing::read_its_set_up_checks()))?;
        rows.into_iter()
            .map(|(id, name, view, result, made_at)| {
                Ok(KeptSetupCheck {
                    id,
                    name,
                    view,
                    check: json::setup_check(&result)?,
                    photos: self
                        .setup_photos(id)
                        .map_err(StoreError::database(text::doing::read_its_set_up_checks()))?,
                    made_at,
                })
            })
            .collect()
    }

    fn setup_photos(&self, check: i64) -> rusqlite::Result<Vec<SetupPhoto>> {
        self.database
            .prepare_cached(
                "SELECT name, sha256 FROM setup_photo WHERE setup_check_id = ?1 ORDER BY place",
            )?
            .query_map([check], |row| {
                Ok(SetupPhoto {
                    name: row.get(0)?,
                    hash: row.get(1)?,
                })
            })?
            .collect()
    }
}

fn refuse_unsound(new: &NewSetupCheck<'_>) -> Result<(), StoreError> {
    if new.name.trim().is_empty() {
        return Err(StoreError::input(
            "name",
            text::setup_checks::give_the_set_up_a_name(),
        ));
    }
    match new.photos.iter().find(|(_, bytes)| bytes.is_empty()) {
        Some((name, _)) => Err(StoreError::input(
            "photos",
            text::setup_checks::is_empty_choose_another_photo(name),
        )),
        None => Ok(()),
    }
}

fn insert(
    change: &Connection,
    new: &NewSetupCheck<'_>,
    result: &str,
    kept: &[Kept],
    now: &str,
) -> rusqlite::Result<i64> {
    change.execute(
        "INSERT INTO setup_check (name, view, result, made_at) VALUES (?1, ?2, ?3, ?4)",
        params![new.name.trim(), new.view, result, now],
    )?;
    let id = change.last_insert_rowid();
    for (place, ((name, bytes), photo)) in new.photos.iter().zip(kept).enumerate() {
        change
            .prepare_cached(
                "INSERT INTO setup_photo (setup_check_id, place, name, sha256, file_bytes)
                 VALUES (?1, ?2, ?3, ?4, ?5)",
            )?
            // Neither is ever longer than isize::MAX, so these keep their values.
            .execute(params![
                id,
                place as i64,
                name,
                photo.hash,
                bytes.len() as i64
            ])?;
    }
    let detail = text::setup_checks::check_of_photos_pieces(
        id,
        new.name.trim(),
        new.photos.len(),
        new.check.pieces,
    );
    journal::note(change, now, "set-up checked", &detail)?;
    Ok(id)
}
