//! A difference in grades laid between the margins on either side.

use crate::svg::{escape, tick};
use crate::text;
use std::fmt::Write;
use trial::eyes::EyeComparison;

const LEFT: f64 = 8.0;
const RIGHT: f64 = 312.0;

/// Draws a difference by eye and its interval over a shaded zone from margin to margin,
/// turned so that the difference seen is not below 0. `top` grades are its scale's
/// ends; an interval that goes beyond ends in an arrow.
pub fn grades_against_margin(comparison: &EyeComparison, top: f64) -> String {
    let turned = comparison.difference < 0.0;
    let (seen, low, high) = match turned {
        true => (-comparison.difference, -comparison.high, -comparison.low),
        false => (comparison.difference, comparison.low, comparison.high),
    };
    let margin = comparison.margin_grades;
    let x = |value: f64| LEFT + (RIGHT - LEFT) * (value.clamp(-top, top) + top) / (2.0 * top);
    let name = text::chart::difference_of_and_in_grades_interval(
        &comparison.a,
        &comparison.b,
        format_args!("{seen:.2}"),
        format_args!("{low:.2}"),
        format_args!("{high:.2}"),
        format_args!("{margin:.2}"),
    );
    let (from, to) = (x(-margin), x(margin));
    let mut out = format!(
        r#"<svg class="chart strip" viewBox="0 0 320 62" role="img" aria-label="{}" font-size="12" fill="currentColor">"#,
        escape(&name.replace('-', "\u{2212}"))
    );
    let _ = write!(
        out,
        r#"<rect class="zone" x="{from:.1}" y="8" width="{:.1}" height="26" fill="currentColor" fill-opacity="0.09"/><line class="axis" x1="{LEFT}" x2="{RIGHT}" y1="34" y2="34" stroke="currentColor" stroke-opacity="0.6"/>"#,
        to - from
    );
    for edge in [from, to] {
        let _ = write!(
            out,
            r#"<line class="margin" x1="{edge:.1}" x2="{edge:.1}" y1="4" y2="39" stroke="currentColor" stroke-width="1.5" stroke-dasharray="3 2"/>"#
        );
    }
    let (start, end) = (x(low), x(high));
    let tail = match low >= -top {
        true => format!("M{start:.1} 15v12"),
        false => format!("M{:.1} 15l-7 6 7 6", start + 7.0),
    };
    let head = match high <= top {
        true => format!("M{end:.1} 15v12"),
        false => format!("M{:.1} 15l7 6-7 6", end - 7.0),
    };
    let _ = write!(
        out,
        r##"<path class="whisker" d="M{start:.1} 21H{end:.1}{tail}{head}" fill="none" stroke="currentColor" stroke-width="2.5"/><circle class="mark" cx="{:.1}" cy="21" r="5.5"/>"##,
        x(seen)
    );
    let anchor = if to > 250.0 { "end" } else { "start" };
    let _ = write!(
        out,
        r#"<text x="{:.1}" y="54" text-anchor="middle">0</text><text x="{to:.1}" y="54" text-anchor="{anchor}">margin {}</text></svg>"#,
        x(0.0),
        tick(margin)
    );
    out
}
