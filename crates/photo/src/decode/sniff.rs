//! What kind of file the bytes are.

use super::exif;
use crate::text;
use crate::{Refusal, RefusalCode};

/// A kind of picture that is decoded here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    /// ISO/IEC 10918 (JPEG).
    Jpeg {
        /// Where the first picture's end marker lies, bytes from the start.
        end: usize,
    },
    /// ISO/IEC 15948 (PNG).
    Png,
    /// A raw picture in DNG.
    #[cfg(feature = "raw")]
    Dng,
}

/// The kind of the file by its first bytes; a JPEG has to have its end as well.
pub(crate) fn kind(bytes: &[u8]) -> Result<Kind, Refusal> {
    if bytes.is_empty() {
        return Err(Refusal::new(
            RefusalCode::NotAPhoto,
            text::decode::the_file_is_empty_copy(),
        ));
    }
    if bytes.starts_with(&[0xFF, 0xD8, 0xFF]) {
        return check_jpeg(bytes).map(|end| Kind::Jpeg { end });
    }
    if bytes.starts_with(&[0x89, b'P', b'N', b'G', 0x0D, 0x0A, 0x1A, 0x0A]) {
        return Ok(Kind::Png);
    }
    if exif::is_dng(bytes) {
        return dng();
    }
    Err(other(bytes))
}

#[cfg(feature = "raw")]
fn dng() -> Result<Kind, Refusal> {
    Ok(Kind::Dng)
}

#[cfg(not(feature = "raw"))]
fn dng() -> Result<Kind, Refusal> {
    Err(not_built_for_dng())
}

#[cfg_attr(feature = "raw", allow(dead_code))]
fn not_built_for_dng() -> Refusal {
    Refusal::new(
        RefusalCode::NotAPhoto,
        text::decode::the_file_is_a_dng_raw_picture(),
    )
}

/// The refusal of what is neither JPEG nor PNG, by its kind where that is known.
fn other(bytes: &[u8]) -> Refusal {
    let brand = (bytes.get(4..8) == Some(b"ftyp"))
        .then(|| bytes.get(8..12))
        .flatten();
    let kind = match (brand, bytes) {
        (Some(b"heic" | b"heix" | b"hevc" | b"heim" | b"heis" | b"mif1" | b"msf1"), _) => {
            return Refusal::new(
                RefusalCode::HeicUnsupported,
                text::decode::heic_photos_cant_be_read_here_set(),
            );
        }
        (Some(b"avif" | b"avis"), _) => text::decode::an_avif_picture(),
        (Some(_), _) => text::decode::a_film(),
        (
            None,
            [
                b'R',
                b'I',
                b'F',
                b'F',
                _,
                _,
                _,
                _,
                b'W',
                b'E',
                b'B',
                b'P',
                ..,
            ],
        ) => text::decode::a_webp_picture(),
        (None, [b'I', b'I', 0x2A, 0, ..] | [b'M', b'M', 0, 0x2A, ..]) => {
            text::decode::a_tiff_or_raw_picture()
        }
        (None, [b'G', b'I', b'F', b'8', ..]) => text::decode::a_gif_picture(),
        (None, [b'B', b'M', ..]) => text::decode::a_bmp_picture(),
        (None, [b'%', b'P', b'D', b'F', ..]) => text::decode::a_pdf(),
        (None, _) if looks_like_a_page(bytes) => {
            return Refusal::new(
                RefusalCode::NotAPhoto,
                text::decode::the_file_is_a_web_page_whatever(),
            );
        }
        (None, _) => {
            return Refusal::new(
                RefusalCode::NotAPhoto,
                text::decode::the_file_is_neither_a_jpeg_nor(),
            );
        }
    };
    Refusal::new(
        RefusalCode::NotAPhoto,
        text::decode::the_file_is_which_cant_be_read(kind),
    )
}

fn looks_like_a_page(bytes: &[u8]) -> bool {
    let begin = bytes[..bytes.len().min(64)]
        .trim_ascii_start()
        .to_ascii_lowercase();
    begin.starts_with(b"<!doctype") || begin.starts_with(b"<html")
}

fn check_jpeg(bytes: &[u8]) -> Result<usize, Refusal> {
    let outline = Outline::of(bytes);
    if outline.channels == Some(4) {
        return Err(Refusal::new(
            RefusalCode::NotAPhoto,
            text::decode::the_file_holds_printing_inks_cmyk(),
        ));
    }
    if let Some(coding) = outline.unusual() {
        return Err(Refusal::new(
            RefusalCode::NotAPhoto,
            text::decode::the_jpeg_is_coded_in_an_unusual(coding),
        ));
    }
    outline.end.ok_or_else(|| {
        Refusal::new(
            RefusalCode::DamagedFile,
            text::decode::the_jpeg_was_cut_short_its_end(),
        )
    })
}

/// How far away the next 0xFF is.
fn next_marker(bytes: &[u8]) -> Option<usize> {
    const AT_ONCE: usize = 32;
    // Without a way out of the middle, so many bytes are compared in one step.
    let holds = |part: &[u8]| part.iter().fold(false, |any, &b| any | (b == 0xFF));
    let part = bytes.chunks(AT_ONCE).position(holds)? * AT_ONCE;
    let within = bytes[part..].iter().position(|&b| b == 0xFF)?;
    Some(part + within)
}

/// What the segments of a JPEG's first picture tell.
///
/// They are walked, not searched: a thumbnail before the picture and a film
/// behind it hold markers of their own.
///
/// # Source
/// ISO/IEC 10918-1, annex B.
#[derive(Default)]
struct Outline {
    /// Where the end-of-image marker lies. Decoders fill what is missing with
    /// grey, so its absence is the sure sign of a file cut short.
    end: Option<usize>,
    /// Colour channels of the frame.
    channels: Option<u8>,
    /// The marker of the frame, which tells its coding.
    frame: Option<u8>,
    /// Bits of a sample.
    bits: Option<u8>,
}

impl Outline {
    fn of(bytes: &[u8]) -> Self {
        let mut outline = Self::default();
        let mut at = 2;
        // Stray bytes before a marker are passed over, as decoders do.
        while let Some(step) = bytes.get(at..).and_then(next_marker) {
            at += step + 1;
            match bytes.get(at) {
                Some(0xD9) => {
                    outline.end = Some(at - 1);
                    break;
                }
                // Fill: the marker is yet to come.
                Some(0xFF) => {}
                // Stuffing inside a scan, and markers without a segment.
                Some(0x00 | 0x01 | 0xD0..=0xD8) => at += 1,
                // Behind the header of a scan its data follow; they hold no marker.
                Some(&marker) => {
                    let Some(&[high, low]) = bytes.get(at + 1..at + 3) else {
                        break;
                    };
                    let frame =
                        matches!(marker, 0xC0..=0xCF) && !matches!(marker, 0xC4 | 0xC8 | 0xCC);
                    if frame && outline.frame.is_none() {
                        outline.frame = Some(marker);
                        outline.bits = bytes.get(at + 3).copied();
                        outline.channels = bytes.get(at + 8).copied();
                    }
                    at += 1 + usize::from(u16::from_be_bytes([high, low])).max(2);
                }
                None => break,
            }
        }
        outline
    }

    /// The coding, where it is none of those that cameras use.
    fn unusual(&self) -> Option<&'static str> {
        match (self.frame?, self.bits) {
            (0xC0..=0xC2, Some(8)) => None,
            (0xC0..=0xC2, _) => Some(text::decode::more_than_8_bits_a_sample()),
            (0xC9..=0xCF, _) => Some(text::decode::arithmetic_coding()),
            (0xC3 | 0xC7, _) => Some("lossless"),
            _ => Some(text::decode::in_layers()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ended(bytes: &[u8]) -> bool {
        Outline::of(bytes).end.is_some()
    }

    /// A JPEG's bare bones: a segment that holds a thumbnail with an end of its
    /// own, a scan with stuffing and a restart marker, then `tail`.
    fn bones(tail: &[u8]) -> Vec<u8> {
        let mut bytes = vec![0xFF, 0xD8, 0xFF, 0xE1, 0x00, 0x06, 0xFF, 0xD8, 0xFF, 0xD9];
        bytes.extend([
            0xFF, 0xDA, 0x00, 0x03, 0x01, 0x12, 0xFF, 0x00, 0x34, 0xFF, 0xD3, 0x56,
        ]);
        bytes.extend(tail);
        bytes
    }

    #[test]
    fn a_thumbnails_end_is_not_the_pictures() {
        assert!(!ended(&bones(&[])));
        assert!(!ended(&bones(&[0; 5000])), "a tail of zeros");
        assert!(ended(&bones(&[0xFF, 0xD9])));
    }

    #[test]
    fn a_film_behind_the_picture_does_no_harm() {
        assert!(ended(&bones(&[0xFF, 0xD9, 0x00, 0xFF, 0xDA, 0x17, 0xFF])));
    }

    #[test]
    fn other_kinds_are_named() {
        for (bytes, word) in [
            (&b"RIFF\x10\0\0\0WEBPVP8 "[..], "WebP"),
            (b"II\x2a\0\x08\0\0\0", "TIFF"),
            (b"MM\0\x2a\0\0\0\x08", "TIFF"),
            (b"\0\0\0\x1cftypavif\0\0\0\0", "AVIF"),
            (b"\0\0\0\x1cftypmp42\0\0\0\0", "film"),
            (b"GIF89a", "GIF"),
            (b"%PDF-1.7", "PDF"),
            (b"\n <!DOCTYPE html><html>", "web page"),
            (b"words", "neither"),
        ] {
            let refusal = kind(bytes).unwrap_err();
            assert_eq!(refusal.code, RefusalCode::NotAPhoto, "{word}");
            assert!(refusal.message.contains(word), "{refusal}");
        }
        let heic = kind(b"\0\0\0\x1cftypheic\0\0\0\0").unwrap_err();
        assert_eq!(heic.code, RefusalCode::HeicUnsupported);
    }

    /// A TIFF with one tag, DNGVersion.
    const DNG: &[u8] = b"II\x2a\0\x08\0\0\0\x01\0\x12\xC6\x01\0\x04\0\0\0\x01\x04\0\0\0\0\0\0";

    #[cfg(not(feature = "raw"))]
    #[test]
    fn a_dng_says_what_would_read_it() {
        let refusal = kind(DNG).unwrap_err();
        assert_eq!(refusal.code, RefusalCode::NotAPhoto);
        for part in ["DNG", "--features raw", "JPEG"] {
            assert!(refusal.message.contains(part), "{refusal}");
        }
    }

    #[cfg(feature = "raw")]
    #[test]
    fn a_dng_is_told_from_other_tiffs() {
        assert_eq!(kind(DNG), Ok(Kind::Dng));
    }

    #[test]
    fn codings_that_no_camera_uses_are_named() {
        for (marker, bits, word) in [
            (0xC9, 8, "arithmetic"),
            (0xC3, 8, "lossless"),
            (0xC1, 12, "8 bits"),
        ] {
            let mut file = vec![
                0xFF, 0xD8, 0xFF, marker, 0, 11, bits, 0, 90, 0, 90, 3, 1, 0x11, 0,
            ];
            file.extend([0xFF, 0xD9]);
            let refusal = kind(&file).unwrap_err();
            assert!(refusal.message.contains(word), "{refusal}");
        }
    }

    #[test]
    fn every_beginning_of_it_is_cut_short() {
        let whole = bones(&[0xFF, 0xD9]);
        for end in 2..whole.len() {
            assert!(!ended(&whole[..end]), "{end}");
        }
    }
}
