//! A text as a QR code to be scanned from a screen or from paper.

use fast_qr::{ECL, QRBuilder};

/// Light modules around a code.
///
/// # Source
/// ISO/IEC 18004:2015, 6.3.8: four modules.
const QUIET: usize = 4;

/// The QR code of a text as SVG, black on white whatever the page's colours, with a
/// name for those who can't see it; none for a text that is too long for any code.
pub fn svg(text: &str, name: &str) -> Option<String> {
    let code = QRBuilder::new(text).ecl(ECL::M).build().ok()?;
    let side = code.size + 2 * QUIET;
    let mut dark = String::new();
    for row in 0..code.size {
        for column in 0..code.size {
            if code[row][column].value() {
                let (x, y) = (column + QUIET, row + QUIET);
                dark.push_str(&format!("M{x} {y}h1v1h-1z"));
            }
        }
    }
    let name = crate::svg::escape(name);
    Some(format!(
        "<svg class=\"qr\" viewBox=\"0 0 {side} {side}\" role=\"img\" aria-label=\"{name}\" shape-rendering=\"crispEdges\"><path fill=\"#fff\" d=\"M0 0h{side}v{side}h-{side}z\"/><path fill=\"#000\" d=\"{dark}\"/></svg>"
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The modules as a decoder sees them, eight pixels each.
    fn scanned(svg: &str) -> String {
        let side: usize = svg
            .split_once("viewBox=\"0 0 ")
            .and_then(|(_, rest)| rest.split(' ').next()?.parse().ok())
            .unwrap();
        let dark = svg.rsplit_once("d=\"").unwrap().1;
        let mut modules = vec![false; side * side];
        for module in dark.split('M').skip(1) {
            let (x, rest) = module.split_once(' ').unwrap();
            let (y, _) = rest.split_once('h').unwrap();
            modules[y.parse::<usize>().unwrap() * side + x.parse::<usize>().unwrap()] = true;
        }
        let mut picture =
            rqrr::PreparedImage::prepare_from_greyscale(8 * side, 8 * side, |x, y| {
                if modules[y / 8 * side + x / 8] {
                    0
                } else {
                    255
                }
            });
        picture.detect_grids()[0].decode().unwrap().1
    }

    #[test]
    fn an_independent_decoder_reads_what_was_written() {
        for text in ["a", "http://192.168.178.120:4818/pair?code=K7H4PXQ2"] {
            assert_eq!(scanned(&svg(text, "code").unwrap()), text);
        }
        assert!(svg(&"x".repeat(4000), "too long").is_none());
        assert!(svg("a", "<b>").unwrap().contains("&lt;b&gt;"));
    }
}
