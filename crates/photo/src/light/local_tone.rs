//! Whether the phone lit up dark places by itself.

use nalgebra::{DMatrix, DVector};

use super::{
    surface::{EDGE, Frame, TERMS},
    tiles::ALIKE,
};
use crate::{Point, decode::Upright};

/// Cells along the photo's longer side.
const CELLS: usize = 48;
/// How far a neighbourhood reaches, cells.
const REACH: usize = 4;
/// Steepest fall of the ground's light with its neighbourhood's that still is usual.
const USUAL: f64 = -0.025;
/// Student's t of that slope below which it is no chance.
const SUREST: f64 = -4.0;

/// The light of neighbourhoods all over a photo.
struct Neighbourhoods {
    columns: usize,
    rows: usize,
    cell_px: f64,
    ln: Vec<f64>,
}

/// Whether ground in dark surroundings is lighter than the same ground in light
/// ones, as phones make it that map tones place by place. Shadows and stray light
/// do the contrary.
///
/// `ground` are places with how much lighter each is than the smooth light there,
/// as a logarithm.
pub(super) fn is_mapped(
    photo: &Upright,
    linear: &[[f64; 256]; 3],
    frame: &Frame,
    ground: &[(Point, f64)],
) -> bool {
    let around = Neighbourhoods::of(photo, linear);
    let rows = ground.len();
    let surface: Vec<_> = ground
        .iter()
        .map(|(place, _)| frame.terms(*place))
        .collect();
    let terms = DMatrix::from_fn(
        rows,
        TERMS + 1,
        |r, c| {
            if c < TERMS { surface[r][c] } else { 1.0 }
        },
    );
    let mut normal = terms.transpose() * &terms;
    if frame.edge.is_none() {
        // Its term is 0 everywhere.
        normal[(EDGE, EDGE)] = 1.0;
    }
    let Some(inverse) = normal.try_inverse() else {
        return false;
    };
    // The smooth surface took with it what it could of either: only what is left
    // of both can be compared.
    let left = |values: DVector<f64>| {
        let smooth = &terms * (&inverse * (terms.transpose() * &values));
        values - smooth
    };
    let near = left(DVector::from_fn(rows, |r, _| around.at(ground[r].0)));
    let beyond = left(DVector::from_fn(rows, |r, _| ground[r].1));
    let (sxx, sxy, syy) = (near.dot(&near), near.dot(&beyond), beyond.dot(&beyond));
    if sxx <= 0.0 || syy <= 0.0 {
        return false;
    }
    let t = sxy / (sxx * syy).sqrt() * (rows as f64 / ALIKE).sqrt();
    sxy / sxx < USUAL && t < SUREST
}

impl Neighbourhoods {
    fn of(photo: &Upright, linear: &[[f64; 256]; 3]) -> Self {
        let cell_px = photo.width.max(photo.height) as f64 / CELLS as f64;
        let [columns, rows] =
            [photo.width, photo.height].map(|side| ((side as f64 / cell_px) as usize).max(1));
        let cells: Vec<f64> = (0..columns * rows)
            .map(|i| {
                let (left, top) = ((i % columns) as f64, (i / columns) as f64);
                let mut sum = 0.0;
                // A neighbourhood holds many cells, so that few places of each will do.
                const STEPS: usize = 3;
                for k in 0..STEPS * STEPS {
                    let offset = |n: usize| (n as f64 + 0.5) / STEPS as f64;
                    let at = |from: f64, n: usize, side: usize| {
                        (((from + offset(n)) * cell_px) as usize).min(side - 1)
                    };
                    let (x, y) = (
                        at(left, k % STEPS, photo.width),
                        at(top, k / STEPS, photo.height),
                    );
                    sum += linear[1][photo.at(x, y)[1] as usize];
                }
                (sum / (STEPS * STEPS) as f64).max(0.01).ln()
            })
            .collect();
        let near =
            |middle: usize, end: usize| middle.saturating_sub(REACH)..(middle + REACH + 1).min(end);
        let ln = (0..columns * rows)
            .map(|i| {
                let (mut sum, mut n) = (0.0, 0.0);
                for y in near(i / columns, rows) {
                    for x in near(i % columns, columns) {
                        sum += cells[y * columns + x];
                        n += 1.0;
                    }
                }
                sum / n
            })
            .collect();
        Self {
            columns,
            rows,
            cell_px,
            ln,
        }
    }

    fn at(&self, place: Point) -> f64 {
        let cell = |px: f64, end: usize| ((px / self.cell_px).max(0.0) as usize).min(end - 1);
        self.ln[cell(place[1], self.rows) * self.columns + cell(place[0], self.columns)]
    }
}
