//! What kind of file the bytes are.

use crate::{Refusal, RefusalCode};

/// A kind of picture that is decoded here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    /// ISO/IEC 10918 (JPEG).
    Jpeg,
    /// ISO/IEC 15948 (PNG).
    Png,
}

/// Brands of the HEIF family in an ISO base media file.
const HEIF_BRANDS: [&[u8]; 8] = [
    b"heic", b"heix", b"hevc", b"heim", b"heis", b"mif1", b"msf1", b"avif",
];

/// The kind of the file by its first bytes; a JPEG has to have its end as well.
pub(crate) fn kind(bytes: &[u8]) -> Result<Kind, Refusal> {
    if bytes.is_empty() {
        return Err(Refusal::new(
            RefusalCode::NotAPhoto,
            "The file is empty. Copy it from the camera again.",
        ));
    }
    if bytes.starts_with(&[0xFF, 0xD8, 0xFF]) {
        return check_jpeg(bytes).map(|()| Kind::Jpeg);
    }
    if bytes.starts_with(&[0x89, b'P', b'N', b'G', 0x0D, 0x0A, 0x1A, 0x0A]) {
        return Ok(Kind::Png);
    }
    if bytes.len() >= 12 && &bytes[4..8] == b"ftyp" && HEIF_BRANDS.contains(&&bytes[8..12]) {
        return Err(Refusal::new(
            RefusalCode::HeicUnsupported,
            "HEIC photos can't be read here. Set the camera to JPEG (\"most compatible\") or save the photo as JPEG.",
        ));
    }
    Err(Refusal::new(
        RefusalCode::NotAPhoto,
        "The file is neither a JPEG nor a PNG photo, whatever its name says. Choose the photo as the camera saved it.",
    ))
}

fn check_jpeg(bytes: &[u8]) -> Result<(), Refusal> {
    let outline = Outline::of(bytes);
    if outline.channels == Some(4) {
        return Err(Refusal::new(
            RefusalCode::NotAPhoto,
            "The file holds printing inks (CMYK), no camera's colours. Use the photo as the camera saved it.",
        ));
    }
    if !outline.ended {
        return Err(Refusal::new(
            RefusalCode::DamagedFile,
            "The JPEG was cut short: its end is missing. Copy it from the camera again.",
        ));
    }
    Ok(())
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
    /// Whether the end-of-image marker is there. Decoders fill what is missing
    /// with grey, so this is the only sure sign of a file cut short.
    ended: bool,
    /// Colour channels of the frame.
    channels: Option<u8>,
}

impl Outline {
    fn of(bytes: &[u8]) -> Self {
        let mut outline = Self::default();
        let mut at = 2;
        // Stray bytes before a marker are passed over, as decoders do.
        while let Some(step) = bytes
            .get(at..)
            .and_then(|rest| rest.iter().position(|&b| b == 0xFF))
        {
            at += step + 1;
            match bytes.get(at) {
                Some(0xD9) => {
                    outline.ended = true;
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
                    if frame && outline.channels.is_none() {
                        outline.channels = bytes.get(at + 8).copied();
                    }
                    at += 1 + usize::from(u16::from_be_bytes([high, low])).max(2);
                }
                None => break,
            }
        }
        outline
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ended(bytes: &[u8]) -> bool {
        Outline::of(bytes).ended
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
    fn every_beginning_of_it_is_cut_short() {
        let whole = bones(&[0xFF, 0xD9]);
        for end in 2..whole.len() {
            assert!(!ended(&whole[..end]), "{end}");
        }
    }
}
