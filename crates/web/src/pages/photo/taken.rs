//! The form for photos as it came, and each photo looked at before anything is kept.

use crate::app::blocking;
use crate::areas;
use crate::error::Error;
use crate::text;
use crate::upload::{self, Upload};
use axum::http::StatusCode;
use photo::{ChartReference, RefusalCode, Survey};
use store::KeptChart;
use trial::{ChartId, LATEST_STAGE, read_stage};

/// What was not taken: the answer's status, a short code, the field, the sentence.
pub(super) struct Refused {
    pub(super) status: StatusCode,
    pub(super) code: &'static str,
    pub(super) field: &'static str,
    pub(super) message: String,
    /// How to take the photo again, step by step.
    pub(super) retake: Vec<&'static str>,
}

impl Refused {
    fn form(field: &'static str, message: impl Into<String>) -> Self {
        Self {
            status: StatusCode::UNPROCESSABLE_ENTITY,
            code: "form",
            field,
            message: message.into(),
            retake: Vec::new(),
        }
    }

    /// A file, or all files of a form together, with too many bytes.
    pub(super) fn too_large(message: String) -> Self {
        Self {
            status: StatusCode::PAYLOAD_TOO_LARGE,
            code: RefusalCode::TooLarge.as_str(),
            retake: RefusalCode::TooLarge.retake(),
            ..Self::form("photo", message)
        }
    }

    fn photo(refusal: photo::Refusal) -> Self {
        let code = refusal.code;
        Self {
            status: if code == RefusalCode::TooLarge {
                StatusCode::PAYLOAD_TOO_LARGE
            } else {
                StatusCode::UNPROCESSABLE_ENTITY
            },
            code: code.as_str(),
            retake: code.retake(),
            ..Self::form(
                match code {
                    RefusalCode::BadCorners => "corners",
                    _ => "photo",
                },
                refusal.message,
            )
        }
    }
}

/// What is said of all photos of a form.
#[derive(Clone)]
pub(super) struct Said {
    stage: u32,
    /// Whether a stage printed on a board goes before the one said.
    by_board: bool,
    corners: Option<[[f64; 2]; 4]>,
    pub(super) chart: Option<ChartId>,
    reference: ChartReference,
}

/// A photo that can be read, with the stage it is of.
pub(super) struct Taken {
    pub(super) stage: u32,
    pub(super) name: String,
    pub(super) bytes: Vec<u8>,
    pub(super) survey: Survey,
}

impl Said {
    /// Reads the fields beside the files.
    pub(super) fn of(form: &Upload, charts: Vec<KeptChart>) -> Result<Self, Refused> {
        let stage = read_stage(&form.text("stage"));
        let stage = stage
            .ok_or_else(|| Refused::form("stage", text::photo::give_the_number_of_rounds()))?;
        let corners = areas::parse_chart(&form.text("corners"))
            .map_err(|message| Refused::form("corners", message))?;
        if corners.is_some() && form.files.len() > 1 {
            return Err(Refused::form(
                "corners",
                text::photo::corners_are_those_of_one_photo_send(),
            ));
        }
        let (chart, reference) = match form.text("chart").as_str() {
            "" => (None, ChartReference::published()),
            id => match charts.into_iter().find(|kept| kept.id.to_string() == id) {
                Some(kept) => (Some(kept.id), kept.reference),
                None => {
                    let message = text::photo::choose_one_of_the_charts();
                    return Err(Refused::form("chart", message));
                }
            },
        };
        if form.files.is_empty() && form.oversized.is_empty() {
            return Err(Refused::form("photo", text::photo::choose_a_photo_to_add()));
        }
        Ok(Self {
            stage,
            by_board: !form.text("by-board").is_empty(),
            corners,
            chart,
            reference,
        })
    }

    /// Whether a photo of the same content may be a new try.
    pub(super) fn has_corners(&self) -> bool {
        self.corners.is_some()
    }

    /// Looks whether a photo can be read, before anything of it is kept.
    pub(super) async fn look(
        &self,
        name: String,
        bytes: Vec<u8>,
    ) -> Result<Result<Taken, Refused>, Error> {
        let said = self.clone();
        let (bytes, looked) = blocking(move || {
            let looked = photo::survey_by(&bytes, said.corners, &said.reference);
            (bytes, looked)
        })
        .await?;
        let printed = |survey: &Survey| survey.board.as_ref().and_then(|board| board.stage);
        Ok(looked.map_err(Refused::photo).map(|survey| Taken {
            stage: printed(&survey)
                .filter(|stage| self.by_board && *stage <= LATEST_STAGE)
                .unwrap_or(self.stage),
            name,
            bytes,
            survey,
        }))
    }
}

/// The refusals of files that were too large to be taken in.
pub(super) fn oversized(form: &Upload) -> impl Iterator<Item = (String, Refused)> {
    let refused = || Refused::too_large((upload::PHOTO.too_large)().to_owned());
    let names = form.oversized.clone();
    names.into_iter().map(move |name| (name, refused()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_form_without_a_file_asks_for_one() {
        let form = Upload::with(&[("stage", "0")]);
        let refused = Said::of(&form, Vec::new()).err().unwrap();
        assert_eq!(
            (refused.field, refused.message.as_str()),
            ("photo", "Choose a photo to add.")
        );
    }

    #[test]
    fn corners_of_several_photos_are_not_guessed_at() {
        let mut form = Upload::with(&[("stage", "0"), ("corners", "1,1 9,1 9,9 1,9")]);
        form.files = vec![("a.jpg".into(), vec![1]), ("b.jpg".into(), vec![2])];
        assert_eq!(Said::of(&form, Vec::new()).err().unwrap().field, "corners");
    }
}
