//! Readings with their strength, sorted by arm and piece.

use super::StrengthBy;
use crate::{Reading, Role, Source, Trial, decide::Row, rows::current};
use colour::{Lab, Spectrum, View, strength};
use nalgebra::Vector3;
use std::collections::BTreeMap;

/// One reading of a piece.
pub(super) struct Look {
    pub arm: String,
    pub piece: String,
    pub role: Role,
    pub stage: u32,
    pub lab: Lab,
    /// Sum of K/S, the cloth's own with it.
    pub strength: f64,
}

impl Look {
    pub(super) fn of_row(row: &Row, view: View) -> Self {
        Self {
            arm: row.arm.clone(),
            piece: row.piece.clone(),
            role: row.role,
            stage: row.stage,
            lab: row.lab,
            strength: strength::of_lab(row.lab, view),
        }
    }
}

/// Looks of one source and view.
pub(super) struct Kind {
    pub source: Source,
    pub view: View,
    pub strength_by: StrengthBy,
    pub looks: Vec<Look>,
}

/// A trial's readings by source and view, spectra first, then Lab, then photos.
pub(super) fn kinds(trial: &Trial, readings: &[Reading]) -> Vec<Kind> {
    let rank = |source| match source {
        Source::Spectrum => 0,
        Source::Lab => 1,
        Source::Photo => 2,
    };
    let mut kinds: BTreeMap<(u8, View), Vec<&Reading>> = BTreeMap::new();
    for reading in current(readings) {
        if let Ok(view) = reading.view.parse::<View>() {
            let key = (rank(reading.source), view);
            kinds.entry(key).or_default().push(reading);
        }
    }
    kinds
        .into_iter()
        .map(|((_, view), of_kind)| {
            let spectra: Option<Vec<f64>> = of_kind.iter().map(|r| of_spectrum(r)).collect();
            let strength_by = match spectra {
                Some(_) => StrengthBy::Spectrum,
                None => StrengthBy::Channels,
            };
            let looks = of_kind.iter().enumerate().filter_map(|(at, reading)| {
                let piece = trial.piece(reading.piece)?;
                let lab = Lab::from(reading.lab);
                Some(Look {
                    arm: trial.arm(piece.arm)?.name.clone(),
                    piece: piece.code.clone(),
                    role: piece.role,
                    stage: reading.stage,
                    lab,
                    strength: match &spectra {
                        Some(all) => all[at],
                        None => strength::of_lab(lab, view),
                    },
                })
            });
            Kind {
                source: of_kind[0].source,
                view,
                strength_by,
                looks: looks.collect(),
            }
        })
        .collect()
}

fn of_spectrum(reading: &Reading) -> Option<f64> {
    let kept = reading.origin.as_ref()?.spectrum.as_ref()?;
    let spectrum = Spectrum::new(kept.start_nm, kept.step_nm, kept.values.clone()).ok()?;
    Some(strength::of_spectrum(&spectrum))
}

/// The mean of a piece's looks at one stage.
#[derive(Debug, Clone, Copy)]
pub(super) struct Seen {
    pub lab: Vector3<f64>,
    pub strength: f64,
}

/// What each piece of an arm looked like at each stage.
#[derive(Default)]
pub(super) struct ArmLooks<'a> {
    pub name: &'a str,
    /// By code; test pieces only.
    pub tests: BTreeMap<&'a str, BTreeMap<u32, Seen>>,
    /// By stage: each keeper that was read then.
    pub keepers: BTreeMap<u32, Vec<Seen>>,
}

/// All arms, in order of first appearance.
pub(super) struct Table<'a> {
    pub arms: Vec<ArmLooks<'a>>,
    /// Mean sum of K/S of undyed cloth: of witness cloths at the start.
    pub bare: Option<f64>,
}

impl<'a> Table<'a> {
    pub(super) fn of(looks: &'a [Look]) -> Self {
        let mut sums: BTreeMap<(usize, &str, u32), (Seen, f64, Role)> = BTreeMap::new();
        let mut arms: Vec<ArmLooks<'a>> = Vec::new();
        for look in looks {
            let at = arms.iter().position(|arm| arm.name == look.arm);
            let at = at.unwrap_or_else(|| {
                arms.push(ArmLooks {
                    name: &look.arm,
                    ..ArmLooks::default()
                });
                arms.len() - 1
            });
            let nothing = Seen {
                lab: Vector3::zeros(),
                strength: 0.0,
            };
            let sum = sums
                .entry((at, &look.piece, look.stage))
                .or_insert((nothing, 0.0, look.role));
            sum.0.lab += Vector3::from(look.lab.to_array());
            sum.0.strength += look.strength;
            sum.1 += 1.0;
        }
        let mut undyed = Vec::new();
        for ((at, piece, stage), (sum, count, role)) in sums {
            let seen = Seen {
                lab: sum.lab / count,
                strength: sum.strength / count,
            };
            match role {
                Role::Test => {
                    arms[at].tests.entry(piece).or_default().insert(stage, seen);
                }
                Role::Keeper => arms[at].keepers.entry(stage).or_default().push(seen),
                Role::Witness if stage == 0 => undyed.push(seen.strength),
                // A washed witness cloth may be stained.
                Role::Witness => {}
            }
        }
        let count = undyed.len() as f64;
        Self {
            arms,
            bare: (!undyed.is_empty()).then(|| undyed.iter().sum::<f64>() / count),
        }
    }
}
