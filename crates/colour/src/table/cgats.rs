//! CGATS text: keywords, the names of the columns, the data.

use super::{
    MOST_SAMPLES, TableError,
    text::lines,
    written::{Cell, Written},
};
use crate::text;

/// Whether a text has the marks of CGATS.
pub(super) fn is_cgats(text: &str) -> bool {
    lines(text)
        .any(|line| word(line).is_some_and(|w| w == "BEGIN_DATA" || w == "BEGIN_DATA_FORMAT"))
}

/// The first word of a line in capitals.
fn word(line: &str) -> Option<String> {
    Some(line.split_whitespace().next()?.to_ascii_uppercase())
}

/// Where in the file a line stands.
#[derive(PartialEq)]
enum Part {
    Preamble,
    Format,
    Data,
}

/// Every table of the file that has data, and what was noticed.
///
/// Keywords hold on into later tables, as the files' writers mean them.
pub(super) fn tables(text: &str) -> Result<(Vec<Written>, Vec<String>), TableError> {
    let mut notes = Vec::new();
    let mut tables: Vec<Written> = Vec::new();
    let mut table = Written::default();
    let mut announced = None;
    let mut part = Part::Preamble;
    let mut open = Vec::new();
    for (i, line) in lines(text).enumerate() {
        let number = i + 1;
        let line = match comment_start(line) {
            Some(at) => {
                table.said.comment(&line[at + 1..], number)?;
                &line[..at]
            }
            None => line,
        };
        let Some(first) = word(line) else { continue };
        match (&part, first.as_str()) {
            (Part::Preamble, "BEGIN_DATA_FORMAT") => {
                part = Part::Format;
                table.names.clear();
                table.line = number;
                // Some writers put the names on this very line.
                table.names.extend(words(line).skip(1));
            }
            (Part::Format, "END_DATA_FORMAT") => part = Part::Preamble,
            (Part::Format, _) => table.names.extend(words(line)),
            (Part::Preamble, "BEGIN_DATA") => {
                if table.names.is_empty() {
                    return Err(TableError::NoFormat { line: number });
                }
                part = Part::Data;
            }
            (Part::Data, "END_DATA") => {
                part = Part::Preamble;
                close(&table, &open)?;
                count(&table, announced.take(), &mut notes);
                let said = table.said.clone();
                let names = table.names.clone();
                tables.push(std::mem::take(&mut table));
                // A later table may go without a format of its own.
                table.said = said;
                table.names = names;
            }
            (Part::Data, _) => data(&mut table, &mut open, line, number)?,
            (Part::Preamble, "NUMBER_OF_SETS") => {
                announced = words(line).nth(1).and_then(|n| n.parse::<usize>().ok());
            }
            (Part::Preamble, _) => {
                let value = line
                    .trim_start()
                    .split_once(char::is_whitespace)
                    .map_or("", |(_, v)| v);
                table.said.keyword(&first, value, number)?;
            }
        }
    }
    let line = table.line;
    if part == Part::Data {
        close(&table, &open)?;
        if let Some(expected) = announced.filter(|n| *n > table.rows.len()) {
            return Err(TableError::CutOff {
                found: table.rows.len(),
                expected,
            });
        }
        notes.push(text::table::the_file_has_no_end_data_see().into());
        tables.push(table);
    }
    if tables.is_empty() {
        return Err(TableError::NoSamples { line });
    }
    Ok((tables, notes))
}

/// A set of values usually fills a line; it may also go on over several.
fn data(
    table: &mut Written,
    open: &mut Vec<Cell>,
    line: &str,
    number: usize,
) -> Result<(), TableError> {
    let expected = table.names.len();
    let mut cells: Vec<String> = words(line).collect();
    if cells.len() != expected && line.contains('\t') {
        // Names with spaces stand unquoted where tabs part the values.
        let parted: Vec<String> = line
            .trim_end_matches('\t')
            .split('\t')
            .map(|c| c.trim().trim_matches('"').to_owned())
            .collect();
        if parted.len() == expected {
            cells = parted;
        }
    }
    open.extend(cells.into_iter().map(|text| Cell { text, line: number }));
    if open.len() > expected {
        return Err(TableError::RowLength {
            line: number,
            found: open.len(),
            expected,
        });
    }
    if open.len() == expected {
        if table.rows.len() == MOST_SAMPLES {
            return Err(TableError::TooMany);
        }
        table.rows.push(std::mem::take(open));
    }
    Ok(())
}

/// Nothing may be left of a set at the end of the data.
fn close(table: &Written, open: &[Cell]) -> Result<(), TableError> {
    match open.first() {
        None => Ok(()),
        Some(cell) => Err(TableError::RowLength {
            line: cell.line,
            found: open.len(),
            expected: table.names.len(),
        }),
    }
}

fn count(table: &Written, announced: Option<usize>, notes: &mut Vec<String>) {
    if let Some(expected) = announced.filter(|n| *n != table.rows.len()) {
        notes.push(text::table::the_file_announces_samples_and_holds(
            expected,
            table.rows.len(),
        ));
    }
}

/// Where a comment begins: at a `#` outside quotes that no letter touches from the left.
fn comment_start(line: &str) -> Option<usize> {
    let mut quoted = false;
    let mut before = ' ';
    for (i, c) in line.char_indices() {
        match c {
            '"' => quoted = !quoted,
            '#' if !quoted && before.is_whitespace() => return Some(i),
            _ => {}
        }
        before = c;
    }
    None
}

/// The words of a line; quotes hold spaces together.
fn words(line: &str) -> impl Iterator<Item = String> {
    let mut rest = line.trim();
    std::iter::from_fn(move || {
        rest = rest.trim_start();
        if rest.is_empty() {
            return None;
        }
        let (found, after) = match rest.strip_prefix('"') {
            Some(quoted) => quoted.split_once('"').unwrap_or((quoted, "")),
            None => rest.split_at(rest.find(char::is_whitespace).unwrap_or(rest.len())),
        };
        rest = after;
        Some(found.trim().to_owned())
    })
}
