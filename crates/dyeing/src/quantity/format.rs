//! Figures for people: enough digits to weigh by, no more.

/// The number to three significant digits, below 1 to two: what a kitchen's scale and jug can
/// show. Whole numbers stay whole, zeros that say nothing are left out.
pub fn figure(value: f64) -> String {
    if value == 0.0 || !value.is_finite() {
        return format!("{value}");
    }
    let magnitude = libm::floor(libm::log10(value.abs()));
    let digits = if magnitude < 0.0 { 1.0 } else { 2.0 };
    let decimals = (digits - magnitude).clamp(0.0, 6.0) as usize;
    // Half a step goes up, though its binary neighbour may lie below.
    let nudged = value * (1.0 + 1e-12);
    let text = format!("{nudged:.decimals$}");
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
    fn three_digits_are_enough() {
        assert_eq!(figure(6.793478), "6.79");
        assert_eq!(figure(300.0), "300");
        assert_eq!(figure(0.5), "0.5");
        assert_eq!(figure(0.4595), "0.46");
        assert_eq!(figure(4_675.4), "4675");
        assert_eq!(figure(4.675), "4.68");
        assert_eq!(figure(0.012), "0.012");
        assert_eq!(figure(9.999), "10");
        assert_eq!(figure(0.0), "0");
    }
}
