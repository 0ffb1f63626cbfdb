//! The board's corner codes in a photo, and the map from the sheet that follows.

use crate::text;
use crate::{
    Point, Refusal, RefusalCode,
    area::shoelace,
    chart::homography::{Homography, distance},
    decode::Upright,
    survey::middle,
};

use super::{
    Board, VERSION,
    label::{Label, NoLabel},
    picture::{self, CodeSeen},
};

/// Longer side of the picture in which codes are looked for first, px: a corner's
/// module has 4 to 6 px there when the board fills most of the photo.
const FIRST_PX: usize = 2000;
/// The same where codes were seen but not enough of them could be read.
const SECOND_PX: usize = 3600;
/// Largest typical distance of the corners from a flat sheet, mm.
const FLAT_MM: f64 = 1.5;

/// A board's corners as read.
pub(super) struct Corners {
    pub board: Board,
    pub trial: Option<String>,
    pub stage: Option<u32>,
    /// From the sheet (mm) to the photo (px).
    pub sheet: Homography,
    /// How many of the four codes could be read.
    pub read: usize,
}

/// A corner code with its label.
struct Corner {
    label: Label,
    eyes: [Point; 3],
    modules: usize,
}

impl Corner {
    fn new(label: Label, code: CodeSeen) -> Self {
        Self {
            label,
            eyes: code.eyes,
            modules: code.modules,
        }
    }

    /// The code's middle: half way between its upper right and its lower left eye.
    fn middle(&self) -> Point {
        middle(&self.eyes[1..])
    }

    /// The places of its eyes on the sheet, mm, in the order of [`CodeSeen::eyes`].
    fn on_sheet(&self, board: Board) -> [Point; 3] {
        let place = board.layout().corners[self.label.corner];
        let near = 3.5 / self.modules as f64 * place.width;
        let far = place.width - near;
        [[near, near], [far, near], [near, far]].map(|[x, y]| [place.x + x, place.y + y])
    }
}

/// The board of a photo, none where there is no sign of one.
///
/// # Errors
/// There is a board, but it can't be used: the refusal says why.
pub(super) fn find(photo: &Upright) -> Result<Option<Corners>, Refusal> {
    let first = picture::in_photo(photo, FIRST_PX);
    if !first.any {
        return Ok(None);
    }
    let mut corners = labelled(first.read)?;
    // From three corners on the fourth is looked for where it has to be.
    if corners.len() < 3 && photo.width.max(photo.height) > FIRST_PX {
        let finer = labelled(picture::in_photo(photo, SECOND_PX).read)?;
        corners.extend(finer);
    }
    let corners = distinct(corners)?;
    let Some(one) = corners.first() else {
        return Ok(None);
    };
    let board = one.label.board;
    if corners.iter().any(|c| !agrees(&c.label, &one.label)) {
        return Err(Refusal::new(
            RefusalCode::BoardMixed,
            text::board::corner_codes_of_different_boards(),
        ));
    }
    if corners.len() < 3 {
        return Err(Refusal::new(
            RefusalCode::BoardUnread,
            text::board::only_of_the_boards_four_corner_codes(corners.len()),
        ));
    }
    if turns_left(&corners) {
        return Err(Refusal::mirrored());
    }
    let (trial, stage) = (one.label.trial.clone(), one.label.stage);
    let (sheet, read) = mapped(photo, board, corners).ok_or_else(not_flat)?;
    Ok(Some(Corners {
        board,
        trial,
        stage,
        sheet,
        read,
    }))
}

/// The codes that are corners of a board.
fn labelled(codes: Vec<CodeSeen>) -> Result<Vec<Corner>, Refusal> {
    let mut corners = Vec::new();
    for code in codes {
        match Label::parse(&code.text) {
            Ok(label) => corners.push(Corner::new(label, code)),
            Err(NoLabel::Foreign) => {}
            Err(NoLabel::Version(version)) => {
                return Err(Refusal::new(
                    RefusalCode::BoardVersion,
                    text::board::the_board_is_of_version(version, VERSION),
                ));
            }
        }
    }
    Ok(corners)
}

/// Each corner once; a corner seen at two places means two boards.
fn distinct(corners: Vec<Corner>) -> Result<Vec<Corner>, Refusal> {
    let mut kept: Vec<Corner> = Vec::new();
    for corner in corners {
        let same = kept.iter().find(|k| k.label.corner == corner.label.corner);
        match same {
            None => kept.push(corner),
            Some(known) => {
                let size = distance(known.eyes[1], known.eyes[2]);
                if distance(known.middle(), corner.middle()) > size / 2.0 {
                    return Err(Refusal::new(
                        RefusalCode::BoardMixed,
                        text::board::there_are_two_boards_in_the_photo(),
                    ));
                }
            }
        }
    }
    kept.sort_by_key(|corner| corner.label.corner);
    Ok(kept)
}

fn agrees(a: &Label, b: &Label) -> bool {
    (a.board, &a.trial, a.stage) == (b.board, &b.trial, b.stage)
}

/// Whether the corners go round anticlockwise, as only in a mirror.
fn turns_left(corners: &[Corner]) -> bool {
    let places: Vec<Point> = corners.iter().map(Corner::middle).collect();
    shoelace(&places) < 0.0
}

/// The map from the sheet by three corners or more, and by the fourth where it can
/// be read once it is known where to look.
fn mapped(photo: &Upright, board: Board, mut corners: Vec<Corner>) -> Option<(Homography, usize)> {
    let mut sheet = fit(board, &corners)?;
    let places = board.layout().corners;
    for (corner, place) in places.into_iter().enumerate() {
        if corners.iter().any(|c| c.label.corner == corner) {
            continue;
        }
        let codes = [6.0, 4.0, 9.0]
            .into_iter()
            .flat_map(|px_per_mm| picture::on_sheet(photo, &sheet, place.grown(5.0), px_per_mm));
        let found = codes
            .filter_map(|code| {
                let label = Label::parse(&code.text).ok()?;
                Some(Corner::new(label, code))
            })
            .find(|c| c.label.corner == corner && agrees(&c.label, &corners[0].label));
        corners.extend(found);
    }
    if corners.len() == 4 {
        sheet = fit(board, &corners)?;
    }
    Some((sheet, corners.len()))
}

/// The map from all corners of all codes; none where no flat sheet looks like that.
fn fit(board: Board, corners: &[Corner]) -> Option<Homography> {
    let layout = board.layout();
    let pairs: Vec<(Point, Point)> = corners
        .iter()
        .flat_map(|c| c.on_sheet(board).into_iter().zip(c.eyes))
        .collect();
    let sheet = Homography::fit(&pairs)?;
    let whole = super::Rect::new(0.0, 0.0, layout.size_mm[0], layout.size_mm[1]);
    if !sheet.faces(&whole.corners()) {
        return None;
    }
    let back = sheet.inverted();
    let squares = pairs
        .iter()
        .map(|(mm, px)| distance(back.map(*px), *mm).powi(2));
    let typical = (squares.sum::<f64>() / pairs.len() as f64).sqrt();
    (typical < FLAT_MM).then_some(sheet)
}

fn not_flat() -> Refusal {
    Refusal::new(
        RefusalCode::BoardUnread,
        text::board::the_boards_corner_codes_dont_lie(),
    )
}
