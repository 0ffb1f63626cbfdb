//! A file becomes upright pixels with a way to linear light.

mod profile;
mod sniff;

use std::io::Cursor;

use image::{DynamicImage, ExtendedColorType, ImageDecoder, ImageFormat, Limits};

use crate::{Flag, Refusal, RefusalCode};
use profile::Profile;
use sniff::Kind;

/// Largest file that is looked at, bytes.
const MOST_BYTES: usize = 80 * 1024 * 1024;
/// Most pixels that are decoded.
const MOST_PIXELS: u64 = 120_000_000;
/// Longest side that is decoded, pixels.
const LONGEST_SIDE: u32 = 30_000;

/// A decoded photo, the right way up.
pub(crate) struct Upright {
    /// Width, pixels.
    pub width: usize,
    /// Height, pixels.
    pub height: usize,
    /// Code values, red, green, blue by pixel, row by row.
    pub codes: Vec<u8>,
    /// The file's colour space.
    pub profile: Profile,
    /// What was noticed while decoding.
    pub flags: Vec<Flag>,
}

impl Upright {
    /// The code values of a pixel.
    pub fn at(&self, x: usize, y: usize) -> [u8; 3] {
        let i = (y * self.width + x) * 3;
        [self.codes[i], self.codes[i + 1], self.codes[i + 2]]
    }

    /// The linear light, 0 to 1, of a pixel's code values.
    pub fn linear(&self) -> impl Fn([u8; 3]) -> [f32; 3] + use<> {
        let tables = self.profile.linear.map(|channel| channel.map(|v| v as f32));
        move |codes| [0, 1, 2].map(|k| tables[k][usize::from(codes[k])])
    }
}

/// Decodes a JPEG or PNG.
pub(crate) fn decode(bytes: &[u8]) -> Result<Upright, Refusal> {
    if bytes.len() > MOST_BYTES {
        return Err(Refusal::new(
            RefusalCode::TooLarge,
            format!(
                "The file has {} MB; at most 80 MB are read. Save the photo smaller or with more compression.",
                bytes.len() / (1024 * 1024)
            ),
        ));
    }
    let format = match sniff::kind(bytes)? {
        Kind::Jpeg => ImageFormat::Jpeg,
        Kind::Png => ImageFormat::Png,
    };
    let mut reader = image::ImageReader::with_format(Cursor::new(bytes), format);
    // The bounds are checked below, in words, before any pixel is made.
    reader.limits(Limits::no_limits());
    let mut decoder = reader.into_decoder().map_err(damaged)?;
    let (width, height) = decoder.dimensions();
    check_size(width, height)?;
    check_colours(decoder.original_color_type())?;
    let icc = decoder.icc_profile().ok().flatten();
    let orientation = decoder.orientation().map_err(damaged)?;
    let mut picture = DynamicImage::from_decoder(decoder).map_err(damaged)?;
    picture.apply_orientation(orientation);
    let pixels = picture.into_rgb8();
    let (profile, flag) = Profile::from_icc(icc.as_deref());
    Ok(Upright {
        width: pixels.width() as usize,
        height: pixels.height() as usize,
        codes: pixels.into_raw(),
        profile,
        flags: flag.into_iter().collect(),
    })
}

fn check_size(width: u32, height: u32) -> Result<(), Refusal> {
    let pixels = u64::from(width) * u64::from(height);
    if pixels > MOST_PIXELS || width > LONGEST_SIDE || height > LONGEST_SIDE {
        return Err(Refusal::new(
            RefusalCode::TooLarge,
            format!(
                "The picture says it has {width} x {height} pixels; at most 120 million pixels and 30,000 a side are read. Save it smaller."
            ),
        ));
    }
    if width < 64 || height < 64 {
        return Err(Refusal::new(
            RefusalCode::ChartMissing,
            format!(
                "The picture has only {width} x {height} pixels, too few to hold a chart. Use the photo as the camera saved it."
            ),
        ));
    }
    Ok(())
}

fn check_colours(colours: ExtendedColorType) -> Result<(), Refusal> {
    match colours {
        ExtendedColorType::L1
        | ExtendedColorType::L2
        | ExtendedColorType::L4
        | ExtendedColorType::L8
        | ExtendedColorType::L16
        | ExtendedColorType::La8
        | ExtendedColorType::La16 => Err(greyscale()),
        _ => Ok(()),
    }
}

/// The refusal of a picture without colours.
pub(crate) fn greyscale() -> Refusal {
    Refusal::new(
        RefusalCode::GreyscalePhoto,
        "The photo has no colours. Switch off black-and-white and take it again.",
    )
}

fn damaged(why: impl std::fmt::Display) -> Refusal {
    Refusal::new(
        RefusalCode::DamagedFile,
        format!("The file is damaged or was cut short ({why}). Copy it from the camera again."),
    )
}
