//! A table of readings as a form brings it, and what it means for a trial.

use crate::text;
use crate::upload::Upload;
use crate::{error::Error, form::Signed};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use colour::{View, table};
use trial::{Matched, Trial, TrialError, USUAL_REPEATABILITY_DE, matched, read_stage};

/// What the form holds, as it was typed.
#[derive(Debug, Clone)]
pub(crate) struct Sheet {
    pub(crate) stage: String,
    pub(crate) by: String,
    pub(crate) on: String,
    pub(crate) instrument: String,
    pub(crate) view: String,
    pub(crate) repeatability: String,
    /// The file's name; empty where values were typed.
    pub(crate) file: String,
    pub(crate) content: Vec<u8>,
}

/// A field of the form and what is wrong with it.
pub(crate) type Fault = (String, String);

impl Sheet {
    /// An empty form at a stage.
    pub(crate) fn empty(stage: u32) -> Self {
        Self {
            stage: stage.to_string(),
            by: String::new(),
            on: String::new(),
            instrument: String::new(),
            view: View::D65_10.to_string(),
            repeatability: USUAL_REPEATABILITY_DE.to_string(),
            file: String::new(),
            content: Vec::new(),
        }
    }

    /// The form as it was uploaded: a file, or else what was typed.
    pub(crate) fn uploaded(upload: Upload) -> Self {
        let typed = upload.text("typed");
        let mut sheet = Self::with(|name| upload.text(name));
        (sheet.file, sheet.content) = upload
            .files
            .into_iter()
            .next()
            .unwrap_or_else(|| (String::new(), typed.into_bytes()));
        sheet
    }

    /// The form as the preview sends it back.
    pub(crate) fn returned(form: &Signed) -> Result<Self, Error> {
        let mut sheet = Self::with(|name| form.text(name));
        sheet.file = form.text("file");
        sheet.content = STANDARD.decode(form.text("content")).map_err(|_| {
            Error::Malformed(text::elsewhere::the_readings_came_back_broken_go_back().to_owned())
        })?;
        Ok(sheet)
    }

    fn with(text: impl Fn(&str) -> String) -> Self {
        Self {
            stage: text("stage"),
            by: text("by"),
            on: text("on"),
            instrument: text("instrument"),
            view: text("view"),
            repeatability: text("repeatability"),
            file: String::new(),
            content: Vec::new(),
        }
    }

    /// What was typed, to be shown again; empty for a file.
    pub(crate) fn typed(&self) -> String {
        if self.file.is_empty() {
            String::from_utf8_lossy(&self.content).into_owned()
        } else {
            String::new()
        }
    }

    /// The content for a hidden field.
    pub(crate) fn encoded(&self) -> String {
        STANDARD.encode(&self.content)
    }

    /// The stage and what the table gives to the trial.
    pub(crate) fn understood(&mut self, trial: &Trial) -> Result<(u32, Matched), Fault> {
        let wrong = |field: &str, message: String| (field.to_owned(), message);
        let stage = read_stage(&self.stage).ok_or_else(|| {
            wrong(
                "stage",
                text::elsewhere::give_the_number_of_rounds_the_pieces().to_owned(),
            )
        })?;
        let view: View = self
            .view
            .parse()
            .map_err(|e: colour::ColourError| wrong("view", format!("{e}.")))?;
        let plain = self.repeatability.replace(',', ".");
        let repeatability = plain.parse().map_err(|_| {
            wrong(
                "repeatability",
                text::elsewhere::give_the_repeatability_as_a_number_such(USUAL_REPEATABILITY_DE),
            )
        })?;
        let field = if self.file.is_empty() {
            "typed"
        } else {
            "table"
        };
        if self.content.is_empty() {
            return Err(wrong(
                "table",
                text::elsewhere::choose_a_file_or_type_the_values().to_owned(),
            ));
        }
        let at_table =
            |e: table::TableError| wrong(field, format!("{}.", locale::capital(&e.to_string())));
        let text = table::text(&self.content).map_err(at_table)?;
        let table = table::read(&text, view).map_err(at_table)?;
        if self.instrument.is_empty() {
            self.instrument = table.instrument.clone().unwrap_or_default();
        }
        let found = matched(trial, &table, repeatability)
            .map_err(|TrialError { field, message }| (field, message))?;
        if found.readings.is_empty() {
            return Err(wrong(field, no_piece(trial, &found)));
        }
        Ok((stage, found))
    }
}

fn no_piece(trial: &Trial, found: &Matched) -> String {
    let some = |names: Vec<&str>| {
        let more = if names.len() > 8 { ", \u{2026}" } else { "" };
        format!(
            "{}{more}",
            names.iter().take(8).copied().collect::<Vec<_>>().join(", ")
        )
    };
    text::elsewhere::no_sample_has_the_code(
        some(found.unknown.iter().map(String::as_str).collect()),
        some(trial.pieces.iter().map(|p| p.code.as_str()).collect()),
    )
}
