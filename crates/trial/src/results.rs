//! A trial with everything that was found out about it.

use crate::text;
use crate::{
    EyeGrade, PartAtStage, Photo, Reading, Trial,
    decide::{self, Decision, Repeatability},
    eyes::Eyes,
    fade::{self, Fades},
    parts_by_stage,
    plan::Finding,
    stain::{self, Stain},
};
use serde::Serialize;

/// The plan that a trial was started from, as far as its verdict is limited by it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Planned {
    /// The plan's name in addresses.
    pub slug: String,
    /// The revision from which the trial was started, from 1.
    pub revision: u32,
    /// The weaknesses that were known then.
    pub findings: Vec<Finding>,
}

/// What was done otherwise than a run sheet or a label says.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Departed {
    /// Number of the run on its bench.
    pub run: i64,
    /// What the run is called.
    pub title: String,
    /// The arms that it is about; empty where it is about all.
    pub arms: Vec<String>,
    /// What departed, as a sentence.
    pub sentence: String,
}

/// A recipe for a trial's pieces, worked out.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Bath {
    /// The recipe's name in addresses.
    pub recipe: String,
    /// Its revision, from 1.
    pub revision: u32,
    /// How many runs of the trial followed it; none: it is only meant to be.
    pub runs: usize,
    /// What follows from it.
    pub plan: dyeing::Plan,
    /// Where the dye went in those runs whose waters were read: the run's title and its balance.
    pub balances: Vec<(String, dyeing::balance::DyeBalance)>,
}

/// What a trial's page, its data and its report all show.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Results {
    /// The trial.
    pub trial: Trial,
    /// Its photos, by stage.
    pub photos: Vec<Photo>,
    /// Its readings that count.
    pub readings: Vec<Reading>,
    /// The pale and the deep part of its resist-dyed pieces, by stage.
    pub parts: Vec<PartAtStage>,
    /// How its arms fade from round to round; none where no test piece was read after
    /// the start.
    pub fades: Option<Fades>,
    /// Staining of its witness cloths and pale parts.
    pub stains: Vec<Stain>,
    /// Its grades judged by eye that count.
    pub eye_grades: Vec<EyeGrade>,
    /// What eyes say beside the readings; none where none looked.
    pub eyes: Option<Eyes>,
    /// What follows from the readings.
    pub decision: Option<Decision>,
    /// Why there is no decision or no verdict, in a sentence.
    pub undecided: Option<String>,
    /// The plan that it was started from, if there was one.
    pub planned: Option<Planned>,
    /// The baths that its pieces were dyed in, or are to be.
    pub baths: Vec<Bath>,
    /// What was done otherwise than run sheets and labels say while its pieces were dyed.
    pub departures: Vec<Departed>,
}

impl Results {
    /// Adds what people judged by eye; where nothing else was read, it says so.
    pub fn add_eyes(&mut self, eyes: Option<Eyes>) {
        if self.readings.is_empty() && eyes.is_some() {
            let sentence = text::results::no_photo_or_instrument_has_read();
            self.undecided = Some(sentence.to_owned());
        }
        self.eyes = eyes;
    }

    /// Puts a trial's photos, current readings and grades together and decides.
    /// `known` tells how well photos of this set-up repeat, if it was checked.
    pub fn of(
        trial: Trial,
        mut photos: Vec<Photo>,
        readings: Vec<Reading>,
        eye_grades: Vec<EyeGrade>,
        known: Option<&Repeatability>,
    ) -> Self {
        photos.sort_by_key(|p| (p.stage, p.id));
        let (decision, undecided) = if readings.is_empty() {
            let sentence = text::results::nothing_has_been_read_yet_add();
            (None, Some(sentence.to_owned()))
        } else {
            match decide::of_trial(&trial, &readings, known) {
                Ok(decision) if decision.comparisons.is_empty() => {
                    let sentence = text::results::there_is_no_verdict_yet_it_takes();
                    (Some(decision), Some(sentence.to_owned()))
                }
                Ok(decision) => (Some(decision), None),
                Err(error) => (None, Some(error.to_string())),
            }
        };
        let parts = parts_by_stage(&readings);
        let fades = fade::of_trial(&trial, &readings);
        let stains = stain::stains(&trial, &readings);
        Self {
            fades,
            stains,
            trial,
            photos,
            readings,
            parts,
            eye_grades,
            eyes: None,
            decision,
            undecided,
            planned: None,
            baths: Vec::new(),
            departures: Vec::new(),
        }
    }
}
