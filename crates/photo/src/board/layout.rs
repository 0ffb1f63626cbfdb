//! Where everything on a board lies, in millimetres: the one place that says so.

/// A printed sheet on which pieces lie for a photo.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Board {
    /// How many windows it has.
    pub kind: Kind,
    /// The paper it is printed on.
    pub paper: Paper,
}

/// How many windows a board has.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Kind {
    /// Six windows of about 61 x 71 mm (A4) or 63 x 62 mm (Letter).
    Six,
    /// Twelve windows of about 45 x 40 mm (A4) or 46 x 34 mm (Letter).
    Twelve,
}

/// The paper of a board.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Paper {
    /// 210 x 297 mm (ISO 216).
    A4,
    /// 8.5 x 11 inches: 215.9 x 279.4 mm.
    Letter,
}

/// A rectangle on the sheet, mm from its upper left corner, x right and y down.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rect {
    /// Its left edge.
    pub x: f64,
    /// Its upper edge.
    pub y: f64,
    /// Its width.
    pub width: f64,
    /// Its height.
    pub height: f64,
}

/// A place for a piece with a place for its tag.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Window {
    /// Its number on the sheet, from 1, row by row.
    pub number: usize,
    /// Where the piece lies.
    pub place: Rect,
    /// Where its tag lies.
    pub tag: Rect,
}

/// Where everything on a board lies.
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    /// Width and height of the sheet, mm.
    pub size_mm: [f64; 2],
    /// The corner codes: upper left, upper right, lower right, lower left.
    pub corners: [Rect; 4],
    /// Where the chart lies.
    pub dock: Rect,
    /// The windows, row by row.
    pub windows: Vec<Window>,
    /// The ruler by which the print's scale is verified: its baseline is the upper
    /// edge, its width exactly 100 mm.
    pub ruler: Rect,
    /// Places of words: left and right of the dock, and between the lower corners
    /// beneath the ruler.
    pub words: [Rect; 3],
}

/// From the sheet's edge to the print, mm: more than common printers leave white.
const EDGE: f64 = 8.0;
/// Side of a corner code, mm.
const CORNER: f64 = 20.0;
/// White paper between places, mm.
const GAP: f64 = 5.0;
/// The dock, mm: the common pocket chart's card of about 108 x 64 mm and some room.
/// The large card of 279 x 216 mm would need a sheet of its own.
const DOCK: [f64; 2] = [114.0, 68.0];
/// A tag, mm.
pub const TAG: [f64; 2] = [40.0, 17.0];
/// Side of a tag's code, mm, and the white around it.
pub const TAG_CODE: f64 = 13.0;
/// White around a tag's code, mm.
pub const TAG_MARGIN: f64 = 2.0;
/// From a window to its tag, mm.
const TO_TAG: f64 = 1.5;

impl Board {
    /// Every board there is.
    pub const ALL: [Self; 4] = [
        Self {
            kind: Kind::Six,
            paper: Paper::A4,
        },
        Self {
            kind: Kind::Twelve,
            paper: Paper::A4,
        },
        Self {
            kind: Kind::Six,
            paper: Paper::Letter,
        },
        Self {
            kind: Kind::Twelve,
            paper: Paper::Letter,
        },
    ];

    /// Where everything on it lies.
    pub fn layout(self) -> Layout {
        let size_mm = self.paper.size_mm();
        let [width, height] = size_mm;
        let (right, bottom) = (width - EDGE - CORNER, height - EDGE - CORNER);
        let corners = [[EDGE, EDGE], [right, EDGE], [right, bottom], [EDGE, bottom]]
            .map(|[x, y]| Rect::new(x, y, CORNER, CORNER));
        let dock = Rect::new((width - DOCK[0]) / 2.0, EDGE, DOCK[0], DOCK[1]);
        let beside = dock.x - EDGE - 4.0;
        let below = EDGE + CORNER + GAP;
        let words_height = dock.y + dock.height - below;
        let between = bottom - 1.0;
        Layout {
            size_mm,
            corners,
            dock,
            windows: self.windows(dock.y + dock.height + GAP, bottom - GAP),
            ruler: Rect::new((width - 100.0) / 2.0, between + 3.0, 100.0, 5.0),
            words: [
                Rect::new(EDGE, below, beside, words_height),
                Rect::new(dock.x + dock.width + 4.0, below, beside, words_height),
                Rect::new(
                    EDGE + CORNER + 6.0,
                    between + 9.0,
                    width - 2.0 * (EDGE + CORNER + 6.0),
                    12.0,
                ),
            ],
        }
    }

    /// The windows between two heights, mm.
    fn windows(self, top: f64, bottom: f64) -> Vec<Window> {
        let (columns, rows) = match self.kind {
            Kind::Six => (3, 2),
            Kind::Twelve => (4, 3),
        };
        let share = |whole: f64, n: usize| (whole + GAP) / n as f64;
        let across = share(self.paper.size_mm()[0] - 2.0 * EDGE, columns);
        let down = share(bottom - top, rows);
        let (width, height) = (across - GAP, down - GAP - TO_TAG - TAG[1]);
        (0..rows * columns)
            .map(|i| {
                let x = EDGE + (i % columns) as f64 * across;
                let y = top + (i / columns) as f64 * down;
                Window {
                    number: i + 1,
                    place: Rect::new(x, y, width, height),
                    tag: Rect::new(
                        x + (width - TAG[0]) / 2.0,
                        y + height + TO_TAG,
                        TAG[0],
                        TAG[1],
                    ),
                }
            })
            .collect()
    }
}

impl Kind {
    /// The number of windows.
    pub const fn windows(self) -> usize {
        match self {
            Self::Six => 6,
            Self::Twelve => 12,
        }
    }
}

impl Paper {
    /// Width and height, mm.
    pub const fn size_mm(self) -> [f64; 2] {
        match self {
            Self::A4 => [210.0, 297.0],
            Self::Letter => [215.9, 279.4],
        }
    }

    /// Its name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::Letter => "Letter",
        }
    }
}

impl Rect {
    /// A rectangle by its upper left corner and its size, mm.
    pub const fn new(x: f64, y: f64, width: f64, height: f64) -> Self {
        Self {
            x,
            y,
            width,
            height,
        }
    }

    /// Its corners, clockwise from the upper left.
    pub fn corners(self) -> [[f64; 2]; 4] {
        let (right, bottom) = (self.x + self.width, self.y + self.height);
        [
            [self.x, self.y],
            [right, self.y],
            [right, bottom],
            [self.x, bottom],
        ]
    }

    /// Its middle.
    pub fn middle(self) -> [f64; 2] {
        [self.x + self.width / 2.0, self.y + self.height / 2.0]
    }

    /// The rectangle with its edges moved outwards, mm.
    pub fn grown(self, by: f64) -> Self {
        Self::new(
            self.x - by,
            self.y - by,
            self.width + 2.0 * by,
            self.height + 2.0 * by,
        )
    }

    /// Whether two rectangles share a surface.
    pub fn meets(self, other: Self) -> bool {
        self.x < other.x + other.width
            && other.x < self.x + self.width
            && self.y < other.y + other.height
            && other.y < self.y + self.height
    }
}

impl Layout {
    /// Rectangles of the sheet that hold neither print nor window, tag or chart,
    /// with some room for things that don't lie exactly: bare paper by which the
    /// light field is read. Each is 1.5 mm high and up to 15 mm wide.
    pub fn paper(&self) -> Vec<Rect> {
        const TILE: f64 = 1.5;
        const MOST_TILES: usize = 10;
        let mut busy: Vec<Rect> = self.corners.iter().map(|r| r.grown(1.0)).collect();
        busy.push(self.dock.grown(4.0));
        busy.push(self.ruler.grown(3.0));
        busy.extend(self.words.iter().map(|r| r.grown(1.0)));
        for window in &self.windows {
            busy.push(window.place.grown(1.0));
            busy.push(window.tag.grown(1.0));
        }
        let [width, height] = self.size_mm.map(|side| side - 2.0 * TILE);
        let mut strips = Vec::new();
        for row in 0..(height / TILE) as usize {
            let y = TILE * (row + 1) as f64;
            let mut run = 0;
            let columns = (width / TILE) as usize;
            for column in 0..=columns {
                let x = TILE * (column + 1) as f64;
                let tile = Rect::new(x, y, TILE, TILE);
                let free = column < columns && !busy.iter().any(|b| b.meets(tile));
                run += usize::from(free);
                if run > 0 && (!free || run == MOST_TILES) {
                    let end = if free { x + TILE } else { x };
                    let length = TILE * run as f64;
                    strips.push(Rect::new(end - length, y, length, TILE));
                    run = 0;
                }
            }
        }
        strips
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_on_a_board_lies_over_another_thing() {
        for board in Board::ALL {
            let layout = board.layout();
            let mut places = layout.corners.to_vec();
            places.extend([layout.dock, layout.ruler]);
            places.extend(layout.words);
            places.extend(layout.windows.iter().flat_map(|w| [w.place, w.tag]));
            for (i, a) in places.iter().enumerate() {
                let [w, h] = layout.size_mm;
                assert!(a.x >= EDGE - 1e-9 && a.x + a.width <= w - EDGE + 1e-9);
                assert!(a.y >= EDGE - 1e-9 && a.y + a.height <= h - EDGE + 1e-9);
                for b in &places[i + 1..] {
                    assert!(!a.meets(*b), "{board:?}: {a:?} over {b:?}");
                }
            }
            assert_eq!(layout.windows.len(), board.kind.windows());
        }
    }

    #[test]
    fn windows_are_as_large_as_their_kind_says() {
        let sizes = Board::ALL.map(|board| {
            let place = board.layout().windows[0].place;
            [place.width.round(), place.height.round()]
        });
        assert_eq!(
            sizes,
            [[61.0, 71.0], [45.0, 39.0], [63.0, 62.0], [46.0, 33.0]]
        );
    }

    #[test]
    fn paper_lies_around_every_window_and_nowhere_on_one() {
        for board in Board::ALL {
            let layout = board.layout();
            let paper = layout.paper();
            for window in &layout.windows {
                assert!(
                    !paper
                        .iter()
                        .any(|p| p.meets(window.place) || p.meets(window.tag))
                );
                let around = window.place.grown(GAP);
                let near = paper.iter().filter(|p| p.meets(around)).count();
                assert!(near > 20, "{board:?} window {}: {near}", window.number);
            }
        }
    }
}
