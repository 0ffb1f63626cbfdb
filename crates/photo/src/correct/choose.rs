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

/// The best correction of the chart, its light taken from the chart alone or
/// from the ground as well.
pub(crate) fn choose(
    chart: &Chart<'_>,
    photo: &Upright,
    centre: Point,
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
    let by_ground = light.and_then(|light| Correction::new(chart, file, light));
    Ok(by_ground
        .filter(|other| other.score < GROUND_MAY_COST * by_chart.score + 0.1)
        .unwrap_or(by_chart))
}
