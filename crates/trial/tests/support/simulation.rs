//! Trials drawn at random whose true difference is known.

#[path = "count.rs"]
mod count;

use colour::{Lab, difference::ciede2000};
pub use count::Count;
use inference::quantile;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::collections::BTreeMap;
use trial::{
    Role,
    decide::{Comparison, Row, decide},
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
    /// Keepers in each arm; where there are none, each piece is against its own start.
    pub keepers: usize,
    /// How the pieces share their loads.
    pub loads: Loads,
    /// The arms differ along the way both fade, or in a direction drawn at random.
    pub along_fade: bool,
    /// Standard deviations of L*, a*, b* of what washing does to a piece.
    pub washing: [f64; 3],
    /// How much more the second arm's pieces scatter by washing.
    pub second_scatters: f64,
    /// True CIEDE2000 of the two arms' changes.
    pub truth_de00: f64,
}

/// How pieces share their loads, and what loads do.
#[derive(Clone, Copy, PartialEq)]
pub enum Loads {
    /// None is noted, and none does anything.
    None,
    /// So many loads, each with pieces of both arms.
    Shared(usize),
    /// So many loads for each arm alone.
    Own(usize),
}

/// Standard deviations of L*, a*, b* of what a load does to all its pieces.
const LOADS: [f64; 3] = [0.5, 0.3, 0.3];
/// Standard deviations of L*, a*, b* of what befalls all colours of a photo. Each
/// arm has a photo of its own at each stage, where it has keepers.
const PHOTOS: [f64; 3] = [0.6, 0.4, 0.4];

/// Draws that many trials from a seed and decides on each.
pub fn count(setting: Setting, trials: usize, seed: u64) -> Count {
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let mut count = Count::default();
    for _ in 0..trials {
        let found = draw(setting, &mut chance);
        let interval = [found.low, found.high];
        count.add(found.verdict, interval, setting.truth_de00);
    }
    count
}

fn draw(setting: Setting, chance: &mut ChaCha8Rng) -> Comparison {
    let start = [45.0, 32.0, 11.0];
    let first = [3.0, -4.0, -1.0];
    let direction = if setting.along_fade {
        first
    } else {
        noisy([0.0; 3], [1.0; 3], 1.0, chance)
    };
    let second = second_change(start, first, setting.truth_de00, direction);
    let mut rows = Vec::new();
    let mut done: BTreeMap<String, [f64; 3]> = BTreeMap::new();
    for (arm, change, stretch, pieces) in [
        ("first", first, 1.0, setting.pieces[0]),
        ("second", second, setting.second_scatters, setting.pieces[1]),
    ] {
        let photos = [0, 5].map(|_| match setting.keepers {
            0 => [0.0; 3],
            _ => noisy([0.0; 3], PHOTOS, 1.0, chance),
        });
        let mut put =
            |piece: String, role, load: &Option<String>, stage, lab, chance: &mut ChaCha8Rng| {
                let seen = plus(
                    photos[usize::from(stage > 0)],
                    noisy(lab, READING, 1.0, chance),
                );
                rows.push(Row {
                    arm: arm.into(),
                    piece,
                    role,
                    load: load.clone(),
                    photo: None,
                    stated: None,
                    stage,
                    lab: Lab::from(seen),
                });
            };
        for i in 0..pieces {
            let load = match setting.loads {
                Loads::None => None,
                Loads::Shared(count) => Some(format!("wash {}", i % count)),
                Loads::Own(count) => Some(format!("{arm} wash {}", i % count)),
            };
            let name = format!("{arm} {i}");
            let own = noisy(start, PIECES, 1.0, chance);
            put(name.clone(), Role::Test, &load, 0, own, chance);
            let of_load = load.as_ref().map_or([0.0; 3], |load| {
                *done
                    .entry(load.clone())
                    .or_insert_with(|| noisy([0.0; 3], LOADS, 1.0, chance))
            });
            let washed = noisy(plus(own, change), setting.washing, stretch, chance);
            put(name, Role::Test, &load, 5, plus(washed, of_load), chance);
        }
        for k in 0..setting.keepers {
            let name = format!("{arm} keeper {k}");
            let own = noisy(start, PIECES, 1.0, chance);
            put(name.clone(), Role::Keeper, &None, 0, own, chance);
            put(name, Role::Keeper, &None, 5, own, chance);
        }
    }
    decide(&rows, MARGIN)
        .expect("the rows are two sound arms")
        .comparisons
        .remove(0)
}

/// A change of the second arm that lies at exactly the true difference from the
/// first, in that direction.
fn second_change(
    start: [f64; 3],
    first: [f64; 3],
    truth_de00: f64,
    direction: [f64; 3],
) -> [f64; 3] {
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
