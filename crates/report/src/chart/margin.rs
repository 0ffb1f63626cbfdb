//! One comparison's interval laid against the margin.

use crate::svg::{escape, nice_scale, tick};
use crate::text;
use crate::words;
use std::fmt::Write;
use trial::decide::Comparison;

const LEFT: f64 = 8.0;
const RIGHT: f64 = 312.0;

/// The end of a scale (CIEDE2000) on which all `comparisons` and the margin can be drawn alike.
pub fn scale_top(comparisons: &[Comparison], margin_de00: f64) -> f64 {
    let highest = comparisons
        .iter()
        .flat_map(|c| {
            [
                c.de00,
                if words::bounded(c.high) {
                    c.high
                } else {
                    c.low
                },
            ]
        })
        .fold(margin_de00 * 1.6, f64::max);
    nice_scale(highest, 4.0).1
}

/// Draws the difference and its interval over a shaded zone from nothing to the margin.
///
/// `top` is the end of the scale, from [`scale_top`]; an interval that has no upper limit runs to it
/// and ends in an arrow.
pub fn difference_against_margin(comparison: &Comparison, margin_de00: f64, top: f64) -> String {
    let x = |value: f64| LEFT + (RIGHT - LEFT) * value.clamp(0.0, top) / top;
    let name = text::chart::difference_of_and_the_margin_is_margin(
        &comparison.a,
        &comparison.b,
        words::with_interval(comparison.de00, comparison.low, comparison.high),
        words::number(margin_de00),
    );
    let mut out = format!(
        r#"<svg class="chart strip" viewBox="0 0 320 62" role="img" aria-label="{}" font-size="12" fill="currentColor">"#,
        escape(&name)
    );
    let edge = x(margin_de00);
    let _ = write!(
        out,
        r#"<rect class="zone" x="{LEFT}" y="8" width="{:.1}" height="26" fill="currentColor" fill-opacity="0.09"/><line class="axis" x1="{LEFT}" x2="{RIGHT}" y1="34" y2="34" stroke="currentColor" stroke-opacity="0.6"/><line class="margin" x1="{edge:.1}" x2="{edge:.1}" y1="4" y2="39" stroke="currentColor" stroke-width="1.5" stroke-dasharray="3 2"/>"#,
        edge - LEFT
    );
    let (low, high) = (x(comparison.low), x(comparison.high));
    let end = if comparison.high <= top {
        format!("M{high:.1} 15v12")
    } else {
        format!("M{:.1} 15l7 6-7 6", high - 7.0)
    };
    let _ = write!(
        out,
        r##"<path class="whisker" d="M{low:.1} 21H{high:.1}M{low:.1} 15v12{end}" fill="none" stroke="currentColor" stroke-width="2.5"/>"##
    );
    let _ = write!(
        out,
        r#"<circle class="mark" cx="{:.1}" cy="21" r="5.5"/>"#,
        x(comparison.de00)
    );
    let anchor = if edge > 250.0 { "end" } else { "start" };
    let _ = write!(
        out,
        r#"<text x="{LEFT}" y="54">0</text><text x="{edge:.1}" y="54" text-anchor="{anchor}">margin {}</text>"#,
        tick(margin_de00)
    );
    if edge < 220.0 {
        let _ = write!(
            out,
            r#"<text x="{RIGHT}" y="54" text-anchor="end">{}</text>"#,
            tick(top)
        );
    }
    out.push_str("</svg>");
    out
}
