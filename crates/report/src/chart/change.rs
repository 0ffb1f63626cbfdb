//! Change of colour by round, one line per arm, with 95 % intervals.

use crate::svg::{escape, marker, nice_scale, series_class, series_dash, series_ink, tick};
use crate::text;
use crate::words;
use std::collections::BTreeSet;
use std::fmt::Write;
use trial::Trial;
use trial::decide::{ArmChange, Decision};

const WIDTH: f64 = 640.0;
const HEIGHT: f64 = 340.0;
const LEFT: f64 = 58.0;
const RIGHT: f64 = 438.0;
/// Letters of a name in one line beside a line's end: as many wide ones as there is room for.
const LETTERS: usize = 18;
const TOP: f64 = 20.0;
const BOTTOM: f64 = 284.0;

/// Draws the change of every arm (CIEDE2000 from its start) against the number of rounds.
///
/// Arms keep the trial's order; each has its own ink, dash and marker and its name at its last
/// point. Intervals without an upper limit run off the top. Empty text where nothing has changed
/// hands yet (no arm was read at two stages).
pub fn change_by_round(trial: &Trial, decision: &Decision) -> String {
    if decision.arms.is_empty() {
        return String::new();
    }
    let names = arm_names(trial, decision);
    let stages: BTreeSet<u32> = decision.arms.iter().map(|c| c.stage).chain([0]).collect();
    let last = stages.last().copied().unwrap_or(0).max(1);
    let highest = decision
        .arms
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
        .fold(0.5, f64::max);
    let (step, top) = nice_scale(highest, 4.0);
    let frame = Frame { last, top };

    let mut out = format!(
        r#"<svg class="chart change" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" aria-labelledby="change-title change-desc" font-size="14" fill="currentColor"><title id="change-title">Change of colour by round</title><desc id="change-desc">{}</desc>"#,
        escape(&describe(decision))
    );
    frame.axes(&mut out, step, &stages);
    let mut labels = Vec::new();
    for (index, name) in names.iter().enumerate() {
        let mut points: Vec<&ArmChange> = decision.arms.iter().filter(|c| c.arm == *name).collect();
        points.sort_by_key(|c| c.stage);
        let dodge = (index as f64 - (names.len() - 1) as f64 / 2.0) * 7.0;
        frame.line(&mut out, index, dodge, &points);
        if let Some(end) = points.last() {
            labels.push((frame.y(end.de00), index, name.as_str()));
        }
    }
    write_labels(&mut out, labels);
    out.push_str("</svg>");
    out
}

/// The trial's arms in its order, then any that only the decision knows.
fn arm_names(trial: &Trial, decision: &Decision) -> Vec<String> {
    let mut names: Vec<String> = trial.arms.iter().map(|a| a.name.clone()).collect();
    for change in &decision.arms {
        if !names.contains(&change.arm) {
            names.push(change.arm.clone());
        }
    }
    names
}

fn describe(decision: &Decision) -> String {
    let points: Vec<String> = decision
        .arms
        .iter()
        .map(|c| {
            format!(
                "{} {}: {}",
                c.arm,
                words::stage(c.stage),
                words::with_interval(c.de00, c.low, c.high)
            )
        })
        .collect();
    text::chart::lines_of_ciede2000_from_the_start(points.join("; "))
}

struct Frame {
    last: u32,
    top: f64,
}

impl Frame {
    fn x(&self, stage: u32) -> f64 {
        LEFT + 24.0 + (RIGHT - LEFT - 44.0) * f64::from(stage) / f64::from(self.last)
    }

    fn y(&self, value: f64) -> f64 {
        BOTTOM - (BOTTOM - TOP) * value.clamp(0.0, self.top) / self.top
    }

    fn axes(&self, out: &mut String, step: f64, stages: &BTreeSet<u32>) {
        let lines = (self.top / step).round() as u32;
        for i in 0..=lines {
            let value = f64::from(i) * step;
            let y = self.y(value);
            let class = if i == 0 { "axis" } else { "grid" };
            let strength = if i == 0 { 0.8 } else { 0.18 };
            let _ = write!(
                out,
                r#"<line class="{class}" x1="{LEFT}" x2="{RIGHT}" y1="{y:.1}" y2="{y:.1}" stroke="currentColor" stroke-opacity="{strength}"/><text x="{:.1}" y="{:.1}" text-anchor="end">{}</text>"#,
                LEFT - 9.0,
                y + 5.0,
                tick(value)
            );
        }
        for &stage in stages {
            let x = self.x(stage);
            let _ = write!(
                out,
                r#"<line class="axis" x1="{x:.1}" x2="{x:.1}" y1="{BOTTOM}" y2="{:.1}" stroke="currentColor" stroke-opacity="0.8"/><text x="{x:.1}" y="{:.1}" text-anchor="middle">{stage}</text>"#,
                BOTTOM + 6.0,
                BOTTOM + 22.0
            );
        }
        let _ = write!(
            out,
            r#"<text x="{:.1}" y="{:.1}" text-anchor="middle">rounds of washing</text><text transform="translate(16 {:.1}) rotate(-90)" text-anchor="middle">change, CIEDE2000</text>"#,
            (LEFT + RIGHT) / 2.0,
            BOTTOM + 45.0,
            (TOP + BOTTOM) / 2.0
        );
    }

    fn line(&self, out: &mut String, index: usize, dodge: f64, points: &[&ArmChange]) {
        let (class, ink, dash) = (series_class(index), series_ink(index), series_dash(index));
        let mut path = Vec::new();
        if points.first().is_some_and(|p| p.stage > 0) {
            path.push(format!("{:.1},{:.1}", self.x(0), self.y(0.0)));
        }
        path.extend(
            points
                .iter()
                .map(|p| format!("{:.1},{:.1}", self.x(p.stage) + dodge, self.y(p.de00))),
        );
        let _ = write!(
            out,
            r#"<g class="{class}"><polyline class="{class} line" points="{}" fill="none" stroke="{ink}" stroke-width="2" stroke-dasharray="{dash}"/>"#,
            path.join(" ")
        );
        for point in points {
            let x = self.x(point.stage) + dodge;
            if point.stage > 0 {
                let (low, high) = (self.y(point.low), self.y(point.high));
                let _ = write!(
                    out,
                    r#"<path class="{class} whisker" d="M{x:.1} {low:.1}V{high:.1}M{:.1} {low:.1}h8" fill="none" stroke="{ink}" stroke-width="1.6"/>"#,
                    x - 4.0
                );
                if words::bounded(point.high) {
                    let _ = write!(
                        out,
                        r#"<path class="{class} whisker" d="M{:.1} {high:.1}h8" fill="none" stroke="{ink}" stroke-width="1.6"/>"#,
                        x - 4.0
                    );
                }
            }
            out.push_str(&marker(index, x, self.y(point.de00)));
        }
        out.push_str("</g>");
    }
}

/// Writes each name beside its line's end, pushed apart so that none covers another.
fn write_labels(out: &mut String, mut labels: Vec<(f64, usize, &str)>) {
    labels.sort_by(|a, b| a.0.total_cmp(&b.0));
    let lines: Vec<Vec<String>> = labels.iter().map(|l| wrap(l.2, LETTERS)).collect();
    let mut bottom = f64::NEG_INFINITY;
    let mut places = Vec::new();
    for (label, text) in labels.iter().zip(&lines) {
        let y = label.0.max(bottom);
        bottom = y + 16.0 * text.len() as f64 + 6.0;
        places.push(y);
    }
    let overflow = (bottom - 22.0 - BOTTOM).max(0.0);
    for ((label, text), y) in labels.iter().zip(&lines).zip(places) {
        let y = (y - overflow).max(TOP);
        out.push_str(&marker(label.1, RIGHT + 12.0, y));
        let _ = write!(
            out,
            r#"<text class="{} label" y="{:.1}" fill="{}">"#,
            series_class(label.1),
            y + 5.0,
            series_ink(label.1)
        );
        for (row, words) in text.iter().enumerate() {
            let dy = if row == 0 { 0 } else { 16 };
            let _ = write!(
                out,
                r#"<tspan x="{:.1}" dy="{dy}">{}</tspan>"#,
                RIGHT + 24.0,
                escape(words)
            );
        }
        out.push_str("</text>");
    }
}

/// Breaks a name at spaces, and words that are too long within, into lines of `width`
/// letters at most; three lines at most.
fn wrap(name: &str, width: usize) -> Vec<String> {
    let mut lines: Vec<String> = vec![String::new()];
    let letters: Vec<Vec<char>> = name
        .split_whitespace()
        .map(|w| w.chars().collect())
        .collect();
    let words = letters.iter().flat_map(|word| word.chunks(width));
    for word in words.map(|part| part.iter().collect::<String>()) {
        let room = lines.last().map_or(0, |l| l.chars().count());
        if room > 0 && room + 1 + word.chars().count() > width {
            lines.push(String::new());
        }
        if let Some(line) = lines.last_mut() {
            if !line.is_empty() {
                line.push(' ');
            }
            line.push_str(&word);
        }
    }
    if lines.len() > 3 {
        lines.truncate(3);
        if let Some(line) = lines.last_mut() {
            line.push('…');
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_names_are_wrapped_and_cut() {
        assert_eq!(wrap("soya milk", 18), ["soya milk"]);
        assert_eq!(
            wrap("soya milk twice and then alum", 12),
            ["soya milk", "twice and", "then alum"]
        );
        assert_eq!(wrap("a b c d e f g h", 1).len(), 3);
        let long = wrap("after-treatment-without-rinse", LETTERS);
        assert_eq!(long, ["after-treatment-wi", "thout-rinse"]);
    }

    #[test]
    fn labels_of_equal_ends_do_not_cover_each_other() {
        let mut out = String::new();
        write_labels(&mut out, vec![(100.0, 0, "one"), (100.0, 1, "two")]);
        assert!(out.contains(r#"y="105.0""#));
        assert!(out.contains(r#"y="127.0""#));
    }
}
