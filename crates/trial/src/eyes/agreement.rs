//! How far the eyes of a session agree: with each other, with themselves, with readings.

use super::{Judging, PairKind, Sitting, Way};
use crate::text;
use crate::{
    Reading,
    side_by_side::{Sight, labs},
};
use colour::grade::{self, Grade};
use inference::{
    agreement::{Apart, alpha, kappa},
    quantile, share,
    summary::Summary,
};
use serde::Serialize;
use std::collections::BTreeMap;

/// Half-steps of a grey scale, as categories.
const CATEGORIES: usize = 9;
/// Pairs below which agreement is not worked out: its interval would say nothing.
const FEWEST_PAIRS: usize = 4;
const LEVEL: f64 = 0.95;

/// How far the eyes of one closed session agree.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Agreement {
    /// The session's number on the bench.
    pub session: i64,
    /// After how many rounds.
    pub stage: u32,
    /// How pairs were looked at.
    pub way: Way,
    /// People with each other, with an interval.
    pub people: Coefficient,
    /// Each person on pairs they saw twice; empty where nothing came twice.
    pub repeats: Vec<Repeats>,
    /// Each person on pairs without a difference; empty where there were none.
    pub catch_pairs: Vec<CatchPairs>,
    /// Each person against readings; empty where nothing was read.
    pub with_instrument: Vec<WithInstrument>,
}

/// A coefficient of agreement, 1 for perfect and 0 for chance, or why there is none.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Coefficient {
    /// Weighted kappa of two, Krippendorff's alpha of more; squared half-steps.
    pub value: Option<f64>,
    /// Its 95 % interval; none where all agree, from which one can't tell.
    pub interval: Option<[f64; 2]>,
    /// Pairs that two people or more graded.
    pub pairs: usize,
    /// How many people.
    pub judges: usize,
    /// What this means, in a sentence.
    pub plain: String,
}

/// A person's two looks at the same pairs.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Repeats {
    /// Who.
    pub judge: String,
    /// Pairs they graded twice.
    pub pairs: usize,
    /// Of these, how many got the same grade both times.
    pub same: usize,
    /// Of these, how many got grades a half-step apart at most.
    pub near: usize,
    /// Standard deviation of one look, grades.
    pub sd: f64,
    /// The share of the same grade that this leaves room for (95 %).
    pub same_interval: [f64; 2],
}

/// What a person saw where nothing was.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CatchPairs {
    /// Who.
    pub judge: String,
    /// Pairs without a difference that they graded.
    pub pairs: usize,
    /// Of these, how many got a grade below 5.
    pub seen: usize,
    /// The lowest grade among them.
    pub lowest: String,
    /// The share that this leaves room for (95 %).
    pub interval: [f64; 2],
    /// Whether a difference of a full grade or more was seen, or one in more than half of them.
    pub fails: bool,
}

/// A person's grades beside those of readings of the same pieces.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WithInstrument {
    /// Who.
    pub judge: String,
    /// Of staining (ISO 105-A04), or else of change in colour (ISO 105-A05).
    pub staining: bool,
    /// Pairs that were both graded and read.
    pub pairs: usize,
    /// Mean of grade by eye less grade by readings; below 0: the eye is stricter.
    pub mean: f64,
    /// Its 95 % interval; none with fewer than two pairs or without scatter.
    pub mean_interval: Option<[f64; 2]>,
    /// Weighted kappa and its interval, or why there is none.
    pub kappa: Coefficient,
}

/// Works out how far the eyes of one session agree. Readings of the same pieces and
/// stage are graded by the formulas of ISO 105-A05 and A04.
pub fn agreement(judging: &Judging, readings: &[Reading]) -> Agreement {
    let instrument = by_readings(judging, readings);
    let each = |of: &dyn Fn(&Sitting) -> Option<CatchPairs>| -> Vec<CatchPairs> {
        judging.sittings.iter().filter_map(of).collect()
    };
    let mut with_instrument = Vec::new();
    for sitting in &judging.sittings {
        for staining in [false, true] {
            with_instrument.extend(beside(judging, sitting, &instrument, staining));
        }
    }
    Agreement {
        session: judging.id,
        stage: judging.session.stage,
        way: judging.session.way,
        people: people(judging),
        repeats: judging.sittings.iter().filter_map(repeats).collect(),
        catch_pairs: each(&|sitting| catch_pairs(judging, sitting)),
        with_instrument,
    }
}

/// Half-steps from 0 (grade 1) to 8 (grade 5).
fn category(grade: Grade) -> usize {
    (2.0 * grade.value()) as usize - 2
}

/// First looks of a person, by the number of the pair.
fn first_looks(sitting: &Sitting) -> BTreeMap<usize, Grade> {
    let mut first = BTreeMap::new();
    for (pair, grade) in sitting.grades() {
        first.entry(pair).or_insert(grade);
    }
    first
}

fn people(judging: &Judging) -> Coefficient {
    let looks: Vec<_> = judging.sittings.iter().map(first_looks).collect();
    let judges = looks.iter().filter(|own| !own.is_empty()).count();
    // Pairs without a difference tell of steadiness, not of agreement on differences.
    let things: Vec<Vec<usize>> = (0..judging.session.pairs.len())
        .filter(|pair| judging.session.pairs[*pair].kind != PairKind::Catch)
        .map(|pair| {
            let grades = looks.iter().filter_map(|own| own.get(&pair));
            grades.map(|grade| category(*grade)).collect()
        })
        .filter(|own: &Vec<usize>| own.len() > 1)
        .collect();
    let pairs = things.len();
    if judges < 2 {
        return none(pairs, judges, text::eyes::it_takes_two_people_to_agree());
    }
    if pairs < FEWEST_PAIRS {
        return none(
            pairs,
            judges,
            &text::eyes::it_takes_pairs_that_two_people_graded(FEWEST_PAIRS, pairs),
        );
    }
    let found = if judges == 2 {
        let both: Vec<_> = things.iter().map(|own| (own[0], own[1])).collect();
        kappa(&both, CATEGORIES, Apart::SquaredSteps)
            .map(|found| (found.kappa, found.interval(LEVEL)))
    } else {
        alpha(&things, CATEGORIES, Apart::SquaredSteps)
            .map(|found| (found.alpha, found.interval(LEVEL)))
    };
    // What is left to go wrong is that all, or all but one pair, got one grade.
    match found {
        Ok((value, interval)) => coefficient(value, interval, pairs, judges),
        Err(_) => none(pairs, judges, text::eyes::nearly_all_got_one_and_the_same()),
    }
}

fn none(pairs: usize, judges: usize, plain: &str) -> Coefficient {
    Coefficient {
        value: None,
        interval: None,
        pairs,
        judges,
        plain: plain.to_owned(),
    }
}

fn coefficient(
    value: f64,
    interval: Option<inference::Interval>,
    pairs: usize,
    judges: usize,
) -> Coefficient {
    // Words by what the interval allows, not by its middle.
    let low = interval.map_or(value, |interval| interval.low);
    let plain = match (interval, low) {
        (None, _) => text::eyes::they_agree_on_all_pairs_how_seldom(pairs),
        (_, low) if low > 0.8 => text::eyes::they_agree_closely().to_owned(),
        (_, low) if low > 0.5 => text::eyes::they_agree_well().to_owned(),
        (_, low) if low > 0.0 => text::eyes::they_agree_better_than_chance_how_well().to_owned(),
        _ => text::eyes::that_they_agree_better_than_by_chance().to_owned(),
    };
    Coefficient {
        value: Some(value),
        interval: interval.map(|interval| [interval.low, interval.high]),
        pairs,
        judges,
        plain,
    }
}

fn repeats(sitting: &Sitting) -> Option<Repeats> {
    let mut looks: BTreeMap<usize, Vec<Grade>> = BTreeMap::new();
    for (pair, grade) in sitting.grades() {
        looks.entry(pair).or_default().push(grade);
    }
    let steps: Vec<usize> = looks
        .values()
        .filter(|own| own.len() > 1)
        .map(|own| category(own[0]).abs_diff(category(own[1])))
        .collect();
    let pairs = steps.len();
    let same = steps.iter().filter(|step| **step == 0).count();
    let interval = share::exact(same, pairs, LEVEL).ok()?;
    let squares: f64 = steps.iter().map(|step| (0.5 * *step as f64).powi(2)).sum();
    Some(Repeats {
        judge: sitting.judge.name.clone(),
        pairs,
        same,
        near: steps.iter().filter(|step| **step <= 1).count(),
        // Two looks differ by twice the variance of one.
        sd: (squares / (2.0 * pairs as f64)).sqrt(),
        same_interval: [interval.low, interval.high],
    })
}

fn catch_pairs(judging: &Judging, sitting: &Sitting) -> Option<CatchPairs> {
    let grades: Vec<Grade> = sitting
        .grades()
        .filter(|(pair, _)| judging.session.pairs[*pair].kind == PairKind::Catch)
        .map(|(_, grade)| grade)
        .collect();
    let lowest = *grades.iter().min()?;
    let seen = grades.iter().filter(|grade| grade.value() < 5.0).count();
    let interval = share::exact(seen, grades.len(), LEVEL).ok()?;
    Some(CatchPairs {
        judge: sitting.judge.name.clone(),
        pairs: grades.len(),
        seen,
        lowest: lowest.to_string(),
        interval: [interval.low, interval.high],
        fails: lowest.value() <= 4.0 || 2 * seen > grades.len(),
    })
}

/// Grades by readings of each pair that was read, by the pair's number.
fn by_readings(judging: &Judging, readings: &[Reading]) -> BTreeMap<usize, Grade> {
    let stage = judging.session.stage;
    let sight = |piece, stage| Sight { stage, piece };
    let graded = |of: [Sight; 2], staining: bool| {
        let [now, other] = labs(readings, of)?;
        Some(match staining {
            true => grade::stain(other, now).grade,
            false => grade::fade(other, now).grade,
        })
    };
    let pairs = judging.session.pairs.iter().enumerate();
    pairs
        .filter_map(|(at, pair)| {
            let now = sight(pair.piece, stage);
            let found = match (pair.kind, pair.cloths[1].what) {
                (PairKind::Change, super::What::Piece(keeper)) => {
                    graded([now, sight(keeper, stage)], false)
                }
                (PairKind::Staining, _) => graded([now, sight(pair.piece, 0)], true),
                _ => None,
            };
            Some((at, found?))
        })
        .collect()
}

fn beside(
    judging: &Judging,
    sitting: &Sitting,
    instrument: &BTreeMap<usize, Grade>,
    staining: bool,
) -> Option<WithInstrument> {
    let wanted = match staining {
        true => PairKind::Staining,
        false => PairKind::Change,
    };
    let both: Vec<(Grade, Grade)> = first_looks(sitting)
        .into_iter()
        .filter(|(pair, _)| judging.session.pairs[*pair].kind == wanted)
        .filter_map(|(pair, grade)| Some((grade, *instrument.get(&pair)?)))
        .collect();
    if both.is_empty() {
        return None;
    }
    let steps: Vec<f64> = both
        .iter()
        .map(|(eye, read)| eye.value() - read.value())
        .collect();
    let summary = Summary::of(&steps)
        .ok()
        .filter(|found| found.variance > 0.0);
    let categories: Vec<_> = both
        .iter()
        .map(|(eye, read)| (category(*eye), category(*read)))
        .collect();
    let kappa = if both.len() < FEWEST_PAIRS {
        none(
            both.len(),
            1,
            &text::eyes::it_takes_pairs_here(FEWEST_PAIRS, both.len()),
        )
    } else {
        match kappa(&categories, CATEGORIES, Apart::SquaredSteps) {
            Ok(found) => coefficient(found.kappa, found.interval(LEVEL), both.len(), 1),
            Err(_) => none(both.len(), 1, text::eyes::nearly_all_got_one_and_the_same()),
        }
    };
    Some(WithInstrument {
        judge: sitting.judge.name.clone(),
        staining,
        pairs: both.len(),
        mean: steps.iter().sum::<f64>() / steps.len() as f64,
        mean_interval: summary.map(|found| {
            let df = (found.count - 1) as f64;
            let half = quantile::student(0.5 + LEVEL / 2.0, df) * found.mean_variance().sqrt();
            [found.mean - half, found.mean + half]
        }),
        kappa,
    })
}
