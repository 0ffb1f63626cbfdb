//! A board as it was seen in a photo.

use crate::text;
use crate::{Area, Point, Refusal, area::contains, chart::homography::Homography, decode::Upright};

use super::{
    Board, Code, Kind, Layout, Paper, Rect, VERSION, corners, paper::PaperLook, picture, window,
};

/// A board found in a photo.
#[derive(Debug, Clone, PartialEq)]
pub struct BoardSeen {
    /// How many windows it has.
    pub kind: Kind,
    /// The paper it is printed on.
    pub paper: Paper,
    /// The version of its geometry.
    pub version: u32,
    /// How many of the four corner codes were read: 3 or 4.
    pub codes: usize,
    /// The sheet's corners: upper left, upper right, lower right, lower left as it
    /// is printed; pixels of the upright photo, and perhaps beyond its edge.
    pub corners: [Point; 4],
    /// The windows in the order of their numbers.
    pub windows: Vec<WindowSeen>,
    /// The trial it was printed for, by its name in addresses.
    pub trial: Option<String>,
    /// The stage it was printed for, rounds gone through.
    pub stage: Option<u32>,
}

/// A window of a board as it was seen.
#[derive(Debug, Clone, PartialEq)]
pub struct WindowSeen {
    /// Its number on the sheet, from 1.
    pub number: usize,
    /// The tag in its tag place; none where none could be read.
    pub tag: Option<Code>,
    /// An area well inside the piece, pixels of the upright photo; none where
    /// nothing differs from the paper.
    pub polygon: Option<Vec<Point>>,
}

impl WindowSeen {
    /// What the piece in it is called: its tag's code, or `window 3`.
    pub fn name(&self) -> String {
        match self.tag {
            Some(code) => code.to_string(),
            None => text::board::window(self.number),
        }
    }
}

impl BoardSeen {
    /// Which board it is.
    pub const fn board(&self) -> Board {
        Board {
            kind: self.kind,
            paper: self.paper,
        }
    }

    /// The windows in which something lies, as areas to be read; each is called as
    /// [`WindowSeen::name`] says.
    pub fn areas(&self) -> Vec<Area> {
        self.windows
            .iter()
            .filter_map(|window| {
                Some(Area {
                    id: window.name(),
                    polygon: window.polygon.clone()?,
                })
            })
            .collect()
    }

    /// Places of the photo that show the sheet's bare white paper, each by four
    /// corners: between and around windows, up to the sheet's edge. Something may
    /// lie on one of them, so whoever reads light from them leaves out what differs.
    /// Those that reach beyond the photo of `width` by `height` pixels are left out.
    pub fn paper_places(&self, width: u32, height: u32) -> Vec<[Point; 4]> {
        let Some(sheet) = self.sheet() else {
            return Vec::new();
        };
        let (width, height) = (f64::from(width), f64::from(height));
        let inside = |p: &Point| p[0] >= 0.0 && p[1] >= 0.0 && p[0] <= width && p[1] <= height;
        self.board()
            .layout()
            .paper()
            .into_iter()
            .map(|place| place.corners().map(|p| sheet.map(p)))
            .filter(|place| place.iter().all(inside))
            .collect()
    }

    /// The corners of the chart's dock drawn out by `by_mm`, pixels.
    pub(super) fn dock(&self, by_mm: f64) -> Option<[Point; 4]> {
        let sheet = self.sheet()?;
        let dock = self.board().layout().dock.grown(by_mm);
        Some(dock.corners().map(|p| sheet.map(p)))
    }

    /// From the sheet (mm) to the photo (px).
    fn sheet(&self) -> Option<Homography> {
        let [width, height] = self.paper.size_mm();
        let whole = Rect::new(0.0, 0.0, width, height).corners();
        let pairs: Vec<(Point, Point)> = whole.into_iter().zip(self.corners).collect();
        Homography::fit(&pairs)
    }
}

/// The board of a photo with its tags and pieces; none where there is no board.
///
/// # Errors
/// A board is there and can't be used: too few corners, of another version, two
/// boards, mirrored, not flat.
pub(crate) fn find(photo: &Upright) -> Result<Option<BoardSeen>, Refusal> {
    let Some(found) = corners::find(photo)? else {
        return Ok(None);
    };
    let layout = found.board.layout();
    let sheet = found.sheet;
    let [width, height] = layout.size_mm;
    Ok(Some(BoardSeen {
        kind: found.board.kind,
        paper: found.board.paper,
        version: VERSION,
        codes: found.read,
        corners: Rect::new(0.0, 0.0, width, height)
            .corners()
            .map(|p| sheet.map(p)),
        windows: windows(photo, &sheet, &layout),
        trial: found.trial,
        stage: found.stage,
    }))
}

fn windows(photo: &Upright, sheet: &Homography, layout: &Layout) -> Vec<WindowSeen> {
    let paper = PaperLook::of(photo, sheet, layout);
    layout
        .windows
        .iter()
        .map(|w| WindowSeen {
            number: w.number,
            tag: tag(photo, sheet, w.tag, w.place),
            polygon: paper
                .as_ref()
                .and_then(|paper| window::piece(photo, sheet, paper, w.place)),
        })
        .collect()
}

/// The code of a tag in its place, or else anywhere in its window.
fn tag(photo: &Upright, sheet: &Homography, tag: Rect, window: Rect) -> Option<Code> {
    let both = Rect::new(
        window.x,
        window.y,
        window.width,
        tag.y + tag.height - window.y,
    );
    let tries = [
        (tag.grown(3.0), 6.5),
        (tag.grown(4.0), 5.0),
        (tag.grown(2.0), 9.0),
        (both.grown(1.5), 6.5),
    ];
    tries.into_iter().find_map(|(place, px_per_mm)| {
        picture::on_sheet(photo, sheet, place, px_per_mm)
            .into_iter()
            // A neighbour's tag may reach into a place drawn this wide.
            .filter(|code| {
                let middle = sheet.inverted().map(crate::survey::middle(&code.eyes[1..]));
                contains(&both.grown(1.5).corners(), middle)
            })
            .find_map(|code| code.text.parse().ok())
    })
}
