//! PNG (ISO/IEC 15948) to pixels.

use crate::text;
use std::io::Cursor;

use image::{ColorType, DynamicImage, ExtendedColorType, ImageDecoder, codecs::png::PngDecoder};

use super::{Stored, check_size, damaged, exif::Exif, greyscale, profile::Profile};
use crate::{Flag, FlagCode, Refusal};

/// Decodes a PNG. Sixteen bits a channel are rounded to eight: a reading is the
/// mean of hundreds of pixels whose grain is wider than a step of eight bits.
pub(super) fn decode(bytes: &[u8]) -> Result<Stored, Refusal> {
    // The bounds are checked in words, before any pixel is made.
    let mut decoder =
        PngDecoder::with_limits(Cursor::new(bytes), image::Limits::no_limits()).map_err(damaged)?;
    let (width, height) = decoder.dimensions();
    check_size(width, height)?;
    if is_grey(decoder.color_type(), decoder.original_color_type()) {
        return Err(greyscale());
    }
    let icc = decoder.icc_profile().ok().flatten();
    let exif = decoder.exif_metadata().ok().flatten();
    let exif = Exif::of(exif.as_deref());
    let picture = DynamicImage::from_decoder(decoder).map_err(damaged)?;
    let codes = picture.into_rgb8().into_raw();
    Ok(Stored {
        width: width as usize,
        height: height as usize,
        codes,
        profile: profile(bytes, icc.as_deref(), &exif),
        orientation: exif.orientation,
    })
}

fn is_grey(decoded: ColorType, original: ExtendedColorType) -> bool {
    use ExtendedColorType::{L1, L2, L4};
    !decoded.has_color() || matches!(original, L1 | L2 | L4)
}

/// The colour space by the chunk that has precedence.
///
/// # Source
/// W3C, Portable Network Graphics (Third Edition): cICP before iCCP before sRGB
/// before gAMA; ITU-T H.273 for the code points of cICP.
fn profile(bytes: &[u8], icc: Option<&[u8]>, exif: &Exif) -> (Profile, Option<Flag>) {
    let chunks = Chunks::of(bytes);
    if let Some(transfer) = chunks.transfer {
        return Profile::of_code_point(transfer);
    }
    if icc.is_some() || chunks.has_icc {
        // A profile that can't even be unpacked is one that can't be used.
        return Profile::of(icc.or(Some(&[])), exif.space);
    }
    match chunks {
        Chunks { is_srgb: true, .. } => (Profile::srgb(), None),
        Chunks {
            gamma: Some(gamma), ..
        } if gamma > 0 => (Profile::power(100_000.0 / f64::from(gamma)), None),
        Chunks { gamma: Some(_), .. } => (
            Profile::srgb(),
            Some(Flag::new(
                FlagCode::ProfileUnusable,
                text::decode::the_photos_gamma_is_0_which_cant(),
            )),
        ),
        _ => Profile::of(None, exif.space),
    }
}

/// What the chunks before the pixels tell of the colour space.
#[derive(Debug, Default, PartialEq, Eq)]
struct Chunks {
    /// Transfer characteristics of cICP.
    transfer: Option<u8>,
    has_icc: bool,
    is_srgb: bool,
    /// Gamma times 100,000.
    gamma: Option<u32>,
}

impl Chunks {
    fn of(bytes: &[u8]) -> Self {
        let mut chunks = Self::default();
        let mut rest = bytes.get(8..).unwrap_or_default();
        while let Some((head, body)) = rest.split_first_chunk::<8>() {
            let length = u32::from_be_bytes([head[0], head[1], head[2], head[3]]) as usize;
            let Some(data) = body.get(..length) else {
                break;
            };
            match (&head[4..], data) {
                (b"IDAT", _) => break,
                (b"cICP", [_, transfer, ..]) => chunks.transfer = Some(*transfer),
                (b"iCCP", _) => chunks.has_icc = true,
                (b"sRGB", _) => chunks.is_srgb = true,
                (b"gAMA", &[a, b, c, d]) => chunks.gamma = Some(u32::from_be_bytes([a, b, c, d])),
                _ => {}
            }
            rest = body.get(length.saturating_add(4)..).unwrap_or_default();
        }
        chunks
    }
}
