//! Readings as a CSV table.

use super::DecideError;
use crate::{Part, Reading, Trial};

/// The columns that [`write_csv`] gives, in its order.
const COLUMNS: [&str; 18] = [
    "arm", "piece", "role", "load", "stage", "part", "L", "a", "b", "sd_L", "sd_a", "sd_b",
    "share", "pixels", "view", "source", "photo", "made_at",
];

/// A table of readings that [`super::read_csv`] takes back: a row for each, and beside
/// it one for the pale and one for the deep part of a resist-dyed piece.
///
/// # Errors
/// The table can't be written, which only a fault of the program brings about.
pub fn write_csv(trial: &Trial, readings: &[Reading]) -> Result<String, DecideError> {
    let mut table = csv::Writer::from_writer(Vec::new());
    let fault = |error: csv::Error| DecideError::Unreadable(error.to_string());
    table.write_record(COLUMNS).map_err(fault)?;
    for reading in readings {
        let Some(piece) = trial.piece(reading.piece) else {
            continue;
        };
        let arm = trial.arm(piece.arm).map_or("", |arm| arm.name.as_str());
        let whole = (reading.lab, reading.cov, None, reading.pixels);
        let mut rows = vec![(Part::Whole, whole)];
        for part in [Part::Pale, Part::Deep] {
            let read = reading.split.as_ref().and_then(|split| split.part(part));
            rows.extend(read.map(|r| (part, (r.lab, r.cov(), Some(r.share), r.pixels))));
        }
        for (part, (lab, cov, share, pixels)) in rows {
            let mut record = vec![
                arm.to_owned(),
                piece.code.clone(),
                piece.role.to_string(),
                piece.load.clone().unwrap_or_default(),
                reading.stage.to_string(),
                part.to_string(),
            ];
            record.extend(lab.map(|v| format!("{v:.4}")));
            record.extend([0, 1, 2].map(|k| format!("{:.4}", cov[k][k].max(0.0).sqrt())));
            record.push(share.map_or_else(String::new, |share| format!("{share:.3}")));
            record.push(pixels.to_string());
            record.push(reading.view.clone());
            record.push(reading.source.to_string());
            record.push(
                reading
                    .photo
                    .map_or_else(String::new, |id| id.0.to_string()),
            );
            record.push(reading.made_at.clone());
            table.write_record(&record).map_err(fault)?;
        }
    }
    let bytes = table
        .into_inner()
        .map_err(|error| DecideError::Unreadable(error.to_string()))?;
    String::from_utf8(bytes).map_err(|error| DecideError::Unreadable(error.to_string()))
}
