//! Tags of pieces: codes that no other piece of the bench has.

use photo::board::Code;
use rusqlite::{Connection, params};
use sha2::{Digest, Sha256};

/// A code for a piece that is about to be entered, unused on the bench.
///
/// It comes from the trial's slug, the time it was entered and the piece's own code,
/// so that neighbours don't look alike and another bench gives other codes.
pub(crate) fn free(
    change: &Connection,
    slug: &str,
    made_at: &str,
    piece: &str,
) -> rusqlite::Result<Code> {
    let mut taken = change.prepare_cached("SELECT EXISTS (SELECT 1 FROM piece WHERE tag = ?1)")?;
    let digest = Sha256::digest(format!("{slug}\n{made_at}\n{piece}"));
    let mut number = u32::from_be_bytes([digest[0], digest[1], digest[2], digest[3]]);
    loop {
        let code = Code::from_number(number);
        if !taken.query_row([code.to_string()], |row| row.get(0))? {
            return Ok(code);
        }
        // Codes end after 2.4 million pieces, long after a bench's other bounds.
        number = number.wrapping_add(1);
    }
}

/// Gives a tag to every piece that has none.
pub(crate) fn fill(change: &Connection) -> rusqlite::Result<()> {
    let untagged: Vec<(i64, String, String, String)> = change
        .prepare(
            "SELECT piece.id, trial.slug, trial.made_at, piece.code
             FROM piece JOIN trial ON trial.id = piece.trial_id
             WHERE piece.tag IS NULL ORDER BY piece.id",
        )?
        .query_map([], |row| {
            Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?))
        })?
        .collect::<rusqlite::Result<_>>()?;
    for (id, slug, made_at, piece) in untagged {
        let tag = free(change, &slug, &made_at, &piece)?;
        change.execute(
            "UPDATE piece SET tag = ?1 WHERE id = ?2",
            params![tag.to_string(), id],
        )?;
    }
    Ok(())
}
