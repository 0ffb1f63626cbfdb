//! The middle one of some figures.

/// The middle one, the upper of the two middle ones where their number is even;
/// 0 for none.
pub(crate) fn median(values: impl IntoIterator<Item = f64>) -> f64 {
    let mut sorted: Vec<f64> = values.into_iter().collect();
    sorted.sort_by(f64::total_cmp);
    sorted.get(sorted.len() / 2).copied().unwrap_or(0.0)
}
