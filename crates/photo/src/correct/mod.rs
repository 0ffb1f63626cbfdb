//! The correction: tone, light and colour together, by the chart.

mod choose;
mod model;
mod plane;
mod tone;

use colour::{Lab, View, Xyz, difference};

use crate::{ChartReference, Flag, FlagCode, Refusal, RefusalCode, light::Light, patches::Patch};
use model::{Model, Pair, Target};
use tone::{Bend, Neutral, Tone};

/// The first neutral patch; the neutrals end the chart's last row.
const FIRST_NEUTRAL: usize = 18;
/// Most of a patch that may be burnt out before it is left aside.
const MOST_CLIPPED: f64 = 0.05;
/// Median miss of left-out patches from which on a photo is refused, CIEDE2000.
const HOPELESS_DE00: f64 = 9.0;
/// Median miss from which on it is remarked.
const ROUGH_DE00: f64 = 4.0;

/// The chart as recorded, with what its patches truly are.
pub(crate) struct Chart<'a> {
    patches: &'a [Patch],
    recorded: Vec<[f64; 3]>,
    targets: Vec<Target>,
    usable: Vec<bool>,
    white: Xyz,
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
        let usable: Vec<bool> = patches
            .iter()
            .map(|p| p.clipped_share() <= MOST_CLIPPED)
            .collect();
        check_exposure(&recorded, &usable)?;
        Ok(Self {
            patches,
            recorded,
            targets: reference
                .xyz(view)
                .into_iter()
                .map(|xyz| Target::new(xyz, white))
                .collect(),
            usable,
            white,
        })
    }

    /// What is to be said of patches that were left aside.
    pub fn remark(&self) -> Option<Flag> {
        let aside = self.usable.iter().filter(|&&usable| !usable).count();
        (aside > 0).then(|| {
            let patches = if aside == 1 { "patch is" } else { "patches are" };
            Flag::new(
                FlagCode::OverExposed,
                format!(
                    "{aside} of the chart's {patches} burnt out and left aside. Expose a little less (-0.7); light colours are then surer."
                ),
            )
        })
    }

    fn tone(&self, light: &Light, bend: Bend, left_out: Option<usize>) -> Option<Tone> {
        let neutrals: Vec<Neutral> = (FIRST_NEUTRAL..24)
            .filter(|&i| self.usable[i] && Some(i) != left_out)
            .map(|i| Neutral {
                recorded: self.recorded[i],
                light: self.targets[i].xyz.y / 100.0 * light.at(self.patches[i].middle),
            })
            .collect();
        Tone::fit(&neutrals, bend)
    }

    fn scene(&self, tone: &Tone, light: &Light, i: usize) -> [f64; 3] {
        let there = light.at(self.patches[i].middle);
        tone.apply(self.recorded[i]).map(|v| v / there)
    }

    /// Tone and model without one patch, or with all.
    fn fit(&self, light: &Light, bend: Bend, left_out: Option<usize>) -> Option<(Tone, Model)> {
        let tone = self.tone(light, bend, left_out)?;
        let pairs: Vec<Pair<'_>> = (0..24)
            .filter(|&i| self.usable[i] && Some(i) != left_out)
            .map(|i| Pair {
                light: self.scene(&tone, light, i),
                target: &self.targets[i],
            })
            .collect();
        Some((tone, Model::mean(&pairs)?))
    }
}

fn check_exposure(recorded: &[[f64; 3]], usable: &[bool]) -> Result<(), Refusal> {
    let neutrals_left = usable[FIRST_NEUTRAL..].iter().filter(|&&u| u).count();
    let left = usable.iter().filter(|&&u| u).count();
    if neutrals_left < 4 || left < 16 {
        return Err(Refusal::new(
            RefusalCode::OverExposed,
            "The chart's light patches are burnt out. Take the photo again with less exposure (-1), away from direct sun.",
        ));
    }
    let brightest = recorded[FIRST_NEUTRAL].iter().copied().fold(0.0, f64::max);
    if brightest < 0.02 {
        return Err(Refusal::new(
            RefusalCode::UnderExposed,
            "The photo is so dark that the chart's white patch is nearly black. Take it again with more light.",
        ));
    }
    Ok(())
}

/// A photo's correction, ready to read areas with.
pub(crate) struct Correction {
    /// Scene light of each code value, the tone undone.
    pub linear: [[f64; 256]; 3],
    /// The light field.
    pub light: Light,
    white: Xyz,
    bend: Bend,
    tone: Tone,
    model: Model,
    left_out: Vec<LeftOut>,
}

/// What the fit without one patch says.
struct LeftOut {
    tone: Tone,
    model: Model,
    /// Where the patch truly is.
    truth: Lab,
    /// Predicted minus true Lab of the patch left out.
    miss: [f64; 3],
    /// The same as one CIEDE2000 figure.
    miss_de00: f64,
}

impl Correction {
    /// The correction of a chart under a light field.
    fn new(chart: &Chart<'_>, file: &[[f64; 256]; 3], light: Light, bend: Bend) -> Option<Self> {
        let (tone, model) = chart.fit(&light, bend, None)?;
        let mut left_out = Vec::with_capacity(24);
        for i in (0..24).filter(|&i| chart.usable[i]) {
            let (tone, model) = chart.fit(&light, bend, Some(i))?;
            let lab = model.xyz(chart.scene(&tone, &light, i)).to_lab(chart.white);
            let truth = chart.targets[i].lab;
            left_out.push(LeftOut {
                miss: [lab.l - truth.l, lab.a - truth.a, lab.b - truth.b],
                miss_de00: difference::ciede2000(lab, truth),
                truth,
                tone,
                model,
            });
        }
        let linear = [0, 1, 2].map(|k| std::array::from_fn(|code| tone.channel(k, file[k][code])));
        Some(Self {
            linear,
            light,
            white: chart.white,
            bend,
            tone,
            model,
            left_out,
        })
    }

    /// CIELAB of scene light, the light field taken off already.
    pub fn lab(&self, scene: [f64; 3]) -> Lab {
        self.model.xyz(scene).to_lab(self.white)
    }

    /// CIELAB of the same recorded light by each fit that leaves out one patch.
    ///
    /// `recorded` is linear in the file's own space, `light` the light there.
    pub fn replicates(&self, recorded: [f64; 3], scene: [f64; 3]) -> Vec<Lab> {
        let here = self.tone.apply(recorded);
        self.left_out
            .iter()
            .map(|other| {
                let there = other.tone.apply(recorded);
                let moved = [0, 1, 2].map(|k| {
                    let ratio = if here[k] > 0.0 {
                        there[k] / here[k]
                    } else {
                        1.0
                    };
                    scene[k] * ratio
                });
                other.model.xyz(moved).to_lab(self.white)
            })
            .collect()
    }

    /// By how much patches left out are missed, near a colour: a covariance in
    /// Lab, patches of like colour counting most.
    pub fn miss_near(&self, lab: Lab) -> crate::matrix::Matrix3 {
        const REACH: f64 = 30.0;
        let mut sum = [[0.0; 3]; 3];
        let mut weights = 0.0;
        for other in &self.left_out {
            let apart = difference::cie76(lab, other.truth) / REACH;
            // The floor keeps a far-off colour from resting on one patch alone.
            let weight = (-0.5 * apart * apart).exp() + 0.02;
            crate::matrix::add(&mut sum, &crate::matrix::outer(other.miss), weight);
            weights += weight;
        }
        sum.map(|row| row.map(|v| v / weights))
    }

    /// The misses of left-out patches, CIEDE2000, least first.
    fn misses(&self) -> Vec<f64> {
        let mut misses: Vec<f64> = self.left_out.iter().map(|o| o.miss_de00).collect();
        misses.sort_by(f64::total_cmp);
        misses
    }

    /// Median and 95 of 100 of those misses.
    pub fn median_and_p95(&self) -> (f64, f64) {
        let misses = self.misses();
        let at = |share: f64| {
            let place = share * (misses.len() - 1) as f64;
            let k = place as usize;
            let next = misses[(k + 1).min(misses.len() - 1)];
            misses[k] + (next - misses[k]) * (place - k as f64)
        };
        (at(0.5), at(0.95))
    }

    /// A name for how it was made up.
    pub fn name(&self) -> String {
        format!(
            "mean of matrix and root polynomials, {}, light by the {}",
            self.bend.name(),
            self.light.source()
        )
    }

    /// One figure to choose by: the mean miss, no patch counting above 12.
    fn score(&self) -> f64 {
        let misses = self.misses();
        misses.iter().map(|m| m.min(12.0)).sum::<f64>() / misses.len() as f64
    }

    /// What is to be said of a rough fit, or the refusal of a hopeless one.
    pub fn judge(&self) -> Result<Option<Flag>, Refusal> {
        let (median, _) = self.median_and_p95();
        if median > HOPELESS_DE00 {
            return Err(poor_fit(format!(
                "they are missed by {median:.0} (CIEDE2000)"
            )));
        }
        Ok((median > ROUGH_DE00).then(|| {
            Flag::new(
                FlagCode::PoorFit,
                format!(
                    "The chart is fitted only roughly ({median:.1} CIEDE2000): colours are uncertain, differences in this photo less so. Daylight and a photo without filters fit better."
                ),
            )
        }))
    }
}

/// The refusal of a chart whose patches don't look like its reference.
pub(crate) fn poor_fit(how: String) -> Refusal {
    Refusal::new(
        RefusalCode::PoorFit,
        format!(
            "The patches don't look like the usual 24-patch chart: {how}. Check the corners, or give the chart's own values with --chart."
        ),
    )
}

pub(crate) use choose::choose;
