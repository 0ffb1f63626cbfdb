//! The smallest trial that shows what is wished for.
//!
//! Balanced trials with loads of one kind. A formula finds the size by halving, and
//! drawing trials at random confirms it.

mod confirm;
mod promise;
#[cfg(test)]
mod tests;
mod wish;

use crate::InferenceError;
use confirm::confirmed;
use promise::Promise;
pub use wish::{Alike, Answer, Limits, Power, Sharing, Size, Strictness, Wish};

/// Pieces of an arm, at least: a single one tells nothing of chance.
const LEAST_PER_ARM: usize = 2;
/// Sizes that are tried out, from the smallest that the formula finds.
const TRIED: usize = 12;
/// Loads of one arm above which more aren't looked at.
const MOST_LOADS_OF_ARM: usize = 200;
/// Pieces of one arm above which more aren't looked at.
const MOST_PER_ARM: usize = 5000;

/// The smallest trial, by pieces and by loads as [`Limits::load_as_pieces`] counts
/// them, that shows what is wished for with that power.
///
/// # Errors
/// A wish or limits that make no sense, or limits that leave no room for two pieces
/// of each arm.
///
/// ```
/// use inference::simulate::{Contrasts, ScatterOf, smallest::*};
/// let wish = Wish {
///     arms: 2,
///     contrasts: Contrasts::Against(0),
///     strictness: Strictness::Each,
///     scatter: ScatterOf::AllArms,
///     sharing: Sharing::AllArms,
///     piece_sd: 0.8,
///     load_sd: 0.5,
///     reading_sd: 0.0,
///     photos: 1,
///     keepers: 0,
///     power: 0.8,
///     difference: Some(1.6),
///     alike: None,
///     tail: 0.05,
///     equivalence_tail: 0.05,
/// };
/// let limits = Limits { pieces: 40, loads: 1, pieces_per_load: 40, load_as_pieces: 2.0 };
/// let Answer::Reached(size) = smallest(&wish, &limits, 1)? else { panic!() };
/// assert_eq!((size.per_arm, size.loads), (6, 1));
/// # Ok::<(), inference::InferenceError>(())
/// ```
pub fn smallest(wish: &Wish, limits: &Limits, seed: u64) -> Result<Answer, InferenceError> {
    wish.check()?;
    limits.check()?;
    let room = Room::of(wish, limits)?;
    let mut promise = Promise::of(wish)?;
    let mut found: Vec<Size> = Vec::new();
    let mut best: Option<Size> = None;
    for rule in room.rules() {
        let (least, most) = room.range(rule);
        if most < least {
            continue;
        }
        let mut size = |per_arm| promise.size(per_arm, room.loads(rule, per_arm));
        let Some(greatest) = size(most) else { continue };
        if best.is_none_or(|best| greatest.promised() > best.promised()) {
            best = Some(greatest);
        }
        if greatest.promised() < wish.power {
            continue;
        }
        let reaches = |size: Option<Size>| size.is_some_and(|size| size.promised() >= wish.power);
        let (mut low, mut high) = (least - 1, most);
        while high - low > 1 {
            let middle = low + (high - low) / 2;
            if reaches(size(middle)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        // The next sizes too, should drawing not confirm the first.
        let steps = (0..TRIED).map(|step| high + step * high.div_ceil(20));
        found.extend(
            steps
                .filter(|per_arm| *per_arm <= most)
                .filter_map(&mut size),
        );
    }
    let cost = |size: &Size| size.pieces as f64 + limits.load_as_pieces * size.loads as f64;
    found.sort_by(|a, b| cost(a).total_cmp(&cost(b)));
    for size in found.into_iter().take(TRIED) {
        let size = confirmed(wish, size, seed)?;
        if size.confirmed(wish.power) {
            return Ok(Answer::Reached(size));
        }
        best = Some(size);
    }
    match best {
        Some(size)
            if size
                .difference
                .or(size.alike)
                .is_some_and(|p| p.simulated.is_some()) =>
        {
            Ok(Answer::OutOfReach(size))
        }
        Some(size) => Ok(Answer::OutOfReach(confirmed(wish, size, seed)?)),
        None => Err(room.none()),
    }
}

/// Room for pieces and loads.
struct Room<'a> {
    wish: &'a Wish,
    limits: &'a Limits,
    /// Pieces of each arm at most, by their number in all.
    per_arm: usize,
}

/// How the loads follow from the pieces.
#[derive(Clone, Copy)]
enum Rule {
    /// As few as hold them; each may hold so many of each arm.
    Fill(usize),
    /// So many for each arm.
    OfArm(usize),
}

impl<'a> Room<'a> {
    fn of(wish: &'a Wish, limits: &'a Limits) -> Result<Self, InferenceError> {
        let in_all = limits.pieces / wish.arms;
        let per_arm = in_all
            .saturating_sub(wish.keepers as usize)
            .min(MOST_PER_ARM);
        let room = Self {
            wish,
            limits,
            per_arm,
        };
        let enough = |rule| {
            let (least, most) = room.range(rule);
            most >= least
        };
        if room.rules().into_iter().any(enough) {
            Ok(room)
        } else {
            Err(room.none())
        }
    }

    fn none(&self) -> InferenceError {
        InferenceError::NoRoom {
            arms: self.wish.arms,
            pieces: self.limits.pieces,
            loads: self.limits.loads,
            per_load: self.limits.pieces_per_load,
        }
    }

    fn rules(&self) -> Vec<Rule> {
        let of_arm = (self.limits.loads / self.wish.arms).min(MOST_LOADS_OF_ARM);
        match self.wish.sharing {
            Sharing::AllArms => match self.limits.pieces_per_load / self.wish.arms {
                0 => Vec::new(),
                each => vec![Rule::Fill(each)],
            },
            Sharing::OneArm => (2..=of_arm.min(self.per_arm)).map(Rule::OfArm).collect(),
        }
    }

    /// Fewest and most pieces of each arm.
    fn range(&self, rule: Rule) -> (usize, usize) {
        let (least, held) = match rule {
            Rule::Fill(each) => (LEAST_PER_ARM, each.saturating_mul(self.limits.loads)),
            Rule::OfArm(loads) => (loads, loads.saturating_mul(self.limits.pieces_per_load)),
        };
        (least, self.per_arm.min(held))
    }

    /// Loads in all.
    fn loads(&self, rule: Rule, per_arm: usize) -> usize {
        match rule {
            Rule::Fill(each) => per_arm.div_ceil(each),
            Rule::OfArm(loads) => loads * self.wish.arms,
        }
    }
}
