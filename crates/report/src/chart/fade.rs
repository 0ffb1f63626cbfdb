//! The strength left of one arm, round by round, as a curve with its interval.

use crate::svg::{escape, marker, series_class, series_ink};
use crate::text;
use crate::words;
use std::fmt::Write;
use trial::fade::{ArmFade, FadeCurve, Fades, GradePassed, Mark, MarkedRound, OnCurve};

const WIDTH: f64 = 420.0;
const LEFT: f64 = 50.0;
const RIGHT: f64 = 408.0;
const TOP: f64 = 26.0;
const BOTTOM: f64 = 206.0;
/// Where the first grade's lane lies, and how far apart lanes are.
const LANES: f64 = 288.0;
const LANE: f64 = 46.0;
/// Highest share that is drawn.
const MOST_LEFT: f64 = 1.05;

/// The lowest share of the strength (a multiple of a tenth) that any arm's curve needs,
/// so that all arms can be drawn alike.
pub fn lowest_share(fades: &Fades) -> f64 {
    let curves = fades.arms.iter().filter_map(|arm| arm.strength.as_ref());
    let lowest = curves
        .flat_map(|curve| {
            let means = curve.means.iter().map(|mean| mean.value);
            let ends = [curve.line.last(), Some(&curve.at_last)];
            let ends = ends.into_iter().flatten().map(|point| point.value);
            let seen = curve.at_last.interval.map_or(1.0, |i| i[0]);
            means.chain(ends).chain([seen])
        })
        .fold(0.9, f64::min);
    ((lowest * 10.0 - 0.2).floor() / 10.0).clamp(0.0, 0.8)
}

/// Draws an arm's curve: solid as far as was looked at, dashed beyond, its 95 % interval
/// as a band, means of pieces as marks, and below it when grades are passed. `index` is
/// the arm's place in the trial, `bottom` the lowest share, from [`lowest_share`]. Empty
/// where the arm has no curve of its strength.
pub fn strength_by_round(fade: &ArmFade, index: usize, bottom: f64) -> String {
    let Some(curve) = &fade.strength else {
        return String::new();
    };
    let frame = Frame {
        last: f64::from(curve.last_round),
        bottom,
    };
    let height = LANES + LANE * fade.passes.len() as f64 - 18.0;
    let mut out = format!(
        r#"<svg class="chart fade" viewBox="0 0 {WIDTH} {height}" role="img" aria-label="{}" font-size="14.5" fill="currentColor">"#,
        escape(&describe(fade, curve))
    );
    frame.axes(&mut out, curve);
    frame.curve(&mut out, curve, index);
    for (lane, passed) in fade.passes.iter().enumerate() {
        let y = LANES + LANE * lane as f64;
        frame.lane(&mut out, passed, y, index);
    }
    out.push_str("</svg>");
    out
}

fn describe(fade: &ArmFade, curve: &FadeCurve) -> String {
    let means: Vec<String> = curve
        .means
        .iter()
        .map(|mean| {
            let share = words::percent(mean.value);
            format!("{share} {}", words::stage(mean.round))
        })
        .collect();
    text::chart::strength_of_left_mean_of_its_pieces(
        &fade.arm,
        means.join(", "),
        2 * curve.last_round,
    )
}

struct Frame {
    last: f64,
    bottom: f64,
}

impl Frame {
    fn x(&self, rounds: f64) -> f64 {
        LEFT + (RIGHT - LEFT) * (rounds / (2.0 * self.last)).clamp(0.0, 1.0)
    }

    fn y(&self, share: f64) -> f64 {
        let share = share.clamp(self.bottom, MOST_LEFT);
        BOTTOM - (BOTTOM - TOP) * (share - self.bottom) / (MOST_LEFT - self.bottom)
    }

    fn axes(&self, out: &mut String, curve: &FadeCurve) {
        let (last, first) = (self.x(self.last), self.x(0.0));
        let _ = write!(
            out,
            r#"<rect x="{last:.1}" y="{TOP}" width="{:.1}" height="{:.1}" fill="currentColor" fill-opacity="0.05"/><text x="{:.1}" y="{:.1}" text-anchor="end">by the curve alone</text><text x="{first:.1}" y="{:.1}">looked at</text>"#,
            RIGHT - last,
            BOTTOM - TOP,
            RIGHT,
            TOP - 9.0,
            TOP - 9.0
        );
        let step = if self.bottom < 0.5 { 2 } else { 1 };
        let lowest = (self.bottom * 10.0).round() as u32;
        for tenth in (0..=10).rev().step_by(step).filter(|t| *t >= lowest) {
            let y = self.y(f64::from(tenth) / 10.0);
            let _ = write!(
                out,
                r#"<line class="grid" x1="{LEFT}" x2="{RIGHT}" y1="{y:.1}" y2="{y:.1}" stroke="currentColor" stroke-opacity="0.18"/><text x="{:.1}" y="{:.1}" text-anchor="end">{}</text>"#,
                LEFT - 8.0,
                y + 4.5,
                tenth * 10
            );
        }
        let _ = write!(
            out,
            r#"<line class="axis" x1="{LEFT}" x2="{RIGHT}" y1="{BOTTOM}" y2="{BOTTOM}" stroke="currentColor" stroke-opacity="0.8"/>"#
        );
        let seen = curve.means.iter().map(|mean| mean.round);
        let mut free_from = f64::NEG_INFINITY;
        for round in [0].into_iter().chain(seen).chain([2 * curve.last_round]) {
            let x = self.x(f64::from(round));
            let _ = write!(
                out,
                r#"<line class="axis" x1="{x:.1}" x2="{x:.1}" y1="{BOTTOM}" y2="{:.1}" stroke="currentColor" stroke-opacity="0.8"/>"#,
                BOTTOM + 6.0
            );
            // A number has room beside the one before it, or is left out.
            if x >= free_from {
                free_from = x + 22.0;
                let _ = write!(
                    out,
                    r#"<text x="{x:.1}" y="{:.1}" text-anchor="middle">{round}</text>"#,
                    BOTTOM + 21.0
                );
            }
        }
        let _ = write!(
            out,
            r#"<text x="{:.1}" y="{:.1}" text-anchor="middle">rounds of washing</text><text transform="translate(13 {:.1}) rotate(-90)" text-anchor="middle">strength left, %</text>"#,
            (LEFT + RIGHT) / 2.0,
            BOTTOM + 40.0,
            (TOP + BOTTOM) / 2.0
        );
    }

    fn curve(&self, out: &mut String, curve: &FadeCurve, index: usize) {
        let (class, ink) = (series_class(index), series_ink(index));
        let (beyond, seen): (Vec<OnCurve>, Vec<OnCurve>) =
            curve.line.iter().partition(|point| point.extrapolated);
        let seen: Vec<OnCurve> = seen.into_iter().chain([curve.at_last]).collect();
        let beyond: Vec<OnCurve> = [curve.at_last].into_iter().chain(beyond).collect();
        let _ = write!(out, r#"<g class="{class}">"#);
        for (part, strength) in [(&seen, 0.22), (&beyond, 0.1)] {
            let end = |k: usize| move |p: &OnCurve| p.interval.map(|i| (p.rounds, i[k]));
            let there = part.iter().filter_map(end(1));
            let back = part.iter().rev().filter_map(end(0));
            let points: Vec<String> = there.chain(back).map(|p| self.point(p)).collect();
            if !points.is_empty() {
                let _ = write!(
                    out,
                    r#"<polygon class="{class} mark band" points="{}" fill="{ink}" fill-opacity="{strength}"/>"#,
                    points.join(" ")
                );
            }
        }
        for (part, dash) in [(&seen, ""), (&beyond, "5 5")] {
            let points = part.iter().map(|p| self.point((p.rounds, p.value)));
            let _ = write!(
                out,
                r#"<polyline class="{class} line" points="{}" fill="none" stroke="{ink}" stroke-width="2" stroke-dasharray="{dash}"/>"#,
                points.collect::<Vec<_>>().join(" ")
            );
        }
        for mean in &curve.means {
            let (x, y) = (self.x(f64::from(mean.round)), self.y(mean.value));
            out.push_str(&marker(index, x, y));
        }
        let last = &curve.at_last;
        let y = self.y(last.value);
        // Below the curve where there is room, else above it.
        let below = if y + 26.0 < BOTTOM { 22.0 } else { -14.0 };
        let _ = write!(
            out,
            r#"<text class="{class} label" x="{:.1}" y="{:.1}" fill="{ink}" text-anchor="middle">{} left</text></g>"#,
            self.x(last.rounds),
            y + below,
            words::percent(last.value)
        );
    }

    fn point(&self, (rounds, share): (f64, f64)) -> String {
        format!("{:.1},{:.1}", self.x(rounds), self.y(share))
    }

    /// When a grade is passed, on the rounds' own scale: a mark in its interval, an arrow
    /// where that goes on beyond what can be told.
    fn lane(&self, out: &mut String, passed: &GradePassed, y: f64, index: usize) {
        let (class, ink) = (series_class(index), series_ink(index));
        let _ = write!(
            out,
            r#"<text x="8" y="{:.1}">below grade {}: {}</text><line class="grid" x1="{LEFT}" x2="{RIGHT}" y1="{y:.1}" y2="{y:.1}" stroke="currentColor" stroke-opacity="0.18"/><g class="{class}">"#,
            y - 14.0,
            escape(&passed.grade),
            escape(&words::passed_at(passed))
        );
        let at = |round: &MarkedRound| round.rounds.map(|n| self.x(n));
        if let Some([low, high]) = &passed.interval
            && let Some(from) = at(low)
        {
            let end = match at(high) {
                Some(to) => format!("H{to:.1}M{to:.1} {:.1}v8", y - 4.0),
                None => format!("H{RIGHT}M{:.1} {:.1}l7 4-7 4", RIGHT - 7.0, y - 4.0),
            };
            let dash = if low.mark == Mark::Extrapolated {
                "5 4"
            } else {
                ""
            };
            let _ = write!(
                out,
                r#"<path class="{class} whisker" d="M{from:.1} {:.1}v8M{from:.1} {y:.1}{end}" fill="none" stroke="{ink}" stroke-width="1.8" stroke-dasharray="{dash}"/>"#,
                y - 4.0
            );
        }
        if let Some(x) = at(&passed.estimate) {
            out.push_str(&marker(index, x, y));
        }
        out.push_str("</g>");
    }
}
