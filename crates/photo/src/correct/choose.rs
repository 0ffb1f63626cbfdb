//! Which light: the chart's own or the ground's.

use super::{Chart, Correction, plane::plane, poor_fit};
use crate::text;
use crate::{
    Point, Refusal,
    decode::Upright,
    light::{self, Light, Whereabouts},
};

/// How much worse the chart may fit under the ground's light and still be
/// trusted to it: the ground says nothing false about the chart, only more.
const GROUND_MAY_COST: f64 = 1.5;
/// How much worse it may fit with the edge of a shadow than without: chance makes that
/// much where no edge lies across the chart, and where one does that is none it fits
/// far worse.
const EDGE_MAY_COST: f64 = 1.3;

/// The best correction of the chart, its light taken from the chart alone or
/// from the ground as well.
pub(crate) fn choose(
    chart: &Chart<'_>,
    photo: &Upright,
    centre: Point,
    corners: &[Point; 4],
    whereabouts: Whereabouts<'_>,
) -> Result<Correction, Refusal> {
    let even = Light::even(centre, photo.width, photo.height);
    let file = &photo.profile.linear;
    let no_tone = || poor_fit(text::correct::its_grey_patches_dont_get_darker().into());
    let by_chart = plane(chart, &even)
        .and_then(|light| Correction::new(chart, file, light))
        .ok_or_else(no_tone)?;
    let light = light::from_ground(
        photo,
        &by_chart.sight.linear,
        &by_chart.sight.light,
        whereabouts,
    );
    let Some(light) = light else {
        return Ok(by_chart);
    };
    let corrected = |light| Correction::new(chart, file, light);
    let smooth = corrected(light.smooth);
    let by_edge = light.with_edge.and_then(|light| {
        corrected(if light.has_edge_across(corners) {
            light
        } else {
            light.doubting_fine_edge()
        })
    });
    let is_likely = |edge: &Correction| {
        let beside = smooth.as_ref();
        beside.is_none_or(|smooth| edge.score < EDGE_MAY_COST * smooth.score)
    };
    let by_ground = by_edge.filter(is_likely).or(smooth);
    Ok(by_ground
        .filter(|other| other.score < GROUND_MAY_COST * by_chart.score + 0.1)
        .unwrap_or(by_chart))
}
