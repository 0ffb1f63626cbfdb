//! What is printed on a board: its dark surfaces, mm.

use fast_qr::{ECL, QRBuilder};

use super::{
    Board, Code, Paper, Rect,
    label::{Label, VERSION, trial_name},
    layout::{TAG_CODE, TAG_MARGIN},
};

/// Thickness of printed lines, mm.
const LINE: f64 = 0.25;
/// Length of the marks at a place's corners, mm.
const MARK: f64 = 4.0;

/// A board with what its corners are to say.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Printed {
    board: Board,
    trial: Option<String>,
    stage: Option<u32>,
}

impl Printed {
    /// A board for any trial and stage.
    pub const fn plain(board: Board) -> Self {
        Self {
            board,
            trial: None,
            stage: None,
        }
    }

    /// A board for one trial (by its name in addresses) or one stage; a name that
    /// corner codes can't carry (more than 60 characters, or others than a-z, 0-9
    /// and hyphens) is left out.
    pub fn new(board: Board, trial: Option<&str>, stage: Option<u32>) -> Self {
        Self {
            board,
            trial: trial.and_then(trial_name),
            stage: stage.filter(|stage| *stage < 1_000_000),
        }
    }

    /// Which board it is.
    pub const fn board(&self) -> Board {
        self.board
    }

    /// The trial it is for.
    pub fn trial(&self) -> Option<&str> {
        self.trial.as_deref()
    }

    /// The stage it is for, rounds gone through.
    pub const fn stage(&self) -> Option<u32> {
        self.stage
    }

    /// The dark modules of the four corner codes.
    pub fn corner_codes(&self) -> Vec<Rect> {
        let layout = self.board.layout();
        let corners = layout.corners.into_iter().enumerate();
        corners
            .flat_map(|(corner, place)| {
                let label = Label {
                    version: VERSION,
                    board: self.board,
                    corner,
                    trial: self.trial.clone(),
                    stage: self.stage,
                };
                modules(&label.text(), place)
            })
            .collect()
    }

    /// Marks at the corners of dock, windows and tags, lying outside of them.
    pub fn marks(&self) -> Vec<Rect> {
        let layout = self.board.layout();
        let places = layout.windows.iter().flat_map(|w| [w.place, w.tag]);
        places
            .chain([layout.dock])
            .flat_map(|place| {
                place.corners().into_iter().flat_map(move |[x, y]| {
                    let left = x < place.middle()[0];
                    let upper = y < place.middle()[1];
                    let from_x = if left { x } else { x - MARK };
                    let from_y = if upper { y } else { y - MARK };
                    let beside = if left { x - LINE } else { x };
                    let above = if upper { y - LINE } else { y };
                    [
                        Rect::new(from_x, above, MARK, LINE),
                        Rect::new(beside, from_y, LINE, MARK),
                    ]
                })
            })
            .collect()
    }

    /// The lines of the ruler: every 10 mm, the outer edges exactly 100 mm apart; on
    /// Letter also an inch apart above it.
    pub fn ruler(&self) -> Vec<Rect> {
        let Rect { x, y, width, .. } = self.board.layout().ruler;
        let mut lines = vec![Rect::new(x, y, width, LINE)];
        for tick in 0..=10 {
            let at = x + f64::from(tick) * 10.0;
            let height = if tick % 5 == 0 { 3.5 } else { 2.0 };
            // The outermost lines lie inside, so that their outer edges are the measure.
            let from = match tick {
                0 => at,
                10 => at - LINE,
                _ => at - LINE / 2.0,
            };
            lines.push(Rect::new(from, y, LINE, height));
        }
        if self.board.paper == Paper::Letter {
            let inches = (0..=3).map(|inch| x + 25.4 * f64::from(inch));
            lines.extend(inches.map(|at| Rect::new(at, y - 2.0, LINE, 2.0)));
        }
        lines
    }
}

/// The dark modules of a tag's code, mm from the tag's upper left corner.
pub fn tag_code(code: Code) -> Vec<Rect> {
    modules(
        &code.to_string(),
        Rect::new(TAG_MARGIN, TAG_MARGIN, TAG_CODE, TAG_CODE),
    )
}

/// The dark modules of a QR code (ISO/IEC 18004) that fills a square, runs of a
/// row as one rectangle.
fn modules(text: &str, place: Rect) -> Vec<Rect> {
    let code = QRBuilder::new(text.as_bytes())
        .ecl(ECL::M)
        .build()
        .expect("texts here are far shorter than the 2331 bytes a code holds");
    let module = place.width / code.size as f64;
    let mut dark = Vec::new();
    for row in 0..code.size {
        let mut run = 0;
        for column in 0..=code.size {
            if column < code.size && code[row][column].value() {
                run += 1;
            } else if run > 0 {
                dark.push(Rect::new(
                    place.x + (column - run) as f64 * module,
                    place.y + row as f64 * module,
                    run as f64 * module,
                    module,
                ));
                run = 0;
            }
        }
    }
    dark
}
