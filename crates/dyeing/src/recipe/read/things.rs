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
    Added, Amount, Celsius, Dose, Entry, Kitchen, Mass, Part, PercentWv, Price, Volume,
    error::DyeingError, material, quantity::read_volume,
};

/// Reads entries of one dye or auxiliary, each with its place in faults.
struct Entries<'p> {
    part: Part,
    kitchen: Kitchen,
    prices: &'p Prices,
}

impl Entries<'_> {
    fn at<T>(&self, entry: Entry, read: Read<T>) -> Read<T> {
        at(self.part.clone().at(entry), read)
    }

    fn rule(&self, what: Entry, text: String) -> Read<Rule> {
        let dose = self.at(what, Dose::read(&text, self.kitchen))?;
        Ok(Rule { text, dose })
    }

    fn price(&self, text: Option<String>) -> Read<Option<Price>> {
        let read = text.map(|t| self.prices.read(&t)).transpose();
        self.at(Entry::Price, read)
    }

    fn amount(&self, what: Entry, text: Option<String>) -> Read<Option<Amount>> {
        let read = text.map(|t| Amount::read(&t, self.kitchen)).transpose();
        self.at(what, read)
    }

    fn bottle(&self, text: Option<String>) -> Read<Option<Volume>> {
        let read = text.map(|t| read_volume(&t, self.kitchen)).transpose();
        self.at(Entry::Bottle, read)
    }
}

pub(super) fn read_dye(
    file: WrittenDye,
    kitchen: Kitchen,
    row: usize,
    prices: &Prices,
) -> Read<Dye> {
    let entry = Entries {
        part: Part::added(Added::Dye, row, &file.name),
        kitchen,
        prices,
    };
    let strength_percent = file.strength_percent.unwrap_or(100.0);
    let form = match (file.stock, file.liquid) {
        (Some(_), Some(_)) => {
            let sentence = text::recipe::is_either_a_stock_solution(&entry.part);
            return Err(entry.part.at(Entry::Stock).says(sentence));
        }
        (Some(stock), None) => DyeForm::Stock(entry.at(Entry::Stock, PercentWv::read(&stock))?),
        (None, Some(liquid)) if liquid.trim() == "unknown" => DyeForm::Liquid(None),
        (None, Some(liquid)) => {
            DyeForm::Liquid(Some(entry.at(Entry::Liquid, PercentWv::read(&liquid))?))
        }
        (None, None) => {
            let checked = crate::hydrate::at_strength(Mass::ZERO, strength_percent);
            entry.at(Entry::Strength, checked)?;
            DyeForm::Powder { strength_percent }
        }
    };
    Ok(Dye {
        rule: entry.rule(Entry::Amount, file.amount)?,
        bottle: entry.bottle(file.bottle)?,
        price: entry.price(file.price)?,
        in_bath: entry.amount(Entry::InBath, file.in_bath)?,
        name: file.name,
        form,
    })
}

pub(super) fn read_auxiliary(
    file: WrittenAuxiliary,
    kitchen: Kitchen,
    kind: Added,
    row: usize,
    prices: &Prices,
) -> Read<Auxiliary> {
    let entry = Entries {
        part: Part::added(kind, row, &file.name),
        kitchen,
        prices,
    };
    // The name alone does where it is a material's.
    let material = match &file.material {
        Some(name) => Some(entry.at(Entry::Material, material::find(name))?.clone()),
        None => material::find(&file.name).ok().cloned(),
    };
    Ok(Auxiliary {
        material,
        rule: entry.rule(Entry::Amount, file.amount)?,
        label: file
            .label
            .map(|t| entry.rule(Entry::Label, t))
            .transpose()?,
        bottle: entry.bottle(file.bottle)?,
        price: entry.price(file.price)?,
        in_bath: entry.amount(Entry::InBath, file.in_bath)?,
        name: file.name,
    })
}

pub(super) fn read_after(
    file: WrittenAfter,
    kitchen: Kitchen,
    known: &[Arm],
    row: usize,
    prices: &Prices,
) -> Read<AfterTreatment> {
    let part = Part::added(Added::AfterTreatment, row, &file.name);
    let within = |entry| part.clone().at(entry);
    let water = file.water.map(|t| read_volume(&t, kitchen)).transpose();
    let water = at(within(Entry::Water), water)?;
    if water == Some(Volume::ZERO) {
        return Err(within(Entry::Water).says(text::recipe::has_no_water(&part)));
    }
    let temperature: Celsius = at(within(Entry::Temperature), file.temperature.parse())?;
    let time = at(within(Entry::Time), file.time.parse())?;
    let arms = file
        .arms
        .unwrap_or_else(|| known.iter().map(|a| a.name.clone()).collect());
    if let Some(name) = arms
        .iter()
        .find(|name| known.iter().all(|a| a.name != **name))
    {
        let unknown = DyeingError::Unknown {
            what: text::place::arm(),
            name: name.clone(),
            known: known
                .iter()
                .map(|a| a.name.as_str())
                .collect::<Vec<_>>()
                .join(", "),
        };
        return at(within(Entry::Arms), Err(unknown));
    }
    if arms.is_empty() {
        let sentence = text::recipe::is_for_no_arm_leave_it_out(&part);
        return Err(within(Entry::Arms).says(sentence));
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
    let agent = read_auxiliary(agent, kitchen, Added::AfterTreatment, row, prices)?;
    Ok(AfterTreatment {
        agent,
        water,
        temperature,
        time,
        arms,
        share,
    })
}
