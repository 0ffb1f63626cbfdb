//! A small upright copy for screens and reports.

use crate::text;
use image::{
    DynamicImage, ExtendedColorType, ImageBuffer, Rgb, codecs::jpeg::JpegEncoder,
    imageops::FilterType,
};
use moxcms::{ColorProfile, Layout, TransformOptions};

use crate::{Refusal, RefusalCode, decode};

/// The photo as an upright sRGB JPEG whose longer side has at most `longest_px`.
///
/// # Errors
/// As for [`crate::survey`], but a chart is not looked for.
pub fn preview(bytes: &[u8], longest_px: u32) -> Result<Vec<u8>, Refusal> {
    let upright = decode::decode(bytes)?;
    let (width, height) = (upright.width as u32, upright.height as u32);
    let full = ImageBuffer::from_fn(
        width,
        height,
        |x, y| Rgb(upright.at(x as usize, y as usize)),
    );
    let icc = upright.profile.icc;
    let picture = DynamicImage::ImageRgb8(full);
    let small = if width.max(height) > longest_px {
        picture.resize(longest_px, longest_px, FilterType::Triangle)
    } else {
        picture
    };
    encoded(small.into_rgb8(), icc.as_ref())
}

/// A photo at full size in squares, for a magnifying glass that needs few of them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tiles {
    /// Squares from left to right.
    pub columns: u32,
    /// Squares from top to bottom.
    pub rows: u32,
    /// Upright sRGB JPEGs, row by row; those at the right and lower edge are smaller.
    pub jpegs: Vec<Vec<u8>>,
}

impl Tiles {
    /// Side of a square, pixels.
    pub const SIDE_PX: u32 = 512;
}

/// Cuts the upright photo into squares.
///
/// # Errors
/// As for [`preview`].
pub fn tiles(bytes: &[u8]) -> Result<Tiles, Refusal> {
    let upright = decode::decode(bytes)?;
    let (width, height) = (upright.width as u32, upright.height as u32);
    let side = Tiles::SIDE_PX;
    let (columns, rows) = (width.div_ceil(side), height.div_ceil(side));
    let cut = |tile: u32| {
        let (left, top) = (tile % columns * side, tile / columns * side);
        let pixels =
            ImageBuffer::from_fn(side.min(width - left), side.min(height - top), |x, y| {
                Rgb(upright.at((left + x) as usize, (top + y) as usize))
            });
        encoded(pixels, upright.profile.icc.as_ref())
    };
    Ok(Tiles {
        columns,
        rows,
        jpegs: (0..columns * rows).map(cut).collect::<Result<_, _>>()?,
    })
}

/// Pixels as an sRGB JPEG.
fn encoded(
    mut pixels: ImageBuffer<Rgb<u8>, Vec<u8>>,
    icc: Option<&ColorProfile>,
) -> Result<Vec<u8>, Refusal> {
    if let Some(icc) = icc {
        to_srgb(icc, &mut pixels);
    }
    let mut jpeg = Vec::new();
    JpegEncoder::new_with_quality(&mut jpeg, 82)
        .encode(
            pixels.as_raw(),
            pixels.width(),
            pixels.height(),
            ExtendedColorType::Rgb8,
        )
        .map_err(|_| unwritten())?;
    Ok(jpeg)
}

/// Converts in place; a profile without a way to sRGB leaves the pixels as they are.
fn to_srgb(icc: &ColorProfile, pixels: &mut ImageBuffer<Rgb<u8>, Vec<u8>>) {
    let srgb = ColorProfile::new_srgb();
    let made =
        icc.create_transform_8bit(Layout::Rgb, &srgb, Layout::Rgb, TransformOptions::default());
    let Ok(transform) = made else { return };
    let mut converted = vec![0; pixels.len()];
    if transform.transform(pixels.as_raw(), &mut converted).is_ok() {
        pixels.copy_from_slice(&converted);
    }
}

fn unwritten() -> Refusal {
    Refusal::new(
        RefusalCode::DamagedFile,
        text::preview::no_small_copy_of_the_photo_could(),
    )
}
