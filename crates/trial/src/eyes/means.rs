//! Mean grades of pieces when judges are strict or mild and not all judged everything.

use super::EyeRow;
use std::collections::BTreeMap;

/// Steps of the search, far more than small tables take.
const STEPS: usize = 2_000;

/// Grades of several pieces by several people, taken apart into the piece and the
/// person: grade = piece + person + rest.
pub(super) struct Means<'a> {
    /// Each piece with its arm's number and load, its mean and how many judged it.
    pub pieces: Vec<Piece<'a>>,
    /// The people.
    pub judges: Vec<&'a str>,
    /// One for each piece and person who judged it; several looks are averaged.
    pub looks: Vec<Look>,
}

pub(super) struct Piece<'a> {
    pub arm: usize,
    pub load: Option<&'a str>,
    /// As all the people together would grade it.
    pub mean: f64,
}

pub(super) struct Look {
    pub piece: usize,
    pub judge: usize,
    /// The grade, mean of repeat looks.
    pub grade: f64,
    /// What is left when piece and person are taken off.
    pub rest: f64,
}

impl<'a> Means<'a> {
    /// Of rows of one stage, each with the number of its arm. None where judges and
    /// pieces fall apart into groups that nothing joins, so that a strict judge can't
    /// be told from a faded piece, or where there is no row.
    pub fn of(rows: &[(usize, &'a EyeRow)]) -> Option<Self> {
        let mut names: BTreeMap<&str, usize> = BTreeMap::new();
        let mut judges: BTreeMap<&str, usize> = BTreeMap::new();
        let mut pieces = Vec::new();
        let mut sums: BTreeMap<(usize, usize), (f64, f64)> = BTreeMap::new();
        for (arm, row) in rows {
            let piece = *names.entry(&row.piece).or_insert_with(|| {
                pieces.push(Piece {
                    arm: *arm,
                    load: row.load.as_deref(),
                    mean: 0.0,
                });
                pieces.len() - 1
            });
            let next = judges.len();
            let judge = *judges.entry(&row.judge).or_insert(next);
            let sum = sums.entry((piece, judge)).or_default();
            *sum = (sum.0 + row.grade.value(), sum.1 + 1.0);
        }
        let mut looks: Vec<Look> = sums
            .into_iter()
            .map(|((piece, judge), (sum, count))| Look {
                piece,
                judge,
                grade: sum / count,
                rest: 0.0,
            })
            .collect();
        if looks.is_empty() || !joined(&looks, pieces.len(), judges.len()) {
            return None;
        }
        let of_judges = settle(&mut pieces, &looks, judges.len());
        for look in &mut looks {
            look.rest = look.grade - pieces[look.piece].mean - of_judges[look.judge];
        }
        let mut named = vec![""; judges.len()];
        for (name, at) in judges {
            named[at] = name;
        }
        Some(Self {
            pieces,
            judges: named,
            looks,
        })
    }

    /// How many people judged each piece, on average.
    pub fn judges_per_piece(&self) -> f64 {
        self.looks.len() as f64 / self.pieces.len() as f64
    }

    /// Grades as given to an arm's pieces.
    pub fn grades_of(&self, arm: usize) -> impl Iterator<Item = f64> {
        let in_arm = move |look: &&Look| self.pieces[look.piece].arm == arm;
        self.looks.iter().filter(in_arm).map(|look| look.grade)
    }
}

/// Fits pieces' means and judges' leanings (sum 0) by least squares, in turn.
fn settle(pieces: &mut [Piece], looks: &[Look], count: usize) -> Vec<f64> {
    let mut judges = vec![0.0; count];
    for _ in 0..STEPS {
        let mut sums = vec![(0.0, 0.0); pieces.len()];
        for look in looks {
            let sum = &mut sums[look.piece];
            *sum = (sum.0 + look.grade - judges[look.judge], sum.1 + 1.0);
        }
        for (piece, (sum, count)) in pieces.iter_mut().zip(&sums) {
            piece.mean = sum / count;
        }
        let mut sums = vec![(0.0, 0.0); count];
        for look in looks {
            let sum = &mut sums[look.judge];
            *sum = (sum.0 + look.grade - pieces[look.piece].mean, sum.1 + 1.0);
        }
        let mut found: Vec<f64> = sums.iter().map(|(sum, count)| sum / count).collect();
        let middle = found.iter().sum::<f64>() / count as f64;
        found.iter_mut().for_each(|judge| *judge -= middle);
        let moved = found.iter().zip(&judges).map(|(a, b)| (a - b).abs());
        let most = moved.fold(0.0, f64::max);
        judges = found;
        if most < 1e-12 {
            break;
        }
    }
    judges
}

/// Whether every piece and judge is joined with every other by looks.
fn joined(looks: &[Look], pieces: usize, judges: usize) -> bool {
    let mut group: Vec<usize> = (0..pieces + judges).collect();
    // So many passes reach along the longest chain.
    for _ in 0..pieces + judges {
        let mut still = true;
        for look in looks {
            let (a, b) = (look.piece, pieces + look.judge);
            let least = group[a].min(group[b]);
            still &= group[a] == group[b];
            (group[a], group[b]) = (least, least);
        }
        if still {
            break;
        }
    }
    group.iter().all(|one| *one == group[0])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Role;

    fn row(piece: &str, judge: &str, grade: &str) -> EyeRow {
        EyeRow {
            arm: "a".into(),
            piece: piece.into(),
            role: Role::Test,
            load: None,
            shares_load: false,
            stage: 5,
            judge: judge.into(),
            grade: grade.parse().unwrap(),
        }
    }

    #[test]
    fn who_judged_which_piece_does_not_make_it_better() {
        // B is half a grade stricter; each piece is a grade apart, P3 was seen by B alone.
        let rows = [
            row("P1", "A", "4"),
            row("P1", "B", "3-4"),
            row("P2", "A", "3"),
            row("P2", "B", "2-3"),
            row("P3", "B", "1-2"),
        ];
        let rows: Vec<_> = rows.iter().map(|row| (0, row)).collect();
        let means = Means::of(&rows).unwrap();
        let found: Vec<f64> = means.pieces.iter().map(|piece| piece.mean).collect();
        for (found, expected) in found.iter().zip([3.75, 2.75, 1.75]) {
            assert!((found - expected).abs() < 1e-9, "{found} {expected}");
        }
        assert!(means.looks.iter().all(|look| look.rest.abs() < 1e-9));
    }

    #[test]
    fn groups_that_nothing_joins_are_not_compared() {
        let rows = [row("P1", "A", "4"), row("P2", "B", "2")];
        let rows: Vec<_> = rows.iter().map(|row| (0, row)).collect();
        assert!(Means::of(&rows).is_none());
        assert!(Means::of(&[]).is_none());
    }
}
