//! Amounts in cups and spoons, and how far such a measure can be off.

use crate::text::kitchen as words;
use locale::Measures;
use serde::{Deserialize, Serialize};

use crate::{
    Kitchen, Mass, MassUnit, Volume, VolumeUnit as V, error::DyeingError, material::Density,
    quantity::figure,
};

/// How far a levelled spoon holds more or less than its name says; common practice, no source.
pub const SPOON_OFF: f64 = 0.10;
/// How far a levelled cup or jug holds more or less than its name says; common practice, no source.
pub const CUP_OFF: f64 = 0.05;

impl Kitchen {
    /// The kitchen that goes with the locale's measures, where nobody named one.
    pub fn usual() -> Self {
        match locale::current().measures {
            Measures::Metric => Self::Metric,
            Measures::UsCustomary => Self::Us,
        }
    }
}

/// A volume as a kitchen measures it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Measure {
    /// In words, as in `1/3 cup + 2 tsp`.
    pub text: String,
    /// What the measure stands for.
    pub volume: Volume,
    /// The least that it may hold in practice.
    pub least: Volume,
    /// The most that it may hold in practice.
    pub most: Volume,
}

/// A powder as a kitchen measures it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PowderMeasure {
    /// The measure.
    pub measure: Measure,
    /// The least that it may weigh: loosest powder, scant measure.
    pub least: Mass,
    /// The most that it may weigh: densest powder, full measure.
    pub most: Mass,
}

struct Unit {
    unit: V,
    /// Its name.
    name: fn() -> &'static str,
    /// So many of it: the amount as it is written, and how many that is, at least 1.
    amount: fn(&str, f64) -> String,
    /// Parts of it that have a measure of their own or can be judged.
    parts: &'static [(f64, &'static str)],
    off: f64,
}

const QUARTERS: &[(f64, &str)] = &[(0.25, "1/4"), (0.5, "1/2"), (0.75, "3/4")];
const CUP_PARTS: &[(f64, &str)] = &[
    (0.25, "1/4"),
    (1.0 / 3.0, "1/3"),
    (0.5, "1/2"),
    (2.0 / 3.0, "2/3"),
    (0.75, "3/4"),
];
const SPOON_PARTS: &[(f64, &str)] = &[(0.125, "1/8"), (0.25, "1/4"), (0.5, "1/2"), (0.75, "3/4")];
const HALVES: &[(f64, &str)] = &[(0.5, "1/2")];

const fn unit(
    unit: V,
    name: fn() -> &'static str,
    amount: fn(&str, f64) -> String,
    parts: &'static [(f64, &'static str)],
    off: f64,
) -> Unit {
    Unit {
        unit,
        name,
        amount,
        parts,
        off,
    }
}

const US: [Unit; 4] = [
    unit(
        V::UsGallon,
        words::us_gallon,
        |a, n| words::us_gallons(a, n),
        QUARTERS,
        CUP_OFF,
    ),
    unit(
        V::UsCup,
        words::cup,
        |a, n| words::cups(a, n),
        CUP_PARTS,
        CUP_OFF,
    ),
    unit(
        V::UsTablespoon,
        words::tablespoon,
        |a, _| words::tablespoons(a),
        HALVES,
        SPOON_OFF,
    ),
    unit(
        V::UsTeaspoon,
        words::teaspoon,
        |a, _| words::teaspoons(a),
        SPOON_PARTS,
        SPOON_OFF,
    ),
];
/// Imperial kitchens use the metric spoons.
const METRIC_TABLESPOON: Unit = unit(
    V::MetricTablespoon,
    words::metric_tablespoon,
    |a, _| words::metric_tablespoons(a),
    HALVES,
    SPOON_OFF,
);
const METRIC_TEASPOON: Unit = unit(
    V::MetricTeaspoon,
    words::metric_teaspoon,
    |a, _| words::metric_teaspoons(a),
    SPOON_PARTS,
    SPOON_OFF,
);
const METRIC: [Unit; 3] = [
    unit(
        V::MetricCup,
        words::metric_cup,
        |a, n| words::metric_cups(a, n),
        CUP_PARTS,
        CUP_OFF,
    ),
    METRIC_TABLESPOON,
    METRIC_TEASPOON,
];
const IMPERIAL: [Unit; 4] = [
    unit(
        V::ImperialGallon,
        words::imperial_gallon,
        |a, n| words::imperial_gallons(a, n),
        QUARTERS,
        CUP_OFF,
    ),
    unit(
        V::ImperialPint,
        words::imperial_pint,
        |a, n| words::imperial_pints(a, n),
        QUARTERS,
        CUP_OFF,
    ),
    METRIC_TABLESPOON,
    METRIC_TEASPOON,
];

impl Unit {
    fn whole_and_part(&self, ml: f64, round: impl Fn(f64, f64, f64) -> bool) -> (f64, usize) {
        // The first step, counted in the unit's own parts, that `round` accepts.
        let n = ml / self.unit.millilitres();
        let whole = libm::floor(n);
        let mut below = (whole, 0);
        for k in 0..=self.parts.len() {
            let next = match self.parts.get(k) {
                Some((part, _)) => (whole, k + 1, whole + part),
                None => (whole + 1.0, 0, whole + 1.0),
            };
            if round(self.count(below), n, next.2) {
                return below;
            }
            below = (next.0, next.1);
        }
        below
    }

    fn count(&self, (whole, part): (f64, usize)) -> f64 {
        let part = part.checked_sub(1).and_then(|k| self.parts.get(k));
        whole + part.map_or(0.0, |(share, _)| *share)
    }

    /// The largest measure that is not above the volume.
    fn below(&self, ml: f64) -> (f64, usize) {
        self.whole_and_part(ml, |_, n, next| n < next * (1.0 - 1e-9))
    }

    /// The measure that is closest to the volume.
    fn nearest(&self, ml: f64) -> (f64, usize) {
        self.whole_and_part(ml, |below, n, next| n - below <= next - n)
    }

    fn text(&self, (whole, part): (f64, usize)) -> Option<String> {
        let share = part.checked_sub(1).and_then(|k| self.parts.get(k));
        // Less than one is named as one is.
        let count = (whole + share.map_or(0.0, |s| s.0)).max(1.0);
        let amount = match (whole > 0.0, share) {
            (true, Some((_, fraction))) => format!("{whole} {fraction}"),
            (true, None) => whole.to_string(),
            (false, Some((_, fraction))) => (*fraction).to_owned(),
            (false, None) => return None,
        };
        Some((self.amount)(&amount, count))
    }
}

fn units(kitchen: Kitchen) -> &'static [Unit] {
    match kitchen {
        Kitchen::Us => &US,
        Kitchen::Metric => &METRIC,
        Kitchen::Imperial => &IMPERIAL,
    }
}

/// A volume in that kitchen's measures, in two terms at most.
///
/// One term does where it is within 1 % of the volume. What is under the smallest spoon is said to
/// be so, for it has to be weighed.
///
/// ```
/// use dyeing::{Kitchen, kitchen};
/// let measure = kitchen::measure("80 ml".parse()?, Kitchen::Us)?;
/// assert_eq!(measure.text, "1/3 cup + 1/4 tsp");
/// # Ok::<(), dyeing::DyeingError>(())
/// ```
///
/// # Errors
/// Refuses what overflows.
pub fn measure(volume: Volume, kitchen: Kitchen) -> Result<Measure, DyeingError> {
    let ml = volume.millilitres();
    let all = units(kitchen);
    let fits = |u: &Unit| {
        let least = u.parts.first().map_or(1.0, |(share, _)| *share);
        let is_cup = matches!(u.unit, V::UsCup | V::MetricCup);
        ml >= u.unit.millilitres() * if is_cup { least } else { 1.0 } * (1.0 - 1e-9)
    };
    let first = all.iter().position(fits).unwrap_or(all.len() - 1);
    let main = &all[first];
    let alone = main.nearest(ml);
    let alone_ml = main.count(alone) * main.unit.millilitres();
    let good = (alone_ml - ml).abs() <= 0.01 * ml;
    if good || first + 1 == all.len() {
        let Some(text) = main.text(alone) else {
            return Ok(Measure {
                text: words::under_1_8_weigh((main.name)()),
                volume,
                least: volume.times(0.5)?,
                most: volume.times(1.5)?,
            });
        };
        return finished(text, alone_ml, alone_ml * main.off);
    }
    let below = main.below(ml);
    let below_ml = main.count(below) * main.unit.millilitres();
    // The rest goes by the smaller measure that shows it best.
    let rest = ml - below_ml;
    let second = all[first + 1..]
        .iter()
        .find(|u| rest >= u.unit.millilitres() * 0.95)
        .unwrap_or(&all[all.len() - 1]);
    let part = second.nearest(rest);
    let part_ml = second.count(part) * second.unit.millilitres();
    // One measure that comes nearer is the better word, too.
    if (alone_ml - ml).abs() <= (below_ml + part_ml - ml).abs()
        && let Some(text) = main.text(alone)
    {
        return finished(text, alone_ml, alone_ml * main.off);
    }
    match (main.text(below), second.text(part)) {
        (Some(a), Some(b)) => finished(
            format!("{a} + {b}"),
            below_ml + part_ml,
            below_ml * main.off + part_ml * second.off,
        ),
        (Some(a), None) => finished(a, below_ml, below_ml * main.off),
        (None, b) => finished(b.unwrap_or_default(), part_ml, part_ml * second.off),
    }
}

fn finished(text: String, ml: f64, off_ml: f64) -> Result<Measure, DyeingError> {
    Ok(Measure {
        text,
        volume: Volume::from_millilitres(ml)?,
        least: Volume::from_millilitres(ml - off_ml)?,
        most: Volume::from_millilitres(ml + off_ml)?,
    })
}

/// A powder's weight in that kitchen's measures.
///
/// # Errors
/// Refuses what overflows.
pub fn powder(
    mass: Mass,
    density: Density,
    kitchen: Kitchen,
) -> Result<PowderMeasure, DyeingError> {
    let volume = Volume::from_millilitres(mass.grams() / density.typical_g_per_ml)?;
    let measure = measure(volume, kitchen)?;
    let least = Mass::from_grams(measure.least.millilitres() * density.low_g_per_ml)?;
    let most = Mass::from_grams(measure.most.millilitres() * density.high_g_per_ml)?;
    Ok(PowderMeasure {
        measure,
        least,
        most,
    })
}

impl Measure {
    /// How far it can be off from a wanted volume, as in "it may hold 65 to 87 ml (-18 to +10 %)".
    pub fn off(&self, wanted: Volume) -> String {
        let (low, high) = (self.least.millilitres(), self.most.millilitres());
        words::it_may_hold_millilitres2_to_millilitres3(
            between(
                low,
                high,
                "ml",
                V::UsFluidOunce.millilitres(),
                words::us_fl_oz(),
            ),
            change(low, wanted.millilitres()),
            change(high, wanted.millilitres()),
        )
    }
}

impl PowderMeasure {
    /// How far it can be off from a wanted weight.
    pub fn off(&self, wanted: Mass) -> String {
        let (low, high) = (self.least.grams(), self.most.grams());
        words::it_may_weigh_to_grams2(
            grams_between(low, high),
            change(low, wanted.grams()),
            change(high, wanted.grams()),
        )
    }
}

/// A range of weights as the locale has it: `65 to 87 g`, or `2.29 to 3.07 oz (65 to 87 g)`.
pub(crate) fn grams_between(low_g: f64, high_g: f64) -> String {
    between(low_g, high_g, "g", MassUnit::Ounce.grams(), "oz")
}

fn between(low: f64, high: f64, metric: &str, unit: f64, customary: &str) -> String {
    let range = |unit: f64, name: &str| {
        let [low, high] = [low / unit, high / unit].map(figure);
        words::to(low, high, name)
    };
    match locale::current().measures {
        Measures::Metric => range(1.0, metric),
        Measures::UsCustomary => locale::beside(&range(1.0, metric), &range(unit, customary)),
    }
}

fn change(value: f64, wanted: f64) -> String {
    if wanted > 0.0 {
        format!("{:+.0}", (value / wanted - 1.0) * 100.0)
    } else {
        "+0".into()
    }
}
