//! Trials drawn at random as a plan lays them out, and judged by the verdict itself.

use colour::{
    Lab,
    difference::{ciede2000, ciede2000_metric},
};
use inference::quantile;
use nalgebra::{Matrix3, Vector3};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::collections::BTreeMap;
use trial::{
    Role,
    decide::{Comparison, Row, Verdict, decide},
    plan::{Plan, Promised, Scatter},
};

/// Where all pieces start, and how all arms fade, CIELAB.
const START: [f64; 3] = [45.0, 32.0, 11.0];
const FADE: [f64; 3] = [3.0, -4.0, -1.0];

/// How often the verdict said what of one pair of arms.
#[derive(Debug, Default, Clone, Copy)]
pub struct Said {
    pub trials: usize,
    /// A difference is there.
    pub shown: usize,
    pub visible: usize,
    pub alike: usize,
}

impl Said {
    pub fn share(&self, count: usize) -> f64 {
        count as f64 / self.trials as f64
    }
}

/// Draws so many trials of a plan in which every second arm fades further, by so much
/// CIEDE2000, and counts what is said of each pair that differs, or of all if none does.
pub fn judged<'a>(
    plan: &Plan,
    promised: &'a [Promised],
    size_de00: f64,
    trials: usize,
) -> Vec<(&'a Promised, Said)> {
    let mut chance = ChaCha8Rng::seed_from_u64(77);
    let second = |name: &str| {
        plan.arms
            .iter()
            .position(|arm| arm.name == name)
            .expect("an arm")
            % 2
            == 1
    };
    let mut said: Vec<(&Promised, Said)> = promised
        .iter()
        .filter(|pair| size_de00 == 0.0 || second(&pair.first) != second(&pair.second))
        .map(|pair| (pair, Said::default()))
        .collect();
    for _ in 0..trials {
        let found = draw(plan, size_de00, &mut chance);
        for (pair, said) in &mut said {
            let of_pair = |c: &&Comparison| {
                [&c.a, &c.b] == [&pair.first, &pair.second]
                    || [&c.b, &c.a] == [&pair.first, &pair.second]
            };
            let comparison = found.iter().find(of_pair).expect("every pair is compared");
            said.trials += 1;
            said.shown += usize::from(comparison.p < 0.05);
            said.visible += usize::from(comparison.verdict == Verdict::Visible);
            said.alike += usize::from(matches!(
                comparison.verdict,
                Verdict::Alike | Verdict::Small
            ));
        }
    }
    said
}

fn draw(plan: &Plan, size_de00: f64, chance: &mut ChaCha8Rng) -> Vec<Comparison> {
    let scatter: Scatter = plan.scatter.clone().unwrap_or_default();
    let stage = plan.rounds.max(1);
    let faded = Vector3::from(START) + Vector3::from(FADE);
    let further = reach(faded, size_de00);
    let metric = Matrix3::from(ciede2000_metric(lab(faded + further / 2.0)));
    // From lengths in CIEDE2000 to CIELAB, the same in every direction.
    let even = metric
        .cholesky()
        .expect("a metric")
        .l()
        .transpose()
        .try_inverse()
        .expect("a metric");
    let mut noise = |sd: f64| {
        let normal = |chance: &mut ChaCha8Rng| quantile::normal(chance.random_range(1e-12..1.0));
        even * Vector3::from_fn(|_, _| sd * normal(chance))
    };
    let order = plan.order();
    let trial = plan.new_trial(&order);
    let mut loads: BTreeMap<String, Vector3<f64>> = BTreeMap::new();
    let mut rows = Vec::new();
    for (place, arm) in trial.arms.iter().enumerate() {
        let kept = arm.pieces.iter().any(|piece| piece.role == Role::Keeper);
        let effect = if place % 2 == 1 {
            further
        } else {
            Vector3::zeros()
        };
        for piece in arm
            .pieces
            .iter()
            .filter(|piece| piece.role != Role::Witness)
        {
            let own = Vector3::from(START) + noise(scatter.piece_sd_de00);
            let now = match piece.role {
                Role::Keeper => own,
                _ => {
                    let load = piece.load.clone().unwrap_or_default();
                    let of_load = *loads
                        .entry(load)
                        .or_insert_with(|| noise(scatter.load_sd_de00));
                    // What the plan calls scatter of pieces is of their changes; against a
                    // keeper it lies in how they were dyed.
                    let washed = if kept {
                        Vector3::zeros()
                    } else {
                        noise(scatter.piece_sd_de00)
                    };
                    own + Vector3::from(FADE) + effect + of_load + washed
                }
            };
            for (stage, colour) in [(0, own), (stage, now)] {
                rows.push(Row {
                    arm: arm.name.clone(),
                    piece: piece.code.clone(),
                    role: piece.role,
                    load: piece.load.clone(),
                    photo: None,
                    stated: None,
                    stage,
                    lab: lab(colour + noise(scatter.reading_sd_de00)),
                });
            }
        }
    }
    decide(&rows, plan.margin.de00())
        .expect("a sound trial")
        .comparisons
}

/// A step along the fade that is so long in CIEDE2000.
fn reach(from: Vector3<f64>, size_de00: f64) -> Vector3<f64> {
    let along = Vector3::from(FADE).normalize();
    let (mut near, mut far) = (0.0, 30.0);
    for _ in 0..60 {
        let middle = 0.5 * (near + far);
        if ciede2000(lab(from), lab(from + along * middle)) < size_de00 {
            near = middle;
        } else {
            far = middle;
        }
    }
    along * near
}

fn lab(v: Vector3<f64>) -> Lab {
    Lab::new(v.x, v.y, v.z)
}

/// Plans that are tried: the documented examples, and one as plain as can be.
pub const PLANS: [(&str, &str); 4] = [
    (
        "two arms",
        include_str!("../../../../docs/plans/two-arms.toml"),
    ),
    (
        "after-treatments by temperature",
        include_str!("../../../../docs/plans/after-treatments-by-temperature.toml"),
    ),
    (
        "shade ladder",
        include_str!("../../../../docs/plans/shade-ladder.toml"),
    ),
    (
        "four pieces, no keeper",
        r#"
        question = "Is there a difference?"
        margin = 1.7
        rounds = 1
        stages = [0, 1]
        arms = [{ name = "a", pieces = 4 }, { name = "b", pieces = 4 }]
    "#,
    ),
];
