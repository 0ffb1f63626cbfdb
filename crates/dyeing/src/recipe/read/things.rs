//! Dyes, auxiliaries and after-treatments of a recipe, each from its entries.

use super::{
    super::{
        AfterTreatment, Arm, Auxiliary, Dye, DyeForm, Rule,
        written::{WrittenAfter, WrittenAuxiliary, WrittenDye},
    },
    Read, at,
    prices::Prices,
};
use crate::text;
use crate::{
    Amount, Celsius, Dose, Kitchen, Mass, PercentWv, Price, Volume, error::DyeingError, material,
    quantity::read_volume,
};

/// Reads entries of one dye or auxiliary, each with its place in faults.
struct Entry<'p> {
    place: String,
    kitchen: Kitchen,
    prices: &'p Prices,
}

impl Entry<'_> {
    fn at<T>(&self, what: &str, read: Read<T>) -> Read<T> {
        read.map_err(|e| e.at(format!("{}, {what}", self.place)))
    }

    fn rule(&self, what: &str, text: String) -> Read<Rule> {
        let dose = self.at(what, Dose::read(&text, self.kitchen))?;
        Ok(Rule { text, dose })
    }

    fn price(&self, text: Option<String>) -> Read<Option<Price>> {
        let read = text.map(|t| self.prices.read(&t)).transpose();
        self.at("price", read)
    }

    fn amount(&self, what: &str, text: Option<String>) -> Read<Option<Amount>> {
        let read = text.map(|t| Amount::read(&t, self.kitchen)).transpose();
        self.at(what, read)
    }

    fn bottle(&self, text: Option<String>) -> Read<Option<Volume>> {
        let read = text.map(|t| read_volume(&t, self.kitchen)).transpose();
        self.at("bottle", read)
    }
}

pub(super) fn read_dye(file: WrittenDye, kitchen: Kitchen, prices: &Prices) -> Read<Dye> {
    let entry = Entry {
        place: text::recipe::dye(&file.name),
        kitchen,
        prices,
    };
    let strength_percent = file.strength_percent.unwrap_or(100.0);
    let form = match (file.stock, file.liquid) {
        (Some(_), Some(_)) => {
            return Err(DyeingError::Recipe(
                text::recipe::is_either_a_stock_solution(&entry.place),
            ));
        }
        (Some(stock), None) => DyeForm::Stock(entry.at("stock", PercentWv::read(&stock))?),
        (None, Some(liquid)) if liquid.trim() == "unknown" => DyeForm::Liquid(None),
        (None, Some(liquid)) => {
            DyeForm::Liquid(Some(entry.at("liquid", PercentWv::read(&liquid))?))
        }
        (None, None) => {
            let checked = crate::hydrate::at_strength(Mass::ZERO, strength_percent);
            entry.at("strength_percent", checked)?;
            DyeForm::Powder { strength_percent }
        }
    };
    Ok(Dye {
        rule: entry.rule("amount", file.amount)?,
        bottle: entry.bottle(file.bottle)?,
        price: entry.price(file.price)?,
        in_bath: entry.amount("in_bath", file.in_bath)?,
        name: file.name,
        form,
    })
}

pub(super) fn read_auxiliary(
    file: WrittenAuxiliary,
    kitchen: Kitchen,
    kind: &str,
    prices: &Prices,
) -> Read<Auxiliary> {
    let entry = Entry {
        place: format!("{kind} \"{}\"", file.name),
        kitchen,
        prices,
    };
    // The name alone does where it is a material's.
    let material = match &file.material {
        Some(name) => Some(entry.at("material", material::find(name))?.clone()),
        None => material::find(&file.name).ok().cloned(),
    };
    Ok(Auxiliary {
        material,
        rule: entry.rule("amount", file.amount)?,
        label: file.label.map(|t| entry.rule("label", t)).transpose()?,
        bottle: entry.bottle(file.bottle)?,
        price: entry.price(file.price)?,
        in_bath: entry.amount("in_bath", file.in_bath)?,
        name: file.name,
    })
}

pub(super) fn read_after(
    file: WrittenAfter,
    kitchen: Kitchen,
    known: &[Arm],
    prices: &Prices,
) -> Read<AfterTreatment> {
    let place = text::recipe::after_treatment(&file.name);
    let within = |what: &str| format!("{place}, {what}");
    let water = file.water.map(|t| read_volume(&t, kitchen)).transpose();
    let water = at(&within("water"), water)?;
    if water == Some(Volume::ZERO) {
        return Err(DyeingError::Recipe(text::recipe::has_no_water(&place)));
    }
    let temperature: Celsius = at(&within("temperature"), file.temperature.parse())?;
    let time = at(&within("time"), file.time.parse())?;
    let arms = file
        .arms
        .unwrap_or_else(|| known.iter().map(|a| a.name.clone()).collect());
    if let Some(name) = arms
        .iter()
        .find(|name| known.iter().all(|a| a.name != **name))
    {
        let unknown = DyeingError::Unknown {
            what: "arm",
            name: name.clone(),
            known: known
                .iter()
                .map(|a| a.name.as_str())
                .collect::<Vec<_>>()
                .join(", "),
        };
        return at(&within("arms"), Err(unknown));
    }
    if arms.is_empty() {
        return Err(DyeingError::Recipe(
            text::recipe::is_for_no_arm_leave_it_out(&place),
        ));
    }
    let pieces =
        |all: &mut dyn Iterator<Item = &Arm>| -> f64 { all.map(|a| f64::from(a.pieces)).sum() };
    let share =
        pieces(&mut known.iter().filter(|a| arms.contains(&a.name))) / pieces(&mut known.iter());
    let agent = WrittenAuxiliary {
        name: file.name,
        material: file.material,
        amount: file.amount,
        label: file.label,
        bottle: file.bottle,
        price: file.price,
        in_bath: None,
    };
    let agent = read_auxiliary(agent, kitchen, "after-treatment", prices)?;
    Ok(AfterTreatment {
        agent,
        water,
        temperature,
        time,
        arms,
        share,
    })
}
