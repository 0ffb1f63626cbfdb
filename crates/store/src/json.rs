//! Lists of numbers and notes as they stand in a column.

use crate::StoreError;
use trial::Note;

pub(crate) type Polygon = Vec<[f64; 2]>;

pub(crate) fn corners_text(corners: &[[f64; 2]; 4]) -> String {
    value_text(serde_json::json!(corners))
}

pub(crate) fn polygon_text(polygon: &[[f64; 2]]) -> String {
    value_text(serde_json::json!(polygon))
}

pub(crate) fn covariance_text(covariance: &[[f64; 3]; 3]) -> String {
    value_text(serde_json::json!(covariance))
}

pub(crate) fn notes_text(notes: &[Note]) -> String {
    value_text(serde_json::json!(notes))
}

fn value_text(value: serde_json::Value) -> String {
    value.to_string()
}

pub(crate) fn corners(text: &str) -> Result<[[f64; 2]; 4], StoreError> {
    serde_json::from_str(text).map_err(odd("place of a chart"))
}

pub(crate) fn polygon(text: &str) -> Result<Polygon, StoreError> {
    serde_json::from_str(text).map_err(odd("marked area"))
}

pub(crate) fn covariance(text: &str) -> Result<[[f64; 3]; 3], StoreError> {
    serde_json::from_str(text).map_err(odd("covariance of a reading"))
}

pub(crate) fn notes(text: &str) -> Result<Vec<Note>, StoreError> {
    serde_json::from_str(text).map_err(odd("note"))
}

fn odd(what: &'static str) -> impl FnOnce(serde_json::Error) -> StoreError {
    move |error| StoreError::Stored {
        what,
        cause: error.to_string(),
    }
}
