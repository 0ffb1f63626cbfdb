//! A colour as a person types it.

/// L*, a*, b* from three numbers apart by white space, semicolons or commas, with any minus sign; where
/// numbers have decimal commas, apart by the others. Nothing for what isn't three finite numbers.
///
/// ```
/// assert_eq!(colour::typed_lab("40,5 20 \u{2212}10"), Some([40.5, 20.0, -10.0]));
/// assert_eq!(colour::typed_lab("40, 20, -10"), Some([40.0, 20.0, -10.0]));
/// assert_eq!(colour::typed_lab("40 20"), None);
/// ```
pub fn typed_lab(text: &str) -> Option<[f64; 3]> {
    let text = text.replace(['\u{2212}', '\u{2013}'], "-");
    let parts = |between: fn(char) -> bool| -> Option<[f64; 3]> {
        let parts = text.split(between).filter(|part| !part.is_empty());
        let number = |part: &str| {
            part.replace(',', ".")
                .parse()
                .ok()
                .filter(|n: &f64| n.is_finite())
        };
        let numbers: Option<Vec<f64>> = parts.map(number).collect();
        numbers?.try_into().ok()
    };
    parts(|c| c == ';' || c.is_whitespace())
        .or_else(|| parts(|c| c == ',' || c == ';' || c.is_whitespace()))
}

#[cfg(test)]
mod tests {
    use super::typed_lab;

    #[test]
    fn lab_is_read_as_people_write_it() {
        for text in [
            "40 20 -10",
            "40, 20, -10",
            "40,20,-10",
            "40;20;\u{2212}10",
            "40 20 \u{2013}10",
            "40,0 20,0 -10,0",
            "40\u{a0}20\u{a0}\u{2212}10",
        ] {
            assert_eq!(typed_lab(text), Some([40.0, 20.0, -10.0]), "{text}");
        }
        for text in [
            "",
            "40",
            "40 20",
            "40 20 10 5",
            "a b c",
            "nan 0 0",
            "40,,20",
        ] {
            assert_eq!(typed_lab(text), None, "{text}");
        }
    }
}
