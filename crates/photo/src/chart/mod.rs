//! Finding the chart of 24 patches in a photo.
//!
//! Even-coloured regions that lie in a lattice are tried as patches; a grid is
//! taken for the chart only where its colours fit, the right way round, and the
//! patches' edges agree with it.

mod blobs;
mod colours;
mod edges;
mod homography;
mod lattice;
mod patches;
mod placement;
mod search;

pub use patches::patches;
pub use search::Search;

use edges::Fitted;
use homography::{Homography, distance};
use placement::{Kind, Placement};
use search::Level;

/// A chart found in a photo.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// The outer corners of the patch grid at the brown, bluish green, black and
    /// white patch, in px of the photo.
    pub corners: [[f64; 2]; 4],
    /// The share of the patches' colours that the chart explains under some
    /// light and camera, 0 to 1; a chart in a plain photo has above 0.97.
    pub confidence: f64,
    /// Side of a patch as a share of the distance between patches' centres.
    pub side: f64,
}

/// Why no chart can be used.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
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
}

/// Finds the chart in a photo.
///
/// # Errors
/// [`NotFound`] says why there is no chart to work with.
pub fn find(image: &Search) -> Result<Found, NotFound> {
    let mut doubt = NotFound::Missing;
    for level in order(image.levels()) {
        let seen = grids(level);
        let whole: Vec<&Grid> = seen.iter().filter(|g| g.kind == Kind::Whole).collect();
        let Some(best) = whole.first() else {
            match seen.first().map(Grid::trouble) {
                // Part of a grid may turn out whole in a finer picture.
                Some(NotFound::CutOff) => doubt = NotFound::CutOff,
                Some(why) => return Err(why),
                None => {}
            }
            continue;
        };
        if whole.iter().any(|other| best.apart(other)) {
            return Err(NotFound::TwoCharts);
        }
        return finish(image, level, best);
    }
    Err(doubt)
}

/// The levels in the order of the search: a chart that fills the photo is found
/// soonest, and with the least noise, in a small picture.
fn order(levels: &[Level]) -> impl Iterator<Item = &Level> {
    levels.iter().rev()
}

/// A grid in the picture of one size.
struct Grid {
    kind: Kind,
    explained: f64,
    map: Homography,
}

impl Grid {
    fn middle(&self) -> [f64; 2] {
        self.map.map([2.5, 1.5])
    }

    /// Whether two grids are of different charts.
    fn apart(&self, other: &Self) -> bool {
        let [along, across] = self.map.steps_at([2.5, 1.5]);
        distance(self.middle(), other.middle()) > 1.5 * (along + across)
    }

    fn trouble(&self) -> NotFound {
        match self.kind {
            Kind::CutOff => NotFound::CutOff,
            Kind::Mirrored => NotFound::Mirrored,
            Kind::RowsReversed => NotFound::RowsReversed,
            Kind::Whole => NotFound::Missing,
        }
    }
}

/// The grids in a picture whose colours fit and, where whole, whose edges agree;
/// the best first, each chart once.
fn grids(level: &Level) -> Vec<Grid> {
    let blobs = blobs::blobs(level);
    let mut placements: Vec<Placement> = lattice::lattices(&blobs)
        .iter()
        .flat_map(|lattice| placement::placements(lattice, level))
        .collect();
    placements.sort_by(|a, b| b.explained.total_cmp(&a.explained));
    let mut grids: Vec<Grid> = Vec::new();
    for placement in placements {
        let mut grid = Grid {
            kind: placement.kind,
            explained: placement.explained,
            map: placement.map,
        };
        if grids.iter().any(|g| !g.apart(&grid)) {
            continue;
        }
        if grid.kind != Kind::CutOff {
            match edges::fit(level, grid.map) {
                Some(fitted) => grid.map = fitted.map,
                None => continue,
            }
        }
        grids.push(grid);
    }
    grids
}

/// Widest pitch at which edges are measured, px: finer pictures tell no more.
const WIDEST_PITCH_PX: f64 = 140.0;

/// Measures the grid's corners in the finest picture of use.
fn finish(image: &Search, level: &Level, grid: &Grid) -> Result<Found, NotFound> {
    let [along, across] = grid.map.steps_at([2.5, 1.5]);
    let pitch = 0.5 * (along + across) * level.scale;
    let finer = image
        .levels()
        .iter()
        .find(|l| pitch / l.scale < WIDEST_PITCH_PX)
        .unwrap_or(level);
    let (fitted, scale) = [finer, level]
        .into_iter()
        .find_map(|l| {
            let start = grid.map.scaled(level.scale / l.scale);
            Some((edges::fit(l, start)?, l.scale))
        })
        .ok_or(NotFound::Missing)?;
    let Fitted { map, side, .. } = fitted;
    let half = side / 2.0;
    let corners = [
        [-half, -half],
        [5.0 + half, -half],
        [5.0 + half, 3.0 + half],
        [-half, 3.0 + half],
    ]
    .map(|p| map.map(p).map(|v| v * scale));
    let coarsest = image.levels()[0].scale;
    let size = [
        image.levels()[0].width as f64 * coarsest,
        image.levels()[0].height as f64 * coarsest,
    ];
    // A sliver of an outer patch may lie beyond the edge; its middle can be read.
    let spare = 0.15 * pitch;
    let outside = |p: &[f64; 2]| (0..2).any(|d| p[d] < -spare || p[d] > size[d] + spare);
    if corners.iter().any(outside) {
        return Err(NotFound::CutOff);
    }
    Ok(Found {
        corners,
        confidence: grid.explained,
        side,
    })
}
