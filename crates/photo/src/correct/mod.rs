//! The correction: tone, light and colour together, by the chart.

mod chart;
mod choose;
mod curve;
mod family;
mod fit;
mod left_out;
mod model;
mod nearby;
mod plane;
mod sight;
mod spread;
mod target;
mod tone;

use crate::text;
use crate::{Flag, FlagCode, Refusal, RefusalCode, light::Light};
use family::Family;
use left_out::{Blend, LeftOut};
use tone::Tone;

pub(crate) use chart::Chart;
pub(crate) use choose::choose;
pub(crate) use sight::Sight;
pub(crate) use spread::kinship;

/// Median miss of left-out patches from which on a photo is refused, CIEDE2000.
const HOPELESS_DE00: f64 = 9.0;
/// Median miss from which on it is remarked.
const ROUGH_DE00: f64 = 4.0;

/// A photo's correction, ready to read areas with.
pub(crate) struct Correction {
    /// How it sees.
    pub sight: Sight,
    tone: Tone,
    shares: [f64; Family::ALL.len()],
    patches: usize,
    estimate_sd: Option<[f64; 3]>,
    left_out: Vec<LeftOut>,
    /// Mean miss of left-out patches by the models alone.
    score: f64,
}

impl Correction {
    /// The correction of a chart under a light field.
    fn new(chart: &Chart<'_>, file: &[[f64; 256]; 3], light: Light) -> Option<Self> {
        let tone = chart.tone(&light, None)?;
        let blend = Blend::new(chart, &tone, &light)?;
        let linear = tone.table(file);
        Some(Self {
            sight: Sight {
                linear,
                light,
                weights: blend.weights,
                nearby: blend.nearby,
                white: chart.white,
            },
            tone,
            shares: blend.shares,
            patches: chart.len(),
            estimate_sd: chart.estimate_sd,
            left_out: blend.left_out,
            score: blend.score,
        })
    }

    /// Median and 95 of 100 of the misses of left-out patches, CIEDE2000.
    pub fn median_and_p95(&self) -> (f64, f64) {
        let mut misses: Vec<f64> = self.left_out.iter().map(|o| o.miss_de00).collect();
        misses.sort_by(f64::total_cmp);
        let at = |share: f64| {
            let place = share * (misses.len() - 1) as f64;
            let k = place as usize;
            let next = misses[(k + 1).min(misses.len() - 1)];
            misses[k] + (next - misses[k]) * (place - k as f64)
        };
        (at(0.5), at(0.95))
    }

    /// Foretold minus true Lab of each patch left out in turn; none for patches
    /// that can't be used.
    pub fn misses(&self) -> Vec<Option<[f64; 3]>> {
        let mut misses = vec![None; self.patches];
        for other in &self.left_out {
            misses[other.patch] = Some(other.miss);
        }
        misses
    }

    /// A name for how it was made up.
    pub fn name(&self) -> String {
        text::correct::tone_by_light(
            shared_out(Family::ALL.map(Family::name), self.shares),
            if self.tone.is_veiled() {
                text::correct::the_neutrals_a_veil_taken_off()
            } else {
                text::correct::the_neutrals()
            },
            self.sight.light.source(),
        )
    }

    /// What is to be said of a rough fit, or the refusal of a hopeless one.
    pub fn judge(&self) -> Result<Option<Flag>, Refusal> {
        let (median, _) = self.median_and_p95();
        if median > HOPELESS_DE00 {
            return Err(poor_fit(text::correct::they_are_missed_by_ciede2000(
                format_args!("{median:.0}"),
            )));
        }
        Ok((median > ROUGH_DE00).then(|| {
            Flag::new(
                FlagCode::PoorFit,
                text::correct::the_chart_is_fitted_only_roughly(format_args!("{median:.1}")),
            )
        }))
    }
}

/// Names with their shares in percent, those without one left out.
fn shared_out<const N: usize>(names: [&str; N], shares: [f64; N]) -> String {
    let say = |(name, share): (&str, f64)| {
        let percent = (100.0 * share).round();
        (percent > 0.0).then(|| format!("{name} {percent} %"))
    };
    let said: Vec<String> = names.into_iter().zip(shares).filter_map(say).collect();
    said.join(", ")
}

/// The refusal of a chart whose patches don't look like its reference.
pub(crate) fn poor_fit(how: String) -> Refusal {
    Refusal::new(
        RefusalCode::PoorFit,
        text::correct::the_patches_dont_look_like_the_usual(&how),
    )
}
