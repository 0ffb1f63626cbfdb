//! Opening the bench: its folder, its database, its vault.

use crate::text;
use crate::{StoreError, tags, vault::Vault};
use rusqlite::{Connection, ErrorCode, Transaction, TransactionBehavior};
use rusqlite_migration::{Error as MigrationError, M, MigrationDefinitionError, Migrations};
use std::{
    fs,
    path::{Path, PathBuf},
    time::Duration,
};

const DATABASE: &str = "woadstone.sqlite";
const VAULT: &str = "vault";

/// How long one handle waits for another one to finish a change.
const PATIENCE: Duration = Duration::from_secs(10);

/// How long it pauses between two tries where SQLite doesn't wait by itself.
const PAUSE: Duration = Duration::from_millis(10);

/// Every step from an empty database to today's tables.
fn migrations() -> Migrations<'static> {
    Migrations::new(vec![
        M::up(include_str!("../migrations/0001_bench.sql")),
        M::up(include_str!("../migrations/0002_setup_check.sql")),
        M::up(include_str!("../migrations/0003_elsewhere.sql")),
        M::up_with_hook(
            include_str!("../migrations/0004_tags.sql"),
            |change: &Transaction<'_>| Ok(tags::fill(change)?),
        ),
        M::up(include_str!("../migrations/0005_doubt.sql")),
        M::up(include_str!("../migrations/0006_part.sql")),
        M::up(include_str!("../migrations/0007_chart.sql")),
        M::up(include_str!("../migrations/0008_notice.sql")),
        M::up(include_str!("../migrations/0009_plan.sql")),
        M::up(include_str!("../migrations/0010_recipe.sql")),
        M::up(include_str!("../migrations/0011_water.sql")),
        M::up(include_str!("../migrations/0012_photo_map.sql")),
        M::up(include_str!("../migrations/0013_bin.sql")),
        M::up(include_str!("../migrations/0014_phone.sql")),
        M::up(include_str!("../migrations/0015_eyes.sql")),
        M::up(include_str!("../migrations/0016_material.sql")),
        M::up(include_str!("../migrations/0017_search.sql")),
        M::up(include_str!("../migrations/0018_photo_stage.sql")),
        M::up(include_str!("../migrations/0019_setting.sql")),
        M::up(include_str!("../migrations/0020_promise.sql")),
    ])
}

/// The trials, photos and readings of one person, in one folder.
///
/// Several handles, also of several programs, may be open on one folder.
#[derive(Debug)]
pub struct Bench {
    pub(crate) database: Connection,
    pub(crate) vault: Vault,
}

impl Bench {
    /// Opens the bench in `home`; makes the folder and an empty bench if there is none.
    ///
    /// # Errors
    /// The folder can't be used, what lies there is no bench, or it was written by
    /// a newer version of the program.
    pub fn open(home: &Path) -> Result<Self, StoreError> {
        let unusable = |source| StoreError::Home {
            path: home.to_owned(),
            source,
        };
        fs::create_dir_all(home).map_err(unusable)?;
        // SQLite says only "unable to open"; trying it by hand gets the system's reason.
        tempfile::tempfile_in(home).map_err(unusable)?;
        let vault = Vault::open(&home.join(VAULT))?;
        let database = database(home.join(DATABASE))?;
        let mut bench = Self { database, vault };
        bench.sweep()?;
        Ok(bench)
    }

    /// Starts a change: everything in it happens, or nothing does. It holds off every
    /// other writer, also those of the vault, until it ends.
    pub(crate) fn change(&mut self) -> Result<Transaction<'_>, StoreError> {
        self.database
            .transaction_with_behavior(TransactionBehavior::Immediate)
            .map_err(StoreError::database(text::doing::begin_a_change()))
    }

    /// Removes unfinished files that a crash left in the vault.
    fn sweep(&mut self) -> Result<(), StoreError> {
        if self.vault.unfinished()?.is_empty() {
            return Ok(());
        }
        let vault = self.vault.clone();
        // Files are written within a change, so whatever is unfinished now is an orphan.
        let change = self.change()?;
        for file in vault.unfinished()? {
            vault.remove(&file)?;
        }
        drop(change);
        Ok(())
    }
}

fn database(path: PathBuf) -> Result<Connection, StoreError> {
    let mut database =
        Connection::open(&path).map_err(StoreError::database(text::doing::open_its_file()))?;
    prepare(&database).map_err(|source| match source.sqlite_error_code() {
        Some(ErrorCode::NotADatabase) => StoreError::NotABench { path: path.clone() },
        _ => StoreError::Database {
            doing: text::doing::open_its_file(),
            source,
        },
    })?;
    let migrations = migrations();
    migrations
        .to_latest(&mut database)
        // Another program may have made the same tables at the same time: then they fit now.
        .or_else(|_| migrations.to_latest(&mut database))
        .map_err(|error| match error {
            MigrationError::MigrationDefinition(MigrationDefinitionError::DatabaseTooFarAhead) => {
                StoreError::Newer { path }
            }
            MigrationError::RusqliteError { ref err, .. } if holds_other_tables(err) => {
                StoreError::NotABench { path }
            }
            other => StoreError::Migration(other),
        })?;
    Ok(database)
}

/// Whether a migration failed because tables of that name are there already.
fn holds_other_tables(error: &rusqlite::Error) -> bool {
    error.to_string().contains("already exists")
}

/// Turns the write-ahead log on. SQLite doesn't wait for another program that does
/// the same at this moment, so the waiting is done here.
fn write_ahead(database: &Connection) -> rusqlite::Result<()> {
    let mut left = PATIENCE;
    loop {
        let done = database.pragma_update_and_check(None, "journal_mode", "wal", |_| Ok(()));
        let busy = matches!(&done, Err(error) if error.sqlite_error_code() == Some(ErrorCode::DatabaseBusy));
        if !busy || left.is_zero() {
            return done;
        }
        std::thread::sleep(PAUSE);
        left = left.saturating_sub(PAUSE);
    }
}

fn prepare(database: &Connection) -> rusqlite::Result<()> {
    database.busy_timeout(PATIENCE)?;
    write_ahead(database)?;
    // FULL, not NORMAL: NORMAL may lose the last changes in a power cut, and a reading
    // that was shown to a person must still be there afterwards. Changes are few.
    database.pragma_update(None, "synchronous", "full")?;
    database.pragma_update(None, "foreign_keys", true)?;
    // Without it REPLACE would delete rows past the triggers that forbid it.
    database.pragma_update(None, "recursive_triggers", true)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn migrations_are_sound() {
        migrations().validate().unwrap();
    }

    fn bench() -> (tempfile::TempDir, Bench) {
        let home = tempfile::tempdir().unwrap();
        let bench = Bench::open(home.path()).unwrap();
        (home, bench)
    }

    #[test]
    fn the_database_is_opened_as_it_should_be() {
        let (_home, bench) = bench();
        let pragma = |name: &str| -> String {
            bench
                .database
                .query_row(
                    &format!("SELECT CAST({name} AS TEXT) FROM pragma_{name}"),
                    [],
                    |row| row.get(0),
                )
                .unwrap()
        };
        assert_eq!(pragma("journal_mode"), "wal");
        assert_eq!(pragma("foreign_keys"), "1");
        assert_eq!(pragma("synchronous"), "2", "2 is FULL");
    }

    #[test]
    fn a_newer_bench_is_left_alone() {
        let (home, bench) = bench();
        bench
            .database
            .pragma_update(None, "user_version", 1000)
            .unwrap();
        drop(bench);
        let error = Bench::open(home.path()).unwrap_err();
        assert_eq!(error.code(), "newer_bench");
        assert!(error.to_string().contains("newer Woadstone"));
    }

    #[test]
    fn another_file_of_that_name_is_not_taken_for_a_bench() {
        let home = tempfile::tempdir().unwrap();
        let words = "shopping list: alum, soda, string. ".repeat(40);
        fs::write(home.path().join(DATABASE), &words).unwrap();
        assert_eq!(Bench::open(home.path()).unwrap_err().code(), "not_a_bench");
        assert_eq!(
            fs::read_to_string(home.path().join(DATABASE)).unwrap(),
            words
        );
    }

    #[test]
    fn another_programs_database_is_not_taken_for_a_bench() {
        let home = tempfile::tempdir().unwrap();
        let other = Connection::open(home.path().join(DATABASE)).unwrap();
        other
            .execute("CREATE TABLE trial (verdict TEXT)", [])
            .unwrap();
        assert_eq!(Bench::open(home.path()).unwrap_err().code(), "not_a_bench");
    }

    #[test]
    fn a_folder_that_cannot_be_used_is_named() {
        let home = tempfile::tempdir().unwrap();
        let file = home.path().join("a file");
        fs::write(&file, "in the way").unwrap();
        let error = Bench::open(&file.join("bench")).unwrap_err();
        assert_eq!(error.code(), "home_unusable");
        assert!(error.to_string().contains("a file"));
    }

    #[test]
    fn nothing_that_was_added_can_be_changed_or_deleted() {
        let (_home, bench) = bench();
        bench
            .database
            .execute_batch(
                "INSERT INTO trial VALUES (1, 's', 't', 'q', 1, 1, 0, '', 'now');
                 INSERT INTO arm VALUES (1, 1, 'a', '');
                 INSERT INTO piece VALUES (1, 1, 1, 'p', 'test', NULL, 'K7H-4PX');
                 INSERT INTO chart VALUES (1, 'c', 'f', x'00', 'now');
                 INSERT INTO photo VALUES (1, 1, 0, 'n', hex(zeroblob(32)), 1, 1, 1, NULL, 'now', 1);
                 INSERT INTO notice VALUES (1, 0, 's');
                 INSERT INTO marking VALUES (1, 1, 'now');
                 INSERT INTO area VALUES (1, 0, 1, '[]');
                 INSERT INTO outcome VALUES (1, 'm', 1, NULL, NULL, '[]', 'now');
                 INSERT INTO doubt VALUES (1, '{}');
                 INSERT INTO photo_map VALUES (1, '{}');
                 INSERT INTO device VALUES (1, 'd', hex(zeroblob(32)), 'now');
                 INSERT INTO device_revocation VALUES (1, 'now');
                 INSERT INTO reading VALUES (1, 1, 1, 0, 1, 1, 1, '[]', 1, 'D65/10', 'photo', '[]', 'now');
                 INSERT INTO part VALUES (1, 'pale', 1, 1, 1, '{}', 0.5, 1);
                 INSERT INTO setup_check VALUES (1, 's', 'D65/10', '{}', 'now');
                 INSERT INTO setup_photo VALUES (1, 0, 'n', hex(zeroblob(32)), 1);
                 INSERT INTO journal VALUES (1, 'now', 'w', 'd', NULL);
                 INSERT INTO bin_act VALUES (1, 'photo', 1, 1, 'now');
                 INSERT INTO reading VALUES (2, 1, NULL, 0, 1, 1, 1, '[]', 0, 'D65/10', 'lab', '[]', 'now');
                 INSERT INTO delivery VALUES (1, 1, 'f', x'00', '', '', '', 'now');
                 INSERT INTO delivered VALUES (2, 1, NULL);
                 INSERT INTO eye_grade VALUES (1, 1, 0, 'change', '4-5', NULL, 'b', 'l', '', '', 'now');
                 INSERT INTO withdrawal VALUES (1, 2, NULL, 'r', 'now');
                 INSERT INTO plan VALUES (1, 'p', 'now');
                 INSERT INTO plan_revision VALUES (1, 1, 1, 'c', 'w', 'now');
                 INSERT INTO planned_trial VALUES (1, 1);
                 INSERT INTO blind_opening VALUES (1, 'now');
                 INSERT INTO recipe VALUES (1, 'r', 'now');
                 INSERT INTO recipe_revision VALUES (1, 1, 1, 'c', 'w', 'now');
                 INSERT INTO recipe_aim VALUES (1, 1, 1, NULL, 'now');
                 INSERT INTO run VALUES (1, 1, 1, 't', '{}', 'now');
                 INSERT INTO run_event VALUES (1, 1, 1, 1, 'started', NULL, NULL, NULL, 1, 1);
                 INSERT INTO water_reading VALUES (1, 1, 1, '{}', NULL, 1);
                 INSERT INTO eye_session VALUES (1, 1, '{}', 'now');
                 INSERT INTO eye_closing VALUES (1, 'now');
                 INSERT INTO eye_sitting VALUES (1, 1, '{}', '[]', 'now');
                 INSERT INTO eye_turn VALUES (1, 1, 0, NULL, '', 'now');
                 INSERT INTO material VALUES (1, 'dye', 'n', '', 'now');
                 INSERT INTO lot VALUES (1, 1, '2030-01-01', 5, 'g', '', '', '', 'now', '');
                 INSERT INTO stock_event VALUES (1, 1, NULL, 'used', 5, NULL, '', 'now');
                 INSERT INTO setting VALUES (1, '{}', 'now');",
            )
            .unwrap();
        for (table, column) in [
            ("chart", "name"),
            ("photo", "name"),
            ("notice", "sentence"),
            ("marking", "marked_at"),
            ("area", "polygon_px"),
            ("outcome", "made_at"),
            ("doubt", "together"),
            ("photo_map", "places"),
            ("device", "name"),
            ("device_revocation", "made_at"),
            ("reading", "cielab_l"),
            ("part", "cielab_l"),
            ("setup_check", "result"),
            ("setup_photo", "name"),
            ("journal", "detail"),
            ("delivery", "instrument"),
            ("delivered", "spectrum"),
            ("eye_grade", "grade"),
            ("withdrawal", "reason"),
            ("plan", "slug"),
            ("plan_revision", "content"),
            ("planned_trial", "revision_id"),
            ("blind_opening", "opened_at"),
            ("recipe", "slug"),
            ("recipe_revision", "content"),
            ("recipe_aim", "made_at"),
            ("run", "sheet"),
            ("run_event", "at_s"),
            ("water_reading", "content"),
            ("bin_act", "at"),
            ("eye_session", "content"),
            ("eye_closing", "closed_at"),
            ("eye_sitting", "turns"),
            ("eye_turn", "grade"),
            ("material", "notes"),
            ("lot", "amount"),
            ("stock_event", "amount"),
            ("setting", "locale"),
        ] {
            for change in [
                format!("UPDATE {table} SET {column} = {column}"),
                format!("DELETE FROM {table}"),
                format!("REPLACE INTO {table} SELECT * FROM {table}"),
            ] {
                let error = bench.database.execute(&change, []).unwrap_err();
                assert!(error.to_string().contains("never"), "{change}: {error}");
            }
        }
    }

    #[test]
    fn leavings_of_a_crash_are_swept_and_nothing_else() {
        let (home, bench) = bench();
        drop(bench);
        let vault = home.path().join(VAULT);
        fs::write(vault.join(".incoming-x1"), "half a pho").unwrap();
        fs::create_dir_all(vault.join("ab")).unwrap();
        fs::write(vault.join("ab").join("cdef"), "a file without a row").unwrap();
        fs::write(vault.join("notes.txt"), "somebody's").unwrap();
        Bench::open(home.path()).unwrap();
        assert!(!vault.join(".incoming-x1").exists());
        assert!(vault.join("ab/cdef").exists() && vault.join("notes.txt").exists());
    }
}
