//! The dyes that may have made a stain, each with the way it would go.

use super::{KNOWN_DF, shift::Shifted};
use crate::{ArmId, Reading, Role, Trial, part_change::average, rows::current};
use colour::{Lab, strength};
use inference::direction::Vector;
use nalgebra::{Matrix2, Matrix3, Vector2, Vector3};

/// Share of an arm's depth at which its dye is taken to stain.
const STAIN_SHARE: f64 = 0.03;
/// Share of a pale dyeing's difference that has to lie in a*b* for it to have a hue.
const LEAST_HUE: f64 = 0.15;
/// Cosine of directions that count as one.
const ONE_HUE: f64 = 0.99;

/// A dye, or several that go one way.
pub(super) struct Candidate {
    pub arms: Vec<String>,
    pub direction: Vector<2>,
}

/// The dyes of all arms read at their start by the same source and view as the stain.
pub(super) fn of(trial: &Trial, readings: &[Reading], shifted: &Shifted) -> Vec<Candidate> {
    let mut found: Vec<Candidate> = Vec::new();
    for arm in &trial.arms {
        let Some(direction) = direction(arm.id, trial, readings, shifted) else {
            continue;
        };
        let like = found.iter_mut().find(|known| {
            let along = known
                .direction
                .mean
                .normalize()
                .dot(&direction.mean.normalize());
            along > ONE_HUE
        });
        match like {
            Some(known) => known.arms.push(arm.name.clone()),
            None => found.push(Candidate {
                arms: vec![arm.name.clone()],
                direction,
            }),
        }
    }
    found
}

/// The way in a*b* from the cloth to a pale dyeing of an arm's dye; none where the arm
/// wasn't read at its start or its dye has no hue.
fn direction(
    arm: ArmId,
    trial: &Trial,
    readings: &[Reading],
    shifted: &Shifted,
) -> Option<Vector<2>> {
    let view = shifted.view.to_string();
    let dyed: Vec<(Lab, [[f64; 3]; 3])> = current(readings)
        .filter(|r| r.stage == 0 && r.source == shifted.source && r.view == view)
        .filter(|r| {
            let piece = trial.piece(r.piece);
            piece.is_some_and(|p| p.arm == arm && p.role == Role::Test)
        })
        .map(|r| match &r.split {
            Some(split) => (Lab::from(split.deep.lab), split.deep.cov()),
            None => (Lab::from(r.lab), r.cov),
        })
        .collect();
    let count = dyed.len() as f64;
    if dyed.is_empty() {
        return None;
    }
    let mean = dyed
        .iter()
        .map(|(lab, _)| Vector3::from(lab.to_array()))
        .sum::<Vector3<f64>>()
        / count;
    let bare = Lab::from(shifted.from);
    let dyed_lab = Lab::from(<[f64; 3]>::from(mean));
    let pale = strength::dyeing(bare, dyed_lab, STAIN_SHARE, shifted.view);
    let whole = Vector3::from(pale.to_array()) - Vector3::from(shifted.from);
    let way = whole.fixed_rows::<2>(1).into_owned();
    let deep = (mean - Vector3::from(shifted.from))
        .fixed_rows::<2>(1)
        .into_owned();
    if way.norm() < LEAST_HUE * whole.norm() || way.norm() == 0.0 || deep.norm() == 0.0 {
        return None;
    }
    // Between a pale and a deep dyeing the hue turns; half of that turn is its doubt.
    let half_turn = way.angle(&deep) / 2.0;
    let across = Vector2::new(-way.y, way.x) * half_turn;
    let read = Matrix3::from(average(dyed.iter().map(|(_, cov)| *cov)));
    let read: Matrix2<f64> = read.fixed_view::<2, 2>(1, 1).into();
    let scale = way.norm() / deep.norm();
    Some(Vector {
        mean: way,
        covariance: across * across.transpose() + read * (scale * scale),
        df: KNOWN_DF,
    })
}
