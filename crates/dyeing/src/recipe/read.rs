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
    Kitchen, Mass, Volume, class, error::DyeingError, fibre, goods, quantity::read_volume,
};
use prices::Prices;
use things::{read_after, read_auxiliary, read_dye};

type Read<T> = Result<T, DyeingError>;

/// Reads a recipe.
pub fn read(file: Written) -> Read<Recipe> {
    named("recipe", &[&file.name])?;
    named("dye", &file.dye.iter().map(|d| &d.name).collect::<Vec<_>>())?;
    let names: Vec<&String> = file.auxiliary.iter().map(|a| &a.name).collect();
    named("auxiliary", &names)?;
    let names: Vec<&String> = file.after.iter().map(|a| &a.name).collect();
    named("after-treatment", &names)?;
    let kitchen = file.kitchen;
    let prices = Prices::of(&file);
    let goods = read_goods(&file.goods, &file.arms)?;
    let arms = read_arms(file.arms, goods.pieces)?;
    let volume = |text: &str, place: &str| read_volume(text, kitchen).map_err(|e| e.at(place));
    let pot = file.pot.map(|p| read_pot(&p, kitchen)).transpose()?;
    let water = match (&file.water.liquor_ratio, &file.water.volume) {
        (Some(ratio), None) => Water::Ratio(at("water, liquor_ratio", ratio.parse())?),
        (None, Some(text)) => Water::Volume(volume(text, "water, volume")?),
        (None, None) if pot.is_some() => Water::FillPot,
        (None, None) => {
            return Err(recipe(text::recipe::there_is_no_water_give_water_liquor()));
        }
        (Some(_), Some(_)) => {
            return Err(recipe(text::recipe::give_either_the_liquor_ratio()));
        }
    };
    let dyes = file
        .dye
        .into_iter()
        .map(|d| read_dye(d, kitchen, &prices))
        .collect::<Read<Vec<_>>>()?;
    let auxiliaries = file
        .auxiliary
        .into_iter()
        .map(|a| read_auxiliary(a, kitchen, "auxiliary", &prices))
        .collect::<Read<Vec<_>>>()?;
    let after = file
        .after
        .into_iter()
        .map(|a| read_after(a, kitchen, &arms, &prices))
        .collect::<Read<Vec<_>>>()?;
    let process = read_process(&file.process)?;
    Ok(Recipe {
        name: file.name,
        class: at("class", class::find(&file.class))?.clone(),
        fibres: at("fibre", fibre::blend(&file.fibre))?,
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
fn named(kind: &str, names: &[&String]) -> Read<()> {
    match names.iter().position(|name| name.trim().is_empty()) {
        None => Ok(()),
        Some(_) if names.len() == 1 => Err(DyeingError::Recipe(
            text::recipe::the_has_no_name_give(kind),
        )),
        Some(k) => Err(DyeingError::Recipe(text::recipe::has_no_name_give(
            kind,
            k + 1,
        ))),
    }
}

fn recipe(sentence: &str) -> DyeingError {
    DyeingError::Recipe(sentence.to_owned())
}

fn at<T>(place: &str, read: Read<T>) -> Read<T> {
    read.map_err(|e| e.at(place))
}

fn read_goods(file: &WrittenGoods, arms: &BTreeMap<String, u32>) -> Read<Goods> {
    let of_arms: u32 = arms.values().fold(0, |sum, n| sum.saturating_add(*n));
    let pieces = match file.pieces {
        Some(n) if !arms.is_empty() && n != of_arms => {
            return Err(DyeingError::Recipe(
                text::recipe::the_goods_have_pieces_but_the_arms(n, of_arms),
            ));
        }
        Some(n) => n,
        None if arms.is_empty() => 1,
        None => of_arms,
    };
    if pieces == 0 || pieces > 1_000_000 {
        return Err(recipe(text::recipe::there_has_to_be_at_least()));
    }
    match (&file.weight, &file.typical) {
        (Some(weight), None) => {
            let mass: Mass = at("goods, weight", weight.parse())?;
            at("goods, weight", no_goods(mass))?;
            Ok(Goods {
                mass,
                least: mass,
                most: mass,
                pieces,
                typical: None,
            })
        }
        (None, Some(name)) => {
            let one = at("goods, typical", goods::find(name))?;
            let n = f64::from(pieces);
            Ok(Goods {
                mass: one.middle()?.times(n)?,
                least: one.low_g.times(n)?,
                most: one.high_g.times(n)?,
                pieces,
                typical: Some(if pieces == 1 {
                    one.name.clone()
                } else {
                    one.many.clone()
                }),
            })
        }
        _ => Err(recipe(text::recipe::give_the_goods_either_a_weight())),
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
        return Err(DyeingError::Recipe(text::recipe::arm_has_no_pieces(name)));
    }
    Ok(file
        .into_iter()
        .map(|(name, pieces)| Arm { name, pieces })
        .collect())
}

fn read_pot(file: &WrittenPot, kitchen: Kitchen) -> Read<Pot> {
    let capacity = at("pot, capacity", read_volume(&file.capacity, kitchen))?;
    if capacity == Volume::ZERO {
        return Err(recipe(text::recipe::the_pot_holds_nothing_its_capacity()));
    }
    let headroom_percent = file.headroom_percent.unwrap_or(25.0);
    if !(0.0..=90.0).contains(&headroom_percent) {
        return Err(DyeingError::Recipe(text::recipe::a_headroom_of_cant_be_25(
            headroom_percent,
        )));
    }
    if let Some(kw) = file.heater_kw.filter(|kw| !(*kw > 0.05 && *kw < 100.0)) {
        return Err(DyeingError::Recipe(text::recipe::a_heater_of_kw_cant(kw)));
    }
    Ok(Pot {
        capacity,
        headroom_percent,
        heater_kw: file.heater_kw,
    })
}

fn read_process(file: &WrittenProcess) -> Read<Process> {
    let time =
        |text: &Option<String>, place: &str| at(place, text.as_deref().map(str::parse).transpose());
    if let Some(ph) = file.ph.filter(|ph| !(0.0..=14.0).contains(ph)) {
        return Err(DyeingError::Recipe(text::recipe::a_ph_of_cant_be_it_goes(
            ph,
        )));
    }
    Ok(Process {
        presoak: time(&file.presoak, "process, presoak")?,
        hold: at(
            "process, hold",
            file.hold.as_deref().map(str::parse).transpose(),
        )?,
        time: time(&file.time, "process, time")?,
        ph: file.ph,
    })
}
