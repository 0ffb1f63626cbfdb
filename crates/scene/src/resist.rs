//! Resist-dyed pieces: pale where something kept the dye away.

use crate::{Piece, PieceParts, Reflectance, hash::smooth, wavelengths_nm};

/// What kept the dye away.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Resist {
    /// Wound or pleated: stripes.
    Stripes,
    /// Tied about a point: rings.
    Rings,
    /// Bound in many small places: pale spots.
    Spots,
    /// Folded both ways and clamped: a lattice.
    Folds,
}

/// A pattern of pale and deep on a piece.
#[derive(Debug, Clone, PartialEq)]
pub struct ResistDyed {
    /// What kept the dye away.
    pub pattern: Resist,
    /// Where it did.
    pub pale: Reflectance,
    /// Where it did not.
    pub deep: Reflectance,
    /// Share of the piece's area (well inside its edge) that is deep, 0.02 to 0.98.
    pub deep_share: f64,
    /// Distance over which pale becomes deep, mm.
    pub border_mm: f64,
    /// Distance from stripe to stripe, ring to ring, spot to spot, mm.
    pub pitch_mm: f64,
    /// The seed of its unevenness: the piece keeps its pattern wherever it is laid.
    pub seed: u64,
}

/// Steps between pale and deep for which a colour is kept.
const STEPS: usize = 16;

/// A pattern on a piece where it lies.
#[derive(Debug, Clone)]
pub(crate) struct Laid<'a> {
    dyed: &'a ResistDyed,
    middle: [f64; 2],
    /// Sine and cosine of the turn of the piece's first side.
    turn: [f64; 2],
    /// The distance field's value at the middle of a border, mm.
    edge: f64,
}

impl<'a> Laid<'a> {
    /// The pattern of a piece that is laid; None where it has none.
    pub(crate) fn new(piece: &'a Piece) -> Option<Self> {
        let dyed = piece.resist.as_deref()?;
        let [a, b] = [0, 1].map(|i| piece.outline_mm.get(i).copied().unwrap_or([i as f64, 0.0]));
        let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
        let length = dx.hypot(dy).max(1e-9);
        let mut laid = Self {
            dyed,
            middle: piece.middle_mm(),
            turn: [dy / length, dx / length],
            edge: 0.0,
        };
        let mut fields: Vec<f64> = inside(piece).map(|point| laid.field(point)).collect();
        fields.sort_by(f64::total_cmp);
        let rank = (fields.len() as f64 * (1.0 - dyed.deep_share)) as usize;
        laid.edge = fields
            .get(rank.min(fields.len().saturating_sub(1)))
            .copied()
            .unwrap_or(0.0);
        Some(laid)
    }

    /// How deep the dye is at a point of the table (mm): 0 pale to 1 deep.
    pub(crate) fn depth(&self, point: [f64; 2]) -> f64 {
        let t = (self.field(point) - self.edge) / self.dyed.border_mm.max(0.01) + 0.5;
        let t = t.clamp(0.0, 1.0);
        t * t * (3.0 - 2.0 * t)
    }

    /// Distance (mm) into the deep, up to a constant.
    fn field(&self, [x, y]: [f64; 2]) -> f64 {
        let (dx, dy) = (x - self.middle[0], y - self.middle[1]);
        let [sin, cos] = self.turn;
        let (u, v) = (dx * cos + dy * sin, dy * cos - dx * sin);
        let (seed, pitch) = (self.dyed.seed, self.dyed.pitch_mm);
        let uneven = 0.10 * pitch * smooth(seed, u / 9.0, v / 9.0)
            + 0.03 * pitch * smooth(seed ^ 1, u / 2.1, v / 2.1);
        // Distance to the nearest multiple of the pitch.
        let from_line = |w: f64| (w / pitch - (w / pitch).round()).abs() * pitch;
        let field = match self.dyed.pattern {
            Resist::Stripes => from_line(v),
            Resist::Rings => from_line(u.hypot(v) + 0.4 * pitch),
            Resist::Spots => {
                let row = (v / pitch).round();
                from_line(u + 0.5 * pitch * row.rem_euclid(2.0)).hypot(from_line(v))
            }
            Resist::Folds => from_line(from_line(u) + from_line(v)) + 0.3 * from_line(u - v),
        };
        field + uneven
    }

    /// What a perfect reader finds: the mean of the light, and the parts.
    pub(crate) fn truth(&self, piece: &Piece) -> (Reflectance, PieceParts) {
        let steps = shades(self.dyed);
        let mut mean = Reflectance([0.0; 36]);
        let (mut share, mut count) = (0.0, 0.0);
        for point in inside(piece) {
            let depth = self.depth(point);
            share += depth;
            count += 1.0;
            let (step, part) = step(depth);
            for (i, sum) in mean.0.iter_mut().enumerate() {
                *sum += steps[step].0[i] + part * (steps[step + 1].0[i] - steps[step].0[i]);
            }
        }
        let parts = PieceParts {
            pale_lab: self.dyed.pale.lab_d65_10(),
            deep_lab: self.dyed.deep.lab_d65_10(),
            deep_share: share / count,
        };
        (mean.scaled(1.0 / count), parts)
    }
}

/// The shades from pale to deep, the dye growing evenly.
pub(crate) fn shades(dyed: &ResistDyed) -> Vec<Reflectance> {
    let k_s = |r: f64| (1.0 - r).powi(2) / (2.0 * r);
    let between = |part: f64| {
        let mut mixed = Reflectance([0.0; 36]);
        for (i, _) in wavelengths_nm().enumerate() {
            let k = (1.0 - part) * k_s(dyed.pale.0[i]) + part * k_s(dyed.deep.0[i]);
            mixed.0[i] = 1.0 + k - (k * k + 2.0 * k).sqrt();
        }
        mixed
    };
    (0..=STEPS)
        .map(|step| between(step as f64 / STEPS as f64))
        .collect()
}

/// The step below a depth, and the part of the way to the next.
pub(crate) fn step(depth: f64) -> (usize, f64) {
    let at = depth * STEPS as f64;
    let step = (at as usize).min(STEPS - 1);
    (step, at - step as f64)
}

/// Points (mm) spread evenly over the area that the truth speaks of.
fn inside(piece: &Piece) -> impl Iterator<Item = [f64; 2]> {
    const ACROSS: usize = 140;
    let area = piece.inner_mm();
    let side = |k: usize, pick: fn(f64, f64) -> f64, start: f64| {
        area.iter().map(|p| p[k]).fold(start, pick)
    };
    let low = [0, 1].map(|k| side(k, f64::min, f64::INFINITY));
    let high = [0, 1].map(|k| side(k, f64::max, f64::NEG_INFINITY));
    (0..ACROSS * ACROSS).filter_map(move |i| {
        let place = [i % ACROSS, i / ACROSS].map(|n| (n as f64 + 0.5) / ACROSS as f64);
        let point = [0, 1].map(|k| low[k] + place[k] * (high[k] - low[k]));
        crate::piece::holds(&area, point).then_some(point)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Dye, cotton};

    fn piece(pattern: Resist, deep_share: f64, border_mm: f64) -> Piece {
        let dyed = ResistDyed {
            pattern,
            pale: Dye::indigo().on(&cotton(), 0.06),
            deep: Dye::indigo().on(&cotton(), 0.9),
            deep_share,
            border_mm,
            pitch_mm: 13.0,
            seed: 4,
        };
        Piece::square("a", cotton(), [10.0, 20.0], 50.0)
            .resisted(dyed)
            .turned(17.0)
    }

    const PATTERNS: [Resist; 4] = [Resist::Stripes, Resist::Rings, Resist::Spots, Resist::Folds];

    #[test]
    fn the_deep_share_is_the_one_asked_for() {
        for pattern in PATTERNS {
            for asked in [0.3, 0.5, 0.7] {
                let piece = piece(pattern, asked, 2.0);
                let (_, parts) = Laid::new(&piece).unwrap().truth(&piece);
                assert!(
                    (parts.deep_share - asked).abs() < 0.06,
                    "{pattern:?} {parts:?}"
                );
            }
        }
    }

    #[test]
    fn both_parts_reach_their_full_colour_somewhere() {
        for pattern in PATTERNS {
            for border in [2.0, 4.0] {
                let piece = piece(pattern, 0.55, border);
                let laid = Laid::new(&piece).unwrap();
                let share = |holds: fn(f64) -> bool| {
                    let depths: Vec<f64> = inside(&piece).map(|p| laid.depth(p)).collect();
                    depths.iter().filter(|d| holds(**d)).count() as f64 / depths.len() as f64
                };
                let (pale, deep) = (share(|d| d < 0.02), share(|d| d > 0.98));
                assert!(
                    pale > 0.08 && deep > 0.08,
                    "{pattern:?} {border} {pale} {deep}"
                );
            }
        }
    }

    /// Without a border the mean's luminous part is the mean of the two by area.
    #[test]
    fn the_mean_lies_between_by_area() {
        let piece = piece(Resist::Stripes, 0.4, 0.01);
        let (mean, parts) = Laid::new(&piece).unwrap().truth(&piece);
        let dyed = piece.resist.as_ref().unwrap();
        for i in 0..36 {
            let wanted = dyed.pale.0[i] + parts.deep_share * (dyed.deep.0[i] - dyed.pale.0[i]);
            assert!((mean.0[i] - wanted).abs() < 0.005);
        }
    }

    #[test]
    fn a_piece_keeps_its_pattern_when_laid_elsewhere() {
        let here = piece(Resist::Folds, 0.5, 3.0);
        let mut there = here.clone().turned(140.0);
        for point in &mut there.outline_mm {
            point[0] += 31.0;
        }
        let share = |piece: &Piece| Laid::new(piece).unwrap().truth(piece).1.deep_share;
        assert!((share(&here) - share(&there)).abs() < 0.01);
    }
}
