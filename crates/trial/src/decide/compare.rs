//! Two arms at one stage.

use super::{
    Comparison, DealtAnew, Repeatability, Verdict,
    change::Change,
    design::Contrast,
    reason::{self, Evidence},
    ruler::Ruler,
    shown::Shown,
};
use inference::scatter::mean;
use nalgebra::Vector3;

/// How often a difference may be called greater than the margin wrongly.
const RARE: f64 = 0.025;

/// Every pair of arms at one stage, in order.
pub(super) fn comparisons(
    stage: u32,
    changes: &[Change],
    margin_de00: f64,
    known: Option<&Repeatability>,
) -> Vec<Comparison> {
    let mut found = Vec::new();
    for (i, a) in changes.iter().enumerate() {
        for b in &changes[i + 1..] {
            found.push(compare(stage, [a, b], changes, margin_de00, known));
        }
    }
    weigh_together(&mut found);
    found
        .into_iter()
        .map(|(comparison, _)| comparison)
        .collect()
}

/// A comparison with the chance of seeing as much if the true difference were
/// just the margin.
fn compare(
    stage: u32,
    [a, b]: [&Change; 2],
    all: &[Change],
    margin_de00: f64,
    known: Option<&Repeatability>,
) -> (Comparison, f64) {
    let starts: Vec<_> = a.starts.iter().chain(&b.starts).copied().collect();
    let start = mean(&starts).unwrap_or_else(Vector3::zeros);
    let contrast = Contrast::of(a, b, all, known);
    let [change_a, change_b] = contrast.changes;
    let ruler = Ruler::between(start + change_a, start + change_b);
    let shown = Shown::of(&ruler, &contrast, [a, b]);
    let (low, high, below) = (shown.low, shown.high, shown.below);
    let one_piece = a.pieces.len().min(b.pieces.len()) < 2;
    let verdict = if one_piece {
        Verdict::Open
    } else if low > margin_de00 {
        Verdict::Visible
    } else if below < margin_de00 && low > 0.0 {
        Verdict::Small
    } else if below < margin_de00 {
        Verdict::Alike
    } else {
        Verdict::Open
    };
    let dealt_anew = DealtAnew::of(&ruler, &contrast, [a, b]);
    let reason = reason::sentence(&Evidence {
        stage,
        a,
        b,
        margin_de00,
        de00: ruler.de00,
        verdict,
        contrast: &contrast,
        shown: &shown,
        dealt_anew,
        checked: known.is_some(),
    });
    let comparison = Comparison {
        stage,
        a: a.arm.to_owned(),
        b: b.arm.to_owned(),
        de00: ruler.de00,
        low,
        high,
        along: shown.along,
        dealt_anew,
        p: (2.0 * shown.chance_of(0.0)).min(1.0),
        verdict,
        reason,
    };
    (comparison, shown.chance_of(margin_de00))
}

/// Says of each visible difference whether it stands when all pairs of the stage
/// are weighed together (Holm, Scandinavian Journal of Statistics 6 (1979) 65-70).
/// The verdict stays that of the plain interval.
fn weigh_together(found: &mut [(Comparison, f64)]) {
    let pairs = found.len();
    if pairs < 2 {
        return;
    }
    let mut order: Vec<usize> = (0..pairs).collect();
    order.sort_by(|&i, &j| found[i].1.total_cmp(&found[j].1));
    let mut stands = true;
    for (rank, &i) in order.iter().enumerate() {
        let (comparison, chance) = &mut found[i];
        stands &= *chance * (pairs - rank) as f64 <= RARE;
        if comparison.verdict == Verdict::Visible {
            comparison.reason.push_str(&reason::together(pairs, stands));
        }
    }
}
