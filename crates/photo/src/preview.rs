//! A small upright copy for screens and reports.

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
    let mut pixels = small.into_rgb8();
    if let Some(icc) = icc {
        to_srgb(&icc, &mut pixels);
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
        "No small copy of the photo could be made. Copy it from the camera again.",
    )
}
