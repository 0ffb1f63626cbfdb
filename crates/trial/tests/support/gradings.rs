//! Gradings by eye drawn at random whose true difference is known.

#[path = "count.rs"]
mod count;

use colour::grade::Grade;
pub use count::Count;
use inference::chance::Chance;
use trial::{
    Role,
    eyes::{EyeComparison, EyeRow, decide, in_grades, in_grades_of_staining},
};

/// One kind of judging.
#[derive(Clone, Copy)]
pub struct Setting {
    /// Pieces in each arm.
    pub pieces: [usize; 2],
    pub judges: usize,
    /// Witness cloths are graded for staining, or else pieces for change.
    pub staining: bool,
    pub margin_de00: f64,
    /// True difference of the arms in margins.
    pub margins: f64,
    /// The middle of the two arms' true grades, before it is moved about by up to a
    /// quarter of a grade, so that half-steps lie anywhere.
    pub middle: f64,
    pub eyes: Eyes,
}

/// How pieces and people scatter: standard deviations in grades.
#[derive(Clone, Copy)]
pub struct Eyes {
    /// Of pieces of one arm.
    pub pieces: f64,
    /// Of how strict people are.
    pub strict: f64,
    /// Of how great people see the difference of the arms.
    pub difference: f64,
    /// Of one look.
    pub look: f64,
}

/// What half a grade of disagreement between people, common in practice, is made of.
/// From memory, no source.
pub const USUAL: Eyes = Eyes {
    pieces: 0.2,
    strict: 0.25,
    difference: 0.15,
    look: 0.3,
};
pub const STEADY: Eyes = Eyes {
    pieces: 0.05,
    strict: 0.1,
    difference: 0.05,
    look: 0.05,
};
pub const UNSTEADY: Eyes = Eyes {
    pieces: 0.35,
    strict: 0.4,
    difference: 0.3,
    look: 0.5,
};

/// Draws that many gradings from a seed and decides on each.
pub fn count(setting: Setting, trials: usize, seed: u64) -> Count {
    let mut chance = Chance::new(seed);
    let mut count = Count::default();
    for _ in 0..trials {
        let (found, truth) = draw(setting, &mut chance);
        count.add(found.verdict, [found.low, found.high], truth);
    }
    count
}

fn draw(setting: Setting, chance: &mut Chance) -> (EyeComparison, f64) {
    const PARTS: usize = 10_000;
    let move_about = chance.below(PARTS) as f64 / PARTS as f64 * 0.5 - 0.25;
    let (in_grades, role): (fn(f64, f64) -> f64, _) = match setting.staining {
        true => (in_grades_of_staining, Role::Witness),
        false => (in_grades, Role::Test),
    };
    let margin = in_grades(setting.margin_de00, setting.middle);
    let half = 0.5 * margin * setting.margins;
    // True grades end at 5: no piece has changed less than not at all.
    let middle = (setting.middle + move_about).min(5.0 - half);
    // A unit of the scale's own difference is worth less farther down.
    let half = 0.5 * in_grades(setting.margin_de00, middle) * setting.margins;
    let truth = [middle + half, middle - half];
    let mut rows = Vec::new();
    let strict: Vec<f64> = (0..setting.judges)
        .map(|_| setting.eyes.strict * chance.normal())
        .collect();
    let sees: Vec<f64> = (0..setting.judges)
        .map(|_| setting.eyes.difference * chance.normal())
        .collect();
    for (arm, name) in ["a", "b"].into_iter().enumerate() {
        let side = [0.5, -0.5][arm];
        for i in 0..setting.pieces[arm] {
            let own = truth[arm] + setting.eyes.pieces * chance.normal();
            for judge in 0..setting.judges {
                let seen =
                    own + strict[judge] + side * sees[judge] + setting.eyes.look * chance.normal();
                let half_steps = (2.0 * seen).round().clamp(2.0, 10.0) as u8;
                rows.push(EyeRow {
                    arm: name.into(),
                    piece: format!("{name}{i}"),
                    role,
                    load: None,
                    shares_load: false,
                    stage: 5,
                    judge: format!("J{judge}"),
                    grade: Grade::from_half_steps(half_steps),
                });
            }
        }
    }
    let found = decide(&rows, setting.margin_de00).expect("the rows are two sound arms");
    let found = found.comparisons.into_iter().next();
    (found.expect("two arms make a pair"), truth[0] - truth[1])
}
