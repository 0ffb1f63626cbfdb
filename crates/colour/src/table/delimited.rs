//! CSV, whatever parts its cells, with a sample a row or a sample a column.

use super::{
    MOST_SAMPLES, TableError,
    column::{Meaning, WAVELENGTHS_NM, meaning, wavelength_nm},
    said::Said,
    text::lines,
    written::{Cell, Written},
};

/// Lines above the column names that instruments write, at most.
const MOST_ABOVE: usize = 80;
/// Wavelengths that make a spectrum's column names.
const FEWEST_WAVELENGTHS: usize = 6;

/// A record with its line, from 1.
struct Record {
    line: usize,
    cells: Vec<String>,
}

/// The table in a text, parted by whichever separator gives columns with colours.
pub(super) fn table(text: &str) -> Result<Written, TableError> {
    let (plain, said) = without_comments(text)?;
    for separator in [b'\t', b';', b','] {
        let records = records(&plain, separator);
        let found = match records
            .iter()
            .take(MOST_ABOVE)
            .position(|r| names_colours(&r.cells))
        {
            Some(header) => by_row(&records, header, said.clone())?,
            None => match by_column(&records, said.clone())? {
                Some(table) => table,
                None => continue,
            },
        };
        if found.rows.len() > MOST_SAMPLES {
            return Err(TableError::TooMany);
        }
        return Ok(found);
    }
    Err(TableError::NoColour)
}

/// The text with its comments blanked out, and what they say.
fn without_comments(text: &str) -> Result<(String, Said), TableError> {
    let mut said = Said::default();
    let mut plain = String::with_capacity(text.len());
    for (i, line) in lines(text).enumerate() {
        match line.trim_start().strip_prefix('#') {
            // A heading may itself be "#", the number of the sample.
            Some(comment)
                if !comment.trim_start().starts_with([',', ';']) && !comment.starts_with('\t') =>
            {
                said.comment(comment, i + 1)?;
            }
            _ => plain += line,
        }
        plain.push('\n');
    }
    Ok((plain, said))
}

fn records(text: &str, separator: u8) -> Vec<Record> {
    let reader = csv::ReaderBuilder::new()
        .delimiter(separator)
        .has_headers(false)
        .flexible(true)
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    reader
        .into_records()
        // Text in memory has no faults of reading, and records may be of any length.
        .map_while(Result::ok)
        .map(|record| Record {
            line: record.position().map_or(0, |p| first_line(text, p)),
            cells: record.iter().map(str::to_owned).collect(),
        })
        .filter(|record| record.cells.iter().any(|cell| !cell.is_empty()))
        .collect()
}

/// The line a record begins on: its position is that of the empty lines before it.
fn first_line(text: &str, position: &csv::Position) -> usize {
    // The text is bounded, so its offsets and lines fit.
    let rest = text
        .as_bytes()
        .get(position.byte() as usize..)
        .unwrap_or(&[]);
    position.line() as usize + rest.iter().take_while(|byte| **byte == b'\n').count()
}

fn names_colours(cells: &[String]) -> bool {
    let meanings: Vec<Meaning> = cells.iter().map(|name| meaning(name)).collect();
    let wavelengths = meanings
        .iter()
        .filter(|m| matches!(m, Meaning::Wavelength(nm) if WAVELENGTHS_NM.contains(nm)));
    let all = |is: fn(&Meaning) -> Option<usize>| {
        (0..3).all(|k| meanings.iter().any(|m| is(m) == Some(k)))
    };
    wavelengths.count() >= FEWEST_WAVELENGTHS
        || all(|m| {
            if let Meaning::Lab(k, _) = m {
                Some(*k)
            } else {
                None
            }
        })
        || all(|m| {
            if let Meaning::Xyz(k, _) = m {
                Some(*k)
            } else {
                None
            }
        })
}

fn by_row(records: &[Record], header: usize, said: Said) -> Result<Written, TableError> {
    let said = above(&records[..header], said)?;
    let rows = records[header + 1..].iter().map(|record| {
        let cells = record.cells.iter();
        cells
            .map(|text| Cell {
                text: text.clone(),
                line: record.line,
            })
            .collect()
    });
    Ok(Written {
        line: records[header].line,
        names: records[header].cells.clone(),
        rows: rows.collect(),
        said,
    })
}

/// A table whose first column holds wavelengths and each further one a sample.
fn by_column(records: &[Record], said: Said) -> Result<Option<Written>, TableError> {
    let nm = |record: &Record| {
        let wide = record.cells.len() > 1;
        record
            .cells
            .first()
            .filter(|_| wide)
            .and_then(|cell| wavelength_nm(cell))
    };
    let Some(start) = records
        .iter()
        .take(MOST_ABOVE)
        .position(|r| nm(r).is_some())
    else {
        return Ok(None);
    };
    let run: Vec<&Record> = records[start..]
        .iter()
        .take_while(|r| nm(r).is_some())
        .collect();
    if run.len() < FEWEST_WAVELENGTHS {
        return Ok(None);
    }
    let header = start
        .checked_sub(1)
        .map(|i| &records[i])
        .filter(|r| r.cells.len() > 1);
    let above_header = start - usize::from(header.is_some());
    let said = above(&records[..above_header], said)?;
    let width = run.iter().map(|r| r.cells.len()).max().unwrap_or(0);
    let line = header.map_or(run[0].line, |h| h.line);
    let mut names = vec!["name".to_owned()];
    names.extend(run.iter().map(|r| r.cells[0].clone()));
    let rows = (1..width)
        .map(|k| {
            let name = header
                .and_then(|h| h.cells.get(k))
                .filter(|n| !n.is_empty());
            let mut row = vec![Cell {
                text: name.map_or_else(|| k.to_string(), Clone::clone),
                line,
            }];
            row.extend(run.iter().map(|r| Cell {
                text: r.cells.get(k).cloned().unwrap_or_default(),
                line: r.line,
            }));
            row
        })
        // A separator at the end of every line makes a column of nothing.
        .filter(|row: &Vec<Cell>| row[1..].iter().any(|cell| !cell.text.is_empty()))
        .collect();
    Ok(Some(Written {
        line,
        names,
        rows,
        said,
    }))
}

/// What the lines above the column names say.
fn above(records: &[Record], mut said: Said) -> Result<Said, TableError> {
    for record in records {
        let cells: Vec<&str> = record
            .cells
            .iter()
            .map(String::as_str)
            .filter(|c| !c.is_empty())
            .collect();
        match cells.as_slice() {
            [one] => said.comment(one, record.line)?,
            [key, rest @ ..] => {
                said.keyword(key.trim_end_matches(':'), &rest.join(" "), record.line)?
            }
            [] => {}
        }
    }
    Ok(said)
}
