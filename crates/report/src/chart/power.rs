//! How often the margin is shown, by pieces per arm.

use crate::svg::escape;
use crate::text;
use std::fmt::Write;
use trial::plan::BySize;

const LEFT: f64 = 46.0;
const RIGHT: f64 = 560.0;
const TOP: f64 = 16.0;
const BOTTOM: f64 = 180.0;
/// The share that a good plan reaches.
const GOAL: f64 = 0.8;

/// Draws points joined by a line, a goal of four times in five across them; empty
/// where there are fewer than two sizes.
pub fn power_by_pieces(by_pieces: &[BySize]) -> String {
    let Some(most) = by_pieces.iter().map(|by| by.pieces).max() else {
        return String::new();
    };
    if by_pieces.len() < 2 {
        return String::new();
    }
    let x = |pieces: usize| LEFT + 14.0 + (RIGHT - LEFT - 30.0) * pieces as f64 / most as f64;
    let y = |share: f64| BOTTOM - (BOTTOM - TOP) * share.clamp(0.0, 1.0);
    let said: Vec<String> = by_pieces
        .iter()
        .map(|by| {
            text::chart::pieces_of_100(by.pieces, format_args!("{:.0}", 100.0 * by.shows_margin))
        })
        .collect();
    let name = text::chart::how_often_the_margin_is_shown(said.join(", "));
    let mut out = format!(
        r#"<svg class="chart change" viewBox="0 0 580 222" role="img" aria-label="{}" font-size="13" fill="currentColor">"#,
        escape(&name)
    );
    for (share, words) in [(0.0, "0"), (0.5, "50"), (1.0, "100")] {
        let level = y(share);
        let strength = if share > 0.0 { 0.18 } else { 0.8 };
        let _ = write!(
            out,
            r#"<line x1="{LEFT}" x2="{RIGHT}" y1="{level:.1}" y2="{level:.1}" stroke="currentColor" stroke-opacity="{strength}"/><text x="{:.1}" y="{:.1}" text-anchor="end">{words}</text>"#,
            LEFT - 8.0,
            level + 4.5
        );
    }
    let goal = y(GOAL);
    let _ = write!(
        out,
        r#"<line x1="{LEFT}" x2="{RIGHT}" y1="{goal:.1}" y2="{goal:.1}" stroke="currentColor" stroke-width="1.5" stroke-dasharray="3 3"/><text x="{LEFT}" dx="6" y="{:.1}">80: a good plan</text>"#,
        goal - 6.0
    );
    let mut d = String::new();
    for (i, by) in by_pieces.iter().enumerate() {
        let verb = if i == 0 { 'M' } else { 'L' };
        let _ = write!(d, "{verb}{:.1} {:.1}", x(by.pieces), y(by.shows_margin));
    }
    let _ = write!(
        out,
        r##"<g class="series-1"><path class="line" d="{d}" fill="none" stroke="#1f4f82" stroke-width="2.5"/>"##
    );
    for by in by_pieces {
        let (at, level) = (x(by.pieces), y(by.shows_margin));
        let _ = write!(
            out,
            r##"<circle class="mark" fill="#1f4f82" cx="{at:.1}" cy="{level:.1}" r="5"><title>{} pieces: {:.0} of 100</title></circle>"##,
            by.pieces,
            100.0 * by.shows_margin
        );
    }
    out.push_str("</g>");
    for by in by_pieces {
        let _ = write!(
            out,
            r#"<text x="{:.1}" y="198" text-anchor="middle">{}</text>"#,
            x(by.pieces),
            by.pieces
        );
    }
    let _ = write!(
        out,
        r#"<text x="{RIGHT}" y="217" text-anchor="end">test pieces per arm</text></svg>"#
    );
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_size_is_drawn_and_said() {
        let by: Vec<BySize> = [(2, 0.2), (4, 0.55), (8, 0.9)]
            .map(|(pieces, shows_margin)| BySize {
                pieces,
                shows_margin,
            })
            .to_vec();
        let svg = power_by_pieces(&by);
        assert_eq!(svg.matches("<circle").count(), 3);
        assert!(svg.contains("4 pieces 55 of 100") && svg.ends_with("</svg>"));
        assert!(!svg.contains("style="));
        assert_eq!(power_by_pieces(&by[..1]), "");
    }
}
