//! Where the dye went: a bar for each water and one for the goods.

use crate::svg::{escape, nice_scale, series_class, series_ink, tick};
use crate::text;
use dyeing::balance::{DyeBalance, Estimate};
use std::fmt::Write;

const LEFT: f64 = 118.0;
const RIGHT: f64 = 500.0;
const TOP: f64 = 8.0;
const ROW: f64 = 32.0;
const BAR: f64 = 18.0;

/// Draws shares of the dye put in, each with its 95 % bounds: the waters as they came, then the goods.
pub fn dye_balance(balance: &DyeBalance) -> String {
    let waters = balance.waters.iter();
    let mut rows: Vec<(&str, Estimate, usize)> =
        waters.map(|w| (w.name.as_str(), w.share, 1)).collect();
    rows.extend(
        balance
            .fixed
            .map(|fixed| (text::chart::on_the_goods(), fixed, 0)),
    );
    let highest = rows.iter().map(|(_, share, _)| 100.0 * share.high);
    let (step, top) = nice_scale(highest.fold(1e-6, f64::max), 4.0);
    let x = |share: f64| LEFT + (RIGHT - LEFT) * (100.0 * share).clamp(0.0, top) / top;
    let said: Vec<String> = rows
        .iter()
        .map(|(name, share, _)| format!("{name} {}", share.percent()))
        .collect();
    let name = text::chart::where_the_dye_went(said.join(", "));
    let bottom = TOP + ROW * rows.len() as f64;
    let mut out = format!(
        r#"<svg class="chart change" viewBox="0 0 580 {:.0}" role="img" aria-label="{}" font-size="13" fill="currentColor">"#,
        bottom + 40.0,
        escape(&name)
    );
    let ticks = steps_of(top / step);
    for k in 0..=ticks {
        let value = step * f64::from(k);
        let at = x(value / 100.0);
        let strength = if k > 0 { 0.18 } else { 0.8 };
        let _ = write!(
            out,
            r#"<line x1="{at:.1}" x2="{at:.1}" y1="{TOP}" y2="{bottom:.1}" stroke="currentColor" stroke-opacity="{strength}"/><text x="{at:.1}" y="{:.1}" text-anchor="middle">{}</text>"#,
            bottom + 17.0,
            tick(value)
        );
    }
    for (k, (name, share, series)) in rows.iter().enumerate() {
        let middle = TOP + ROW * (k as f64 + 0.5);
        let (class, ink) = (series_class(*series), series_ink(*series));
        let end = x(share.middle);
        let _ = write!(
            out,
            r#"<g class="{class}"><text x="{:.1}" y="{:.1}" text-anchor="end">{}</text><rect class="mark" fill="{ink}" fill-opacity="0.55" x="{LEFT}" y="{:.1}" width="{:.1}" height="{BAR}"><title>{}</title></rect><path class="bounds" d="M{:.1} {middle:.1}H{:.1}M{:.1} {:.1}v10M{:.1} {:.1}v10" fill="none" stroke="currentColor" stroke-width="2"/><text x="{:.1}" y="{:.1}" font-weight="600">{}</text></g>"#,
            LEFT - 8.0,
            middle + 4.5,
            escape(name),
            middle - BAR / 2.0,
            end - LEFT,
            escape(&format!("{name}: {}", share.percent())),
            x(share.low),
            x(share.high),
            x(share.low),
            middle - 5.0,
            x(share.high),
            middle - 5.0,
            x(share.high).max(end) + 7.0,
            middle + 4.5,
            share.percent().split(" (").next().unwrap_or_default(),
        );
    }
    let _ = write!(
        out,
        r#"<text x="{RIGHT}" y="{:.1}" text-anchor="end">% of the dye put in, with 95 % bounds</text></svg>"#,
        bottom + 35.0
    );
    out
}

/// How many steps a scale has.
fn steps_of(steps: f64) -> u32 {
    steps.round().clamp(1.0, 20.0) as u32
}

#[cfg(test)]
mod tests {
    use super::dye_balance;
    use dyeing::{
        Kitchen,
        balance::{DyeBalance, Start, WrittenWaters},
    };

    #[test]
    fn every_water_and_the_goods_are_drawn_and_said() {
        let start = Start {
            liquor: "5 L".parse().unwrap(),
            dye: None,
            usual_exhaustion_percent: [65.0, 92.0],
            usual_fixation_percent: [50.0, 90.0],
            class: "dye".into(),
            kitchen: Kitchen::Metric,
        };
        let waters = WrittenWaters::from_toml(
            "bath = { volume = \"5 L\", looks_like = \"1:5\" }\nrinse = [{ volume = \"5 L\", looks_like = \"1:40\" }]",
        );
        let balance = DyeBalance::of(&start, &waters.unwrap(), 0.001).unwrap();
        let svg = dye_balance(&balance);
        assert_eq!(svg.matches("<rect").count(), 3);
        assert!(svg.contains("spent bath 20 % (14 to 28 %)") && svg.ends_with("</svg>"));
        assert!(svg.contains(">2.5 %</text>") && !svg.contains("style="));
    }
}
