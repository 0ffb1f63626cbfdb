//! What can go wrong at the bench, in sentences.

use std::path::PathBuf;
use trial::TrialError;

/// Why the bench can't do what was asked. The text is for the person.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// The bench's folder can't be made or opened.
    #[error(
        "The bench can't be kept in {} ({source}). Make the folder writable or choose another one.",
        path.display()
    )]
    Home {
        /// The folder.
        path: PathBuf,
        /// What the system says.
        source: std::io::Error,
    },
    /// A file of the database's name is there and is no database of ours.
    #[error(
        "{} is not a Woadstone database. Move it away or choose another folder for the bench.",
        path.display()
    )]
    NotABench {
        /// The file.
        path: PathBuf,
    },
    /// The database was written by a later version of the program.
    #[error(
        "The bench at {} was written by a newer Woadstone. Use that version or a later one; nothing was changed.",
        path.display()
    )]
    Newer {
        /// The database.
        path: PathBuf,
    },
    /// The database did not do what was asked.
    #[error(
        "The bench's database could not {doing} ({source}). Nothing was half done; see that the disk \
         has room and that its folder is writable, then try again."
    )]
    Database {
        /// What it was to do, as a verb with its object.
        doing: &'static str,
        /// What SQLite says.
        source: rusqlite::Error,
    },
    /// The tables could not be brought to this version's shape.
    #[error(
        "The bench's database could not be brought up to date ({0}). It stays as it was; \
         keep a copy of the folder before trying again."
    )]
    Migration(rusqlite_migration::Error),
    /// A file of the vault can't be written or read.
    #[error(
        "The photo vault can't use {} ({source}). See that the disk has room and that the folder \
         is writable, then try again.",
        path.display()
    )]
    Vault {
        /// The file or folder.
        path: PathBuf,
        /// What the system says.
        source: std::io::Error,
    },
    /// A photo's file is not in the vault.
    #[error(
        "The photo's file {} is missing from the vault. Put it back from a copy of the bench, \
         or add the photo again.",
        path.display()
    )]
    VaultFileMissing {
        /// Where it should be.
        path: PathBuf,
    },
    /// A photo's file is not what was put in.
    #[error(
        "The photo's file {} was damaged since it was added: its content no longer fits its name. \
         Put it back from a copy of the bench, or add the photo again.",
        path.display()
    )]
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
    #[error("There is no {what} with the number {id} on this bench.")]
    Unknown {
        /// Its kind: `trial`, `photo`.
        what: &'static str,
        /// The number asked for.
        id: i64,
    },
    /// A value in the database can't be understood.
    #[error(
        "The bench's database holds a {what} that can't be understood ({cause}). It may have been changed \
         by another program; put the database back from a copy."
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
