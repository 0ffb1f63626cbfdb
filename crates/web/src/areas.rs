//! Corners of an area as text: `120,80 420,80 420,300 120,300`.

use crate::text;

/// Reads corners `x,y` set apart by spaces, semicolons or new lines, in pixels of a photo of
/// `width` by `height`; the error is a sentence.
pub(crate) fn parse(text: &str, width: u32, height: u32) -> Result<Vec<[f64; 2]>, String> {
    let corners = pairs(text)?;
    if corners.len() < 3 {
        return Err(text::areas::an_area_needs_three_corners_or_more().to_owned());
    }
    if corners.len() > 200 {
        return Err(text::areas::an_area_may_have_200_corners().to_owned());
    }
    let (w, h) = (f64::from(width), f64::from(height));
    match corners
        .iter()
        .find(|[x, y]| !(0.0..=w).contains(x) || !(0.0..=h).contains(y))
    {
        Some([x, y]) => Err(text::areas::the_corner_lies_outside_the_photo(
            x, y, width, height,
        )),
        None => Ok(corners),
    }
}

/// Reads the four outer corners of a chart; none for empty text.
pub(crate) fn parse_chart(text: &str) -> Result<Option<[[f64; 2]; 4]>, String> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let corners = pairs(text)?;
    <[[f64; 2]; 4]>::try_from(corners)
        .map(Some)
        .map_err(|found| text::areas::the_chart_has_four_corners(found.len()))
}

/// Writes corners so that [`parse`] reads them.
pub(crate) fn write(corners: &[[f64; 2]]) -> String {
    corners
        .iter()
        .map(|[x, y]| format!("{},{}", short(*x), short(*y)))
        .collect::<Vec<_>>()
        .join(" ")
}

/// The middle of an area's corners, where its name goes.
pub(crate) fn middle(corners: &[[f64; 2]]) -> [f64; 2] {
    let n = corners.len().max(1) as f64;
    let sum = corners
        .iter()
        .fold([0.0, 0.0], |s, p| [s[0] + p[0], s[1] + p[1]]);
    [sum[0] / n, sum[1] / n]
}

fn short(value: f64) -> String {
    let text = format!("{value:.1}");
    text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
}

fn pairs(text: &str) -> Result<Vec<[f64; 2]>, String> {
    text.split(|c: char| c.is_whitespace() || c == ';')
        .filter(|part| !part.is_empty())
        .map(|part| {
            let number = |t: &str| t.parse::<f64>().ok().filter(|v| v.is_finite());
            part.split_once(',')
                .and_then(|(x, y)| Some([number(x)?, number(y)?]))
                .ok_or_else(|| text::areas::is_not_a_corner_write_x_y(part))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_goes_round() {
        let text = "1.5,2 30,2 30,40";
        assert_eq!(write(&parse(text, 100, 100).unwrap()), text);
        assert_eq!(parse("0,0;9,0;9,9", 10, 10).unwrap().len(), 3);
    }

    #[test]
    fn faults_are_named() {
        for (text, word) in [
            ("", "three corners"),
            ("1,1 2,2", "three corners"),
            ("1,1 2,2 3", "\u{201c}3\u{201d}"),
            ("1,1 2,2 nan,3", "nan,3"),
            ("1,1 2,2 300,3", "outside"),
        ] {
            let sentence = parse(text, 100, 100).unwrap_err();
            assert!(sentence.contains(word), "{sentence}");
        }
        assert!(parse_chart("1,1 2,2").unwrap_err().contains("2 came"));
        assert_eq!(parse_chart("  ").unwrap(), None);
    }
}
