//! Which tone and light: those that miss left-out patches least.

use super::{Bend, Chart, Correction, left_out::Blend, plane::plane, poor_fit, tone::Shares};
use crate::text;
use crate::{
    Point, Refusal,
    decode::Upright,
    light::{self, Light, Whereabouts},
};

/// How much worse the chart may fit under the ground's light and still be
/// trusted to it: the ground says nothing false about the chart, only more.
const GROUND_MAY_COST: f64 = 1.5;
/// How fast a bend's share in the tone falls with its misses: one that misses
/// left-out patches by a fifth more than the best has about a third of its share.
/// Bends often lie within a few hundredths of each other; were the best one taken
/// alone, chance would bend one photo of a camera otherwise than the next.
const FALL: f64 = 5.0;
/// The share that the curve through every neutral has whatever it misses: it bends
/// all photos of a camera alike, and cloth is often nearer to a neutral than the
/// left-out neutral is to its neighbours.
const FIRM: f64 = 0.25;

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
    let by_chart = Trial::of(chart, |bend| plane(chart, &even, bend)).ok_or_else(no_tone)?;
    let tone = chart
        .tone(&by_chart.light, &by_chart.shares, None)
        .ok_or_else(no_tone)?;
    let ground = light::from_ground(photo, &tone.table(file), &by_chart.light, whereabouts);
    ground
        .and_then(|light| Trial::of(chart, |_| Some(light.clone())))
        .filter(|other| other.score < GROUND_MAY_COST * by_chart.score + 0.1)
        .and_then(|other| other.correction(chart, file))
        .or_else(|| by_chart.correction(chart, file))
        .ok_or_else(no_tone)
}

/// What became of every bend of the tone under some light.
struct Trial {
    /// The light of the best.
    light: Light,
    /// Mean miss of left-out patches by the best.
    score: f64,
    shares: Shares,
}

impl Trial {
    /// Tries every bend under its light; none where no bend goes.
    fn of(chart: &Chart<'_>, light: impl Fn(Bend) -> Option<Light>) -> Option<Self> {
        let mut scores = [None; Bend::ALL.len()];
        let mut best: Option<(f64, Light)> = None;
        for (bend, own) in Bend::ALL.into_iter().zip(&mut scores) {
            let Some((score, light)) = light(bend).and_then(|light| {
                let tone = chart.tone(&light, &bend.alone(), None)?;
                let blend = Blend::new(chart, &tone, &light, &bend.alone())?;
                Some((blend.score, light))
            }) else {
                continue;
            };
            *own = Some(score);
            if best.as_ref().is_none_or(|(least, _)| score < *least) {
                best = Some((score, light));
            }
        }
        best.map(|(score, light)| Self {
            light,
            score,
            shares: shares(&scores, score),
        })
    }

    fn correction(&self, chart: &Chart<'_>, file: &[[f64; 256]; 3]) -> Option<Correction> {
        Correction::new(chart, file, self.light.clone(), self.shares)
    }
}

/// Each bend's share by its score, `best` being the least of them.
fn shares(scores: &[Option<f64>; Bend::ALL.len()], best: f64) -> Shares {
    // A chart fitted perfectly leaves nothing to compare.
    let best = best.max(0.01);
    let says = scores.map(|score| score.map_or(0.0, |score| (-FALL * (score / best - 1.0)).exp()));
    let sum: f64 = says.iter().sum();
    let goes_through = Bend::Through as usize;
    let firm = scores[goes_through].map_or(0.0, |_| FIRM);
    let mut shares = says.map(|say| (1.0 - firm) * say / sum);
    shares[goes_through] += firm;
    shares
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_sum_to_one_and_follow_the_misses() {
        let all = shares(&[Some(1.0), Some(1.2), Some(2.0), Some(1.2)], 1.0);
        assert!((all.iter().sum::<f64>() - 1.0).abs() < 1e-12);
        assert!(all[0] > all[1] && all[1] > all[2]);
        assert!(
            all[3] > all[1] + 0.2,
            "a curve through every neutral has more"
        );
        let without = shares(&[Some(1.0), None, None, None], 1.0);
        assert_eq!(without, [1.0, 0.0, 0.0, 0.0]);
    }
}
