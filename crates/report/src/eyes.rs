//! What eyes say, laid out in cards and rows.

use crate::agreement::{self, AgreementCard};
use crate::text;
use crate::{chart, words};
use std::collections::BTreeSet;
use trial::{
    Results,
    eyes::{EyeComparison, Eyes},
};

/// What a verdict from eyes is, in a sentence or two.
pub fn about() -> &'static str {
    text::eyes::grades_on_the_grey_scale_for_change()
}

/// All that eyes say of a trial.
pub struct EyeSection {
    /// Verdicts that stand because no reading decides their stage.
    pub verdicts: Vec<EyeCard>,
    /// Verdicts that stand beside those of readings.
    pub beside: Vec<EyeCard>,
    /// Mean grades: arm, stage, what of, pieces, people, grade.
    pub arms: Vec<[String; 6]>,
    /// How far eyes agree, for each closed session.
    pub agreement: Vec<AgreementCard>,
    /// What is to be known before one believes it, each a sentence.
    pub cautions: Vec<String>,
    /// That people may still judge, if they may.
    pub open: Option<String>,
}

impl EyeSection {
    /// Whether there is nothing yet that may be told.
    pub fn is_silent(&self) -> bool {
        self.verdicts.is_empty() && self.beside.is_empty() && self.agreement.is_empty()
    }
}

/// One pair of arms at one stage.
pub struct EyeCard {
    /// `visible`, `small`, `alike` or `open`.
    pub code: &'static str,
    /// The verdict's name.
    pub name: String,
    /// What was judged by eye and the verdict's name, with a capital.
    pub heading: String,
    /// One arm.
    pub a: String,
    /// The other.
    pub b: String,
    /// The stage in words, with a capital.
    pub when: String,
    /// For anybody.
    pub plain: String,
    /// The difference with its interval.
    pub figures: String,
    /// Why, with figures.
    pub reason: String,
    /// What limits it, each a sentence or two.
    pub limits: Vec<String>,
    /// What readings say of the same pair and stage, if they say anything.
    pub readings: Option<String>,
    /// The interval between the margins, SVG.
    pub strip: String,
    /// The verdict's sign, SVG.
    pub sign: String,
}

/// Everything eyes say; none where none looked.
pub fn section(results: &Results) -> Option<EyeSection> {
    let eyes = results.eyes.as_ref()?;
    let verdict = eyes.verdict.clone().unwrap_or_default();
    let all = verdict.comparisons.iter();
    let (mut pairs, lone): (Vec<&EyeComparison>, Vec<_>) =
        all.partition(|c| !is_of_lone_witness(c));
    let widest = pairs
        .iter()
        .map(|c| c.margin_grades.max(c.difference.abs()));
    let top = 1.8 * widest.fold(0.5, f64::max);
    pairs.sort_by_key(|c| std::cmp::Reverse(c.stage));
    let (beside, verdicts) = pairs
        .into_iter()
        .map(|comparison| card(results, comparison, top))
        .partition(|card: &EyeCard| card.readings.is_some());
    let arms = verdict.arms.iter().map(|arm| {
        [
            arm.arm.clone(),
            words::stage_heading(arm.stage),
            match arm.staining {
                true => text::eyes::staining().to_owned(),
                false => text::eyes::change().to_owned(),
            },
            arm.pieces.to_string(),
            arm.judges.to_string(),
            words::number(arm.grade),
        ]
    });
    Some(EyeSection {
        verdicts,
        beside,
        arms: arms.collect(),
        agreement: agreement::cards(&eyes.agreement),
        cautions: cautions(eyes, &lone),
        open: match eyes.open {
            0 => None,
            1 => Some(text::eyes::a_session_is_open_its_grades().into()),
            count => Some(text::eyes::sessions_are_open_their_grades_are_shown(count)),
        },
    })
}

fn card(results: &Results, comparison: &EyeComparison, top: f64) -> EyeCard {
    let same = |c: &&trial::decide::Comparison| {
        // Readings decide on change; stains that were read are graded and not compared.
        if comparison.staining {
            return false;
        }
        let pair = [c.a.as_str(), c.b.as_str()];
        c.stage == comparison.stage
            && pair.contains(&comparison.a.as_str())
            && pair.contains(&comparison.b.as_str())
    };
    let decision = results.decision.iter().flat_map(|d| &d.comparisons);
    let readings = decision.clone().find(same).map(|c| {
        let agree = match c.verdict == comparison.verdict {
            true => text::eyes::readings_say_the_same(),
            false => text::eyes::readings_decide_this_stage(),
        };
        text::eyes::ciede2000(
            agree,
            c.verdict.in_words(),
            words::with_interval(c.de00, c.low, c.high),
        )
    });
    let turned = comparison.difference < 0.0;
    let (low, high) = match turned {
        true => (-comparison.high, -comparison.low),
        false => (comparison.low, comparison.high),
    };
    EyeCard {
        code: comparison.verdict.as_str(),
        heading: match comparison.staining {
            true => text::eyes::staining_by_eye(words::verdict(comparison.verdict).to_lowercase()),
            false => text::eyes::by_eye(words::verdict(comparison.verdict).to_lowercase()),
        },
        name: words::verdict(comparison.verdict),
        a: comparison.a.clone(),
        b: comparison.b.clone(),
        when: words::stage_heading(comparison.stage),
        plain: comparison.plain.clone(),
        figures: match comparison.pieces.contains(&1) {
            true => text::eyes::one_piece_in_an_arm_no_interval().to_owned(),
            false => text::eyes::grades_95_interval_to_margin(
                words::number(comparison.difference.abs()),
                words::number(low),
                words::number(high),
                words::number(comparison.margin_grades),
            ),
        },
        reason: comparison.reason.clone(),
        limits: results.limits_of_eyes(comparison),
        readings,
        strip: chart::grades_against_margin(comparison, top),
        sign: chart::verdict_sign(comparison.verdict),
    }
}

/// Whether an arm has a single witness cloth, as in most trials: that is open always, and said once.
fn is_of_lone_witness(comparison: &EyeComparison) -> bool {
    comparison.staining && comparison.pieces.contains(&1)
}

fn cautions(eyes: &Eyes, lone: &[&EyeComparison]) -> Vec<String> {
    let mut cautions = Vec::new();
    let fails = eyes.agreement.iter().flat_map(|session| {
        let of_session = session.catch_pairs.iter().filter(|own| own.fails);
        of_session.map(move |own| (session.stage, own))
    });
    for (stage, own) in fails {
        cautions.push(text::eyes::saw_a_difference_in_of_pairs_without(
            &own.judge,
            own.seen,
            own.pairs,
            words::stage(stage),
            &own.lowest,
        ));
    }
    let stages: BTreeSet<u32> = lone.iter().map(|comparison| comparison.stage).collect();
    if !stages.is_empty() {
        let stages: Vec<String> = stages.into_iter().map(words::stage).collect();
        cautions.push(text::eyes::one_witness_cloth_says_nothing(
            stages.join(text::eyes::and()),
        ));
    }
    if !eyes.not_blind.is_empty() {
        let stages: Vec<String> = eyes.not_blind.iter().map(|s| words::stage(*s)).collect();
        cautions.push(text::eyes::grades_were_given(
            stages.join(text::eyes::and()),
        ));
    }
    cautions
}
