//! CSV as people save it: any separator, a byte-order mark, columns in any order.

use super::DecideError;
use crate::text;
use std::io::Read;

/// The whole of a file as text without its byte-order mark.
pub(crate) fn text(mut input: impl Read) -> Result<String, DecideError> {
    let mut text = String::new();
    input
        .read_to_string(&mut text)
        .map_err(|error| match error.kind() {
            std::io::ErrorKind::InvalidData => {
                DecideError::Unreadable(text::decide::it_is_not_utf_8_text_save().into())
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

/// Hands on every row that isn't blank with its number, from 1; what is wrong with it is said of it.
pub(crate) fn each_row(
    reader: &mut csv::Reader<&[u8]>,
    mut take: impl FnMut(usize, &csv::StringRecord) -> Result<(), String>,
) -> Result<(), DecideError> {
    let mut number = 0;
    let mut record = csv::StringRecord::new();
    while reader.read_record(&mut record).map_err(unreadable)? {
        if record.iter().all(str::is_empty) {
            continue;
        }
        number += 1;
        take(number, &record).map_err(|message| DecideError::Row {
            row: number,
            message,
        })?;
    }
    Ok(())
}

/// The fields of a row by the number of their column.
pub(crate) struct Fields<'a, const N: usize> {
    pub record: &'a csv::StringRecord,
    pub places: &'a [usize; N],
    pub columns: [&'static str; N],
}

impl<'a, const N: usize> Fields<'a, N> {
    /// What is written; nothing where the row is too short.
    pub(crate) fn text(&self, column: usize) -> &'a str {
        self.record.get(self.places[column]).unwrap_or("")
    }

    /// What may be left empty.
    pub(crate) fn optional(&self, column: usize) -> Option<String> {
        let text = self.text(column);
        (!text.is_empty()).then(|| text.to_owned())
    }

    /// What has to be there.
    pub(crate) fn named(&self, column: usize) -> Result<String, String> {
        let empty = || text::decide::the_is_empty(self.columns[column]);
        self.optional(column).ok_or_else(empty)
    }

    /// How many rounds.
    pub(crate) fn stage(&self, column: usize) -> Result<u32, String> {
        let text = self.text(column);
        text.parse()
            .map_err(|_| text::decide::the_stage_is_write_how_many_rounds(text))
    }
}

pub(crate) fn unreadable(error: csv::Error) -> DecideError {
    DecideError::Unreadable(error.to_string())
}
