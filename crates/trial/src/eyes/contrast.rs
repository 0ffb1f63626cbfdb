//! How far two arms' grades lie apart, and how far off that may be.

use super::means::Means;
use inference::{permutation, quantile, summary::Summary};
use std::collections::{BTreeMap, BTreeSet};

/// Half-steps of the scale, grades.
const STEP: f64 = 0.5;
/// The least scatter of one look at a piece about its arm's mean, a standard deviation
/// in grades: pieces are never quite alike and eyes never quite steady, though half-steps
/// may hide it. From memory of repeat gradings, no source.
const LEAST_SCATTER: f64 = 0.25;
/// Scatter of grades about their arm's mean, seen with half-steps, from which on rounding
/// to these no longer shifts a mean (a Gaussian's shift is below 0.03 then).
const EVENED_OUT: f64 = 0.25;
/// The least standard deviation, grades, by which people differ in how great they see a
/// difference of two arms. From memory, no source.
const LEAST_OF_JUDGES: f64 = 0.15;
/// The same where one person judged, of whom nothing shows how unlike others they see.
const OF_ONE_JUDGE: f64 = 0.33;
/// How far the mean of a Gaussian falls, in its standard deviations, where its upper half
/// is cut off, twice: the cut share times this is the shift.
const CUT: f64 = 0.8;
/// The least standard deviation, grades, of what is cut off there: what is left of it
/// scatters less than the whole did. From memory, no source.
const LEAST_CUT: f64 = 0.4;

/// What is counted as one of an arm's own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Units {
    /// Pieces; loads are not noted, or all were in one, or they held both arms.
    Pieces,
    /// Pieces, though each arm had one load, its own.
    OwnLoad,
    /// Loads, of which each arm had several of its own.
    Loads,
}

/// The difference of two arms with all that makes it uncertain.
pub(super) struct Contrast {
    pub units: Units,
    /// Mean grade of each arm.
    pub means: [f64; 2],
    /// Grades of the units, for dealing them out anew.
    pub of_units: [Vec<f64>; 2],
    pub judges: usize,
    /// Scatter of the units, a variance for each arm.
    pub variances: [f64; 2],
    /// How people differ in how they see the difference: variance and degrees of
    /// freedom, none where it is the least that is taken for granted.
    pub of_judges: (f64, Option<f64>),
    /// By how much each arm's true mean may lie above and below the one seen because
    /// grades come in half-steps and end at 5 and 1.
    pub room: [(f64, f64); 2],
}

impl Contrast {
    /// Of the two arms numbered 0 and 1. None where one of them has no piece.
    pub fn of(means: &Means) -> Option<Self> {
        let units = units(means);
        let of_units = [0, 1].map(|arm| unit_means(means, arm, units));
        let arm_means = [0, 1].map(|arm| mean(pieces(means, arm)));
        let [Some(a), Some(b)] = arm_means else {
            return None;
        };
        let judges = means.judges_per_piece();
        // A unit's mean over people is steadier than one look, but pieces differ too.
        let least = LEAST_SCATTER * LEAST_SCATTER * (1.0 + 1.0 / judges) / 2.0;
        let variances = [0, 1].map(|arm| {
            let seen = Summary::of(&of_units[arm]).map_or(least, |found| found.variance);
            seen.max(least)
        });
        let scatter = look_scatter(means);
        Some(Self {
            units,
            means: [a, b],
            judges: means.judges.len(),
            variances,
            of_judges: judges_scatter(means),
            room: [0, 1].map(|arm| room(means, arm, [a, b][arm], scatter)),
            of_units,
        })
    }

    /// Grade of the first arm less that of the second.
    pub fn difference(&self) -> f64 {
        self.means[0] - self.means[1]
    }

    /// Units of the arm with fewer.
    pub fn fewest(&self) -> usize {
        self.of_units[0].len().min(self.of_units[1].len())
    }

    /// The interval of the difference with `level` between its ends, such as 0.95; none
    /// where an arm has one unit.
    pub fn interval(&self, level: f64) -> Option<(f64, f64)> {
        let counts = [0, 1].map(|arm| self.of_units[arm].len());
        let half = self.half(counts, self.judges, level)?;
        let [(up_a, down_a), (up_b, down_b)] = self.room;
        let seen = self.difference();
        Some((seen - half - down_a - up_b, seen + half + up_a + down_b))
    }

    /// Half of the interval's width by chance alone with so many units and people.
    pub fn half(&self, counts: [usize; 2], judges: usize, level: f64) -> Option<f64> {
        let (error, df) = self.error(counts, judges)?;
        Some(quantile::student(0.5 + level / 2.0, df) * error)
    }

    /// How often chance would show as great a difference if the true one were just the
    /// margin, 0 to 1; 1 where an arm has one unit.
    pub fn chance_of(&self, margin: f64) -> f64 {
        let counts = [0, 1].map(|arm| self.of_units[arm].len());
        let beyond = self.difference().abs() - self.coarseness() - margin;
        self.error(counts, self.judges).map_or(1.0, |(error, df)| {
            quantile::student_above(beyond / error, df)
        })
    }

    /// Standard error of the difference with so many units and people, and its
    /// degrees of freedom; none where an arm has one unit.
    fn error(&self, counts: [usize; 2], judges: usize) -> Option<(f64, f64)> {
        if counts.iter().any(|count| *count < 2) {
            return None;
        }
        let parts = [0, 1].map(|arm| self.variances[arm] / counts[arm] as f64);
        let (of_judges, judges_df) = self.of_judges;
        let shared = of_judges / judges as f64;
        let variance = parts[0] + parts[1] + shared;
        // Satterthwaite's degrees of freedom; what is taken for granted has endless ones.
        let mut spread: f64 = [0, 1]
            .iter()
            .map(|arm| parts[*arm] * parts[*arm] / (counts[*arm] - 1) as f64)
            .sum();
        if let Some(df) = judges_df {
            spread += shared * shared / df;
        }
        Some((variance.sqrt(), variance * variance / spread))
    }

    /// By how much half-steps and the scale's ends may hide or make a difference.
    pub fn coarseness(&self) -> f64 {
        let [(up_a, down_a), (up_b, down_b)] = self.room;
        (up_a + down_b).max(down_a + up_b)
    }

    /// How the units' difference compares with all ways of dealing them out.
    pub fn dealt_anew(&self) -> Option<(u64, u64)> {
        let [a, b] = &self.of_units;
        if self.fewest() < 2 || a.len() + b.len() > 16 {
            return None;
        }
        let found = permutation::mean_difference(a, b).ok()?;
        Some((found.as_extreme, found.splits))
    }
}

fn pieces<'m>(means: &'m Means, arm: usize) -> impl Iterator<Item = f64> + 'm {
    let of_arm = means.pieces.iter().filter(move |piece| piece.arm == arm);
    of_arm.map(|piece| piece.mean)
}

fn mean(values: impl Iterator<Item = f64>) -> Option<f64> {
    let (sum, count) = values.fold((0.0, 0.0), |(s, n), v| (s + v, n + 1.0));
    (count > 0.0).then(|| sum / count)
}

fn units(means: &Means) -> Units {
    let loads = |arm: usize| -> Option<BTreeSet<&str>> {
        let of_arm = means.pieces.iter().filter(|piece| piece.arm == arm);
        of_arm.map(|piece| piece.load).collect()
    };
    match (loads(0), loads(1)) {
        (Some(a), Some(b)) if a.is_disjoint(&b) => match (a.len(), b.len()) {
            (1, 1) => Units::OwnLoad,
            _ => Units::Loads,
        },
        _ => Units::Pieces,
    }
}

fn unit_means(means: &Means, arm: usize, units: Units) -> Vec<f64> {
    if units != Units::Loads {
        return pieces(means, arm).collect();
    }
    let mut loads: BTreeMap<Option<&str>, Vec<f64>> = BTreeMap::new();
    for piece in means.pieces.iter().filter(|piece| piece.arm == arm) {
        loads.entry(piece.load).or_default().push(piece.mean);
    }
    loads
        .into_values()
        .filter_map(|of_load| mean(of_load.into_iter()))
        .collect()
}

/// Standard deviation of one person's grades of one arm's pieces; none where nobody
/// judged two pieces of an arm.
fn look_scatter(means: &Means) -> Option<f64> {
    let mut cells: BTreeMap<(usize, usize), Vec<f64>> = BTreeMap::new();
    for look in &means.looks {
        let arm = means.pieces[look.piece].arm;
        cells.entry((arm, look.judge)).or_default().push(look.grade);
    }
    let found = cells.values().filter_map(|own| Summary::of(own).ok());
    let (squares, df) = found.fold((0.0, 0.0), |(squares, df), own| {
        let own_df = (own.count - 1) as f64;
        (squares + own.variance * own_df, df + own_df)
    });
    (df > 0.0).then(|| f64::sqrt(squares / df))
}

/// By how much people differ in how great they see the difference: the variance of
/// their own differences less what chance in single looks puts into it.
fn judges_scatter(means: &Means) -> (f64, Option<f64>) {
    let least = LEAST_OF_JUDGES * LEAST_OF_JUDGES;
    let mut rests: BTreeMap<usize, [Vec<f64>; 2]> = BTreeMap::new();
    for look in &means.looks {
        let arm = means.pieces[look.piece].arm;
        rests.entry(look.judge).or_default()[arm].push(look.rest);
    }
    let mut own = Vec::new();
    let (mut squares, mut df, mut share) = (0.0, 0.0, 0.0);
    for of_judge in rests.values() {
        let [Some(a), Some(b)] = [0, 1].map(|arm| mean(of_judge[arm].iter().copied())) else {
            continue;
        };
        own.push(a - b);
        for (arm, middle) in [(0, a), (1, b)] {
            let count = of_judge[arm].len() as f64;
            share += 1.0 / count;
            df += count - 1.0;
            squares += of_judge[arm]
                .iter()
                .map(|r| (r - middle) * (r - middle))
                .sum::<f64>();
        }
    }
    let Ok(seen) = Summary::of(&own) else {
        return (OF_ONE_JUDGE * OF_ONE_JUDGE, None);
    };
    // Pieces' means took degrees of freedom away from the rests.
    let people = own.len() as f64;
    let df = df * (people - 1.0) / people;
    let by_chance = if df > 0.0 {
        squares / df * share / people
    } else {
        0.0
    };
    let found = seen.variance - by_chance;
    if found > least {
        (found, Some(people - 1.0))
    } else {
        (least, None)
    }
}

/// How far above and below the mean seen an arm's true mean may lie because grades come
/// in half-steps and end at 5 and 1.
fn room(means: &Means, arm: usize, middle: f64, scatter: Option<f64>) -> (f64, f64) {
    let scatter = scatter.unwrap_or(0.0);
    let rounded = STEP / 2.0 * (1.0 - scatter / EVENED_OUT).max(0.0);
    let grades: Vec<f64> = means.grades_of(arm).collect();
    let share = |end: f64| {
        let at_end = grades.iter().filter(|grade| (**grade - end).abs() < 1e-9);
        at_end.count() as f64 / grades.len().max(1) as f64
    };
    let cut = CUT * scatter.max(LEAST_CUT);
    // Rounding leads nowhere beyond the scale's ends. What is cut off there is not held to
    // them: a mild judge's grades are cut in one arm and not in the other.
    (
        rounded.min(5.0 - middle) + cut * share(5.0),
        rounded.min(middle - 1.0) + cut * share(1.0),
    )
}
