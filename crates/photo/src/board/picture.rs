//! Codes in a photo: where they are and what they say (ISO/IEC 18004).

use rqrr::{BitGrid, Grid};

use crate::{
    Point,
    chart::homography::{Homography, distance},
    decode::Upright,
};

use super::{
    Rect,
    finder::{self, Eye, Grey},
};

/// A code that was read.
pub(super) struct CodeSeen {
    pub text: String,
    /// The middles of its eyes: upper left, upper right, lower left, as the code
    /// itself stands; pixels of the photo.
    pub eyes: [Point; 3],
    /// How many modules wide it is.
    pub modules: usize,
}

/// What there is of codes in a picture.
pub(super) struct Codes {
    /// Those that could be read.
    pub read: Vec<CodeSeen>,
    /// Whether there are eyes enough for one code.
    pub any: bool,
}

/// Widest code that is read, modules: version 5 of ISO/IEC 18004.
const WIDEST: usize = 37;
/// Every so manieth line of a photo is scanned: an eye's core is wider than that.
const LINES: usize = 3;
/// The same where all that is asked is whether there may be a board: it has 12 eyes.
const LINES_AT_A_GLANCE: usize = 4;

/// The codes of the whole photo, in a picture whose longer side has about `longest`
/// pixels.
pub(super) fn in_photo(photo: &Upright, longest: usize) -> Codes {
    let scale = (photo.width.max(photo.height) as f64 / longest as f64).max(1.0);
    let size = |side: usize| (side as f64 / scale) as usize;
    // A pixel and its neighbour below: codes need no more, and each costs time.
    let half = scale as usize / 2;
    let (width, height) = (size(photo.width), size(photo.height));
    let places = |size: usize| (0..size).map(|k| (k as f64 * scale) as usize);
    let columns: Vec<usize> = places(width).collect();
    let rows: Vec<usize> = places(height).collect();
    let pixel = |x: usize, y: usize| {
        let (x, y) = (columns[x], rows[y]);
        let a = u16::from(photo.green(x, y));
        let b = u16::from(photo.green(x + half, y + half));
        ((a + b) / 2) as u8
    };
    // Eyes look the same along either axis; a photo on its side is looked through
    // the way it is stored.
    let may_hold_eyes = if photo.is_sideways() {
        finder::may_hold_eyes(height, width, LINES_AT_A_GLANCE, |x, line| {
            let column = rows.iter().map(|&y| photo.green(columns[x], y));
            line.iter_mut()
                .zip(column)
                .for_each(|(to, from)| *to = from);
        })
    } else {
        finder::may_hold_eyes(width, height, LINES_AT_A_GLANCE, |y, line| {
            let row = columns.iter().map(|&x| photo.green(x, rows[y]));
            line.iter_mut().zip(row).for_each(|(to, from)| *to = from);
        })
    };
    if !may_hold_eyes {
        return Codes {
            read: Vec::new(),
            any: false,
        };
    }
    codes(&Grey::new(width, height, pixel), LINES, |p| {
        p.map(|v| v * scale)
    })
}

/// The codes in a rectangle of the sheet, seen as if from straight above with
/// `px_per_mm`.
pub(super) fn on_sheet(
    photo: &Upright,
    sheet: &Homography,
    place: Rect,
    px_per_mm: f64,
) -> Vec<CodeSeen> {
    let to_photo = |p: Point| sheet.map([place.x + p[0] / px_per_mm, place.y + p[1] / px_per_mm]);
    let size = |mm: f64| ((mm * px_per_mm) as usize).clamp(1, 4000);
    let grey = Grey::new(size(place.width), size(place.height), |x, y| {
        let mut sum = 0.0;
        for [dx, dy] in [[0.25, 0.25], [0.75, 0.75]] {
            sum += green(photo, to_photo([x as f64 + dx, y as f64 + dy]));
        }
        (sum / 2.0) as u8
    });
    codes(&grey, 1, to_photo).read
}

/// The green code value at a place; white beyond the photo.
fn green(photo: &Upright, [x, y]: Point) -> f64 {
    let inside = x >= 0.0 && y >= 0.0 && x < photo.width as f64 && y < photo.height as f64;
    if inside {
        f64::from(photo.at(x as usize, y as usize)[1])
    } else {
        255.0
    }
}

fn codes(grey: &Grey, step: usize, to_photo: impl Fn(Point) -> Point) -> Codes {
    let eyes = grey.eyes(step);
    let mut used = vec![false; eyes.len()];
    let mut read = Vec::new();
    for [a, b, c] in triples(&eyes) {
        if used[a] || used[b] || used[c] {
            continue;
        }
        let Some((text, modules)) = read_code(grey, [eyes[a], eyes[b], eyes[c]]) else {
            continue;
        };
        for i in [a, b, c] {
            used[i] = true;
        }
        read.push(CodeSeen {
            text,
            eyes: [a, b, c].map(|i| to_photo(eyes[i].middle)),
            modules,
        });
    }
    Codes {
        read,
        any: eyes.len() >= 3,
    }
}

/// Eyes that may be those of one code: the corner between two legs first, then the
/// one to its right and the one below, seen in the code's own way. The squarest
/// first.
fn triples(eyes: &[Eye]) -> Vec<[usize; 3]> {
    let mut found = Vec::new();
    for a in 0..eyes.len() {
        let near: Vec<(usize, Point)> = (0..eyes.len())
            .filter(|&b| b != a)
            .filter_map(|b| {
                let gap = distance(eyes[a].middle, eyes[b].middle);
                let module = (eyes[a].module + eyes[b].module) / 2.0;
                let alike =
                    eyes[a].module.max(eyes[b].module) < 1.6 * eyes[a].module.min(eyes[b].module);
                // Turned by 45 degrees an eye measures up to 1.41 modules a module.
                let fits = (8.0..1.25 * (WIDEST - 7) as f64).contains(&(gap / module));
                let leg = [0, 1].map(|k| eyes[b].middle[k] - eyes[a].middle[k]);
                (alike && fits).then_some((b, leg))
            })
            .collect();
        for &(b, u) in &near {
            for &(c, v) in &near {
                let (p, q) = (u[0].hypot(u[1]), v[0].hypot(v[1]));
                let sine = (u[0] * v[1] - u[1] * v[0]) / (p * q);
                let ratio = p.max(q) / p.min(q);
                // The third eye lies clockwise of the second; in a mirror it doesn't,
                // and the decoder turns such a code over by itself.
                if c == b || sine < 0.8 || ratio > 1.4 {
                    continue;
                }
                found.push(((1.0 - sine) + (ratio - 1.0), [a, b, c]));
            }
        }
    }
    found.sort_by(|x, y| x.0.total_cmp(&y.0));
    // A board has 16 codes; more tries than this are a pattern that looks like eyes.
    found.truncate(400);
    found.into_iter().map(|(_, triple)| triple).collect()
}

/// The modules of a code, to be decoded.
struct Modules {
    size: usize,
    dark: Vec<bool>,
}

impl BitGrid for Modules {
    fn size(&self) -> usize {
        self.size
    }

    fn bit(&self, y: usize, x: usize) -> bool {
        self.dark[y * self.size + x]
    }
}

/// The text of the code with these eyes, and its width in modules.
fn read_code(grey: &Grey, eyes: [Eye; 3]) -> Option<(String, usize)> {
    let [a, b, c] = eyes.map(|e| e.middle);
    let leg = (distance(a, b) + distance(a, c)) / 2.0;
    // The eye's width along the axes of the picture grows with the code's turn.
    let turn = ((b[1] - a[1]) / distance(a, b)).abs().asin();
    let stretch = 1.0 / turn.cos().max(turn.sin());
    let module = eyes.iter().map(|e| e.module).sum::<f64>() / 3.0 / stretch;
    let wide = 7.0 + leg / module;
    let mut sizes: Vec<usize> = (21..=WIDEST).step_by(4).collect();
    sizes.sort_by(|x, y| {
        (*x as f64 - wide)
            .abs()
            .total_cmp(&(*y as f64 - wide).abs())
    });
    let fourth = [0, 1].map(|k| b[k] + c[k] - a[k]);
    for size in sizes.into_iter().take(2) {
        let far = size as f64 - 3.5;
        let step = leg / (size - 7) as f64 / 2.0;
        for [dx, dy] in OFFSETS {
            let corner = [fourth[0] + dx * step, fourth[1] + dy * step];
            let Some(map) = Homography::fit(&[
                ([3.5, 3.5], a),
                ([far, 3.5], b),
                ([3.5, far], c),
                ([far, far], corner),
            ]) else {
                continue;
            };
            let modules = sampled(grey, &map, size, eyes.map(|e| e.threshold));
            if let Ok((_, text)) = Grid::new(modules).decode() {
                return Some((text, size));
            }
        }
    }
    None
}

/// Where the fourth corner may lie beside the parallelogram's, half modules: what
/// tilt makes of it.
const OFFSETS: [Point; 13] = [
    [0.0, 0.0],
    [1.0, 0.0],
    [-1.0, 0.0],
    [0.0, 1.0],
    [0.0, -1.0],
    [1.0, 1.0],
    [-1.0, -1.0],
    [1.0, -1.0],
    [-1.0, 1.0],
    [2.0, 0.0],
    [-2.0, 0.0],
    [0.0, 2.0],
    [0.0, -2.0],
];

fn sampled(grey: &Grey, map: &Homography, size: usize, [a, b, c]: [f64; 3]) -> Modules {
    let span = (size - 7) as f64;
    let dark = (0..size * size)
        .map(|i| {
            let (x, y) = ((i % size) as f64 + 0.5, (i / size) as f64 + 0.5);
            let threshold = a + (b - a) * (x - 3.5) / span + (c - a) * (y - 3.5) / span;
            let around = [[0.0, 0.0], [0.2, 0.0], [-0.2, 0.0], [0.0, 0.2], [0.0, -0.2]];
            let sum: f64 = around
                .iter()
                .map(|[dx, dy]| grey.at(map.map([x + dx, y + dy])))
                .sum();
            sum / 5.0 < threshold
        })
        .collect();
    Modules { size, dark }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// The decoder has to bear whatever a photo shows.
        #[test]
        fn no_modules_break_the_decoder(
            size in (0usize..5).prop_map(|v| 21 + 4 * v),
            dark in prop::collection::vec(any::<bool>(), WIDEST * WIDEST),
        ) {
            let _ = Grid::new(Modules { size, dark }).decode();
        }
    }
}
