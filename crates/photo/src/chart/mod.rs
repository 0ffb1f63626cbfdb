//! Finding a chart in a photo.
//!
//! Even-coloured regions that lie in a lattice are tried as patches; a grid is
//! taken for the chart only where its colours fit, the right way round, the
//! patches' edges agree with it and no patch is of another colour.

mod blobs;
mod colours;
mod edges;
mod foreign;
pub(crate) mod homography;
mod lattice;
mod layout;
mod motley;
mod patches;
mod placement;
mod search;

pub use layout::Layout;
pub use patches::patches;
pub use search::Search;

use edges::Fitted;
use foreign::Verdict;
use homography::{Homography, distance};
use placement::{Kind, Placement};
use search::Level;

/// A chart found in a photo.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// The outer corners of the patch grid at the first patch, the end of the
    /// first row, the last patch and the start of the last row, in px of the photo.
    pub corners: [[f64; 2]; 4],
    /// The share of the patches' colours that the chart explains under some
    /// light and camera, 0 to 1; a chart in a plain photo has above 0.97.
    pub confidence: f64,
    /// Side of a patch as a share of the distance between patches' centres.
    pub side: f64,
    /// Patches that something lies or shines on, counted from 0 along the rows.
    pub covered: Vec<usize>,
}

/// Why no chart can be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NotFound {
    /// Nothing in the photo is like the chart.
    Missing,
    /// Part of the chart lies beyond the photo's edge.
    CutOff,
    /// There is more than one chart.
    TwoCharts,
    /// The chart is seen as in a mirror.
    Mirrored,
    /// A chart whose first and third row run the other way, as some makers print
    /// them; its colours are only near those of the usual one.
    RowsReversed,
    /// A grid like the chart's, but these patches (counted from 0 along the rows)
    /// have other colours.
    OtherColours(Vec<usize>),
    /// The chart's colours are too much alike, or it looks the same turned round.
    Unrecognisable,
}

/// Finds the chart in a photo.
///
/// # Errors
/// [`NotFound`] says why there is no chart to work with.
pub fn find<P>(photo: &Search<P>, layout: &Layout) -> Result<Found, NotFound>
where
    P: Fn(usize, usize) -> [f32; 3],
{
    if !layout.is_recognisable() {
        return Err(NotFound::Unrecognisable);
    }
    let mut doubt = NotFound::Missing;
    for level in photo.levels() {
        let seen = grids(photo, &level, layout);
        let whole: Vec<&Grid> = seen.iter().filter(|g| g.trouble.is_none()).collect();
        if level.kind == search::Kind::Glance {
            match whole[..] {
                [chart] if !motley::elsewhere(&level, &chart.corners_in(&level, layout)) => {
                    return Ok(chart.found(layout));
                }
                _ => continue,
            }
        }
        let Some(best) = whole.first() else {
            match seen.into_iter().find_map(|grid| grid.trouble) {
                // Part of a grid may turn out whole in a finer picture.
                Some(NotFound::CutOff) => doubt = NotFound::CutOff,
                Some(why) => return Err(why),
                None => {}
            }
            continue;
        };
        if whole.len() > 1 {
            return Err(NotFound::TwoCharts);
        }
        return Ok(best.found(layout));
    }
    Err(doubt)
}

/// A grid in the photo.
struct Grid {
    /// Why it is no chart to work with.
    trouble: Option<NotFound>,
    explained: f64,
    /// From chart coordinates to px of the photo.
    map: Homography,
    side: f64,
    covered: Vec<usize>,
}

impl Grid {
    /// Whether a map is of the same grid, moved or turned perhaps.
    fn is_same(&self, map: &Homography, layout: &Layout) -> bool {
        let middle = layout.middle();
        let [along, across] = self.map.steps_at(middle);
        let shorter = layout.columns().min(layout.rows()) as f64;
        distance(self.map.map(middle), map.map(middle)) < 0.375 * shorter * (along + across)
    }

    fn corners(&self, layout: &Layout) -> [[f64; 2]; 4] {
        layout.corners(self.side / 2.0).map(|p| self.map.map(p))
    }

    /// The corners in a picture's pixels.
    fn corners_in(&self, level: &Level, layout: &Layout) -> [[f64; 2]; 4] {
        let shift = level.shift();
        self.corners(layout)
            .map(|p| [0, 1].map(|k| p[k] / level.scale + shift[k]))
    }

    fn found(&self, layout: &Layout) -> Found {
        Found {
            corners: self.corners(layout),
            confidence: self.explained,
            side: self.side,
            covered: self.covered.clone(),
        }
    }
}

/// The grids in a picture whose colours fit and, where whole, whose edges agree;
/// the best first, each chart once.
fn grids<P>(photo: &Search<P>, level: &Level, layout: &Layout) -> Vec<Grid>
where
    P: Fn(usize, usize) -> [f32; 3],
{
    let blobs = blobs::blobs(level);
    let mut placements: Vec<Placement> = lattice::lattices(&blobs, layout)
        .iter()
        .flat_map(|lattice| placement::placements(lattice, level, layout))
        .collect();
    // Part of a grid fits more easily than a whole one, and proves less.
    let is_part = |p: &Placement| p.kind == Kind::CutOff;
    placements.sort_by(|a, b| {
        let by_kind = is_part(a).cmp(&is_part(b));
        by_kind.then(b.explained.total_cmp(&a.explained))
    });
    let mut grids: Vec<Grid> = Vec::new();
    for placement in placements {
        let map = placement.map.scaled(level.scale, level.origin);
        if grids.iter().any(|g| g.is_same(&map, layout)) {
            continue;
        }
        let placement = Placement { map, ..placement };
        grids.extend(measured(photo, level, layout, placement));
    }
    grids
}

/// Pitch at which edges are measured, px: finer pictures tell no more.
const PITCH_PX: f64 = 40.0;

/// A placement (in px of the photo) measured by the edges of its patches; none
/// where they don't agree with it.
fn measured<P>(
    photo: &Search<P>,
    level: &Level,
    layout: &Layout,
    placement: Placement,
) -> Option<Grid>
where
    P: Fn(usize, usize) -> [f32; 3],
{
    let mut grid = Grid {
        trouble: None,
        explained: placement.explained,
        map: placement.map,
        side: 0.86,
        covered: Vec::new(),
    };
    let [along, across] = grid.map.steps_at(layout.middle());
    let pitch = 0.5 * (along + across);
    let block = (pitch / PITCH_PX) as usize;
    let around = layout.corners(0.9).map(|p| grid.map.map(p));
    let finer = if (block as f64) < level.scale {
        let low = [0, 1].map(|d| around.iter().map(|p| p[d]).fold(f64::MAX, f64::min));
        let high = [0, 1].map(|d| around.iter().map(|p| p[d]).fold(f64::MIN, f64::max));
        photo.part(block.max(1), low, high)
    } else {
        None
    };
    let (
        level,
        Fitted {
            map, side, sides, ..
        },
    ) = [finer.as_ref(), Some(level)]
        .into_iter()
        .flatten()
        .find_map(|level| {
            let start = grid.map.scaled(1.0 / level.scale, level.shift());
            Some((level, edges::fit(level, layout, start)?))
        })?;
    grid.map = map.scaled(level.scale, level.origin);
    grid.side = side;
    grid.trouble = match placement.kind {
        Kind::Mirrored => Some(NotFound::Mirrored),
        Kind::RowsReversed => Some(NotFound::RowsReversed),
        Kind::Whole if sticks_out(&grid.corners(layout), photo.size(), pitch) => {
            Some(NotFound::CutOff)
        }
        Kind::Whole => match foreign::judge(level, layout, &map, &sides) {
            Verdict::Sound(covered) => {
                grid.covered = covered;
                None
            }
            Verdict::OtherColours(patches) => Some(NotFound::OtherColours(patches)),
        },
        Kind::CutOff => Some(NotFound::CutOff),
    };
    Some(grid)
}

/// Whether a chart leaves the photo, by more than its corners may be measured wrong.
fn sticks_out(corners: &[[f64; 2]; 4], size: [f64; 2], pitch: f64) -> bool {
    let spare = 0.05 * pitch;
    corners
        .iter()
        .any(|p| (0..2).any(|d| p[d] < -spare || p[d] > size[d] + spare))
}
