//! Which photos a command line names.

use crate::text;
use std::path::{Path, PathBuf};

use crate::outcome::Stop;

/// Endings of photos that are looked for in a folder; others lie there for
/// other purposes.
const ENDINGS: [&str; 3] = ["jpg", "jpeg", "png"];

/// The photos named, and those of each folder named, by name.
pub fn listed(paths: &[PathBuf]) -> Result<Vec<PathBuf>, Stop> {
    let mut photos = Vec::new();
    for path in paths {
        if path.is_dir() {
            photos.extend(of_folder(path)?);
        } else {
            photos.push(path.clone());
        }
    }
    Ok(photos)
}

fn of_folder(folder: &Path) -> Result<Vec<PathBuf>, Stop> {
    let unopened =
        |e: std::io::Error| Stop::refused(text::command::cant_be_opened(folder.display(), &e));
    let mut photos = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(unopened)? {
        let path = entry.map_err(unopened)?.path();
        if is_photo(&path) && path.is_file() {
            photos.push(path);
        }
    }
    photos.sort();
    if photos.is_empty() {
        return Err(Stop::refused(
            text::command::the_folder_holds_no_photo_that_ends(folder.display()),
        ));
    }
    Ok(photos)
}

fn is_photo(path: &Path) -> bool {
    path.extension()
        .and_then(|ending| ending.to_str())
        .is_some_and(|ending| ENDINGS.contains(&ending.to_ascii_lowercase().as_str()))
}

/// The list of areas that lies beside a photo: `napkins.areas.json` for
/// `napkins.jpg`.
pub fn areas_beside(photo: &Path) -> Option<PathBuf> {
    let beside = photo.with_extension("areas.json");
    beside.is_file().then_some(beside)
}
