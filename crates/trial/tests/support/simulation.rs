//! Trials drawn at random whose true difference is known.

use colour::{Lab, difference::ciede2000};
use inference::quantile;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use trial::{
    Role,
    decide::{Comparison, Row, Verdict, decide},
};

/// The margin of all these trials, CIEDE2000 units.
pub const MARGIN: f64 = 1.0;

/// Standard deviations of L*, a*, b* of pieces of one arm at the start and of one
/// reading. From memory of small dye baths, no source.
const PIECES: [f64; 3] = [0.4, 0.25, 0.3];
const READING: [f64; 3] = [0.15, 0.1, 0.12];

/// One kind of trial.
#[derive(Clone, Copy)]
pub struct Setting {
    /// Test pieces in each arm.
    pub pieces: [usize; 2],
    /// One keeper per arm, or each piece against its own start.
    pub keeper: bool,
    /// Standard deviations of L*, a*, b* of what washing does to a piece.
    pub washing: [f64; 3],
    /// How much more the second arm's pieces scatter by washing.
    pub second_scatters: f64,
    /// True CIEDE2000 of the two arms' changes.
    pub truth_de00: f64,
}

/// How often each thing came about.
#[derive(Default)]
pub struct Count {
    pub trials: usize,
    pub visible: usize,
    pub small: usize,
    pub alike: usize,
    pub open: usize,
    /// The interval held the truth.
    pub covered: usize,
}

impl Count {
    /// A count as a share of all trials.
    pub fn share(&self, count: usize) -> f64 {
        count as f64 / self.trials as f64
    }
}

/// Draws that many trials from a seed and decides on each.
pub fn count(setting: Setting, trials: usize, seed: u64) -> Count {
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let mut count = Count::default();
    for _ in 0..trials {
        let found = draw(setting, &mut chance);
        count.trials += 1;
        match found.verdict {
            Verdict::Visible => count.visible += 1,
            Verdict::Small => count.small += 1,
            Verdict::Alike => count.alike += 1,
            Verdict::Open => count.open += 1,
        }
        let held =
            found.low <= setting.truth_de00 + 1e-6 && setting.truth_de00 <= found.high + 1e-6;
        count.covered += usize::from(held);
    }
    count
}

fn draw(setting: Setting, chance: &mut ChaCha8Rng) -> Comparison {
    let start = [45.0, 32.0, 11.0];
    let first = [3.0, -4.0, -1.0];
    let second = second_change(start, first, setting.truth_de00, chance);
    let mut rows = Vec::new();
    for (arm, change, stretch, pieces) in [
        ("first", first, 1.0, setting.pieces[0]),
        ("second", second, setting.second_scatters, setting.pieces[1]),
    ] {
        let mut put = |name: String, role, stage, lab: [f64; 3], chance: &mut ChaCha8Rng| {
            rows.push(Row {
                arm: arm.into(),
                piece: name,
                role,
                load: None,
                stage,
                lab: Lab::from(noisy(lab, READING, 1.0, chance)),
            });
        };
        for i in 0..pieces {
            let own = noisy(start, PIECES, 1.0, chance);
            put(format!("{arm} {i}"), Role::Test, 0, own, chance);
            let washed = noisy(plus(own, change), setting.washing, stretch, chance);
            put(format!("{arm} {i}"), Role::Test, 5, washed, chance);
        }
        if setting.keeper {
            let own = noisy(start, PIECES, 1.0, chance);
            put(format!("{arm} keeper"), Role::Keeper, 0, own, chance);
            put(format!("{arm} keeper"), Role::Keeper, 5, own, chance);
        }
    }
    decide(&rows, MARGIN)
        .expect("the rows are two sound arms")
        .comparisons
        .remove(0)
}

/// A change of the second arm that lies at exactly the true difference from the
/// first, in a direction drawn at random.
fn second_change(
    start: [f64; 3],
    first: [f64; 3],
    truth_de00: f64,
    chance: &mut ChaCha8Rng,
) -> [f64; 3] {
    let direction = noisy([0.0; 3], [1.0; 3], 1.0, chance);
    let at = |reach: f64| plus(first, direction.map(|v| v * reach));
    let (mut near, mut far) = (0.0, 20.0);
    for _ in 0..60 {
        let middle = 0.5 * (near + far);
        let de00 = ciede2000(
            Lab::from(plus(start, first)),
            Lab::from(plus(start, at(middle))),
        );
        if de00 < truth_de00 {
            near = middle;
        } else {
            far = middle;
        }
    }
    at(near)
}

fn plus(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

fn noisy(lab: [f64; 3], sd: [f64; 3], stretch: f64, chance: &mut ChaCha8Rng) -> [f64; 3] {
    let mut out = lab;
    for (value, sd) in out.iter_mut().zip(sd) {
        *value += sd * stretch * quantile::normal(chance.random_range(1e-12..1.0));
    }
    out
}
