//! Permutation of vectors.

use super::{Permutation, choose, dealable, few_enough};
use crate::text;
use crate::{InferenceError, chance::Chance, hotelling::scaled};
use nalgebra::{SMatrix, SVector};
use std::collections::BTreeMap;

/// Part of a measure within which splits count as equal.
const ROUNDING: f64 = 1e-10;

/// By what mean vectors are called farther apart than others.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// Hotelling's T-squared: small differences count where vectors scatter little.
    HotellingsT,
    /// The length of the difference.
    Length,
}

impl Measure {
    /// Vectors whose plain length is the measure.
    ///
    /// Hotelling's T grows with what the fixed scatter of all vectors about one mean
    /// makes of the difference, so that one whitening serves all splits.
    fn turned<const P: usize>(
        self,
        vectors: Vec<SVector<f64, P>>,
    ) -> Result<Vec<SVector<f64, P>>, InferenceError> {
        if self == Self::Length {
            return Ok(vectors);
        }
        let squares: SMatrix<f64, P, P> = vectors.iter().map(|v| v * v.transpose()).sum();
        let (sds, correlations) = scaled(&squares).ok_or(InferenceError::NoScatter)?;
        let root = correlations
            .cholesky()
            .ok_or(InferenceError::NoScatter)?
            .l();
        let turn = |v: SVector<f64, P>| {
            let unit = v.component_div(&sds);
            root.solve_lower_triangular(&unit)
                .ok_or(InferenceError::NoScatter)
        };
        vectors.into_iter().map(turn).collect()
    }

    /// Vectors that are needed for splits to differ in the measure.
    fn least(self, parts: usize) -> usize {
        match self {
            Self::HotellingsT => parts + 2,
            Self::Length => 2,
        }
    }
}

/// Counts all splits of the vectors of `a` and `b` into groups of the same sizes whose
/// means are at least as far apart.
///
/// # Errors
/// An empty group, a number that is not finite, too many splits; for Hotelling's T
/// fewer vectors than parts and two, or no scatter in some direction.
///
/// ```
/// use inference::permutation::{Measure, vectors};
/// use nalgebra::Vector2;
/// let a = [(0.0, 0.2), (0.1, 0.0), (0.2, 0.1)].map(|(x, y)| Vector2::new(x, y));
/// let b = [(1.0, 0.9), (1.2, 1.1), (0.9, 1.0)].map(|(x, y)| Vector2::new(x, y));
/// assert_eq!(vectors(&a, &b, Measure::Length)?.p(), 0.1); // 2 of 20 splits
/// # Ok::<(), inference::InferenceError>(())
/// ```
pub fn vectors<const P: usize>(
    a: &[SVector<f64, P>],
    b: &[SVector<f64, P>],
    measure: Measure,
) -> Result<Permutation, InferenceError> {
    few_enough(choose(a.len() + b.len(), a.len().min(b.len())))?;
    let (vectors, limit) = prepared(a, b, measure)?;
    let mut count = Count {
        vectors: &vectors,
        limit,
        found: NONE,
    };
    count.deal(0, a.len().min(b.len()), SVector::zeros());
    Ok(count.found)
}

/// Deals the vectors of `a` and `b` into groups of the same sizes by chance, `draws`
/// times, from a seed.
///
/// # Errors
/// As for [`vectors`] but for the number of splits; no draw; more than 2e9 vectors
/// dealt in all.
pub fn vectors_by_chance<const P: usize>(
    a: &[SVector<f64, P>],
    b: &[SVector<f64, P>],
    measure: Measure,
    draws: u64,
    seed: u64,
) -> Result<Permutation, InferenceError> {
    let (mut vectors, limit) = prepared(a, b, measure)?;
    dealable(draws, vectors.len())?;
    let mut chance = Chance::new(seed);
    let (count, least) = (vectors.len(), a.len().min(b.len()));
    let mut found = SEEN;
    for _ in 0..draws {
        let mut sum = SVector::zeros();
        for at in 0..least {
            vectors.swap(at, at + chance.below(count - at));
            sum += vectors[at];
        }
        found.count(sum.norm_squared() >= limit);
    }
    Ok(found)
}

/// Deals arms out by chance within loads only, so that what a load does to all its
/// pieces can't look like a difference: each of `pieces` is its load, whether it is of
/// the second arm, and its vector. Loads of one arm say nothing.
///
/// # Errors
/// Arms that no load holds both of ([`InferenceError::Confounded`]), and as for
/// [`vectors_by_chance`].
pub fn vectors_within_loads<const P: usize>(
    pieces: &[(usize, bool, SVector<f64, P>)],
    measure: Measure,
    draws: u64,
    seed: u64,
) -> Result<Permutation, InferenceError> {
    finite(pieces.iter().map(|(_, _, vector)| vector))?;
    let mut loads: BTreeMap<usize, Vec<(bool, SVector<f64, P>)>> = BTreeMap::new();
    for (load, second, vector) in pieces {
        loads.entry(*load).or_default().push((*second, *vector));
    }
    loads.retain(|_, own| {
        own.iter().any(|(second, _)| *second) && own.iter().any(|(second, _)| !second)
    });
    if loads.is_empty() {
        return Err(InferenceError::Confounded {
            part: text::error::loads(),
        });
    }
    let mut seconds = Vec::new();
    let mut all = Vec::new();
    let mut ends = Vec::new();
    for own in loads.values() {
        let mean = own.iter().map(|(_, v)| v).sum::<SVector<f64, P>>() / own.len() as f64;
        for (second, vector) in own {
            seconds.push(*second);
            all.push(vector - mean);
        }
        ends.push(all.len());
    }
    enough(all.len(), measure.least(P) + loads.len() - 1)?;
    dealable(draws, all.len())?;
    let vectors = measure.turned(all)?;
    let size = |seconds: &[bool]| {
        let own = vectors.iter().zip(seconds).filter(|(_, second)| **second);
        own.map(|(v, _)| v).sum::<SVector<f64, P>>().norm_squared()
    };
    let limit = size(&seconds) * (1.0 - ROUNDING);
    let mut chance = Chance::new(seed);
    let mut found = SEEN;
    for _ in 0..draws {
        let mut from = 0;
        for &end in &ends {
            chance.shuffle(&mut seconds[from..end]);
            from = end;
        }
        found.count(size(&seconds) >= limit);
    }
    Ok(found)
}

/// Counts all ways of turning vectors round whose mean is at least as far from 0: for
/// changes of single pieces, that have no arm beside them.
///
/// # Errors
/// No vector, a number that is not finite, more than 23 vectors; as for [`vectors`].
pub fn signs<const P: usize>(
    vectors: &[SVector<f64, P>],
    measure: Measure,
) -> Result<Permutation, InferenceError> {
    few_enough(libm::exp2(vectors.len() as f64))?;
    let (vectors, limit) = about_zero(vectors, measure)?;
    let mut found = NONE;
    for turned in 0..1_u64 << vectors.len() {
        let signed = vectors.iter().enumerate();
        let sum: SVector<f64, P> = signed
            .map(|(at, v)| if turned >> at & 1 == 0 { *v } else { -v })
            .sum();
        found.count(sum.norm_squared() >= limit);
    }
    Ok(found)
}

/// Turns vectors round by chance, `draws` times, from a seed.
///
/// # Errors
/// As for [`signs`] but for the number of vectors; no draw; more than 2e9 vectors
/// turned in all.
pub fn signs_by_chance<const P: usize>(
    vectors: &[SVector<f64, P>],
    measure: Measure,
    draws: u64,
    seed: u64,
) -> Result<Permutation, InferenceError> {
    let (vectors, limit) = about_zero(vectors, measure)?;
    dealable(draws, vectors.len())?;
    let mut chance = Chance::new(seed);
    let mut found = SEEN;
    for _ in 0..draws {
        let sum: SVector<f64, P> = vectors
            .iter()
            .map(|v| if chance.below(2) == 0 { *v } else { -v })
            .sum();
        found.count(sum.norm_squared() >= limit);
    }
    Ok(found)
}

const NONE: Permutation = Permutation {
    as_extreme: 0,
    splits: 0,
};
const SEEN: Permutation = Permutation {
    as_extreme: 1,
    splits: 1,
};

impl Permutation {
    fn count(&mut self, as_extreme: bool) {
        self.splits += 1;
        self.as_extreme += u64::from(as_extreme);
    }
}

struct Count<'a, const P: usize> {
    vectors: &'a [SVector<f64, P>],
    limit: f64,
    found: Permutation,
}

impl<const P: usize> Count<'_, P> {
    fn deal(&mut self, from: usize, left: usize, sum: SVector<f64, P>) {
        if left == 0 {
            self.found.count(sum.norm_squared() >= self.limit);
            return;
        }
        for at in from..=self.vectors.len() - left {
            self.deal(at + 1, left - 1, sum + self.vectors[at]);
        }
    }
}

/// Vectors less their mean in the measure, and the square of a group's sum that counts
/// as far.
fn prepared<const P: usize>(
    a: &[SVector<f64, P>],
    b: &[SVector<f64, P>],
    measure: Measure,
) -> Result<(Vec<SVector<f64, P>>, f64), InferenceError> {
    enough(a.len().min(b.len()), 1)?;
    enough(a.len() + b.len(), measure.least(P))?;
    let mut all: Vec<SVector<f64, P>> = a.iter().chain(b).copied().collect();
    finite(all.iter())?;
    let mean = all.iter().sum::<SVector<f64, P>>() / all.len() as f64;
    all.iter_mut().for_each(|v| *v -= mean);
    let all = measure.turned(all)?;
    let seen = all[..a.len()]
        .iter()
        .sum::<SVector<f64, P>>()
        .norm_squared();
    let rounding = ROUNDING * seen.max(1e-12 * all.iter().map(|v| v.norm_squared()).sum::<f64>());
    Ok((all, seen - rounding))
}

fn about_zero<const P: usize>(
    vectors: &[SVector<f64, P>],
    measure: Measure,
) -> Result<(Vec<SVector<f64, P>>, f64), InferenceError> {
    enough(vectors.len(), measure.least(P) - 1)?;
    finite(vectors.iter())?;
    let turned = measure.turned(vectors.to_vec())?;
    let seen = turned.iter().sum::<SVector<f64, P>>().norm_squared();
    let rounding =
        ROUNDING * seen.max(1e-12 * turned.iter().map(|v| v.norm_squared()).sum::<f64>());
    Ok((turned, seen - rounding))
}

fn finite<'a, const P: usize>(
    mut vectors: impl Iterator<Item = &'a SVector<f64, P>>,
) -> Result<(), InferenceError> {
    if vectors.any(|v| v.iter().any(|part| !part.is_finite())) {
        return Err(InferenceError::NotFinite);
    }
    Ok(())
}

fn enough(given: usize, least: usize) -> Result<(), InferenceError> {
    if given < least {
        Err(InferenceError::TooFew { given, least })
    } else {
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use nalgebra::Vector3;

    fn drawn(chance: &mut Chance, count: usize, shift: f64) -> Vec<Vector3<f64>> {
        let one = |_| Vector3::from_fn(|_, _| chance.normal()).add_scalar(shift);
        (0..count).map(one).collect()
    }

    #[test]
    fn draws_come_near_the_count_of_all() {
        let mut chance = Chance::new(5);
        let (a, b) = (drawn(&mut chance, 5, 0.7), drawn(&mut chance, 6, 0.0));
        for measure in [Measure::HotellingsT, Measure::Length] {
            let exact = vectors(&a, &b, measure).unwrap().p();
            let by_chance = vectors_by_chance(&a, &b, measure, 20_000, 1).unwrap().p();
            assert!((exact - by_chance).abs() < 0.012, "{exact} {by_chance}");
            let exact = signs(&b, measure).unwrap().p();
            let by_chance = signs_by_chance(&b, measure, 20_000, 1).unwrap().p();
            assert!((exact - by_chance).abs() < 0.015, "{exact} {by_chance}");
        }
    }

    #[test]
    fn loads_that_differ_hide_nothing_and_make_nothing() {
        let mut chance = Chance::new(6);
        let mut rare = 0;
        for _ in 0..200 {
            let mut pieces = Vec::new();
            for load in 0..3 {
                let shift = 20.0 * chance.normal();
                for (at, v) in drawn(&mut chance, 4, shift).into_iter().enumerate() {
                    // Arms stand unevenly over the loads.
                    pieces.push((load, at > load, v));
                }
            }
            let found = vectors_within_loads(&pieces, Measure::Length, 99, 3).unwrap();
            rare += u32::from(found.p() <= 0.05);
        }
        assert!((2..=20).contains(&rare), "{rare} of 200 at 5 %");
    }

    #[test]
    fn what_can_not_be_dealt_is_refused() {
        let few = [Vector3::new(0.0, 1.0, 2.0), Vector3::new(1.0, 1.5, 0.3)];
        let refused = vectors(&few, &few, Measure::HotellingsT);
        assert_eq!(refused, Err(InferenceError::TooFew { given: 4, least: 5 }));
        assert!(vectors(&few, &few, Measure::Length).is_ok());
        let same = [Vector3::repeat(1.0); 4];
        assert_eq!(
            vectors(&same, &same, Measure::HotellingsT),
            Err(InferenceError::NoScatter)
        );
        assert_eq!(vectors(&same, &same, Measure::Length).unwrap().p(), 1.0);
        let many = [Vector3::repeat(1.0); 40];
        assert!(matches!(
            signs(&many, Measure::Length),
            Err(InferenceError::TooManySplits { .. })
        ));
        let odd = [Vector3::repeat(f64::NAN); 4];
        assert_eq!(
            vectors(&odd, &same, Measure::Length),
            Err(InferenceError::NotFinite)
        );
        let apart = [(0, false, few[0]), (1, true, few[1])];
        let refused = vectors_within_loads(&apart, Measure::Length, 9, 1);
        assert_eq!(refused, Err(InferenceError::Confounded { part: "loads" }));
    }
}
