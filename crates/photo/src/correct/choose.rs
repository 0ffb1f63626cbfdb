//! Which tone and light: those that miss left-out patches least.

use super::{Bend, Chart, Correction, plane::plane, poor_fit};
use crate::{
    Point, Refusal,
    decode::Upright,
    light::{self, Whereabouts},
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
    let unit = photo.width.max(photo.height) as f64;
    let even = light::Light::even(centre, unit);
    let file = &photo.profile.linear;
    let by_chart = best_of(Bend::ALL.into_iter().filter_map(|bend| {
        let light = plane(chart, &even, bend)?;
        Correction::new(chart, file, light, bend)
    }));
    let Some(by_chart) = by_chart else {
        return Err(poor_fit(
            "its grey patches don't get darker from white to black".into(),
        ));
    };
    let ground = light::from_ground(
        photo,
        &by_chart.sight.linear,
        &by_chart.sight.light,
        whereabouts,
    );
    let by_ground = ground.and_then(|light| {
        best_of(
            Bend::ALL
                .into_iter()
                .filter_map(|bend| Correction::new(chart, file, light.clone(), bend)),
        )
    });
    Ok(match by_ground {
        Some(other) if other.score < GROUND_MAY_COST * by_chart.score + 0.1 => other,
        _ => by_chart,
    })
}

/// The best by score.
fn best_of(candidates: impl Iterator<Item = Correction>) -> Option<Correction> {
    candidates.min_by(|a, b| a.score.total_cmp(&b.score))
}
