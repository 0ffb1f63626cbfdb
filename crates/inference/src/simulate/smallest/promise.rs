//! What a balanced trial of some size promises, by formula.

use super::{
    super::{Contrasts, ScatterOf, limits::Limits as DunnettLimits},
    Alike, Power, Sharing, Size, Strictness, Wish,
};
use crate::{InferenceError, dunnett::Dunnett, power::Test};

/// Formulas for trials of all sizes with one wish.
pub(super) struct Promise<'a> {
    wish: &'a Wish,
    dunnett: Option<DunnettLimits>,
}

/// The variance of a difference of two arms and how well it is known.
struct Error {
    variance: f64,
    df: f64,
}

impl<'a> Promise<'a> {
    pub(super) fn of(wish: &'a Wish) -> Result<Self, InferenceError> {
        let dunnett = match (wish.strictness, wish.contrasts) {
            (Strictness::Dunnett, Contrasts::Against(_)) => {
                let equal = Dunnett::equal(wish.arms - 1)?;
                Some(DunnettLimits::of(equal, wish.tail))
            }
            _ => None,
        };
        Ok(Self { wish, dunnett })
    }

    /// The trial with so many pieces for each arm and so many loads in all; none if
    /// it leaves no scatter to judge by.
    pub(super) fn size(&mut self, per_arm: usize, loads: usize) -> Option<Size> {
        let Error { variance, df } = self.error(per_arm as f64, loads as f64)?;
        let wish = self.wish;
        let tail = match (&mut self.dunnett, wish.strictness) {
            (Some(limits), _) => limits.at(df),
            (None, Strictness::Holm) => wish.tail / wish.comparisons() as f64,
            (None, _) => wish.tail,
        };
        let test = |parts, tail| Test { parts, df, tail };
        let error = variance.sqrt();
        let power = |formula| Power {
            formula,
            simulated: None,
        };
        let alike = |alike: Alike| {
            let (margin, truly) = (alike.margin / error, alike.truly / error);
            let parts = f64::from(alike.parts);
            power(test(parts, wish.equivalence_tail).equivalence(margin, truly))
        };
        Some(Size {
            per_arm,
            pieces: wish.arms * (per_arm + wish.keepers as usize),
            loads,
            difference: wish
                .difference
                .map(|size| power(test(1.0, tail).power(size.abs() / error))),
            alike: wish.alike.map(alike),
        })
    }

    fn error(&self, per_arm: f64, loads: f64) -> Option<Error> {
        let wish = self.wish;
        let reading = wish.reading_sd * wish.reading_sd / f64::from(wish.photos);
        let times = if wish.keepers > 0 { 1.0 } else { 2.0 };
        let piece = wish.piece_sd * wish.piece_sd + times * reading;
        let judged_by = match wish.scatter {
            ScatterOf::AllArms => wish.arms as f64,
            ScatterOf::EachPair => 2.0,
        };
        let (own, own_df) = match wish.sharing {
            Sharing::AllArms => (
                2.0 * piece / per_arm,
                judged_by * (per_arm - 1.0) - (loads - 1.0),
            ),
            Sharing::OneArm => {
                let of_arm = loads / wish.arms as f64;
                let load = wish.load_sd * wish.load_sd;
                (
                    2.0 * (piece / per_arm + load / of_arm),
                    2.0 * (of_arm - 1.0),
                )
            }
        };
        if own_df < 1.0 {
            return None;
        }
        if wish.keepers == 0 {
            return Some(Error {
                variance: own,
                df: own_df,
            });
        }
        let kept = f64::from(wish.keepers);
        let keeper = 2.0 * piece / kept;
        let keeper_df = judged_by * (per_arm + kept - 1.0);
        let variance = own + keeper;
        let spread = own * own / own_df + keeper * keeper / keeper_df;
        Some(Error {
            variance,
            df: variance * variance / spread,
        })
    }
}
