//! Figures for people: enough digits to weigh by, no more.

/// The number to four significant digits, without zeros that say nothing.
pub fn figure(value: f64) -> String {
    if value == 0.0 || !value.is_finite() {
        return format!("{value}");
    }
    let magnitude = libm::floor(libm::log10(value.abs()));
    let decimals = (3.0 - magnitude).clamp(0.0, 6.0) as usize;
    let text = format!("{value:.decimals$}");
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

#[cfg(test)]
mod tests {
    use super::figure;

    #[test]
    fn four_digits_are_enough() {
        assert_eq!(figure(6.793478), "6.793");
        assert_eq!(figure(300.0), "300");
        assert_eq!(figure(0.5), "0.5");
        assert_eq!(figure(4_675.4), "4675");
        assert_eq!(figure(0.012), "0.012");
        assert_eq!(figure(0.0), "0");
    }
}
