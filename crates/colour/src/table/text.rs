//! Text from the bytes of a file, in the encodings that spreadsheets write.

use super::TableError;
use std::borrow::Cow;

/// The text in a file: UTF-8, UTF-16 with its mark, or else Latin-1.
///
/// # Errors
/// Bytes that are no text.
pub fn text(bytes: &[u8]) -> Result<Cow<'_, str>, TableError> {
    match bytes {
        [0xff, 0xfe, rest @ ..] => utf16(rest, u16::from_le_bytes).map(Cow::Owned),
        [0xfe, 0xff, rest @ ..] => utf16(rest, u16::from_be_bytes).map(Cow::Owned),
        _ if bytes.contains(&0) => Err(TableError::NotText),
        _ => Ok(match std::str::from_utf8(bytes) {
            Ok(text) => Cow::Borrowed(text),
            // Latin-1 gives every byte the character of its number.
            Err(_) => Cow::Owned(bytes.iter().copied().map(char::from).collect()),
        }),
    }
}

fn utf16(bytes: &[u8], unit: fn([u8; 2]) -> u16) -> Result<String, TableError> {
    let (pairs, []) = bytes.as_chunks::<2>() else {
        return Err(TableError::NotText);
    };
    let units: Vec<u16> = pairs.iter().copied().map(unit).collect();
    String::from_utf16(&units).map_err(|_| TableError::NotText)
}

/// Lines that end with CR, LF or both.
pub(super) fn lines(text: &str) -> impl Iterator<Item = &str> {
    let text_lines = text.split('\n');
    text_lines.flat_map(|line| line.strip_suffix('\r').unwrap_or(line).split('\r'))
}
