//! Where the dye is likely to end up.

use crate::text;
use serde::Serialize;

use crate::{
    LiquorRatio, Mass,
    class::DyeClass,
    error::DyeingError,
    exhaustion::{Partition, PotChange},
    plan::line::Line,
};

/// Where the dye is likely to end up; ranges from least to most.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Uptake {
    /// Share taken up in the bath, percent.
    pub exhaustion_percent: [f64; 2],
    /// Share that stays for good, percent.
    pub fixation_percent: [f64; 2],
    /// Dye of known weight that is put in.
    pub dye: Mass,
    /// Of that, what doesn't stay: least and most.
    pub wasted: [Mass; 2],
    /// What is left in the bath of each dye: name, least and most, g.
    pub left_in_bath_g: Vec<(String, f64, f64)>,
    /// What this liquor ratio does against the middle of the usual ones.
    pub pot: PotChange,
    /// All of it in words.
    pub sentence: String,
}

impl Uptake {
    /// By the class's usual shares, moved to this liquor ratio by the partition model.
    ///
    /// # Errors
    /// Refuses what overflows.
    pub fn of(class: &DyeClass, ratio: LiquorRatio, dyes: &[Line]) -> Result<Self, DyeingError> {
        let usual = LiquorRatio::new(class.middle_ratio())?;
        let moved = |percent: f64| -> Result<f64, DyeingError> {
            Ok(100.0 * Partition::from_share(percent / 100.0, usual)?.share(ratio))
        };
        let [low, high] = class.exhaustion_percent;
        let exhaustion_percent = [moved(low)?, moved(high)?];
        // Of what is taken up, the share that stays is the dye's own, whatever the water.
        let fixation_percent = [
            exhaustion_percent[0] * class.fixation_percent[0] / low,
            exhaustion_percent[1] * class.fixation_percent[1] / high,
        ];
        let grams: f64 = dyes.iter().filter_map(|d| d.solid_g).sum();
        let dye = Mass::from_grams(grams)?;
        let wasted = [
            dye.times(1.0 - fixation_percent[1] / 100.0)?,
            dye.times(1.0 - fixation_percent[0] / 100.0)?,
        ];
        let left = |share: f64, grams: f64| grams * (1.0 - share / 100.0);
        let left_in_bath_g = dyes
            .iter()
            .filter_map(|d| {
                let g = d.solid_g?;
                let [low, high] = exhaustion_percent;
                Some((d.name.clone(), left(high, g), left(low, g)))
            })
            .collect();
        let middle = Partition::from_share((low + high) / 200.0, usual)?;
        let pot = middle.change_of_pot(usual, ratio);
        let mut sentence = text::plan::at_the_goods_take_up_about(
            ratio,
            format_args!("{:.0}", exhaustion_percent[0]),
            format_args!("{:.0}", exhaustion_percent[1]),
            format_args!("{:.0}", fixation_percent[0]),
            format_args!("{:.0}", fixation_percent[1]),
        );
        if grams > 0.0 {
            sentence.push_str(&text::plan::of_of_dye_shown2_to_shown3_goes(
                dye.shown(),
                wasted[0].shown(),
                wasted[1].shown(),
            ));
        }
        sentence.push_str(text::plan::figures_are_industrys_moved_to_this());
        Ok(Self {
            exhaustion_percent,
            fixation_percent,
            dye,
            wasted,
            left_in_bath_g,
            pot,
            sentence,
        })
    }
}
