//! The few pieces of SVG that charts and swatches share.

/// Text made safe inside an element or a double-quoted attribute.
pub(crate) fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            _ => out.push(c),
        }
    }
    out
}

/// A marker for the `index`-th arm: its shape differs as well as its colour.
pub(crate) fn marker(index: usize, x: f64, y: f64) -> String {
    let series = series_class(index);
    let ink = series_ink(index);
    let attributes = format!(r#"class="{series} mark" fill="{ink}""#);
    match index % 4 {
        0 => format!(r#"<circle {attributes} cx="{x:.1}" cy="{y:.1}" r="5.5"/>"#),
        1 => format!(
            r#"<rect {attributes} x="{:.1}" y="{:.1}" width="10" height="10"/>"#,
            x - 5.0,
            y - 5.0
        ),
        2 => format!(
            r#"<path {attributes} d="M{x:.1} {:.1}l6.5 11h-13z"/>"#,
            y - 6.5
        ),
        _ => format!(
            r#"<path {attributes} d="M{x:.1} {:.1}l6.5 6.5-6.5 6.5-6.5-6.5z"/>"#,
            y - 6.5
        ),
    }
}

/// The class by which a page's stylesheet may recolour an arm.
pub(crate) fn series_class(index: usize) -> String {
    format!("series-{}", index % INKS.len() + 1)
}

/// The arm's ink where no stylesheet applies.
pub(crate) fn series_ink(index: usize) -> &'static str {
    INKS[index % INKS.len()]
}

/// The arm's dash pattern: solid first, so that a plain print still tells lines apart.
pub(crate) fn series_dash(index: usize) -> &'static str {
    ["", "7 4", "2 4", "9 3 2 3"][index % 4]
}

const INKS: [&str; 6] = [
    "#1f4f82", "#a33b2c", "#6f6200", "#5a3d7a", "#2f6b4f", "#5b4636",
];

/// A round step that cuts `0..=top` into about `parts`, and the first multiple at or above `top`.
pub(crate) fn nice_scale(top: f64, parts: f64) -> (f64, f64) {
    let raw = top.max(1e-6) / parts;
    let power = 10f64.powf(raw.log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|m| m * power)
        .find(|s| *s >= raw * 0.999)
        .unwrap_or(10.0 * power);
    (step, (top / step - 1e-9).ceil().max(1.0) * step)
}

/// A tick's number without trailing zeros.
pub(crate) fn tick(value: f64) -> String {
    let text = format!("{value:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn scales_are_round_and_cover_the_top() {
        for top in [0.3, 0.99, 1.0, 3.7, 12.0, 48.2, 100.0] {
            let (step, end) = nice_scale(top, 4.0);
            assert!(end >= top && end < top + step + 1e-9, "{top} {step} {end}");
        }
        assert_eq!(nice_scale(4.0, 4.0), (1.0, 4.0));
    }

    #[test]
    fn ticks_are_short() {
        assert_eq!(tick(0.5), "0.5");
        assert_eq!(tick(10.0), "10");
    }

    #[test]
    fn markup_in_names_is_text() {
        assert_eq!(escape(r#"<b>"a"&'"#), "&lt;b&gt;&quot;a&quot;&amp;&#39;");
    }
}
