//! A file becomes upright pixels with a way to linear light.

mod exif;
mod jpeg;
mod png;
mod profile;
#[cfg(feature = "raw")]
mod raw;
mod sniff;
mod turn;

use crate::text;
use crate::{Flag, Refusal, RefusalCode};
use profile::Profile;
use sniff::Kind;
use turn::Turn;

/// Largest file that is looked at, bytes.
const MOST_BYTES: usize = 80 * 1024 * 1024;
/// Most pixels that are decoded.
const MOST_PIXELS: u64 = 120_000_000;
/// Longest side that is decoded, pixels.
const LONGEST_SIDE: u32 = 30_000;

/// A decoded photo, seen the right way up: its pixels stay as the file has them,
/// and a place is looked up in them, which spares a second copy of the photo.
pub(crate) struct Upright {
    /// Width, pixels.
    pub width: usize,
    /// Height, pixels.
    pub height: usize,
    /// Code values, red, green, blue by pixel, row by row as stored.
    pub codes: Vec<u8>,
    /// The file's colour space.
    pub profile: Profile,
    /// What was noticed while decoding.
    pub flags: Vec<Flag>,
    turn: Turn,
}

impl Upright {
    /// The code values of a pixel.
    pub fn at(&self, x: usize, y: usize) -> [u8; 3] {
        *self.codes[self.turn.index(x, y)..]
            .first_chunk()
            .expect("a pixel has three code values")
    }

    /// Whether the photo is stored on its side: then its columns are quicker to go
    /// along than its rows.
    pub const fn is_sideways(&self) -> bool {
        self.turn.is_sideways()
    }

    /// The green code value of a pixel.
    pub fn green(&self, x: usize, y: usize) -> u8 {
        self.codes[self.turn.index(x, y) + 1]
    }

    /// The linear light, 0 to 1, of a pixel's code values.
    pub fn linear(&self) -> impl Fn([u8; 3]) -> [f32; 3] + use<> {
        let tables = self.profile.linear.map(|channel| channel.map(|v| v as f32));
        move |codes| [0, 1, 2].map(|k| tables[k][usize::from(codes[k])])
    }
}

/// Decodes a JPEG or PNG; a DNG too, with the feature `raw`.
pub(crate) fn decode(bytes: &[u8]) -> Result<Upright, Refusal> {
    if bytes.len() > MOST_BYTES {
        return Err(Refusal::new(
            RefusalCode::TooLarge,
            text::decode::the_file_has_mb_at_most_80(bytes.len() / (1024 * 1024)),
        ));
    }
    let stored = match sniff::kind(bytes)? {
        Kind::Jpeg { end } => jpeg::decode(bytes, end)?,
        Kind::Png => png::decode(bytes)?,
        #[cfg(feature = "raw")]
        Kind::Dng => raw::decode(bytes)?,
    };
    let turn = Turn::new(stored.orientation, stored.width, stored.height);
    let (profile, flag) = stored.profile;
    let (width, height) = turn.upright_size();
    Ok(Upright {
        width,
        height,
        codes: stored.codes,
        profile,
        flags: flag.into_iter().collect(),
        turn,
    })
}

/// A picture as its file has it.
struct Stored {
    width: usize,
    height: usize,
    /// Code values, red, green, blue by pixel, row by row.
    codes: Vec<u8>,
    profile: (Profile, Option<Flag>),
    /// EXIF orientation, 1 to 8.
    orientation: u8,
}

fn check_size(width: u32, height: u32) -> Result<(), Refusal> {
    let pixels = u64::from(width) * u64::from(height);
    if pixels > MOST_PIXELS || width > LONGEST_SIDE || height > LONGEST_SIDE {
        return Err(Refusal::new(
            RefusalCode::TooLarge,
            text::decode::the_picture_says_it_has_x_pixels(width, height),
        ));
    }
    if width < 64 || height < 64 {
        return Err(Refusal::new(
            RefusalCode::ChartMissing,
            text::decode::the_picture_has_only_x_pixels_too(width, height),
        ));
    }
    Ok(())
}

/// The refusal of a picture without colours.
pub(crate) fn greyscale() -> Refusal {
    Refusal::new(
        RefusalCode::GreyscalePhoto,
        text::decode::the_photo_has_no_colours_switch_off(),
    )
}

fn damaged(why: impl std::fmt::Display) -> Refusal {
    Refusal::new(
        RefusalCode::DamagedFile,
        text::decode::the_file_is_damaged_or_was_cut(&why),
    )
}
