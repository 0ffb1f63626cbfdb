//! A table of grades from a CSV file.

use super::{EyeRow, row};
use crate::decide::{
    DecideError,
    csv_text::{Fields, each_row, places, reader, text, unreadable},
};
use crate::text;
use colour::grade::Grade;
use std::{collections::BTreeMap, io::Read};

/// The columns, in the order of the fields below.
const COLUMNS: [&str; 7] = ["arm", "piece", "role", "load", "stage", "judge", "grade"];

/// Reads a table with the columns `arm,piece,role,load,stage,judge,grade`.
///
/// Columns may come in any order, with more beside them, parted by commas, semicolons or
/// tabs; the load may be empty. A grade is written as the trade does (4-5) or as a
/// number (4.5); where it is empty the person could not tell, and the row is left out.
/// Each person grades a piece once at each stage.
///
/// # Errors
/// What is wrong with the table, with the number of the row.
pub fn read_csv(input: impl Read) -> Result<Vec<EyeRow>, DecideError> {
    let text = text(input)?;
    let mut reader = reader(&text);
    let header = reader.headers().map_err(unreadable)?.clone();
    if header.iter().all(str::is_empty) {
        return Err(DecideError::NoGrades);
    }
    let places = places(&header, COLUMNS)?;
    let mut rows = Vec::new();
    let mut seen: BTreeMap<(String, u32, String), usize> = BTreeMap::new();
    each_row(&mut reader, |number, record| {
        let Some(row) = row(record, &places)? else {
            return Ok(());
        };
        let whose = (row.piece.clone(), row.stage, row.judge.to_lowercase());
        if let Some(before) = seen.insert(whose, number) {
            return Err(text::eyes::has_graded_at_stage_in_row_already(
                &row.judge, &row.piece, row.stage, before,
            ));
        }
        rows.push(row);
        Ok(())
    })?;
    if rows.is_empty() {
        return Err(DecideError::NoGrades);
    }
    row::check(&rows)?;
    Ok(rows)
}

/// Whether a table's first line names a judge and a grade, as a table of grades does,
/// and not the columns of colours.
pub fn holds_grades(table: &[u8]) -> bool {
    let Ok(text) = text(table) else {
        return false;
    };
    let mut reader = reader(&text);
    let Ok(header) = reader.headers() else {
        return false;
    };
    let has = |column: &str| header.iter().any(|name| name.eq_ignore_ascii_case(column));
    has("judge") && has("grade") && !has("L")
}

/// None where the person could not tell.
fn row(record: &csv::StringRecord, places: &[usize; 7]) -> Result<Option<EyeRow>, String> {
    let fields = Fields {
        record,
        places,
        columns: COLUMNS,
    };
    let (arm, piece, role) = (
        fields.named(0)?,
        fields.named(1)?,
        fields.named(2)?.parse()?,
    );
    let stage = fields.stage(4)?;
    let judge = fields.named(5)?;
    let Some(written) = fields.optional(6) else {
        return Ok(None);
    };
    Ok(Some(EyeRow {
        arm,
        piece,
        role,
        load: fields.optional(3),
        shares_load: false,
        stage,
        judge,
        grade: grade(&written)?,
    }))
}

fn grade(written: &str) -> Result<Grade, String> {
    // Spreadsheets turn 4-5 into the fourth of May.
    let month = written.chars().filter(|c| c.is_alphabetic()).count() >= 3
        && written.chars().any(|c| c.is_ascii_digit());
    written.parse::<Grade>().map_err(|error| match month {
        true => text::eyes::the_grade_is_which_a_spreadsheet(written),
        false => error.to_string(),
    })
}
