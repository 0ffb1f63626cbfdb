//! Why photos don't make a check.

use super::{FEWEST_PHOTOS, FEWEST_PIECES, Shown};
use std::collections::{BTreeMap, BTreeSet};

/// What is wrong with the photos of a set-up check, and how to mend it.
/// Photos are counted from 1 in the order given.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum SetupError {
    /// Too few photos.
    #[error(
        "A set-up check compares at least {FEWEST_PHOTOS} photos of the same pieces, and {0} came. Lay the pieces anew and take more; five show it well."
    )]
    TooFewPhotos(usize),
    /// Too few pieces that several photos show.
    #[error(
        "A set-up check needs at least {FEWEST_PIECES} pieces that are on two photos or more, and {0} came. Give each piece the same name on every photo, and lay six or so beside the chart."
    )]
    TooFewPieces(usize),
    /// Two photos with the very same values.
    #[error(
        "Photos {0} and {1} give the very same colours, so they are one photo. Leave one out, lay the pieces anew and take another."
    )]
    SamePhoto(usize, usize),
    /// A name stands for two pieces of a photo.
    #[error("Photo {photo} has two pieces named \"{piece}\". Give each piece a name of its own.")]
    TwicePiece {
        /// Which photo.
        photo: usize,
        /// The name.
        piece: String,
    },
    /// A photo that shows none of the pieces.
    #[error(
        "Photo {0} shows none of the pieces that other photos show. Mark them there under the same names, or leave the photo out."
    )]
    NothingShared(usize),
    /// Photos fall into groups without a piece in common.
    #[error(
        "The photos have too few pieces in common to be compared. Lay the same pieces on all of them."
    )]
    Apart,
    /// A value that is no plain number.
    #[error("A colour holds a value that is not a number. Read the photos again.")]
    NotFinite,
}

pub(super) fn refuse_unsound(photos: &[Vec<Shown>]) -> Result<(), SetupError> {
    if photos.len() < FEWEST_PHOTOS {
        return Err(SetupError::TooFewPhotos(photos.len()));
    }
    for (i, shown) in photos.iter().enumerate() {
        let mut names = BTreeSet::new();
        for piece in shown {
            let texture = piece.texture.iter().flatten().flatten();
            if !piece
                .lab
                .to_array()
                .iter()
                .chain(texture)
                .all(|v| v.is_finite())
            {
                return Err(SetupError::NotFinite);
            }
            if !names.insert(&piece.piece) {
                return Err(SetupError::TwicePiece {
                    photo: i + 1,
                    piece: piece.piece.clone(),
                });
            }
        }
        for (j, other) in photos[..i].iter().enumerate() {
            if same(shown, other) {
                return Err(SetupError::SamePhoto(j + 1, i + 1));
            }
        }
    }
    Ok(())
}

/// Whether two photos share pieces and agree in all of them to the last digit,
/// which no second shot does.
fn same(one: &[Shown], two: &[Shown]) -> bool {
    let mut shared = one
        .iter()
        .filter_map(|a| Some((a, two.iter().find(|b| b.piece == a.piece)?)))
        .peekable();
    shared.peek().is_some() && shared.all(|(a, b)| a.lab == b.lab)
}

pub(super) fn refuse_too_few(
    photos: &[Vec<Shown>],
    seen: &BTreeMap<&str, Vec<(usize, &Shown)>>,
) -> Result<(), SetupError> {
    if seen.len() < FEWEST_PIECES {
        return Err(SetupError::TooFewPieces(seen.len()));
    }
    for (i, shown) in photos.iter().enumerate() {
        if !shown.iter().any(|piece| seen.contains_key(&*piece.piece)) {
            return Err(SetupError::NothingShared(i + 1));
        }
    }
    Ok(())
}
