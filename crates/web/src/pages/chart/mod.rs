//! The person's own charts: those that were kept, and a new one.

pub(crate) mod add;
pub(crate) mod list;

use crate::text;
use store::{Bench, StoreError};
use trial::ChartId;

/// What a form says that lies on a photo.
pub(crate) struct Choice {
    /// The number in the form; empty for the published chart.
    pub(crate) value: String,
    /// The chart's name and size.
    pub(crate) label: String,
    /// Whether it is the one chosen.
    pub(crate) chosen: bool,
}

/// Every chart that may lie on a photo, the published one first.
pub(crate) fn choices(bench: &Bench, chosen: Option<ChartId>) -> Result<Vec<Choice>, StoreError> {
    let published = Choice {
        value: String::new(),
        label: text::chart::the_usual_24_patches().to_owned(),
        chosen: chosen.is_none(),
    };
    let own = bench.charts()?.into_iter().map(|chart| Choice {
        value: chart.id.to_string(),
        label: format!("{}, {}", chart.name, list::size(&chart.reference)),
        chosen: chosen == Some(chart.id),
    });
    Ok(std::iter::once(published).chain(own).collect())
}
