//! What was found on a photo, as shapes to be drawn over it.

use crate::text;
use photo::{LightGrid, PhotoMap, Trouble};
use report::iso_lines::iso_lines;
use trial::{Photo, Trial};

/// The shapes of a photo's layers, pixels of the upright photo.
pub(super) struct Layers {
    /// Outlines of the patches.
    pub(super) patches: Vec<Patch>,
    /// How many patches were left aside.
    pub(super) left_aside: usize,
    pub(super) shades: Vec<Shade>,
    pub(super) lines: Vec<Line>,
    /// What the light layer says, in a sentence.
    pub(super) light: String,
    pub(super) spots: Vec<Spot>,
    /// What the spots say, a sentence for each piece and trouble.
    pub(super) troubles: Vec<String>,
    /// Corners of the board's sheet.
    pub(super) board: Option<String>,
}

/// A patch of the chart.
pub(super) struct Patch {
    pub(super) points: String,
    pub(super) is_used: bool,
}

/// A square of the photo that is lighter or darker than the chart's place.
pub(super) struct Shade {
    pub(super) x: f64,
    pub(super) y: f64,
    pub(super) width: f64,
    pub(super) height: f64,
    pub(super) is_darker: bool,
    pub(super) opacity: f64,
}

/// Where the light has one value.
pub(super) struct Line {
    pub(super) path: String,
    pub(super) label: String,
    pub(super) x: f64,
    pub(super) y: f64,
}

/// A troubled part of an area.
pub(super) struct Spot {
    pub(super) x: f64,
    pub(super) y: f64,
    pub(super) width: f64,
    pub(super) height: f64,
    pub(super) class: &'static str,
    pub(super) title: String,
}

impl Layers {
    pub(super) fn of(trial: &Trial, photo: &Photo, map: &PhotoMap) -> Self {
        let size = [f64::from(photo.width), f64::from(photo.height)];
        let patches: Vec<Patch> = map
            .patches
            .iter()
            .map(|patch| Patch {
                points: crate::areas::write(&patch.corners),
                is_used: patch.is_used,
            })
            .collect();
        let (spots, troubles) = spots(trial, map);
        Self {
            left_aside: patches.iter().filter(|patch| !patch.is_used).count(),
            patches,
            shades: shades(&map.light, size),
            lines: lines(&map.light, size),
            light: light(&map.light),
            spots,
            troubles,
            board: map
                .board
                .as_ref()
                .map(|corners| crate::areas::write(corners)),
        }
    }
}

/// Least and most of a grid's values; none of an empty one.
fn range(grid: &LightGrid) -> Option<(f64, f64)> {
    let least = grid.values.iter().copied().reduce(f64::min)?;
    let most = grid.values.iter().copied().reduce(f64::max)?;
    Some((least, most))
}

/// A share of light beside that at the chart, in words: `12 % more`.
fn beside_chart(value: f64) -> String {
    let percent = (100.0 * (value - 1.0)).round();
    match percent {
        0.0 => text::photo::as_much().to_owned(),
        p if p > 0.0 => text::photo::more(format_args!("{p:.0}")),
        p => text::photo::less(format_args!("{:.0}", -p)),
    }
}

fn light(grid: &LightGrid) -> String {
    range(grid).map_or_else(String::new, |(least, most)| {
        text::photo::the_darkest_place_gets_light_the(beside_chart(least), beside_chart(most))
    })
}

/// How far apart the crossings of a grid lie, pixels.
fn steps(grid: &LightGrid, size: [f64; 2]) -> [f64; 2] {
    let counts = [grid.columns, grid.rows].map(|n| n.saturating_sub(1).max(1) as f64);
    [0, 1].map(|k| size[k] / counts[k])
}

fn shades(grid: &LightGrid, size: [f64; 2]) -> Vec<Shade> {
    let step = steps(grid, size);
    let columns = grid.columns.max(1);
    let mut shades = Vec::new();
    for (k, value) in grid.values.iter().enumerate() {
        let (column, row) = (k % columns, k / columns);
        let strength = value.max(0.05).ln();
        // Less than 2 % can't be seen and needs no shape.
        if strength.abs() < 0.02 {
            continue;
        }
        // Each crossing shades the square around it, within the photo.
        let around = |k: usize, i: usize| {
            let from = ((i as f64 - 0.5) * step[k]).max(0.0);
            let to = ((i as f64 + 0.5) * step[k]).min(size[k]);
            (from.round(), (to.round() - from.round()))
        };
        let ((x, width), (y, height)) = (around(0, column), around(1, row));
        shades.push(Shade {
            x,
            y,
            width,
            height,
            is_darker: strength < 0.0,
            opacity: ((strength.abs() * 2.5).min(0.6) * 100.0).round() / 100.0,
        });
    }
    shades
}

/// Lines every 5 %, or every 10 or 20 where there would be many.
fn lines(grid: &LightGrid, size: [f64; 2]) -> Vec<Line> {
    let Some((least, most)) = range(grid) else {
        return Vec::new();
    };
    let apart = match most - least {
        span if span > 0.9 => 20,
        span if span > 0.45 => 10,
        _ => 5,
    };
    let step = steps(grid, size);
    let level = |percent: i32| 1.0 + f64::from(percent) / 100.0;
    let mut lines = Vec::new();
    for percent in (-95..=400).filter(|percent| percent % apart == 0) {
        if !(least..=most).contains(&level(percent)) {
            continue;
        }
        let segments = iso_lines(grid.columns, &grid.values, level(percent));
        let Some(middle) = segments.get(segments.len() / 2) else {
            continue;
        };
        let place = |p: [f64; 2]| [0, 1].map(|k| (p[k] * step[k]).round());
        let [x, y] = place(middle[0]);
        let path: Vec<String> = segments
            .iter()
            .map(|segment| {
                let [a, b] = segment.map(place);
                format!("M{} {}L{} {}", a[0], a[1], b[0], b[1])
            })
            .collect();
        lines.push(Line {
            path: path.concat(),
            label: match percent {
                0 => text::photo::as_at_the_chart().to_owned(),
                p if p > 0 => format!("+{p} %"),
                p => format!("\u{2212}{} %", -p),
            },
            // Within the photo, so that the label is not cut off.
            x: x.clamp(0.06 * size[0], 0.94 * size[0]).round(),
            y: y.clamp(0.04 * size[1], 0.96 * size[1]).round(),
        });
    }
    lines
}

fn spots(trial: &Trial, map: &PhotoMap) -> (Vec<Spot>, Vec<String>) {
    let code = |area: &str| {
        let piece = trial.pieces.iter().find(|p| p.id.to_string() == area);
        piece.map_or(text::photo::an_area(), |piece| piece.code.as_str())
    };
    let words = |trouble| match trouble {
        Trouble::BurntOut => ("burnt", text::photo::burnt_out()),
        Trouble::Shining => ("shining", "shining"),
        Trouble::AtZero => ("at-zero", text::photo::deeper_than_the_file_can_hold()),
    };
    let spots: Vec<Spot> = map
        .spots
        .iter()
        .map(|spot| {
            let [low, high] = spot.corners;
            let (class, name) = words(spot.trouble);
            Spot {
                x: low[0],
                y: low[1],
                width: high[0] - low[0],
                height: high[1] - low[1],
                class,
                title: text::photo::here(
                    code(&spot.area),
                    format_args!("{:.0}", 100.0 * spot.share),
                    name,
                ),
            }
        })
        .collect();
    let mut troubles = Vec::new();
    for spot in &map.spots {
        let (_, name) = words(spot.trouble);
        let alike = |other: &&photo::Spot| other.area == spot.area && other.trouble == spot.trouble;
        let places = map.spots.iter().filter(alike).count();
        let sentence = text::photo::trouble_in_places(code(&spot.area), name, places);
        if !troubles.contains(&sentence) {
            troubles.push(sentence);
        }
    }
    (spots, troubles)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn slope() -> LightGrid {
        let values = (0..12)
            .map(|k| 0.9 + 0.1 * f64::from(k % 4) / 1.5)
            .collect();
        LightGrid {
            columns: 4,
            rows: 3,
            values,
        }
    }

    #[test]
    fn light_has_lines_every_five_percent_with_their_signs() {
        let lines = lines(&slope(), [900.0, 600.0]);
        let labels: Vec<&str> = lines.iter().map(|line| line.label.as_str()).collect();
        assert_eq!(
            labels,
            ["\u{2212}10 %", "\u{2212}5 %", "as at the chart", "+5 %"]
        );
        // 0.95 lies three quarters of a step from the left: 225 px of 900.
        assert!(lines[1].path.starts_with("M225 "), "{}", lines[1].path);
        assert!(light(&slope()).contains("10 % less light, the brightest 10 % more"));
    }

    #[test]
    fn shades_stay_within_the_photo_and_tell_dark_from_light() {
        let shades = shades(&slope(), [900.0, 600.0]);
        assert!(shades.iter().any(|s| s.is_darker) && shades.iter().any(|s| !s.is_darker));
        for shade in shades {
            assert!(shade.x >= 0.0 && shade.x + shade.width <= 900.0);
            assert!(shade.y >= 0.0 && shade.y + shade.height <= 600.0);
        }
    }

    #[test]
    fn no_light_kept_is_no_layer() {
        let none = LightGrid::default();
        assert!(lines(&none, [9.0, 9.0]).is_empty() && shades(&none, [9.0, 9.0]).is_empty());
        assert_eq!(light(&none), "");
    }
}
