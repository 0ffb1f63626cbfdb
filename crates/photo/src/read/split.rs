//! The pale and the deep part of a resist-dyed area, each a reading of its own.

use std::collections::BTreeMap;

use colour::Lab;

use super::{
    Difference, Parts,
    cells::{Sum, Sums},
    joint,
    piece::{Cloth, Piece, Recorded},
};
use crate::{
    area::Mask,
    correct::Sight,
    decode::Upright,
    matrix::Matrix3,
    mixture::{self, Cell, Cells, Side},
    patches::CLIPPED_CODE,
    survey::Prepared,
};

/// Cells along the longer side of an area, to tell pale from deep.
const CELLS: usize = 24;
/// Smallest side of a cell, pixels.
const SMALLEST_CELL: usize = 3;
/// About as many pixels are looked at along the side of a cell.
const LOOKS: usize = 6;

/// An area split into its pale and its deep part; what lies on the borders
/// between them belongs to neither.
#[derive(Debug, Clone, PartialEq)]
pub struct Split {
    /// Where something kept the dye away; another piece's dye shows here.
    pub pale: SplitPart,
    /// Where nothing did.
    pub deep: SplitPart,
}

/// One part of a resist-dyed area.
#[derive(Debug, Clone, PartialEq)]
pub struct SplitPart {
    /// Its colour.
    pub lab: Lab,
    /// Covariance of L*, a* and b*, from all causes.
    pub cov: Matrix3,
    /// The same by cause.
    pub parts: Parts,
    /// Its share of the area, 0 to 1; borders count half to each side.
    pub share: f64,
    /// Pixels that went into it.
    pub pixels: u64,
}

/// An area that was split: what its two parts recorded, and what that makes.
pub(super) struct Divided {
    pale: Recorded,
    deep: Recorded,
    masks: [Mask; 2],
    pub split: Split,
}

impl Divided {
    /// The parts of a piece; none where it was not read or is dyed in one.
    pub fn of(
        photo: &Upright,
        piece: &Piece,
        prepared: &Prepared,
        photo_to_photo: &Matrix3,
    ) -> Option<Self> {
        piece.recorded.as_ref()?;
        let (mask, sight) = (piece.mask.as_ref()?, &prepared.correction.sight);
        let cells = cells(photo, mask, sight)?;
        let split = mixture::split(&cells)?;
        let sides: BTreeMap<(usize, usize), Side> = cells
            .all
            .iter()
            .zip(&split.inner)
            .filter_map(|(cell, side)| Some(((cell.column, cell.row), (*side)?)))
            .collect();
        let masks = [Side::Pale, Side::Deep].map(|wanted| {
            mask.only(cells.size, |column, row| {
                sides.get(&(column, row)) == Some(&wanted)
            })
        });
        // What is to be said of the area is said of the whole of it.
        let record = |mask: &Mask| Recorded::from_pixels(photo, Cloth::even(mask), sight, None);
        let part = |recorded: &Recorded, share: f64| {
            let parts = joint::parts(recorded, prepared, photo_to_photo);
            SplitPart {
                lab: recorded.lab,
                cov: parts.total(),
                parts,
                share,
                pixels: recorded.pixels,
            }
        };
        let [pale, deep] = [record(&masks[0])?, record(&masks[1])?];
        Some(Self {
            split: Split {
                pale: part(&pale, split.pale_share),
                deep: part(&deep, 1.0 - split.pale_share),
            },
            pale,
            deep,
            masks,
        })
    }

    /// Reads the piece anew by what is known of its parts.
    pub fn reread(&self, piece: &mut Piece, photo: &Upright, sight: &Sight) {
        let [pale, deep] = &self.masks;
        piece.read_in_parts(photo, sight, pale, deep);
    }

    /// The area's pixels, pale and deep ones told apart.
    pub fn cloth<'a>(&'a self, whole: &'a Mask) -> Cloth<'a> {
        let [pale, deep] = &self.masks;
        Cloth { whole, pale, deep }
    }
}

/// The cells of an area; none where all are plainly of one colour.
fn cells(photo: &Upright, mask: &Mask, sight: &Sight) -> Option<Cells> {
    let linear = &sight.linear;
    let size = (mask.reach() / CELLS).max(SMALLEST_CELL);
    let step = ((size + LOOKS / 2) / LOOKS).max(1);
    let mut sums = Sums::new(size, mask);
    mask.each_on_grid(step, |x, y| {
        let codes = photo.at(x, y);
        if codes.iter().all(|&code| usize::from(code) < CLIPPED_CODE) {
            sums.add(x, y, [0, 1, 2].map(|k| linear[k][usize::from(codes[k])]));
        }
    });
    // A cell at the rim with few pixels tells little.
    let full = ((size / step).pow(2) as f64).max(1.0);
    let scene = |(place, sum): ([usize; 2], Sum)| {
        let n = sum.pixels as f64;
        let middle = |k: usize| (place[k] as f64 + 0.5) * size as f64;
        let light = sight.light.at([middle(1), middle(0)]);
        let scene = [0, 1, 2].map(|k| sum.light[k] / n / light[k]);
        (n >= 0.4 * full).then_some((place, scene))
    };
    let scenes: Vec<([usize; 2], [f64; 3])> = sums.finish().filter_map(scene).collect();
    let ln = |scene: [f64; 3]| scene.map(|v| v.max(1e-4).ln());
    mixture::may_be_two(scenes.iter().map(|(_, scene)| ln(*scene))).then(|| {
        let cell = |([row, column], scene): ([usize; 2], [f64; 3])| Cell {
            column,
            row,
            lab: sight.lab(scene).to_array(),
            ln: ln(scene),
        };
        let all = scenes.into_iter().map(cell).collect();
        Cells { size, all }
    })
}

/// The differences of every two pale parts, then of every two deep ones.
pub(super) fn differences(
    pieces: &[Piece],
    divided: &[Option<Divided>],
    prepared: &Prepared,
) -> Vec<Difference> {
    let of = |name: &str, pick: fn(&Divided) -> (&Recorded, &SplitPart)| {
        let parts: Vec<(String, &Recorded, &SplitPart)> = pieces
            .iter()
            .zip(divided)
            .filter_map(|(piece, divided)| {
                let (recorded, part) = pick(divided.as_ref()?);
                Some((format!("{}/{name}", piece.id), recorded, part))
            })
            .collect();
        let mut all = Vec::new();
        for (i, (name_a, recorded_a, a)) in parts.iter().enumerate() {
            for (name_b, recorded_b, b) in &parts[i + 1..] {
                let shared =
                    joint::shared((recorded_a, &a.parts), (recorded_b, &b.parts), prepared);
                let cov = joint::covariance_of_difference(&a.cov, &b.cov, &shared);
                all.push(Difference::between((name_a, a.lab), (name_b, b.lab), &cov));
            }
        }
        all
    };
    let mut all = of("pale", |d| (&d.pale, &d.split.pale));
    all.extend(of("deep", |d| (&d.deep, &d.split.deep)));
    all
}
