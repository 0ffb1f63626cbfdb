//! What can go wrong at the bench, in sentences.

use std::path::PathBuf;
use trial::TrialError;

/// Why the bench can't do what was asked. The text is for the person.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// The bench's folder can't be made or opened.
    #[error("{}", crate::text::error::the_bench_cant_be_kept_in_make(path.display(), source))]
    Home {
        /// The folder.
        path: PathBuf,
        /// What the system says.
        source: std::io::Error,
    },
    /// A file of the database's name is there and is no database of ours.
    #[error("{}", crate::text::error::is_not_a_woadstone_database_move(path.display()))]
    NotABench {
        /// The file.
        path: PathBuf,
    },
    /// The database was written by a later version of the program.
    #[error("{}", crate::text::error::the_bench_at_was_written(path.display()))]
    Newer {
        /// The database.
        path: PathBuf,
    },
    /// The database did not do what was asked.
    #[error(
        "{}",
        crate::text::error::the_benchs_database_could_not_nothing(doing, source)
    )]
    Database {
        /// What it was to do, as a verb with its object.
        doing: &'static str,
        /// What SQLite says.
        source: rusqlite::Error,
    },
    /// The tables could not be brought to this version's shape.
    #[error("{}", crate::text::error::the_benchs_database_could_not_be_brought(.0))]
    Migration(rusqlite_migration::Error),
    /// A file of the vault can't be written or read.
    #[error("{}", crate::text::error::the_photo_vault_cant_use_see(path.display(), source))]
    Vault {
        /// The file or folder.
        path: PathBuf,
        /// What the system says.
        source: std::io::Error,
    },
    /// A photo's file is not in the vault.
    #[error("{}", crate::text::error::the_photos_file_is_missing(path.display()))]
    VaultFileMissing {
        /// Where it should be.
        path: PathBuf,
    },
    /// A photo's file is not what was put in.
    #[error("{}", crate::text::error::the_photos_file_was_damaged_since(path.display()))]
    VaultFileDamaged {
        /// The damaged file.
        path: PathBuf,
    },
    /// A trial that can't be entered.
    #[error(transparent)]
    Trial(#[from] TrialError),
    /// A photo or marking that can't be taken.
    #[error("{message}")]
    Input {
        /// The part that is wrong: `name`, `bytes`, `corners`, `areas`, ....
        field: &'static str,
        /// What is wrong and how to mend it, in a sentence.
        message: String,
    },
    /// A reading of a water of which no balance can be made; the place names the water and the entry.
    #[error("{0}")]
    Water(dyeing::DyeingError),
    /// Something named by number is not there.
    #[error("{}", crate::text::error::there_is_no_with_the_number(what, id))]
    Unknown {
        /// Its kind: `trial`, `photo`.
        what: &'static str,
        /// The number asked for.
        id: i64,
    },
    /// A value in the database can't be understood.
    #[error(
        "{}",
        crate::text::error::the_benchs_database_holds_a_that_cant(what, cause)
    )]
    Stored {
        /// The kind of value.
        what: &'static str,
        /// What is odd about it.
        cause: String,
    },
}

impl StoreError {
    /// A stable short name of the cause, for programs.
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Home { .. } => "home_unusable",
            Self::NotABench { .. } => "not_a_bench",
            Self::Newer { .. } => "newer_bench",
            Self::Database { .. } => "database",
            Self::Migration(_) => "migration",
            Self::Vault { .. } => "vault",
            Self::VaultFileMissing { .. } => "vault_file_missing",
            Self::VaultFileDamaged { .. } => "vault_file_damaged",
            Self::Trial(_) => "trial_refused",
            Self::Input { .. } => "input_refused",
            Self::Water(_) => "water_refused",
            Self::Unknown { .. } => "unknown",
            Self::Stored { .. } => "stored_value",
        }
    }

    /// For `map_err`: the database could not do `doing`.
    pub(crate) fn database(doing: &'static str) -> impl FnOnce(rusqlite::Error) -> Self {
        move |source| Self::Database { doing, source }
    }

    pub(crate) fn input(field: &'static str, message: impl Into<String>) -> Self {
        Self::Input {
            field,
            message: message.into(),
        }
    }
}
