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
        return if has_end(bytes) {
            Ok(Kind::Jpeg)
        } else {
            Err(Refusal::new(
                RefusalCode::DamagedFile,
                "The JPEG was cut short: its end is missing. Copy it from the camera again.",
            ))
        };
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

/// Whether an end-of-image marker follows the last scan. Decoders fill what is
/// missing with grey, so this is the only sure sign of a file cut short.
fn has_end(bytes: &[u8]) -> bool {
    let last = |marker: u8| bytes.windows(2).rposition(|pair| pair == [0xFF, marker]);
    match (last(0xDA), last(0xD9)) {
        (Some(scan), Some(end)) => end > scan,
        _ => false,
    }
}
