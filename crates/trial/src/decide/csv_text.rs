//! CSV as people save it: any separator, a byte-order mark, columns in any order.

use super::DecideError;
use std::io::Read;

/// The whole of a file as text without its byte-order mark.
pub(crate) fn text(mut input: impl Read) -> Result<String, DecideError> {
    let mut text = String::new();
    input
        .read_to_string(&mut text)
        .map_err(|error| match error.kind() {
            std::io::ErrorKind::InvalidData => {
                DecideError::Unreadable("it is not UTF-8 text; save it as CSV in UTF-8".into())
            }
            _ => DecideError::Unreadable(error.to_string()),
        })?;
    Ok(match text.strip_prefix('\u{feff}') {
        Some(rest) => rest.to_owned(),
        None => text,
    })
}

/// Rows of the text, fields without white space around them.
pub(crate) fn reader(text: &str) -> csv::Reader<&[u8]> {
    csv::ReaderBuilder::new()
        .delimiter(separator(text))
        .trim(csv::Trim::All)
        .flexible(true)
        .from_reader(text.as_bytes())
}

/// Whatever parts the first line most often.
pub(crate) fn separator(text: &str) -> u8 {
    let first = text.lines().find(|line| !line.trim().is_empty());
    let count = |c: char| first.map_or(0, |line| line.matches(c).count());
    if count(';') > count(',') {
        b';'
    } else if count('\t') > count(',') {
        b'\t'
    } else {
        b','
    }
}

/// Where each column stands, whatever its case.
pub(crate) fn places<const N: usize>(
    header: &csv::StringRecord,
    columns: [&'static str; N],
) -> Result<[usize; N], DecideError> {
    let mut places = [0; N];
    for (place, column) in places.iter_mut().zip(columns) {
        let mut found = header
            .iter()
            .enumerate()
            .filter(|(_, name)| name.eq_ignore_ascii_case(column));
        *place = match found.next() {
            Some((i, _)) => i,
            None => {
                return Err(DecideError::ColumnMissing {
                    column: column.into(),
                    columns: columns.join(", "),
                });
            }
        };
        if found.next().is_some() {
            return Err(DecideError::ColumnTwice(column.into()));
        }
    }
    Ok(places)
}

pub(crate) fn unreadable(error: csv::Error) -> DecideError {
    DecideError::Unreadable(error.to_string())
}
