//! Why photos don't make a check.

use super::{FEWEST_PHOTOS, FEWEST_PIECES, Shown};
use std::collections::{BTreeMap, BTreeSet};

/// What is wrong with the photos of a set-up check, and how to mend it.
/// Photos are counted from 1 in the order given.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum SetupError {
    /// Too few photos.
    #[error("{}", crate::text::setup::a_set_up_check_compares_at_least(FEWEST_PHOTOS, .0))]
    TooFewPhotos(usize),
    /// Too few pieces that several photos show.
    #[error("{}", crate::text::setup::a_set_up_check_needs_at_least(FEWEST_PIECES, .0))]
    TooFewPieces(usize),
    /// Two photos with the very same values.
    #[error("{}", crate::text::setup::photos_and_give_the_very_same_colours(.0, .1))]
    SamePhoto(usize, usize),
    /// A name stands for two pieces of a photo.
    #[error(
        "{}",
        crate::text::setup::photo_has_two_pieces_named_give(photo, piece)
    )]
    TwicePiece {
        /// Which photo.
        photo: usize,
        /// The name.
        piece: String,
    },
    /// A photo that shows none of the pieces.
    #[error("{}", crate::text::setup::photo_shows_none_of_the_pieces(.0))]
    NothingShared(usize),
    /// Photos fall into groups without a piece in common.
    #[error("{}", crate::text::setup::the_photos_have_too_few_pieces())]
    Apart,
    /// A value that is no plain number.
    #[error("{}", crate::text::setup::a_colour_holds_a_value())]
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
