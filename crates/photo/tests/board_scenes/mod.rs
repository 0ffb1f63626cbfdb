//! Rendered photos of pieces on a printed board.

use photo::board::{Board, Code, Printed, Rect, tag_code};
use scene::{
    Background, Chart, Dye, Frame, Piece, Reflectance, Rendered, Scene, Sheet, Texture, Viewpoint,
    cotton, linen, render, wool,
};

/// A board with what lies on it, ready to be photographed.
pub struct Laid {
    pub scene: Scene,
    board: Board,
    /// The tag of each window, by its number less one.
    pub tags: Vec<Option<Code>>,
}

impl Laid {
    /// A full board: a tagged piece of another dye or depth in each window, the
    /// pocket chart in the dock, none of it quite straight.
    pub fn full(board: Board) -> Self {
        let layout = board.layout();
        let mut laid = Self::empty(Printed::plain(board));
        for i in 0..layout.windows.len() {
            laid.lay(i, colour(i));
            laid.tag(i, Code::from_number(40_503 * (i as u32 + 1)));
        }
        laid
    }

    /// A board with the chart alone.
    pub fn empty(printed: Printed) -> Self {
        let board = printed.board();
        let layout = board.layout();
        let mut dark = printed.corner_codes();
        dark.extend(printed.marks());
        dark.extend(printed.ruler());
        let dark: Vec<[f64; 4]> = dark.into_iter().map(plain).collect();
        let sheet = Sheet::printed(layout.size_mm, dark);
        let [x, y] = sheet.on_table(layout.dock.middle());
        // The common pocket chart: a card of 108 x 64 mm.
        let chart = Chart {
            middle_mm: [x + 1.0, y - 1.0],
            turn_deg: 1.2,
            patch_mm: 12.5,
            gap_mm: 3.0,
            margin_mm: 6.5,
            frame: Frame::Dark,
        };
        let scene = Scene {
            width_px: 2400,
            height_px: 3200,
            chart: Some(chart),
            sheet: Some(sheet),
            background: Background::Wood,
            viewpoint: Viewpoint {
                fill: 0.93,
                ..Viewpoint::default()
            },
            ..Scene::default()
        };
        Self {
            scene,
            board,
            tags: vec![None; layout.windows.len()],
        }
    }

    /// A board whose lower corners are those of another one.
    pub fn of_two_boards(board: Board) -> Self {
        let mut laid = Self::full(board);
        let half = board.layout().size_mm[1] / 2.0;
        let other = Printed::new(board, Some("another"), None);
        laid.sheet().dark.retain(|r| r[1] < half || r[2] > 50.0);
        let lower = other.corner_codes().into_iter().filter(|r| r.y > half);
        laid.sheet().dark.extend(lower.map(plain));
        laid.scene.pieces.clear();
        laid
    }

    /// A board with a corner of a version yet to come.
    pub fn of_another_version(board: Board) -> Self {
        let mut laid = Self::empty(Printed::plain(board));
        let place = board.layout().corners[0];
        let code = fast_qr::QRBuilder::new("WB2-24A-C1")
            .build()
            .expect("a code");
        let module = place.width / code.size as f64;
        laid.sheet().dark.retain(|r| r[0] > 30.0 || r[1] > 30.0);
        for (row, column) in (0..code.size).flat_map(|r| (0..code.size).map(move |c| (r, c))) {
            if code[row][column].value() {
                let (x, y) = (column as f64 * module, row as f64 * module);
                laid.sheet()
                    .dark
                    .push([place.x + x, place.y + y, module, module]);
            }
        }
        laid
    }

    /// Lays a piece in a window, a little askew.
    pub fn lay(&mut self, window: usize, reflectance: Reflectance) {
        let place = self.board.layout().windows[window].place;
        let [x, y] = self.on_table(place.middle());
        let askew = [3.0, -4.0, 1.0, -2.0, 5.0][window % 5];
        let side = place.width.min(place.height) * 0.84;
        let id = (window + 1).to_string();
        let piece = Piece::square(&id, reflectance, [x, y], side).turned(askew);
        self.scene.pieces.push(piece);
    }

    /// Lays a tag in a window's tag place, a little askew and off.
    pub fn tag(&mut self, window: usize, code: Code) {
        let place = self.board.layout().windows[window].tag;
        let off = [0.7, -0.5, 0.2][window % 3];
        for rect in tag_code(code) {
            let [x, y, w, h] = plain(rect);
            let moved = [place.x + x + off, place.y + y - off, w, h];
            self.sheet().dark.push(moved);
        }
        self.tags[window] = Some(code);
    }

    /// Covers a corner of the sheet with a hand's width of dark cloth.
    pub fn cover(&mut self, corner: usize) {
        let place = self.board.layout().corners[corner];
        let [x, y] = self.on_table(place.middle());
        let cloth = Piece::square("cover", Reflectance::flat(0.3), [x, y], 16.0);
        self.scene.pieces.push(cloth.with_texture(Texture::FLAT));
    }

    pub fn sheet(&mut self) -> &mut Sheet {
        self.scene.sheet.as_mut().expect("a board is a sheet")
    }

    fn on_table(&mut self, place: [f64; 2]) -> [f64; 2] {
        self.sheet().on_table(place)
    }

    pub fn photograph(&self) -> Rendered {
        render(&self.scene)
    }
}

fn plain(r: Rect) -> [f64; 4] {
    [r.x, r.y, r.width, r.height]
}

fn colour(i: usize) -> Reflectance {
    let dyes = Dye::palette();
    let cloth = [wool(), linen(), cotton()][i % 3].clone();
    let depth = 0.9 - 0.15 * (i / dyes.len()) as f64;
    dyes[i % dyes.len()].on(&cloth, depth)
}
