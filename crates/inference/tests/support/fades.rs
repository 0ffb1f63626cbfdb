//! Drawn fades of pieces whose truth is known, and how often intervals hold it.

use inference::{
    Interval,
    chance::Chance,
    decay::{Curve, Question, Round, Shape, Shared, Value, fit},
};

/// A kind of trial.
#[derive(Debug, Clone, Copy)]
pub struct Setting {
    /// Test pieces.
    pub pieces: usize,
    /// Rounds at which they are looked at.
    pub stages: &'static [u32],
    /// What is truly left.
    pub truth: Curve,
    /// Relative error (SD) of one reading.
    pub reading: f64,
    /// How much pieces differ in what they lose, and in how fast (SD, as a share).
    pub own: [f64; 2],
    /// Whether an unwashed thing read beside them is what they are compared with.
    pub keeper: bool,
    /// A chance, out of 1, that a look is missing.
    pub missing: f64,
}

/// The level whose passing is asked for: half of what leaves has left.
pub fn level(truth: &Curve) -> f64 {
    (1.0 + truth.floor) / 2.0
}

/// The values of one trial, as ratios to the start and to what is kept.
pub fn values(setting: &Setting, chance: &mut Chance) -> Vec<Value> {
    let read = |chance: &mut Chance| 1.0 + setting.reading * chance.normal();
    let kept: Vec<f64> = (0..=setting.stages.len())
        .map(|_| if setting.keeper { read(chance) } else { 1.0 })
        .collect();
    let mut found = Vec::new();
    for piece in 0..setting.pieces {
        let [loses, speeds] = setting.own.map(|sd| 1.0 + sd * chance.normal());
        let own = Curve {
            floor: (1.0 - (1.0 - setting.truth.floor) * loses).clamp(0.0, 1.0),
            rate: setting.truth.rate * speeds.max(0.05),
        };
        let start = read(chance) / kept[0];
        for (at, &rounds) in setting.stages.iter().enumerate() {
            let rounds = f64::from(rounds);
            let now = own.left(rounds) * read(chance) / kept[at + 1];
            let lost =
                setting.missing > 0.0 && (chance.below(1000) as f64) < 1000.0 * setting.missing;
            if !lost {
                let left = now / start;
                found.push(Value {
                    piece,
                    rounds,
                    left,
                });
            }
        }
    }
    found
}

/// How often each interval held its truth, and what else came of the trials; shares
/// from 0 to 1.
#[derive(Debug, Clone, Copy, Default)]
pub struct Held {
    /// Share left at the last stage.
    pub last: f64,
    /// Share left at twice the last stage.
    pub twice: f64,
    /// What stays for good.
    pub floor: f64,
    /// Round at which half of what leaves has left.
    pub passing: f64,
    /// Mean width of the interval at the last stage.
    pub width: f64,
    /// Trials in which the criterion chose no change, the line, the curve.
    pub shapes: [f64; 3],
}

/// Draws so many trials.
pub fn held(setting: &Setting, trials: u64) -> Held {
    let shared = if setting.keeper {
        Shared {
            by_stage: 1.0,
            at_start: 1.0,
            by_others: 0.0,
        }
    } else {
        Shared::NOTHING
    };
    let mut held = Held::default();
    for trial in 0..trials {
        let mut chance = Chance::new(7919 * trial + setting.pieces as u64);
        let drawn = values(setting, &mut chance);
        let question = Question {
            draws: 399,
            ..Question::usual(trial)
        };
        let Ok(decay) = fit(&drawn, &shared, &question) else {
            continue;
        };
        let last = f64::from(*setting.stages.last().expect("a stage"));
        let one = 1.0 / trials as f64;
        let holds = |at: f64| {
            let found = decay.left(at).expect("within twice the rounds");
            let interval = found.interval.expect("two pieces");
            (interval.contains(setting.truth.left(at)), interval)
        };
        let count = |yes: bool| if yes { one } else { 0.0 };
        let (yes, interval) = holds(last.min(decay.furthest_round()));
        held.last += count(yes);
        held.width += one * (interval.high - interval.low);
        held.twice += count(holds((2.0 * last).min(decay.furthest_round())).0);
        held.floor += count(
            decay
                .floor_interval()
                .is_some_and(|i| i.contains(setting.truth.floor)),
        );
        let truth = setting.truth.rounds_to(level(&setting.truth));
        let ends = decay
            .passes(level(&setting.truth))
            .interval
            .expect("two pieces");
        let end = |round: Round| round.rounds().unwrap_or(f64::INFINITY);
        let passing = Interval {
            low: end(ends.0),
            high: end(ends.1),
        };
        held.passing += count(passing.contains(truth.unwrap_or(f64::INFINITY)));
        match decay.shapes.best() {
            Some(Shape::NoChange) => held.shapes[0] += one,
            Some(Shape::Line) => held.shapes[1] += one,
            Some(Shape::Curve) => held.shapes[2] += one,
            None => {}
        }
    }
    held
}
