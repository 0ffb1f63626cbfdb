//! The vault: photos kept as files named by their content.
//!
//! A file of SHA-256 `abcd...` lies at `ab/cd...`. It comes there whole or not at
//! all: written under another name, synced, renamed, and the folder synced.

use crate::StoreError;
use sha2::{Digest, Sha256};
use std::{
    fmt::Write as _,
    fs::{self, File},
    io::{self, ErrorKind, Write as _},
    path::{Path, PathBuf},
};

/// How the names of files begin that are still being written.
const UNFINISHED: &str = ".incoming-";

/// A folder of files named by their content.
#[derive(Debug, Clone)]
pub(crate) struct Vault {
    folder: PathBuf,
}

/// What putting a file did.
pub(crate) struct Kept {
    /// SHA-256 of the content, lower-case hexadecimal.
    pub(crate) hash: String,
    /// Whether the vault did not have it before.
    pub(crate) new: bool,
}

impl Vault {
    pub(crate) fn open(folder: &Path) -> Result<Self, StoreError> {
        fs::create_dir_all(folder).map_err(at(folder))?;
        Ok(Self {
            folder: folder.to_owned(),
        })
    }

    /// Keeps a file's content; what is there already, and whole, is not written again.
    pub(crate) fn put(&self, bytes: &[u8]) -> Result<Kept, StoreError> {
        let hash = sha256(bytes);
        let path = self.path(&hash);
        let there = match fs::read(&path) {
            Ok(kept) => Some(kept),
            Err(error) if error.kind() == ErrorKind::NotFound => None,
            Err(error) => return Err(at(&path)(error)),
        };
        // A damaged file is replaced, so that adding a photo again mends the vault.
        if there.as_deref() != Some(bytes) {
            self.write(&path, bytes).map_err(at(&path))?;
        }
        Ok(Kept {
            hash,
            new: there.is_none(),
        })
    }

    /// A file's content, which is what was put in.
    pub(crate) fn get(&self, hash: &str) -> Result<Vec<u8>, StoreError> {
        let path = self.path(hash);
        let bytes = fs::read(&path).map_err(|source| match source.kind() {
            ErrorKind::NotFound => StoreError::VaultFileMissing { path: path.clone() },
            _ => at(&path)(source),
        })?;
        if sha256(&bytes) != hash {
            return Err(StoreError::VaultFileDamaged { path });
        }
        Ok(bytes)
    }

    /// Files that were begun and not finished.
    pub(crate) fn unfinished(&self) -> Result<Vec<PathBuf>, StoreError> {
        let mut files = Vec::new();
        for entry in fs::read_dir(&self.folder).map_err(at(&self.folder))? {
            let entry = entry.map_err(at(&self.folder))?;
            if entry.file_name().to_string_lossy().starts_with(UNFINISHED) {
                files.push(entry.path());
            }
        }
        Ok(files)
    }

    /// Takes a file away, if it is there.
    pub(crate) fn remove(&self, file: &Path) -> Result<(), StoreError> {
        match fs::remove_file(file) {
            Err(error) if error.kind() != ErrorKind::NotFound => Err(at(file)(error)),
            _ => Ok(()),
        }
    }

    /// Where the file of that hash lies.
    pub(crate) fn path(&self, hash: &str) -> PathBuf {
        let (head, rest) = hash.split_at_checked(2).unwrap_or((hash, ""));
        self.folder.join(head).join(rest)
    }

    fn write(&self, path: &Path, bytes: &[u8]) -> io::Result<()> {
        let folder = path.parent().unwrap_or(&self.folder);
        fs::create_dir_all(folder)?;
        let mut file = tempfile::Builder::new()
            .prefix(UNFINISHED)
            .tempfile_in(&self.folder)?;
        file.write_all(bytes)?;
        file.as_file().sync_all()?;
        file.persist(path).map_err(|error| error.error)?;
        sync_folder(folder)?;
        sync_folder(&self.folder)
    }
}

/// Makes the names in a folder last through a power cut.
fn sync_folder(folder: &Path) -> io::Result<()> {
    // Elsewhere a folder can't be opened as a file, and renaming lasts without it.
    if cfg!(unix) {
        File::open(folder)?.sync_all()?;
    }
    Ok(())
}

/// SHA-256 of some bytes, lower-case hexadecimal.
pub(crate) fn sha256(bytes: &[u8]) -> String {
    Sha256::digest(bytes)
        .iter()
        .fold(String::with_capacity(64), |mut text, byte| {
            // Writing to a String can't fail.
            let _ = write!(text, "{byte:02x}");
            text
        })
}

fn at(path: &Path) -> impl Fn(io::Error) -> StoreError {
    let path = path.to_owned();
    move |source| StoreError::Vault {
        path: path.clone(),
        source,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn vault() -> (tempfile::TempDir, Vault) {
        let folder = tempfile::tempdir().unwrap();
        let vault = Vault::open(folder.path()).unwrap();
        (folder, vault)
    }

    #[test]
    fn a_file_is_named_by_its_sha256() {
        let (folder, vault) = vault();
        // Published: FIPS 180-4 example, the message "abc".
        let published = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        let kept = vault.put(b"abc").unwrap();
        assert_eq!(kept.hash, published);
        let path = folder.path().join("ba").join(&published[2..]);
        assert_eq!(fs::read(path).unwrap(), b"abc");
        assert_eq!(vault.get(published).unwrap(), b"abc");
    }

    #[test]
    fn the_same_content_is_kept_once() {
        let (_folder, vault) = vault();
        assert!(vault.put(b"fleece").unwrap().new);
        assert!(!vault.put(b"fleece").unwrap().new);
        assert!(vault.unfinished().unwrap().is_empty());
    }

    #[test]
    fn damage_is_seen_and_mended_by_putting_the_file_again() {
        let (_folder, vault) = vault();
        let hash = vault.put(b"fleece").unwrap().hash;
        fs::write(vault.path(&hash), b"fleeze").unwrap();
        assert_eq!(vault.get(&hash).unwrap_err().code(), "vault_file_damaged");
        assert!(!vault.put(b"fleece").unwrap().new);
        assert_eq!(vault.get(&hash).unwrap(), b"fleece");
    }

    #[test]
    fn a_missing_file_is_named() {
        let (_folder, vault) = vault();
        for hash in ["", "é", &"0".repeat(64)] {
            let error = vault.get(hash).unwrap_err();
            assert!(
                ["vault_file_missing", "vault"].contains(&error.code()),
                "{error}"
            );
        }
    }
}
