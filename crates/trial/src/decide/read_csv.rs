//! A table of readings from a CSV file.

use super::{
    DecideError, Row,
    csv_text::{Fields, each_row, places, reader, separator, text, unreadable},
    row::colour_fault,
};
use crate::Part;
use crate::text;
use colour::Lab;
use std::{collections::BTreeSet, io::Read};

/// The columns, in the order of the fields below.
const COLUMNS: [&str; 8] = ["arm", "piece", "role", "load", "stage", "L", "a", "b"];

/// Reads a table with the columns `arm,piece,role,load,stage,L,a,b`.
///
/// Columns may come in any order, with more beside them; they may be parted by
/// commas, semicolons or tabs; the load may be empty. A byte-order mark, blank
/// lines and either kind of line end are taken. Where commas don't part the columns
/// they may stand for the decimal point. Where a column `part` says pale or deep, the
/// row is one of a part and is left out: the row of the whole piece counts. Columns
/// `source` and `view` may be there and have to say the same on every row that counts.
/// A column `photo` may name the photo of a reading, and columns `sd_L`, `sd_a` and
/// `sd_b` the plus-or-minus that a photo states of it; both may be empty.
///
/// # Errors
/// What is wrong with the table, with the number of the row.
pub fn read_csv(input: impl Read) -> Result<Vec<Row>, DecideError> {
    let text = text(input)?;
    let separator = separator(&text);
    let mut reader = reader(&text);
    let header = reader.headers().map_err(unreadable)?.clone();
    if header.iter().all(str::is_empty) {
        return Err(DecideError::Empty);
    }
    let places = places(&header, COLUMNS)?;
    let place_of = |column: &str| {
        let mut names = header.iter();
        names.position(|name| name.eq_ignore_ascii_case(column))
    };
    let part_place = place_of("part");
    let kind_places = ["source", "view"].map(place_of);
    let photo_place = place_of("photo");
    let sd_places = ["sd_L", "sd_a", "sd_b"].map(place_of);
    let mut kinds = BTreeSet::new();
    let mut rows = Vec::new();
    each_row(&mut reader, |_, record| {
        let said = |place: Option<usize>| place.and_then(|place| record.get(place));
        let part = said(part_place).filter(|text| !text.is_empty());
        let part = part.map(str::parse::<Part>).transpose()?;
        let mut row = row(record, &places, separator != b',')?;
        let photo = said(photo_place).filter(|name| !name.is_empty());
        row.photo = photo.map(str::to_owned);
        if row.photo.is_some() {
            row.stated = stated(record, sd_places, separator != b',')?;
        }
        if matches!(part, None | Some(Part::Whole)) {
            rows.push(row);
            kinds.insert(kind_places.map(|place| said(place).unwrap_or("").to_owned()));
        }
        Ok(())
    })?;
    if rows.is_empty() {
        return Err(DecideError::Empty);
    }
    if kinds.len() > 1 {
        let kinds: Vec<String> = kinds.iter().map(|kind| kind.join(" ")).collect();
        return Err(DecideError::Kinds(kinds.join(", ")));
    }
    Ok(rows)
}

fn row(
    record: &csv::StringRecord,
    places: &[usize; 8],
    decimal_comma: bool,
) -> Result<Row, String> {
    let fields = Fields {
        record,
        places,
        columns: COLUMNS,
    };
    let number = |k: usize| number(COLUMNS[k], fields.text(k), decimal_comma);
    let lab = Lab::new(number(5)?, number(6)?, number(7)?);
    if let Some(fault) = colour_fault(lab) {
        return Err(text::decide::here_are(fault, lab.l, lab.a, lab.b));
    }
    Ok(Row {
        arm: fields.named(0)?,
        piece: fields.named(1)?,
        role: fields.named(2)?.parse()?,
        load: fields.optional(3),
        photo: None,
        stated: None,
        stage: fields.stage(4)?,
        lab,
    })
}

/// A finite number.
fn number(column: &str, text: &str, decimal_comma: bool) -> Result<f64, String> {
    let plain = if decimal_comma {
        text.replace(',', ".")
    } else {
        text.to_owned()
    };
    let number = plain.parse::<f64>().ok().filter(|v| v.is_finite());
    number.ok_or_else(|| text::decide::is_which_is_no_number_write(column, text))
}

/// The covariance of a colour of which a photo states the plus-or-minus of each part;
/// none unless the row states all three.
fn stated(
    record: &csv::StringRecord,
    places: [Option<usize>; 3],
    decimal_comma: bool,
) -> Result<Option<[[f64; 3]; 3]>, String> {
    let mut covariance = [[0.0; 3]; 3];
    for (k, place) in places.into_iter().enumerate() {
        let text = place.and_then(|place| record.get(place)).unwrap_or("");
        if text.is_empty() {
            return Ok(None);
        }
        let column = ["sd_L", "sd_a", "sd_b"][k];
        let sd = number(column, text, decimal_comma)?;
        if sd < 0.0 {
            return Err(text::decide::is_a_standard_deviation_is_0(column, text));
        }
        covariance[k][k] = sd * sd;
    }
    Ok(Some(covariance))
}
