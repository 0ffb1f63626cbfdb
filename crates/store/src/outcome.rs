//! What came of reading a photo, ready to be recorded.

use crate::parts;
use crate::text;
use photo::{Flag, PhotoMap, PhotoReading, Refusal};
use trial::{Doubt, Note, PhotoArea, PhotoState, PieceId, SplitReading};

/// What came of reading a photo: its new state and the readings of its pieces.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    pub(crate) state: PhotoState,
    pub(crate) colours: Vec<Colour>,
    pub(crate) doubt: Option<Doubt>,
    pub(crate) map: Option<PhotoMap>,
}

/// The colour of one piece as read.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Colour {
    pub(crate) piece: PieceId,
    pub(crate) lab: [f64; 3],
    pub(crate) cov: [[f64; 3]; 3],
    pub(crate) pixels: u64,
    pub(crate) split: Option<SplitReading>,
    pub(crate) view: String,
    pub(crate) notes: Vec<Note>,
}

impl Outcome {
    /// A photo from which nothing was taken.
    pub(crate) fn refused(code: &str, message: String) -> Self {
        Self {
            state: PhotoState::Refused {
                code: code.to_owned(),
                message,
            },
            colours: Vec::new(),
            doubt: None,
            map: None,
        }
    }

    /// What a reader said of a photo; `areas` in the order they were asked for.
    pub(crate) fn told(areas: &[PhotoArea], told: Result<PhotoReading, Refusal>) -> Self {
        match told {
            Ok(reading) => Self::read(areas, reading),
            Err(refusal) => Self::refused(refusal.code.as_str(), refusal.message),
        }
    }

    fn read(areas: &[PhotoArea], reading: PhotoReading) -> Self {
        if !reading.chart.loo_de00_median.is_finite() {
            return Self::refused(
                "poor_fit",
                text::outcome::the_colours_of_the_chart_could().into(),
            );
        }
        let mut flags: Vec<Note> = reading.flags.into_iter().map(note).collect();
        let mut colours = Vec::new();
        let (mut parts, mut read_at) = (Vec::new(), Vec::new());
        let view = reading.view.to_string();
        for (at, (area, read)) in areas.iter().zip(reading.readings).enumerate() {
            let notes: Vec<Note> = read.flags.into_iter().map(note).collect();
            let lab = read.lab.map(|lab| lab.to_array()).filter(|lab| {
                lab.iter()
                    .chain(read.cov.iter().flatten())
                    .all(|x| x.is_finite())
            });
            match lab {
                Some(lab) => {
                    parts.push(read.parts);
                    read_at.push(at);
                    colours.push(Colour {
                        piece: area.piece,
                        lab,
                        cov: read.cov,
                        pixels: read.pixels,
                        split: read.split.as_ref().and_then(parts::told),
                        view: view.clone(),
                        notes,
                    });
                }
                // A piece without a colour has no reading to carry its notes: the photo does.
                None => flags.extend(unread(notes)),
            }
        }
        let doubt = Doubt {
            pieces: colours.iter().map(|colour| colour.piece).collect(),
            parts,
            together: read_at
                .iter()
                .map(|&i| read_at.iter().map(|&j| reading.joint[i][j]).collect())
                .collect(),
            misses: reading.chart.misses,
        };
        Self {
            doubt: Some(doubt),
            map: Some(reading.map),
            state: PhotoState::Read {
                model: reading.chart.model,
                loo_de00_median: reading.chart.loo_de00_median,
                flags,
            },
            colours,
        }
    }
}

fn note(flag: Flag) -> Note {
    Note {
        code: flag.code.as_str().to_owned(),
        message: flag.message,
    }
}

fn unread(notes: Vec<Note>) -> Vec<Note> {
    if notes.is_empty() {
        return vec![Note {
            code: "area_unread".into(),
            message: text::outcome::one_piece_could_not_be_read_mark().into(),
        }];
    }
    notes
}
