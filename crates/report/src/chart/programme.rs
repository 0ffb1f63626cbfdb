//! A bath's temperature over time, with what goes in when.

use crate::svg::{escape, nice_scale, tick};
use crate::text;
use dyeing::{Celsius, programme::Programme};
use locale::Measures;
use std::fmt::Write;

const LEFT: f64 = 46.0;
const RIGHT: f64 = 592.0;
const TOP: f64 = 34.0;
const BOTTOM: f64 = 232.0;
/// Letters of an addition's number stay inside their circle of this radius.
const MARK: f64 = 9.5;

/// Draws the curve with a numbered mark for each addition, and a cross for each temperature that
/// was noted (minutes since the bath began, °C). The numbers are those of the programme's additions.
pub fn temperature_over_time(programme: &Programme, noted: &[(f64, f64)]) -> String {
    let whole = noted
        .iter()
        .map(|(minute, _)| *minute)
        .fold(programme.minutes(), f64::max);
    let (step_min, end_min) = time_scale(whole);
    let hottest = noted
        .iter()
        .map(|(_, celsius)| *celsius)
        .fold(programme.hottest().celsius(), f64::max);
    // Levels are drawn by degrees of the locale's scale, from its 0.
    let degrees = |celsius: f64| match locale::current().measures {
        Measures::Metric => celsius,
        Measures::UsCustomary => celsius * 1.8 + 32.0,
    };
    let scale = Celsius::local_scale();
    let (step, top) = nice_scale(degrees(hottest.max(20.0)), 4.0);
    let x = |minute: f64| LEFT + (RIGHT - LEFT) * minute.clamp(0.0, end_min) / end_min;
    let height = |level: f64| BOTTOM - (BOTTOM - TOP) * level / top;
    let y = |celsius: f64| height(degrees(celsius));
    let mut out = format!(
        r#"<svg class="chart change programme" viewBox="0 0 610 276" role="img" aria-label="{}" font-size="13" fill="currentColor">"#,
        escape(&said(programme))
    );
    let mut at = 0.0;
    while at <= top + 1e-9 {
        let level = height(at);
        let strength = if at > 0.0 { 0.16 } else { 0.8 };
        let _ = write!(
            out,
            r#"<line x1="{LEFT}" x2="{RIGHT}" y1="{level:.1}" y2="{level:.1}" stroke="currentColor" stroke-opacity="{strength}"/><text x="{:.1}" y="{:.1}" text-anchor="end">{}</text>"#,
            LEFT - 8.0,
            level + 4.5,
            tick(at)
        );
        at += step;
    }
    let mut minute = 0.0;
    while minute <= end_min + 1e-9 {
        let _ = write!(
            out,
            r#"<text x="{:.1}" y="{:.1}" text-anchor="middle">{}</text>"#,
            x(minute),
            BOTTOM + 18.0,
            tick(minute)
        );
        minute += step_min;
    }
    let _ = write!(
        out,
        r#"<text x="6" y="18">{scale}</text><text x="{RIGHT}" y="{:.1}" text-anchor="end">minutes since the bath began</text>"#,
        BOTTOM + 38.0
    );
    let mut d = String::new();
    for (i, point) in programme.points.iter().enumerate() {
        let verb = if i == 0 { 'M' } else { 'L' };
        let _ = write!(
            d,
            "{verb}{:.1} {:.1}",
            x(point.minute),
            y(point.celsius.celsius())
        );
    }
    let _ = write!(
        out,
        r##"<path class="series-1 line" d="{d}" fill="none" stroke="#1f4f82" stroke-width="2.5" stroke-linejoin="round"/>"##
    );
    let mut before = f64::NEG_INFINITY;
    for (k, addition) in programme.additions.iter().enumerate() {
        let (at, level) = (x(addition.minute), y(addition.celsius.celsius()));
        // Marks that would cover each other stand side by side.
        let place = at.max(before + 2.0 * MARK + 2.0).max(LEFT + MARK);
        before = place;
        let above = level - 26.0;
        let _ = write!(
            out,
            r##"<line x1="{at:.1}" y1="{level:.1}" x2="{place:.1}" y2="{above:.1}" stroke="currentColor" stroke-opacity="0.6"/><circle class="series-1 mark" fill="#1f4f82" cx="{place:.1}" cy="{above:.1}" r="{MARK}"/><text class="on-mark" fill="#ffffff" x="{place:.1}" y="{:.1}" text-anchor="middle" font-weight="600">{}</text>"##,
            above + 4.5,
            k + 1
        );
    }
    for (minute, celsius) in noted {
        let (at, level) = (x(*minute), y(*celsius));
        let _ = write!(
            out,
            r#"<path d="M{:.1} {:.1}l10 10m0 -10l-10 10" stroke="currentColor" stroke-width="2" fill="none"><title>noted: {:.0} {scale} after {minute:.0} min</title></path>"#,
            at - 5.0,
            level - 5.0,
            degrees(*celsius)
        );
    }
    out.push_str("</svg>");
    out
}

/// A step in minutes that people count by, and the first multiple at or above the whole.
fn time_scale(whole_min: f64) -> (f64, f64) {
    let step = [5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 240.0]
        .into_iter()
        .find(|step| whole_min / step <= 10.0)
        .unwrap_or_else(|| nice_scale(whole_min, 8.0).0);
    (step, (whole_min / step - 1e-9).ceil().max(1.0) * step)
}

fn said(programme: &Programme) -> String {
    let points = programme.points.iter();
    let corners: Vec<String> = points
        .map(|p| {
            let (degrees, scale) = (p.celsius.local_degrees(), Celsius::local_scale());
            text::chart::at_min(
                format_args!("{degrees:.0}"),
                scale,
                format_args!("{:.0}", p.minute),
            )
        })
        .collect();
    text::chart::temperature_of_the_bath_over_time(corners.join(", "))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn napkins() -> Programme {
        let text = include_str!("../../../../docs/recipes/napkins.toml");
        let plan = dyeing::Recipe::read(text).and_then(|r| dyeing::Plan::of(&r));
        plan.expect("an example of the documentation").programme
    }

    #[test]
    fn every_addition_and_every_note_is_drawn() {
        let programme = napkins();
        let svg = temperature_over_time(&programme, &[(20.0, 41.0), (70.0, 58.0)]);
        assert_eq!(svg.matches("<circle").count(), programme.additions.len());
        assert_eq!(svg.matches("noted: ").count(), 2);
        assert!(svg.contains("60 °C at 62 min") && svg.ends_with("</svg>"));
        assert!(!svg.contains("style=") && !svg.contains("NaN"));
    }

    #[test]
    fn us_customary_measures_draw_fahrenheit() {
        let american = locale::Locale {
            measures: Measures::UsCustomary,
            ..locale::Locale::DATA
        };
        // 60 °C is 140 °F and 41 °C is 105.8 °F, by definition of the scales (NIST SP 811, B.8).
        let svg = locale::within(american, || {
            temperature_over_time(&napkins(), &[(20.0, 41.0)])
        });
        assert!(svg.contains("140 °F at 62 min") && svg.contains("noted: 106 °F"));
        assert!(svg.contains(">°F<") && svg.contains(">150<") && !svg.contains("°C"));
    }

    #[test]
    fn time_is_counted_in_steps_that_people_use() {
        assert_eq!(time_scale(66.0), (10.0, 70.0));
        assert_eq!(time_scale(132.0), (15.0, 135.0));
        assert_eq!(time_scale(1.0), (5.0, 5.0));
        assert_eq!(time_scale(900.0), (120.0, 960.0));
    }
}
