//! Paired devices: who may come in from the local network.

use crate::text;
use crate::{Bench, StoreError, journal, vault::sha256};
use rusqlite::{OptionalExtension, Row, params};

/// A device that was paired.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Device {
    /// Its number.
    pub id: i64,
    /// What the person calls it.
    pub name: String,
    /// When it was paired, RFC 3339.
    pub paired_at: String,
    /// When it last asked for something, RFC 3339; none if it never did.
    pub seen_at: Option<String>,
}

/// Where phones may come in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PhoneNetwork {
    /// The computer's own address on the local network, IPv4.
    pub address: String,
    /// The port; 0 takes a free one.
    pub port: u16,
    /// Whether it is switched on again each time the program starts.
    pub at_start: bool,
}

/// The longest name of a device, characters.
const LONGEST_NAME: usize = 60;

const SELECT: &str = "SELECT device.id, device.name, device.paired_at, device_seen.at
    FROM device LEFT JOIN device_seen ON device_seen.device_id = device.id
    WHERE device.id NOT IN (SELECT device_id FROM device_revocation)";

fn device(row: &Row<'_>) -> rusqlite::Result<Device> {
    Ok(Device {
        id: row.get(0)?,
        name: row.get(1)?,
        paired_at: row.get(2)?,
        seen_at: row.get(3)?,
    })
}

impl Bench {
    /// Pairs a device; `token` is what it shows from then on, of which only the SHA-256
    /// is kept.
    ///
    /// # Errors
    /// The name is empty or too long, or the database can't be written.
    pub fn pair_device(&mut self, name: &str, token: &str, now: &str) -> Result<i64, StoreError> {
        let name = name.trim();
        if name.is_empty() || name.chars().count() > LONGEST_NAME {
            return Err(StoreError::input(
                "name",
                text::devices::give_the_device_a_name_of_1(LONGEST_NAME),
            ));
        }
        let change = self.change()?;
        let pair = || -> rusqlite::Result<i64> {
            change.execute(
                "INSERT INTO device (name, token_sha256, paired_at) VALUES (?1, ?2, ?3)",
                params![name, sha256(token.as_bytes()), now],
            )?;
            let id = change.last_insert_rowid();
            journal::note(
                &change,
                now,
                "device paired",
                &text::devices::device(id, name),
            )?;
            Ok(id)
        };
        let id = pair().map_err(StoreError::database(text::doing::pair_a_device()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::pair_a_device()))?;
        Ok(id)
    }

    /// The paired device that shows this token, unless it was revoked.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn device_by_token(&self, token: &str) -> Result<Option<Device>, StoreError> {
        // Found by its hash, so that how long it takes tells nothing of the token.
        self.database
            .prepare_cached(&format!("{SELECT} AND device.token_sha256 = ?1"))
            .and_then(|mut query| {
                query
                    .query_row([sha256(token.as_bytes())], device)
                    .optional()
            })
            .map_err(StoreError::database(
                text::doing::look_at_the_paired_devices(),
            ))
    }

    /// The paired devices that were not revoked, in the order they were paired.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn devices(&self) -> Result<Vec<Device>, StoreError> {
        let read = || -> rusqlite::Result<Vec<Device>> {
            self.database
                .prepare_cached(&format!("{SELECT} ORDER BY device.id"))?
                .query_map([], device)?
                .collect()
        };
        read().map_err(StoreError::database(
            text::doing::look_at_the_paired_devices(),
        ))
    }

    /// Notes that a device was seen.
    ///
    /// # Errors
    /// The device is not there, or the database can't be written.
    pub fn see_device(&mut self, device: i64, now: &str) -> Result<(), StoreError> {
        self.database
            .execute(
                "INSERT INTO device_seen (device_id, at) VALUES (?1, ?2)
                 ON CONFLICT (device_id) DO UPDATE SET at = excluded.at",
                params![device, now],
            )
            .map_err(StoreError::database(
                text::doing::note_when_a_device_was_seen(),
            ))?;
        Ok(())
    }

    /// Revokes a device: it is let in no more. False, and no change, if it is not paired.
    ///
    /// # Errors
    /// The database can't be written.
    pub fn revoke_device(&mut self, device: i64, now: &str) -> Result<bool, StoreError> {
        const REVOKE: &str = "revoke a device";
        let change = self.change()?;
        let revoke = || -> rusqlite::Result<bool> {
            let revoked = change.execute(
                "INSERT INTO device_revocation (device_id, made_at)
                 SELECT id, ?2 FROM device WHERE id = ?1
                    AND id NOT IN (SELECT device_id FROM device_revocation)",
                params![device, now],
            )?;
            if revoked > 0 {
                journal::note(
                    &change,
                    now,
                    "device revoked",
                    &text::devices::device_2(device),
                )?;
            }
            Ok(revoked > 0)
        };
        let revoked = revoke().map_err(StoreError::database(REVOKE))?;
        change.commit().map_err(StoreError::database(REVOKE))?;
        Ok(revoked)
    }

    /// Notes what the person chose for the local network.
    ///
    /// # Errors
    /// The database can't be written.
    pub fn choose_phone_network(
        &mut self,
        chosen: &PhoneNetwork,
        now: &str,
    ) -> Result<(), StoreError> {
        self.database
            .execute(
                "INSERT INTO phone_network (address, port, at_start, made_at)
                 VALUES (?1, ?2, ?3, ?4)",
                params![chosen.address, chosen.port, chosen.at_start, now],
            )
            .map_err(StoreError::database(
                text::doing::note_what_was_chosen_for_the_local(),
            ))?;
        Ok(())
    }

    /// What the person chose last for the local network; none if nothing yet.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn phone_network(&self) -> Result<Option<PhoneNetwork>, StoreError> {
        self.database
            .prepare_cached(
                "SELECT address, port, at_start FROM phone_network ORDER BY id DESC LIMIT 1",
            )
            .and_then(|mut query| {
                query
                    .query_row([], |row| {
                        Ok(PhoneNetwork {
                            address: row.get(0)?,
                            port: row.get(1)?,
                            at_start: row.get(2)?,
                        })
                    })
                    .optional()
            })
            .map_err(StoreError::database(
                text::doing::note_what_was_chosen_for_the_local(),
            ))
    }
}
