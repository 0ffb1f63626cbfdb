//! Where a bench lives on this machine.

use crate::text;
use std::path::PathBuf;

use directories::ProjectDirs;

use crate::outcome::Stop;

/// The folder of the person's own bench, or the one asked for.
pub fn own(asked: Option<PathBuf>) -> Result<PathBuf, Stop> {
    asked.map_or_else(|| data_folder("bench"), Ok)
}

/// The demo's folder: apart from the person's own trials.
pub fn demo(asked: Option<PathBuf>) -> Result<PathBuf, Stop> {
    asked.map_or_else(|| data_folder("demo"), Ok)
}

fn data_folder(name: &str) -> Result<PathBuf, Stop> {
    ProjectDirs::from("", "", "woadstone")
        .map(|dirs| dirs.data_dir().join(name))
        .ok_or_else(|| Stop::refused(text::home::this_account_has_no_home_folder_say()))
}
