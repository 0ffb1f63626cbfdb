//! One thing that goes into a bath: how much, in which measures, how sure.

use crate::text;
use locale::Measures;
use serde::Serialize;

use crate::{
    Amount, Entry, Kitchen, Mass, Part, Volume,
    caution::Hazard,
    error::DyeingError,
    hydrate, kitchen,
    material::{Density, Material, Role},
    recipe::{Auxiliary, Dye, DyeForm},
};

/// One thing that goes into a bath.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Line {
    /// Its name.
    pub name: String,
    /// What it does; nothing for a dye.
    pub role: Option<Role>,
    /// The rule, as it was written.
    pub rule: String,
    /// How much to take, for all baths together.
    pub amount: Amount,
    /// The same in grams or millilitres.
    pub metric: String,
    /// The same in pounds and ounces, where it is weighed.
    pub pounds: Option<String>,
    /// The same in cups and spoons, where it can be measured so.
    pub kitchen: Option<String>,
    /// How far the cups and spoons can be off.
    pub off: Option<String>,
    /// How much for each bath, where there are several.
    pub each_bath: Option<String>,
    /// Solid in it, g, where that is known.
    pub solid_g: Option<f64>,
    /// Depth that it gives, % owf, for a dye of known strength.
    pub depth_owf: Option<f64>,
    /// What has to be known about it.
    pub note: Option<String>,
    /// What it can do to people and places.
    pub hazards: Vec<Hazard>,
    /// Weight that does the work of its base material, g, with what was in the bath before.
    #[serde(skip)]
    pub base_g: Option<f64>,
    /// How dense it lies, for what it costs.
    #[serde(skip)]
    pub density: Option<Density>,
    /// What a bottle of it holds.
    #[serde(skip)]
    pub bottle: Option<Volume>,
}

/// The bath that something goes into.
#[derive(Debug, Clone, Copy)]
pub struct Into {
    /// Dry goods.
    pub goods: Mass,
    /// Liquor.
    pub liquor: Volume,
    /// How many baths share it.
    pub baths: u32,
    /// Whose cups and spoons.
    pub kitchen: Kitchen,
}

impl Line {
    /// A dye, `part` being where faults say it is.
    ///
    /// # Errors
    /// Says when a weight of dye is wanted from a liquid of unknown strength, or when bottles
    /// can't be counted.
    pub fn of_dye(dye: &Dye, part: &Part, bath: Into) -> Result<Self, DyeingError> {
        let wanted = dye.rule.dose.for_bath(bath.goods, bath.liquor)?;
        let wanted = opened(wanted, dye.bottle)?;
        let (full, pure) = match (dye.form, wanted) {
            (DyeForm::Powder { strength_percent }, Amount::Mass(pure)) => {
                let taken = hydrate::at_strength(pure, strength_percent)?;
                (Amount::Mass(taken), Some(pure))
            }
            (DyeForm::Stock(strength) | DyeForm::Liquid(Some(strength)), Amount::Mass(pure)) => {
                (Amount::Volume(strength.holding(pure)?), Some(pure))
            }
            (DyeForm::Stock(strength) | DyeForm::Liquid(Some(strength)), Amount::Volume(taken)) => {
                (Amount::Volume(taken), Some(strength.within(taken)?))
            }
            (DyeForm::Liquid(None), Amount::Mass(_)) => {
                return Err(DyeingError::Recipe(
                    text::plan::a_weight_of_dye_cant_be_taken().into(),
                ));
            }
            (_, other) => (other, None),
        };
        let depth_owf = pure.map(|p| 100.0 * p.grams() / bath.goods.grams());
        let (amount, mut note) = less(full, dye.in_bath, part)?;
        match dye.form {
            DyeForm::Liquid(None) => add(
                &mut note,
                text::plan::its_strength_is_unknown_so_the_depth(),
            ),
            DyeForm::Powder { .. } if matches!(amount, Amount::Volume(_)) => {
                add(&mut note, text::plan::dye_powders_lie_at_very_different());
            }
            _ => {}
        }
        let solid = match (dye.form, amount) {
            (DyeForm::Stock(s) | DyeForm::Liquid(Some(s)), Amount::Volume(v)) => Some(s.within(v)?),
            (DyeForm::Powder { .. }, Amount::Mass(m)) => Some(m),
            _ => None,
        };
        let is_powder = matches!(dye.form, DyeForm::Powder { .. });
        let mut line = Self::written(&dye.name, &dye.rule.text, amount, None, bath)?;
        line.bottle = dye.bottle;
        line.solid_g = solid.map(Mass::grams);
        line.depth_owf = depth_owf;
        line.note = note;
        if is_powder {
            line.hazards.push(Hazard::Dust);
        }
        Ok(line)
    }

    /// Something beside dye, `part` being where faults say it is.
    ///
    /// # Errors
    /// Refuses what overflows.
    pub fn of_auxiliary(
        auxiliary: &Auxiliary,
        part: &Part,
        bath: Into,
    ) -> Result<Self, DyeingError> {
        let wanted = auxiliary.rule.dose.for_bath(bath.goods, bath.liquor)?;
        let wanted = opened(wanted, auxiliary.bottle)?;
        let (amount, note) = less(wanted, auxiliary.in_bath, part)?;
        let material = auxiliary.material.as_ref();
        let density = material.and_then(|m| m.density);
        let mut line = Self::written(&auxiliary.name, &auxiliary.rule.text, amount, density, bath)?;
        line.bottle = auxiliary.bottle;
        line.note = note;
        line.role = Some(material.map_or(Role::Other, |m| m.role));
        line.solid_g = weight_g(amount, material);
        line.base_g = material.and_then(|m| {
            let grams = weight_g(wanted, Some(m))?;
            Some(m.as_base_g(Mass::from_grams(grams).ok()?))
        });
        line.hazards = material.map_or_else(Vec::new, |m| m.hazards.clone());
        Ok(line)
    }

    fn written(
        name: &str,
        rule: &str,
        amount: Amount,
        density: Option<Density>,
        bath: Into,
    ) -> Result<Self, DyeingError> {
        let (mut metric, mut pounds, mut kitchen, mut off) = (amount.metric(), None, None, None);
        match (amount, density) {
            (Amount::Mass(mass), density) => {
                pounds = Some(mass.avoirdupois());
                if let Some(density) = density.filter(|_| mass > Mass::ZERO) {
                    let found = kitchen::powder(mass, density, bath.kitchen)?;
                    off = Some(found.off(mass));
                    kitchen = Some(found.measure.text);
                }
            }
            (Amount::Volume(volume), Some(density)) => {
                let [_, typical, _] = density.weighs(volume)?;
                let measure = kitchen::measure(volume, bath.kitchen)?;
                let least = density.low_g_per_ml * measure.least.millilitres();
                let most = density.high_g_per_ml * measure.most.millilitres();
                metric = text::plan::about(&metric, typical.metric());
                pounds = Some(typical.avoirdupois());
                off = Some(text::plan::it_may_weigh_weigh(kitchen::grams_between(
                    least, most,
                )));
                kitchen = Some(measure.text);
            }
            (Amount::Volume(volume), None) if volume > Volume::ZERO => {
                let measure = kitchen::measure(volume, bath.kitchen)?;
                off = Some(measure.off(volume));
                kitchen = Some(measure.text);
            }
            _ => {}
        }
        let each = amount.times(1.0 / f64::from(bath.baths))?;
        Ok(Self {
            name: name.to_owned(),
            role: None,
            rule: rule.to_owned(),
            amount,
            metric,
            pounds,
            kitchen,
            off,
            each_bath: (bath.baths > 1).then(|| each.to_string()),
            solid_g: None,
            depth_owf: None,
            note: None,
            hazards: Vec::new(),
            base_g: None,
            density,
            bottle: None,
        })
    }

    /// How much to take as the locale has it: `200 ml`, or `6.76 US fl oz (200 ml)`.
    pub fn shown(&self) -> String {
        if locale::current().measures == Measures::Metric {
            return self.metric.clone();
        }
        let customary = match (self.amount, &self.pounds) {
            (Amount::Mass(mass), _) => mass.avoirdupois(),
            (Amount::Volume(volume), None) => volume.us_customary(),
            (Amount::Volume(volume), Some(pounds)) => {
                text::plan::about_2(volume.us_customary(), pounds)
            }
            (Amount::Bottles(_), _) => return self.metric.clone(),
        };
        locale::beside(&self.metric, &customary)
    }

    /// The liquid that it brings into the bath.
    pub fn liquid(&self) -> Volume {
        match (self.amount, self.density) {
            (Amount::Volume(volume), None) => volume,
            _ => Volume::ZERO,
        }
    }
}

/// Bottles of a known size as a volume.
fn opened(amount: Amount, bottle: Option<Volume>) -> Result<Amount, DyeingError> {
    match (amount, bottle) {
        (Amount::Bottles(n), Some(size)) => Ok(Amount::Volume(size.times(n)?)),
        (other, _) => Ok(other),
    }
}

/// What is still to be taken when some is in the bath already.
fn less(
    wanted: Amount,
    there: Option<Amount>,
    part: &Part,
) -> Result<(Amount, Option<String>), DyeingError> {
    let Some(there) = there else {
        return Ok((wanted, None));
    };
    if wanted.is_zero() {
        return Ok((wanted, None));
    }
    let Some(share) = there.over(wanted) else {
        let sentence = text::plan::what_is_left_in_the_bath(there, wanted);
        return Err(DyeingError::Recipe(sentence).at(part.clone().at(Entry::InBath)));
    };
    let note = if share > 1.0 {
        text::plan::the_bath_holds_already_more(there, wanted)
    } else {
        text::plan::of_is_in_the_bath_already(there, wanted)
    };
    Ok((wanted.times((1.0 - share).max(0.0))?, Some(note)))
}

fn weight_g(amount: Amount, material: Option<&Material>) -> Option<f64> {
    match (amount, material) {
        (Amount::Mass(mass), _) => Some(mass.grams()),
        (Amount::Volume(volume), Some(m)) => match m.density {
            Some(d) => Some(volume.millilitres() * d.typical_g_per_ml),
            // Thin solutions weigh about a gram a millilitre.
            None if m.liquid => Some(volume.millilitres()),
            None => None,
        },
        _ => None,
    }
}

fn add(note: &mut Option<String>, sentence: &str) {
    *note = Some(match note.take() {
        Some(first) => format!("{first} {sentence}"),
        None => sentence.to_owned(),
    });
}
