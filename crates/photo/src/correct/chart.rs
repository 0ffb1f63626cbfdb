//! The chart as recorded, with what its patches truly are.

use crate::text;
use colour::{View, Xyz};

use super::{
    family::{Family, Weights},
    fit::{Fit, Pair},
    target::Target,
    tone::{Neutral, Tone},
};
use crate::{ChartReference, Flag, FlagCode, Refusal, RefusalCode, light::Light, patches::Patch};

/// Most of a patch that may be burnt out before it is left aside.
const MOST_CLIPPED: f64 = 0.05;
/// Fewest neutrals that tell a tone curve.
const FEWEST_NEUTRALS: usize = 4;
/// Least share of the patches that has to be usable.
const LEAST_USABLE: f64 = 0.66;

/// The chart as recorded, with what its patches truly are.
pub(crate) struct Chart<'a> {
    patches: &'a [Patch],
    recorded: Vec<[f64; 3]>,
    pub(super) targets: Vec<Target>,
    usable: Vec<bool>,
    neutral: Vec<bool>,
    pub(super) white: Xyz,
    /// Standard deviation of the targets' Lab where they are estimated from
    /// another view.
    pub(super) estimate_sd: Option<[f64; 3]>,
}

impl<'a> Chart<'a> {
    /// Looks at the patches; refuses a chart that is burnt out or black.
    pub fn new(
        patches: &'a [Patch],
        linear: &[[f64; 256]; 3],
        reference: &ChartReference,
        view: View,
    ) -> Result<Self, Refusal> {
        let white = view.white();
        let recorded: Vec<[f64; 3]> = patches.iter().map(|p| p.mean(linear)).collect();
        let targets: Vec<Target> = reference
            .xyz(view)
            .into_iter()
            .map(|xyz| Target::new(xyz, white))
            .collect();
        let mut neutral = vec![false; targets.len()];
        for i in reference.neutrals() {
            neutral[i] = true;
        }
        let chart = Self {
            usable: patches
                .iter()
                .map(|p| p.clipped_share() <= MOST_CLIPPED && !p.is_covered)
                .collect(),
            neutral,
            patches,
            recorded,
            targets,
            white,
            estimate_sd: reference.estimate_sd(view),
        };
        chart.check_exposure()?;
        Ok(chart)
    }

    fn check_exposure(&self) -> Result<(), Refusal> {
        let neutrals = self.neutrals().count();
        let left = self.usable().count() as f64;
        if neutrals < FEWEST_NEUTRALS || left < LEAST_USABLE * self.patches.len() as f64 {
            return Err(Refusal::new(
                RefusalCode::OverExposed,
                text::correct::the_charts_light_patches_are_burnt_out(),
            ));
        }
        let lightest = (0..self.patches.len())
            .filter(|&i| self.neutral[i])
            .max_by(|&a, &b| self.targets[a].xyz.y.total_cmp(&self.targets[b].xyz.y));
        let brightest = lightest.map_or(0.0, |i| {
            self.recorded[i].iter().copied().fold(0.0, f64::max)
        });
        if brightest < 0.02 {
            return Err(Refusal::new(
                RefusalCode::UnderExposed,
                text::correct::the_photo_is_so_dark(),
            ));
        }
        Ok(())
    }

    /// What is to be said of patches that were left aside.
    pub fn remark(&self) -> Option<Flag> {
        let burnt = |p: &&Patch| p.clipped_share() > MOST_CLIPPED;
        let aside = self.patches.iter().filter(burnt).count();
        (aside > 0).then(|| {
            let patches = if aside == 1 {
                text::correct::patch_of_the_chart()
            } else {
                text::correct::patches_of_the_chart()
            };
            Flag::new(
                FlagCode::OverExposed,
                text::correct::burnt_out_and_left_aside_expose(aside, patches),
            )
        })
    }

    /// How many patches the chart has, the unusable ones too.
    pub(super) fn len(&self) -> usize {
        self.patches.len()
    }

    /// The patches that can be used, by number.
    pub(super) fn usable(&self) -> impl Iterator<Item = usize> {
        (0..self.patches.len()).filter(|&i| self.usable[i])
    }

    fn neutrals(&self) -> impl Iterator<Item = usize> {
        self.usable().filter(|&i| self.neutral[i])
    }

    /// Whether the tone curve rests on a patch.
    pub(super) fn is_neutral(&self, i: usize) -> bool {
        self.neutral[i]
    }

    /// The tone curve by the neutrals, all of them or without one.
    pub(super) fn tone(&self, light: &Light, without: Option<usize>) -> Option<Tone> {
        let neutrals: Vec<Neutral> = self
            .neutrals()
            .filter(|&i| Some(i) != without)
            .map(|i| Neutral {
                recorded: self.recorded[i],
                light: light
                    .at(self.patches[i].middle)
                    .map(|there| self.targets[i].xyz.y / 100.0 * there),
            })
            .collect();
        Tone::fit(&neutrals)
    }

    /// Scene light of a patch, the light field taken off.
    pub(super) fn scene(&self, tone: &Tone, light: &Light, i: usize) -> [f64; 3] {
        let there = light.at(self.patches[i].middle);
        let seen = tone.apply(self.recorded[i]);
        [0, 1, 2].map(|k| seen[k] / there[k])
    }

    /// The usable patches as pairs, without one.
    pub(super) fn pairs(
        &self,
        tone: &Tone,
        light: &Light,
        without: Option<usize>,
    ) -> Vec<Pair<'_>> {
        self.usable()
            .filter(|&i| Some(i) != without)
            .map(|i| Pair::new(self.scene(tone, light, i), &self.targets[i]))
            .collect()
    }

    /// Tone and weights by one family that is neither stiff nor loose: enough to
    /// find the light's slope with.
    pub(super) fn quick(&self, light: &Light) -> Option<(Tone, Weights)> {
        let tone = self.tone(light, None)?;
        let fit = Fit::new(Family::Root2, &self.pairs(&tone, light, None))?;
        Some((tone, fit.weights))
    }
}
