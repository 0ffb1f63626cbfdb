//! Lists of numbers and notes as they stand in a column.

use crate::StoreError;
use crate::text;
use locale::Locale;
use photo::{Parts, PhotoMap};
use trial::{
    Doubt, Note, Reflectance,
    eyes::{Judge, Session, Turn},
    plan::Promise,
    setup::SetupCheck,
};

pub(crate) type Polygon = Vec<[f64; 2]>;

pub(crate) fn corners_text(corners: &[[f64; 2]; 4]) -> String {
    serde_json::json!(corners).to_string()
}

pub(crate) fn polygon_text(polygon: &[[f64; 2]]) -> String {
    serde_json::json!(polygon).to_string()
}

pub(crate) fn covariance_text(covariance: &[[f64; 3]; 3]) -> String {
    serde_json::json!(covariance).to_string()
}

pub(crate) fn doubt_text(doubt: &Doubt) -> String {
    serde_json::json!(doubt).to_string()
}

pub(crate) fn doubt(text: &str) -> Result<Doubt, StoreError> {
    serde_json::from_str(text).map_err(odd(text::thing::covariance_of_a_photos_readings()))
}

pub(crate) fn photo_map_text(map: &PhotoMap) -> String {
    serde_json::json!(map).to_string()
}

pub(crate) fn photo_map(text: &str) -> Result<PhotoMap, StoreError> {
    serde_json::from_str(text).map_err(odd(text::thing::map_of_a_photo()))
}

pub(crate) fn promise_text(promise: &Promise) -> String {
    serde_json::json!(promise).to_string()
}

/// None for what can't be understood: it is worked out anew.
pub(crate) fn promise(text: &str) -> Option<Promise> {
    serde_json::from_str(text).ok()
}

pub(crate) fn causes_text(causes: &Parts) -> String {
    serde_json::json!(causes).to_string()
}

pub(crate) fn causes(text: &str) -> Result<Parts, StoreError> {
    serde_json::from_str(text).map_err(odd(text::thing::covariance_of_a_part()))
}

/// How a chart was missed, patch by patch.
pub(crate) fn misses(text: &str) -> Result<Vec<Option<[f64; 3]>>, StoreError> {
    serde_json::from_str(text).map_err(odd(text::thing::fit_of_a_chart()))
}

pub(crate) fn notes_text(notes: &[Note]) -> String {
    serde_json::json!(notes).to_string()
}

pub(crate) fn setup_check_text(check: &SetupCheck) -> Result<String, StoreError> {
    serde_json::to_string(check).map_err(odd(text::thing::set_up_check()))
}

pub(crate) fn locale_text(locale: &Locale) -> String {
    serde_json::json!(locale).to_string()
}

pub(crate) fn locale(text: &str) -> Result<Locale, StoreError> {
    serde_json::from_str(text).map_err(odd(text::thing::setting()))
}

pub(crate) fn spectrum_text(spectrum: &Reflectance) -> String {
    serde_json::json!(spectrum).to_string()
}

pub(crate) fn spectrum(text: &str) -> Result<Reflectance, StoreError> {
    serde_json::from_str(text).map_err(odd(text::thing::spectrum()))
}

pub(crate) fn corners(text: &str) -> Result<[[f64; 2]; 4], StoreError> {
    serde_json::from_str(text).map_err(odd(text::thing::place_of_a_chart()))
}

pub(crate) fn polygon(text: &str) -> Result<Polygon, StoreError> {
    serde_json::from_str(text).map_err(odd(text::thing::marked_area()))
}

pub(crate) fn covariance(text: &str) -> Result<[[f64; 3]; 3], StoreError> {
    serde_json::from_str(text).map_err(odd(text::thing::covariance_of_a_reading()))
}

pub(crate) fn notes(text: &str) -> Result<Vec<Note>, StoreError> {
    serde_json::from_str(text).map_err(odd(text::thing::note()))
}

pub(crate) fn setup_check(text: &str) -> Result<SetupCheck, StoreError> {
    serde_json::from_str(text).map_err(odd(text::thing::set_up_check()))
}

pub(crate) fn session_text(session: &Session) -> Result<String, StoreError> {
    serde_json::to_string(session).map_err(odd(text::thing::session_of_judging()))
}

pub(crate) fn session(text: &str) -> Result<Session, StoreError> {
    serde_json::from_str(text).map_err(odd(text::thing::session_of_judging()))
}

pub(crate) fn judge_text(judge: &Judge) -> Result<String, StoreError> {
    serde_json::to_string(judge).map_err(odd(text::thing::person_who_judged()))
}

pub(crate) fn judge(text: &str) -> Result<Judge, StoreError> {
    serde_json::from_str(text).map_err(odd(text::thing::person_who_judged()))
}

pub(crate) fn turns_text(turns: &[Turn]) -> String {
    serde_json::json!(turns).to_string()
}

pub(crate) fn turns(text: &str) -> Result<Vec<Turn>, StoreError> {
    serde_json::from_str(text).map_err(odd(text::thing::order_of_judging()))
}

fn odd(what: &'static str) -> impl FnOnce(serde_json::Error) -> StoreError {
    move |error| StoreError::Stored {
        what,
        cause: error.to_string(),
    }
}
