//! The piece in a window: what differs from the paper around it.

use crate::{Point, chart::homography::Homography, decode::Upright, median::median};

use super::{
    Rect,
    outline::Cells,
    paper::{PaperLook, mean},
};

/// Colour (as logarithms of ratios to green, against the paper) from which on a
/// cell is surely no paper.
const OTHER_COLOUR: f64 = 0.045;
/// Darkness against the paper, as a logarithm, that no shadow of cloth reaches.
const DARKER: f64 = 0.6;
/// Lightness above the paper's.
const LIGHTER: f64 = 0.12;
/// Darkness of a grey piece against the paper, if it has an edge.
const GREY: f64 = 0.12;
/// Share of its darkness by which a piece parts from the paper over 4 mm; a shadow
/// of something held above the table fades more slowly.
const SHARP: f64 = 0.6;
/// The same between parts of a piece, where pale cloth is told from bare paper.
const PALE_COLOUR: f64 = 0.018;
/// Lightness at which pale cloth is told from paper.
const PALE_LIGHT: f64 = 0.035;
/// How far along the way from paper to cloth a cell at the window's edge has to be.
const AS_CLOTH: f64 = 0.5;
/// Side of a cell, mm.
const CELL: f64 = 1.0;
/// From a piece's edge to the outline, mm: threads, frayed rims and the shadow at
/// the edge stay outside.
const RIM: f64 = 3.0;
/// Least surface of a piece after that, square mm.
const LEAST: f64 = 60.0;

/// The outline of an area well inside the piece, px of the photo; none where
/// nothing differs from the paper.
pub(super) fn piece(
    photo: &Upright,
    sheet: &Homography,
    paper: &PaperLook,
    place: Rect,
) -> Option<Vec<Point>> {
    let columns = (place.width / CELL) as usize;
    let rows = (place.height / CELL) as usize;
    let left = place.x + (place.width - columns as f64 * CELL) / 2.0;
    let top = place.y + (place.height - rows as f64 * CELL) / 2.0;
    let corner = |x: f64, y: f64| [left + x * CELL, top + y * CELL];
    let looks: Vec<[f64; 3]> = (0..rows * columns)
        .map(|i| {
            let [x, y] = corner((i % columns) as f64, (i / columns) as f64);
            let cell = Rect::new(x, y, CELL, CELL);
            let Some(look) = mean(photo, sheet, cell, [4, 4]) else {
                return [0.0; 3];
            };
            let bare = paper.at(cell.middle());
            [0, 1, 2].map(|k| look[k].ln() - bare[k])
        })
        .collect();
    let differs: Vec<[f64; 2]> = looks
        .iter()
        .map(|[r, g, b]| [(r - g).hypot(b - g), (r + g + b) / 3.0])
        .collect();
    let sure = Cells::new(columns, rows, |i| {
        let [colour, light] = differs[i];
        colour > OTHER_COLOUR || !(-DARKER..=LIGHTER).contains(&light)
    });
    // Threads are narrower than two cells; bands of pale cloth between dyed ones
    // are filled where they are not as white as the paper.
    let coloured = sure.eroded(1).dilated(1).without_specks(8);
    let body = match grey(columns, rows, &differs) {
        Some(grey) => coloured.or(&grey),
        None => coloured,
    };
    let hull = body.hull()?;
    let pale = Cells::new(columns, rows, |i| {
        let [colour, light] = differs[i];
        hull.has(i) && (colour > PALE_COLOUR || light.abs() > PALE_LIGHT)
    });
    let whole = body.or(&pale).dilated(1).eroded(1).filled();
    let whole = without_shadow_at_the_edge(whole, columns, rows, &looks);
    let inner = whole.eroded((RIM / CELL) as usize).largest();
    if (inner.count() as f64) * CELL * CELL < LEAST {
        return None;
    }
    let outline = inner.outline();
    Some(
        outline
            .into_iter()
            .map(|[x, y]| sheet.map(corner(x, y)))
            .collect(),
    )
}

/// A piece without the shadow between it and the window's edge. What lies beyond the
/// window counts as more of the same, so that pieces may be larger; but a piece that
/// ends just before the edge throws its shadow as far.
fn without_shadow_at_the_edge(
    whole: Cells,
    columns: usize,
    rows: usize,
    looks: &[[f64; 3]],
) -> Cells {
    let inside: Vec<[f64; 3]> = (0..looks.len())
        .filter(|&i| whole.has(i))
        .map(|i| looks[i])
        .collect();
    let usual = [0, 1, 2].map(|k| median(inside.iter().map(|look| look[k])));
    let along = |look: [f64; 3]| (0..3).map(|k| look[k] * usual[k]).sum::<f64>();
    let least = AS_CLOTH * along(usual);
    let reach = (RIM / CELL) as usize + 1;
    Cells::new(columns, rows, |i| {
        let (x, y) = (i % columns, i / columns);
        let at_edge = x.min(columns - 1 - x).min(y).min(rows - 1 - y) < reach;
        whole.has(i) && (!at_edge || along(looks[i]) > least)
    })
}

/// A grey piece: darker than paper without being of another colour, as shadows are,
/// but with an edge, which the shadow of a hand or a telephone hasn't.
fn grey(columns: usize, rows: usize, differs: &[[f64; 2]]) -> Option<Cells> {
    let darker = Cells::new(columns, rows, |i| differs[i][1] < -GREY);
    // The shadow at a piece's edge is too narrow to stay.
    let body = darker.eroded(2).dilated(2).largest();
    let mean = |cells: &Cells, but: &Cells| {
        let of = (0..differs.len()).filter(|&i| cells.has(i) && !but.has(i));
        let (sum, n) = of.fold((0.0, 0.0), |(s, n), i| (s + differs[i][1], n + 1.0));
        (n > 0.0).then_some(sum / n)
    };
    let none = Cells::new(columns, rows, |_| false);
    let depth = mean(&body.eroded(2), &none)?;
    // Where it fills the window there is no edge to be seen, and it is taken.
    let Some(around) = mean(&body.dilated(3), &body.dilated(2)) else {
        return Some(body);
    };
    let edge = mean(&body.eroded(1), &body.eroded(2))?;
    (edge - around < SHARP * depth).then_some(body)
}
