//! How much equal pieces differ in this studio: from its set-up check and its past
//! trials, where there are any.

use super::Scatter;
use crate::text;
use crate::{Reading, Role, Trial, decide::Row, rows, setup::SetupCheck};
use colour::{Lab, difference::ciede2000_metric};
use std::collections::BTreeMap;

/// Pieces beyond the first of each arm that past trials need before they are gone by.
const FEWEST_SPARE: usize = 4;
/// The least scatter from piece to piece that is believed, CIEDE2000.
const LEAST_SD: f64 = 0.1;

/// Arm and load of a piece.
type Group = (String, Option<String>);
/// A piece's colours by stage.
type Stages = BTreeMap<u32, Vec<Lab>>;

impl Scatter {
    /// What the studio's own trials and the newest set-up check (with its name)
    /// show; none if neither says anything.
    ///
    /// Reading: the scatter within a photo along its widest direction. Pieces: the
    /// changes of equal pieces in equal loads of past trials, less the reading.
    /// Loads: as assumed, for a load is seldom repeated.
    pub fn of_studio(
        check: Option<(&str, &SetupCheck)>,
        past: &[(Trial, Vec<Reading>)],
    ) -> Option<Self> {
        let usual = Self::default();
        let mut origin: Vec<String> = Vec::new();
        let reading_sd_de00 = match check {
            Some((name, check)) => {
                origin.push(text::plan::reading_by_your_set_up_check_within(
                    name,
                    format_args!("{:.2}", check.within_widest_sd_de00),
                ));
                check.within_widest_sd_de00
            }
            None => usual.reading_sd_de00,
        };
        let equal = EqualPieces::of(past);
        let piece_sd_de00 = match equal.sd() {
            Some(sd) => {
                let own = (sd * sd - reading_sd_de00 * reading_sd_de00)
                    .max(LEAST_SD * LEAST_SD)
                    .sqrt();
                origin.push(text::plan::from_piece_to_piece_by_pieces(
                    equal.pieces,
                    match equal.trials {
                        1 => text::plan::a_past_trial_of_your_own().to_owned(),
                        n => text::plan::past_trials_of_your_own(n),
                    },
                    format_args!("{own:.2}"),
                ));
                own
            }
            None => usual.piece_sd_de00,
        };
        if origin.is_empty() {
            return None;
        }
        let mut assumed: Vec<String> = Vec::new();
        if equal.sd().is_none() {
            assumed.push(text::plan::piece_sd_de00_from_piece_to_piece(
                usual.piece_sd_de00,
            ));
        }
        assumed.push(text::plan::load_sd_de00_from_load_to_load(
            usual.load_sd_de00,
        ));
        if check.is_none() {
            assumed.push(text::plan::reading_sd_de00_for_reading(
                usual.reading_sd_de00,
            ));
        }
        origin.push(text::plan::assumed_common_practice_no_source(
            assumed.join(", "),
        ));
        Some(Self {
            piece_sd_de00,
            load_sd_de00: usual.load_sd_de00,
            reading_sd_de00,
            origin: origin.join(" "),
        })
    }
}

/// Changes of pieces that were treated alike.
#[derive(Default)]
struct EqualPieces {
    trials: usize,
    pieces: usize,
    spare: usize,
    /// Squared CIEDE2000 lengths about the groups' means.
    squares: f64,
}

impl EqualPieces {
    fn of(past: &[(Trial, Vec<Reading>)]) -> Self {
        let mut all = Self::default();
        for (trial, readings) in past.iter().filter(|(trial, _)| !trial.invented) {
            let before = all.spare;
            for changes in changes(&rows(trial, &of_one_kind(readings))) {
                all.add(&changes);
            }
            all.trials += usize::from(all.spare > before);
        }
        all
    }

    fn add(&mut self, changes: &[(Lab, [f64; 3])]) {
        let n = changes.len();
        if n < 2 {
            return;
        }
        let mean = |k: usize| changes.iter().map(|(_, change)| change[k]).sum::<f64>() / n as f64;
        let mean = [mean(0), mean(1), mean(2)];
        for (at, change) in changes {
            let off = [0, 1, 2].map(|k| change[k] - mean[k]);
            let metric = ciede2000_metric(*at);
            for (i, row) in metric.iter().enumerate() {
                for (j, weight) in row.iter().enumerate() {
                    self.squares += off[i] * weight * off[j];
                }
            }
        }
        self.pieces += n;
        self.spare += n - 1;
    }

    /// Along one direction of colour, the three of them averaged.
    fn sd(&self) -> Option<f64> {
        let enough = self.spare >= FEWEST_SPARE && self.squares > 0.0;
        enough.then(|| (self.squares / (3.0 * self.spare as f64)).sqrt())
    }
}

/// The readings of that source and view of which there are most.
fn of_one_kind(readings: &[Reading]) -> Vec<Reading> {
    let mut kinds: BTreeMap<(&str, &str), usize> = BTreeMap::new();
    for reading in readings {
        *kinds
            .entry((reading.source.in_words(), &reading.view))
            .or_default() += 1;
    }
    let most = kinds.iter().max_by_key(|(_, count)| **count);
    let Some((&kind, _)) = most else {
        return Vec::new();
    };
    let of_kind = readings
        .iter()
        .filter(|reading| (reading.source.in_words(), reading.view.as_str()) == kind);
    of_kind.cloned().collect()
}

/// For each arm and load the changes of its test pieces from their start to their
/// last stage, with the colours they come from.
fn changes(rows: &[Row]) -> Vec<Vec<(Lab, [f64; 3])>> {
    let mut groups: BTreeMap<Group, BTreeMap<&str, Stages>> = BTreeMap::new();
    for row in rows.iter().filter(|row| row.role == Role::Test) {
        groups
            .entry((row.arm.clone(), row.load.clone()))
            .or_default()
            .entry(&row.piece)
            .or_default()
            .entry(row.stage)
            .or_default()
            .push(row.lab);
    }
    let mut found = Vec::new();
    for pieces in groups.values() {
        // The last stage that all of them reached.
        let last = pieces.values().filter_map(|stages| stages.keys().last());
        let Some(&last) = last.min().filter(|last| **last > 0) else {
            continue;
        };
        let of_group = pieces.values().filter_map(|stages| {
            let (start, end) = (mean(stages.get(&0)?), mean(stages.get(&last)?));
            let change = [end.l - start.l, end.a - start.a, end.b - start.b];
            Some((start, change))
        });
        found.push(of_group.collect());
    }
    found
}

fn mean(of: &[Lab]) -> Lab {
    let n = of.len() as f64;
    let sum = |pick: fn(&Lab) -> f64| of.iter().map(pick).sum::<f64>() / n;
    Lab::new(sum(|lab| lab.l), sum(|lab| lab.a), sum(|lab| lab.b))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Arm, ArmId, Piece, PieceId, ReadingId, Source, TrialId};

    /// Two arms of four pieces whose lightness changes by 3 plus or minus `spread`.
    fn past(spread: f64, invented: bool) -> (Trial, Vec<Reading>) {
        let arms = [1, 2].map(|id| Arm {
            id: ArmId(id),
            name: format!("arm {id}"),
            treatment: String::new(),
        });
        let pieces: Vec<Piece> = (0..8)
            .map(|i| Piece {
                tag: photo::board::Code::from_number(i),
                id: PieceId(i.into()),
                arm: ArmId(1 + i64::from(i) / 4),
                code: format!("P{i}"),
                role: Role::Test,
                load: None,
            })
            .collect();
        let readings = pieces.iter().flat_map(|piece| {
            let side = if piece.id.0 % 2 == 0 { spread } else { -spread };
            [(0, 50.0), (5, 53.0 + side)].map(|(stage, l)| Reading {
                id: ReadingId(10 * piece.id.0 + i64::from(stage)),
                piece: piece.id,
                photo: None,
                stage,
                lab: [l, 0.0, 0.0],
                cov: [[0.0; 3]; 3],
                pixels: 1,
                split: None,
                view: "D65/10".into(),
                source: Source::Lab,
                origin: None,
                notes: Vec::new(),
                made_at: "2020-01-01T00:00:00Z".into(),
            })
        });
        let readings = readings.collect();
        let trial = Trial {
            id: TrialId(1),
            slug: "t".into(),
            title: "t".into(),
            question: "?".into(),
            margin_de00: 1.0,
            rounds: 5,
            invented,
            made_at: "2020-01-01T00:00:00Z".into(),
            method: String::new(),
            arms: arms.to_vec(),
            pieces,
        };
        (trial, readings)
    }

    #[test]
    fn past_trials_replace_what_is_assumed_and_say_so() {
        let found = Scatter::of_studio(None, &[past(1.5, false)]).unwrap();
        // By hand: eight deviations of 1.5 in lightness with 6 degrees of freedom, one
        // direction of three, at L* 50 where CIEDE2000 and CIELAB agree; less 0.3 squared.
        let by_hand = (8.0 * 1.5 * 1.5 / 18.0 - 0.09_f64).sqrt();
        assert!((found.piece_sd_de00 - by_hand).abs() < 0.01, "{found:?}");
        assert!(
            found
                .origin
                .contains("8 pieces of a past trial of your own")
        );
        assert!(found.origin.contains("0.3 from load to load"));
    }

    #[test]
    fn invented_trials_and_nothing_say_nothing() {
        assert_eq!(Scatter::of_studio(None, &[past(1.5, true)]), None);
        assert_eq!(Scatter::of_studio(None, &[]), None);
    }
}
