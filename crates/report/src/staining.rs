//! Staining laid out in rows.

use crate::text;
use crate::{swatch, words};
use colour::Lab;
use trial::stain::{Stain, StainedCloth};

/// What the table holds, in a sentence or two.
pub fn about() -> &'static str {
    text::staining::cloth_that_should_have_stayed_pale()
}

/// One cloth at one stage.
pub struct StainRow {
    /// Its code.
    pub code: String,
    /// Its arm and what it is.
    pub what: String,
    /// The stage in words, with a capital.
    pub when: String,
    /// Swatches before and after, SVG.
    pub swatches: [String; 2],
    /// The grade with its range.
    pub grade: String,
    /// What it means, in a sentence.
    pub plain: String,
    /// The figures.
    pub technical: String,
}

/// Every cloth at every stage, in the order of the trial.
pub fn rows(stains: &[Stain]) -> Vec<StainRow> {
    stains
        .iter()
        .map(|stain| {
            let cloth = match stain.cloth {
                StainedCloth::WitnessCloth => text::staining::witness_cloth(),
                StainedCloth::PalePart => text::staining::pale_part(),
            };
            let named = |lab: [f64; 3], when: &str| {
                swatch::svg(Lab::from(lab), &format!("{} {when}", stain.code))
            };
            let [worst, best] = &stain.grade_interval;
            StainRow {
                code: stain.code.clone(),
                what: format!("{}, {cloth}", stain.arm),
                when: words::stage_heading(stain.stage),
                swatches: [
                    named(stain.before, text::staining::before_the_first_round()),
                    named(stain.after, &words::stage(stain.stage)),
                ],
                grade: if worst == best {
                    stain.grade.clone()
                } else {
                    text::staining::to(&stain.grade, worst, best)
                },
                plain: stain.plain.clone(),
                technical: stain.technical.clone(),
            }
        })
        .collect()
}
