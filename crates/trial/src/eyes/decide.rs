//! The verdict on every pair of arms at every stage.

use super::{
    ArmGrade, EyeComparison, EyeRow, FromEyes,
    contrast::Contrast,
    margin::{in_grades, in_grades_of_staining},
    means::Means,
    row,
    words::{self, Evidence},
};
use crate::{
    Role,
    decide::{DealtAnew, DecideError, Verdict, reason},
};
use inference::holm;
use std::collections::{BTreeMap, BTreeSet};

/// How often a difference may be called greater than the margin wrongly.
const RARE: f64 = 0.025;
/// Pairs of arms and stages that are looked at; beyond, a column is probably wrong.
const MOST_PAIRS: usize = 20_000;

/// Decides on every pair of arms at every stage by grades judged by eye.
///
/// The unit is the piece, or the load where each arm had several of its own. A piece's
/// grade is the mean over all who judged it, freed of how strict each of them is; two
/// arms differ by the means of their pieces' grades. The 95 % interval adds up the scatter
/// of pieces in each arm (Welch), how people differ in the difference they see, and
/// the room that half-steps and the ends of the scale leave; scatter that half-steps
/// may hide is not taken to be 0. `margin_de00` (above 0) becomes grades by
/// [`super::in_grades`]. With one piece in an arm the verdict is open, always.
///
/// Witness cloths are compared in the same way, by the scale for staining, apart from the
/// pieces: neither grade enters the other's verdict, nor are the two weighed together.
///
/// # Errors
/// A margin that is not above 0; rows that contradict each other or hold neither test
/// piece nor witness.
pub fn decide(rows: &[EyeRow], margin_de00: f64) -> Result<FromEyes, DecideError> {
    if !(margin_de00 > 0.0 && margin_de00.is_finite()) {
        return Err(DecideError::Margin(margin_de00));
    }
    row::check(rows)?;
    let mut arms: Vec<&str> = Vec::new();
    for row in rows {
        if !arms.contains(&row.arm.as_str()) {
            arms.push(&row.arm);
        }
    }
    let stages: BTreeSet<u32> = rows.iter().map(|row| row.stage).collect();
    let pairs = arms.len() * arms.len().saturating_sub(1) / 2 * stages.len();
    if pairs > MOST_PAIRS {
        return Err(DecideError::TooManyPairs(pairs, MOST_PAIRS));
    }
    let mut found = FromEyes::default();
    for stage in stages {
        let of_stage: Vec<&EyeRow> = rows.iter().filter(|row| row.stage == stage).collect();
        for arm in &arms {
            for staining in [false, true] {
                found
                    .arms
                    .extend(arm_grade(&of_stage, arm, stage, staining));
            }
        }
        for staining in [false, true] {
            let mut pairs = Vec::new();
            for (i, a) in arms.iter().enumerate() {
                for b in &arms[i + 1..] {
                    let asked = Asked {
                        stage,
                        staining,
                        names: [a, b],
                        margin_de00,
                    };
                    pairs.extend(compare(&of_stage, &asked));
                }
            }
            weigh_together(&mut pairs);
            let pairs = pairs.into_iter().map(|(pair, _)| pair);
            found.comparisons.extend(pairs);
        }
    }
    Ok(found)
}

/// Which two arms are compared, and by what.
#[derive(Debug, Clone, Copy)]
pub(super) struct Asked<'a> {
    pub stage: u32,
    pub staining: bool,
    pub names: [&'a str; 2],
    pub margin_de00: f64,
}

impl Asked<'_> {
    fn role(&self) -> Role {
        role(self.staining)
    }

    /// The margin between two arms that are graded `middle` on average.
    fn margin(&self, middle: f64) -> f64 {
        match self.staining {
            true => in_grades_of_staining(self.margin_de00, middle),
            false => in_grades(self.margin_de00, middle),
        }
    }
}

/// Whose grades tell it.
fn role(staining: bool) -> Role {
    match staining {
        true => Role::Witness,
        false => Role::Test,
    }
}

/// Says of each visible difference of a stage whether it stands when all pairs are
/// weighed together; the verdict stays that of the plain interval.
fn weigh_together(pairs: &mut [(EyeComparison, f64)]) {
    let chances: Vec<f64> = pairs.iter().map(|(_, chance)| *chance).collect();
    let Ok(adjusted) = holm::adjusted(&chances) else {
        return;
    };
    let count = pairs.len();
    for ((pair, _), together) in pairs.iter_mut().zip(adjusted) {
        if count > 1 && pair.verdict == Verdict::Visible {
            pair.reason
                .push_str(&reason::together(count, together <= RARE));
        }
    }
}

fn average(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

/// The mean grade of one arm; none where nothing of it was judged.
fn arm_grade(rows: &[&EyeRow], arm: &str, stage: u32, staining: bool) -> Option<ArmGrade> {
    let role = role(staining);
    let own: Vec<&EyeRow> = rows
        .iter()
        .copied()
        .filter(|row| row.arm == arm && row.role == role)
        .collect();
    let distinct =
        |of: fn(&EyeRow) -> &str| -> BTreeSet<&str> { own.iter().map(|row| of(row)).collect() };
    let pieces = distinct(|row| &row.piece);
    // Pieces count alike however many looked at each, and people however often they did,
    // as in the verdicts that stand above these means.
    let sum: f64 = pieces
        .iter()
        .map(|piece| {
            let mut looks: BTreeMap<&str, Vec<f64>> = BTreeMap::new();
            for row in own.iter().filter(|row| row.piece == **piece) {
                looks.entry(&row.judge).or_default().push(row.grade.value());
            }
            let of_people: Vec<f64> = looks.values().map(|grades| average(grades)).collect();
            average(&of_people)
        })
        .sum();
    (!pieces.is_empty()).then(|| ArmGrade {
        arm: arm.to_owned(),
        stage,
        staining,
        pieces: pieces.len(),
        judges: distinct(|row| &row.judge).len(),
        grade: sum / pieces.len() as f64,
    })
}

/// A comparison with the chance of seeing as much if the true difference were just the
/// margin; none where one of the arms was not judged at that stage.
fn compare(rows: &[&EyeRow], asked: &Asked) -> Option<(EyeComparison, f64)> {
    let names = asked.names;
    let of_pair: Vec<(usize, &EyeRow)> = rows
        .iter()
        .filter(|row| row.role == asked.role())
        .filter_map(|row| Some((names.iter().position(|name| *name == row.arm)?, *row)))
        .collect();
    let pieces = [0, 1].map(|arm| {
        let own = of_pair.iter().filter(|(of, _)| *of == arm);
        own.map(|(_, row)| row.piece.as_str())
            .collect::<BTreeSet<_>>()
            .len()
    });
    if pieces.contains(&0) {
        return None;
    }
    let Some(contrast) = Means::of(&of_pair).as_ref().and_then(Contrast::of) else {
        return Some((apart(&of_pair, asked, pieces), 1.0));
    };
    let margin = asked.margin((contrast.means[0] + contrast.means[1]) / 2.0);
    // No grade says more than the whole scale, which is where nothing is known.
    let (low, high) = contrast.interval(0.95).unwrap_or((-4.0, 4.0));
    let (low, high) = (low.max(-4.0), high.min(4.0));
    let within = contrast
        .interval(0.90)
        .is_some_and(|(low, high)| -margin < low && high < margin);
    let shown = low > 0.0 || high < 0.0;
    let shared = asked.staining && shared(rows, names);
    let verdict = if shared || contrast.fewest() < 2 {
        Verdict::Open
    } else if low > margin || high < -margin {
        Verdict::Visible
    } else if within && shown {
        Verdict::Small
    } else if within {
        Verdict::Alike
    } else {
        Verdict::Open
    };
    let dealt_anew = contrast
        .dealt_anew()
        .map(|(as_great, ways)| DealtAnew { as_great, ways });
    let (plain, reason) = words::of(&Evidence {
        asked,
        shared,
        pieces,
        margin,
        low,
        high,
        shown,
        verdict,
        dealt_anew,
        contrast: &contrast,
    });
    let chance = if shared {
        1.0
    } else {
        contrast.chance_of(margin)
    };
    let comparison = EyeComparison {
        stage: asked.stage,
        staining: asked.staining,
        a: names[0].to_owned(),
        b: names[1].to_owned(),
        grades: contrast.means,
        difference: contrast.difference(),
        low,
        high,
        margin_grades: margin,
        pieces,
        judges: contrast.judges,
        dealt_anew,
        verdict,
        plain,
        reason,
    };
    Some((comparison, chance))
}

/// Two arms that no person joins: one judged these, another those.
fn apart(rows: &[(usize, &EyeRow)], asked: &Asked, pieces: [usize; 2]) -> EyeComparison {
    let grades = [0, 1].map(|arm| {
        let own = rows.iter().filter(|(of, _)| *of == arm);
        let own: Vec<f64> = own.map(|(_, row)| row.grade.value()).collect();
        own.iter().sum::<f64>() / own.len() as f64
    });
    let judges: BTreeSet<&str> = rows.iter().map(|(_, row)| row.judge.as_str()).collect();
    let (plain, reason) = words::apart(asked);
    EyeComparison {
        stage: asked.stage,
        staining: asked.staining,
        a: asked.names[0].to_owned(),
        b: asked.names[1].to_owned(),
        grades,
        difference: grades[0] - grades[1],
        low: -4.0,
        high: 4.0,
        margin_grades: asked.margin((grades[0] + grades[1]) / 2.0),
        pieces,
        judges: judges.len(),
        dealt_anew: None,
        verdict: Verdict::Open,
        plain,
        reason,
    }
}

/// Whether a witness of one of these arms was in a load with pieces of another arm, whose dye may
/// be what stained it.
fn shared(rows: &[&EyeRow], names: [&str; 2]) -> bool {
    let mut own = rows
        .iter()
        .filter(|row| row.role == Role::Witness && names.contains(&row.arm.as_str()));
    own.any(|witness| {
        let with = |row: &&EyeRow| row.arm != witness.arm && row.load == witness.load;
        witness.shares_load || witness.load.is_some() && rows.iter().any(with)
    })
}
