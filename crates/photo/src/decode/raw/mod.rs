//! DNG to pixels: what the sensor counted, with no camera's processing.
//!
//! # Source
//! Adobe, Digital Negative Specification 1.4 and later; TIFF 6.0; TIFF/EP
//! (ISO 12234-2) for the colour filters.

mod cells;
mod frame;
mod levels;
mod lossless;
mod segments;
mod tags;
#[cfg(test)]
mod tests;

use super::{Stored, check_size, damaged, exif::Exif, greyscale, profile::Profile};
use crate::text;
use crate::{Refusal, RefusalCode};
use frame::Frame;
use levels::Levels;
use segments::Samples;
use tags::Directory;

/// Colour filters over single sensor sites.
const FILTERED: usize = 32_803;
/// Three linear channels a pixel.
const LINEAR: usize = 34_892;

/// Decodes the largest whole raw picture of a DNG.
///
/// A picture behind colour filters is halved: each cell of two by two sites
/// becomes one pixel, with the mean of its two greens. Nothing is guessed
/// between sites, as finer ways of doing it do; that would only matter at edges,
/// and here areas are measured. It also leaves each pixel's grain its own.
///
/// Levels are linear from black to saturation and evened by the white balance
/// that the camera chose, the most amplified channel kept at its own scale, so
/// that no channel is cut off. A channel of a pixel has the code 255 where a
/// sample of it is saturated in the raw data, and only there.
///
/// Eight bits along the curve of sRGB hold the rest: their steps are up to 9 %
/// in dark patches, so the rounding is handed on from pixel to pixel in linear light
/// and the mean over an area keeps what the sensor said.
///
/// Lens corrections in the file (opcodes, gain maps) and differences of black
/// by row and column are not applied: the light field takes up what is smooth.
pub(super) fn decode(bytes: &[u8]) -> Result<Stored, Refusal> {
    let directories = tags::directories(bytes)?;
    let first = directories
        .first()
        .ok_or_else(|| wrong(text::decode::it_has_no_directory()))?;
    let raw = largest(&directories)?;
    let (width, height) = size(raw)?;
    check_size(width as u32, height as u32)?;
    let is_filtered = photometric(raw)? == FILTERED;
    let channels = raw.whole(277, if is_filtered { 1 } else { 3 })?;
    match (is_filtered, channels) {
        (true, 1) | (false, 3) => {}
        (false, 1) => return Err(greyscale()),
        _ => return Err(unreadable(&text::decode::with_samples_a_pixel(channels))),
    }
    let frame = Frame::of(raw, width, height)?;
    let cells = if is_filtered {
        Some(cells::Filters::of(raw)?)
    } else {
        None
    };
    let (out_width, out_height) = cells::size(cells.as_ref(), &frame);
    check_size(out_width as u32, out_height as u32)?;
    let samples = Samples::read(raw, width, height, channels)?;
    let levels = Levels::of(raw, &samples)?;
    let light = cells::Light::new(&samples, &levels, &frame, cells);
    let balance = levels::balance(first, &light)?;
    Ok(Stored {
        width: out_width,
        height: out_height,
        codes: light.codes(balance),
        profile: (Profile::srgb(), None),
        orientation: Exif::of(Some(bytes)).orientation,
    })
}

fn photometric(directory: &Directory<'_>) -> Result<usize, Refusal> {
    directory.whole(262, 0)
}

/// Width and height of a directory's picture, pixels.
fn size(directory: &Directory<'_>) -> Result<(usize, usize), Refusal> {
    // Beyond what a side may have, the exact number is of no account.
    let most = u32::MAX as usize;
    Ok((
        directory.whole(256, 0)?.min(most),
        directory.whole(257, 0)?.min(most),
    ))
}

/// The raw picture with the most pixels, reduced copies last.
fn largest<'d, 'f>(directories: &'d [Directory<'f>]) -> Result<&'d Directory<'f>, Refusal> {
    let mut best = None;
    for directory in directories {
        if !matches!(photometric(directory)?, FILTERED | LINEAR) {
            continue;
        }
        let (width, height) = size(directory)?;
        let is_whole = directory.whole(254, 0)? == 0;
        let rank = (is_whole, width.saturating_mul(height));
        if best.as_ref().is_none_or(|&(other, _)| rank > other) {
            best = Some((rank, directory));
        }
    }
    best.map(|(_, directory)| directory)
        .ok_or_else(|| unreadable(text::decode::that_holds_no_raw_picture()))
}

/// The refusal of a DNG that is not what its tags say.
fn wrong(why: impl std::fmt::Display) -> Refusal {
    damaged(text::decode::in_this_dng(&why))
}

/// The refusal of a sound DNG of an unusual kind.
fn unreadable(kind: &str) -> Refusal {
    Refusal::new(
        RefusalCode::NotAPhoto,
        text::decode::the_file_is_a_dng_which_cant(kind),
    )
}
