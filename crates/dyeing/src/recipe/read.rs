//! From entries as text to a recipe.

mod prices;
mod things;

use crate::text;
use std::collections::BTreeMap;

use super::{
    Arm, Goods, Pot, Process, Recipe, Water, no_goods,
    written::{Written, WrittenGoods, WrittenPot, WrittenProcess},
};
use crate::{
    Added, Entry, Kitchen, Mass, Part, Place, Volume, class, error::DyeingError, fibre, goods,
    quantity::read_volume,
};
use prices::Prices;
use things::{read_after, read_auxiliary, read_dye};

type Read<T> = Result<T, DyeingError>;

/// Reads a recipe.
pub fn read(file: Written) -> Read<Recipe> {
    if file.name.trim().is_empty() {
        let place = Part::Recipe.at(Entry::Name);
        let recipe = text::recipe::recipe();
        return Err(place.says(text::recipe::the_has_no_name_give(recipe)));
    }
    named(Added::Dye, file.dye.iter().map(|d| &d.name))?;
    named(Added::Auxiliary, file.auxiliary.iter().map(|a| &a.name))?;
    named(Added::AfterTreatment, file.after.iter().map(|a| &a.name))?;
    let kitchen = file.kitchen;
    let prices = Prices::of(&file);
    let goods = read_goods(&file.goods, &file.arms)?;
    let arms = read_arms(file.arms, goods.pieces)?;
    let pot = file.pot.map(|p| read_pot(&p, kitchen)).transpose()?;
    let water = match (&file.water.liquor_ratio, &file.water.volume) {
        (Some(ratio), None) => Water::Ratio(at(Part::Water.at(Entry::LiquorRatio), ratio.parse())?),
        (None, Some(text)) => {
            let volume = read_volume(text, kitchen);
            Water::Volume(at(Part::Water.at(Entry::Volume), volume)?)
        }
        (None, None) if pot.is_some() => Water::FillPot,
        (None, None) => {
            let sentence = text::recipe::there_is_no_water_give_water_liquor();
            return Err(Part::Water.whole().says(sentence));
        }
        (Some(_), Some(_)) => {
            let sentence = text::recipe::give_either_the_liquor_ratio();
            return Err(Part::Water.whole().says(sentence));
        }
    };
    let dyes = file
        .dye
        .into_iter()
        .enumerate()
        .map(|(row, d)| read_dye(d, kitchen, row, &prices))
        .collect::<Read<Vec<_>>>()?;
    let auxiliaries = file
        .auxiliary
        .into_iter()
        .enumerate()
        .map(|(row, a)| read_auxiliary(a, kitchen, Added::Auxiliary, row, &prices))
        .collect::<Read<Vec<_>>>()?;
    let after = file
        .after
        .into_iter()
        .enumerate()
        .map(|(row, a)| read_after(a, kitchen, &arms, row, &prices))
        .collect::<Read<Vec<_>>>()?;
    let process = read_process(&file.process)?;
    Ok(Recipe {
        name: file.name,
        class: at(Part::Recipe.at(Entry::Class), class::find(&file.class))?.clone(),
        fibres: at(Part::Recipe.at(Entry::Fibre), fibre::blend(&file.fibre))?,
        kitchen,
        currency: prices.currency,
        goods,
        arms,
        water,
        pot,
        dyes,
        auxiliaries,
        after,
        process,
    })
}

/// Fails for the first that has no name.
fn named<'a>(kind: Added, names: impl ExactSizeIterator<Item = &'a String>) -> Read<()> {
    let of = names.len();
    for (row, name) in names.enumerate() {
        if name.trim().is_empty() {
            let word = kind.in_words();
            let sentence = match of {
                1 => text::recipe::the_has_no_name_give(word),
                _ => text::recipe::has_no_name_give(word, row + 1),
            };
            return Err(Part::added(kind, row, name).at(Entry::Name).says(sentence));
        }
    }
    Ok(())
}

fn at<T>(place: Place, read: Read<T>) -> Read<T> {
    read.map_err(|e| e.at(place))
}

fn read_goods(file: &WrittenGoods, arms: &BTreeMap<String, u32>) -> Read<Goods> {
    let of_arms: u32 = arms.values().fold(0, |sum, n| sum.saturating_add(*n));
    let pieces = match file.pieces {
        Some(n) if !arms.is_empty() && n != of_arms => {
            let sentence = text::recipe::the_goods_have_pieces_but_the_arms(n, of_arms);
            return Err(Part::Goods.at(Entry::Pieces).says(sentence));
        }
        Some(n) => n,
        None if arms.is_empty() => 1,
        None => of_arms,
    };
    if pieces == 0 || pieces > 1_000_000 {
        let sentence = text::recipe::there_has_to_be_at_least();
        return Err(Part::Goods.at(Entry::Pieces).says(sentence));
    }
    match (&file.weight, &file.typical) {
        (Some(weight), None) => {
            let mass: Mass = at(Part::Goods.at(Entry::Weight), weight.parse())?;
            at(Part::Goods.at(Entry::Weight), no_goods(mass))?;
            Ok(Goods {
                mass,
                least: mass,
                most: mass,
                pieces,
                typical: None,
            })
        }
        (None, Some(name)) => {
            let one = at(Part::Goods.at(Entry::Typical), goods::find(name))?;
            let n = f64::from(pieces);
            Ok(Goods {
                mass: one.middle()?.times(n)?,
                least: one.low_g.times(n)?,
                most: one.high_g.times(n)?,
                pieces,
                typical: Some(if pieces == 1 {
                    one.name().to_owned()
                } else {
                    one.many().to_owned()
                }),
            })
        }
        _ => {
            let sentence = text::recipe::give_the_goods_either_a_weight();
            Err(Part::Goods.at(Entry::Weight).says(sentence))
        }
    }
}

fn read_arms(file: BTreeMap<String, u32>, pieces: u32) -> Read<Vec<Arm>> {
    if file.is_empty() {
        return Ok(vec![Arm {
            name: text::recipe::all_pieces().into(),
            pieces,
        }]);
    }
    if let Some((name, _)) = file.iter().find(|(_, n)| **n == 0) {
        let place = Part::Arm(name.clone()).at(Entry::Pieces);
        return Err(place.says(text::recipe::arm_has_no_pieces(name)));
    }
    Ok(file
        .into_iter()
        .map(|(name, pieces)| Arm { name, pieces })
        .collect())
}

fn read_pot(file: &WrittenPot, kitchen: Kitchen) -> Read<Pot> {
    let capacity = at(
        Part::Pot.at(Entry::Capacity),
        read_volume(&file.capacity, kitchen),
    )?;
    if capacity == Volume::ZERO {
        let sentence = text::recipe::the_pot_holds_nothing_its_capacity();
        return Err(Part::Pot.at(Entry::Capacity).says(sentence));
    }
    let headroom_percent = file.headroom_percent.unwrap_or(25.0);
    if !(0.0..=90.0).contains(&headroom_percent) {
        let sentence = text::recipe::a_headroom_of_cant_be_25(headroom_percent);
        return Err(Part::Pot.at(Entry::Headroom).says(sentence));
    }
    if let Some(kw) = file.heater_kw.filter(|kw| !(*kw > 0.05 && *kw < 100.0)) {
        let sentence = text::recipe::a_heater_of_kw_cant(kw);
        return Err(Part::Pot.at(Entry::Heater).says(sentence));
    }
    Ok(Pot {
        capacity,
        headroom_percent,
        heater_kw: file.heater_kw,
    })
}

fn read_process(file: &WrittenProcess) -> Read<Process> {
    let time = |text: &Option<String>, entry| {
        let read = text.as_deref().map(str::parse).transpose();
        at(Part::Process.at(entry), read)
    };
    if let Some(ph) = file.ph.filter(|ph| !(0.0..=14.0).contains(ph)) {
        let sentence = text::recipe::a_ph_of_cant_be_it_goes(ph);
        return Err(Part::Process.at(Entry::Ph).says(sentence));
    }
    Ok(Process {
        presoak: time(&file.presoak, Entry::Presoak)?,
        hold: at(
            Part::Process.at(Entry::Hold),
            file.hold.as_deref().map(str::parse).transpose(),
        )?,
        time: time(&file.time, Entry::Time)?,
        ph: file.ph,
    })
}
