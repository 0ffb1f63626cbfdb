//! A balance in words.

use crate::text;
use crate::{
    Volume,
    balance::{DyeBalance, Estimate, Onward, Stop, WaterShare},
    check::{Check, Level},
    quantity::figure,
};

/// Above this a photometer is no longer straight (common practice, no source).
const DARK: f64 = 1.0;

/// What doesn't fit together, what matters most first.
pub(super) fn checks(balance: &DyeBalance) -> Vec<Check> {
    let mut checks = Vec::new();
    closes(balance, &mut checks);
    if balance.in_bath.is_none() {
        checks.push(Check::new(
            Level::Doubtful,
            "no_bath",
            text::balance::the_spent_bath_wasnt_read().into(),
        ));
    }
    let bath = balance.waters.first().filter(|_| balance.in_bath.is_some());
    if let Some(bath) = bath {
        checks.extend(balance.rinses().filter_map(|r| stronger(r, bath)));
        checks.extend(carried(balance, bath));
    }
    let dark = balance.waters.iter().enumerate();
    checks.extend(
        dark.filter(|(_, w)| w.reading.absorbance.is_some_and(|a| a > DARK))
            .map(|(k, w)| {
                let is_bath = k == 0 && balance.in_bath.is_some();
                let name = match is_bath {
                    true => text::balance::the(&w.name),
                    false => w.name.clone(),
                };
                let sentence =
                    text::balance::the_sample_of_was_dark_above(name, format_args!("{:.0}", DARK));
                Check::new(Level::Note, "dark_sample", sentence)
            }),
    );
    checks.sort_by_key(|c| c.level);
    checks
}

/// Whether more was found than was put in.
fn closes(balance: &DyeBalance, checks: &mut Vec<Check>) {
    let in_bath = balance.in_bath.into_iter();
    let found = Estimate::sum(in_bath.chain([balance.washed_out]));
    let mend = text::balance::check_volumes_dilutions_and_the_ladder();
    if found.low > 1.0 {
        let sentence =
            text::balance::the_balance_doesnt_close_the_waters_hold(found.percent(), mend);
        checks.push(Check::new(Level::Wrong, "more_than_put_in", sentence));
    } else if found.middle > 1.0 {
        let sentence = text::balance::the_waters_seem_to_hold(found.percent(), mend);
        checks.push(Check::new(Level::Doubtful, "barely_closes", sentence));
    }
}

/// A rinse that is stronger than the bath it rinsed off.
fn stronger(rinse: &WaterShare, bath: &WaterShare) -> Option<Check> {
    let (rinse_at, bath_at) = (rinse.reading.strength, bath.reading.strength);
    if rinse_at.middle <= bath_at.middle {
        return None;
    }
    let sure = rinse_at.low > bath_at.high;
    let name = locale::capital(&rinse.name);
    let sentence = text::balance::is_stronger_than_the_spent_bath_hot(&name);
    let level = if sure { Level::Doubtful } else { Level::Note };
    Some(Check::new(level, "rinse_stronger", sentence))
}

/// What the goods took along into the first rinse.
fn carried(balance: &DyeBalance, bath: &WaterShare) -> Option<Check> {
    let missing_l = balance.start.liquor.litres() - bath.reading.volume.litres();
    let missing = Volume::from_millilitres(1000.0 * missing_l).ok()?;
    let share = bath.reading.strength.middle * missing_l / balance.start.liquor.litres();
    (share >= 0.005).then(|| {
        let sentence = text::balance::of_the_liquor_is_missing_2(missing.shown(), points(share));
        Check::new(Level::Note, "carried_over", sentence)
    })
}

fn points(share: f64) -> String {
    format!("{} %", figure(100.0 * share))
}

/// What the balance says.
pub(super) fn sentences(balance: &DyeBalance) -> Vec<String> {
    let mut said = Vec::new();
    let start = &balance.start;
    if let Some(exhaustion) = balance.exhaustion {
        let usual = start.usual_exhaustion_percent;
        said.push(text::balance::the_goods_took_of_the_dye_out(
            exhaustion.percent(),
            against(exhaustion, usual, &start.class),
        ));
    }
    let rinses = balance.rinses().count() as u32;
    if rinses > 0 {
        said.push(text::balance::washed_out(
            rinses,
            balance.washed_out.percent(),
        ));
    }
    if let Some(fixed) = balance.fixed {
        let grams = start.dye.map_or(String::new(), |dye| {
            let mass = |share: f64| dye.times(share.clamp(0.0, 1.0)).map(|m| m.shown());
            match mass(fixed.middle) {
                Ok(fixed) => text::balance::of_the_dye(fixed, dye.shown()),
                Err(_) => String::new(),
            }
        });
        said.push(text::balance::what_is_missing_from_the_waters(
            fixed.percent(),
            &grams,
            against(fixed, start.usual_fixation_percent, &start.class),
        ));
    }
    if let Some(stayed) = balance.fixed_of_exhausted.filter(|_| rinses > 0) {
        said.push(text::balance::of_what_the_goods_took_up_stayed(
            stayed.percent(),
        ));
    }
    match balance.onward {
        Some(onward) => said.push(further(onward)),
        None if rinses < 2 => said.push(text::balance::read_two_rinses_at_least().to_owned()),
        None => {}
    }
    said
}

/// A share set against what is usual.
fn against(share: Estimate, [low, high]: [f64; 2], class: &str) -> String {
    let usual =
        text::balance::the_to_usual(format_args!("{low:.0}"), format_args!("{high:.0}"), class);
    let percent = |v: f64| 100.0 * v;
    if percent(share.high) < low {
        text::balance::less_than(&usual)
    } else if percent(share.low) > high {
        text::balance::more_than(&usual)
    } else if percent(share.low) >= low && percent(share.high) <= high {
        text::balance::within(&usual)
    } else {
        text::balance::perhaps_within_perhaps_not_the_readings(&usual)
    }
}

fn further(onward: Onward) -> String {
    let below = points(onward.below);
    let ratio = onward.ratio.middle;
    match onward.stop {
        Stop::Now => text::balance::the_last_rinse_held_less(&below),
        Stop::Never => text::balance::the_last_rinse_took_out_no_less().to_owned(),
        Stop::After { more, least, most } => {
            let range = match most {
                Some(most) if most == least => String::new(),
                Some(most) => text::balance::to_by_the_readings_spread(least, most),
                None => text::balance::at_least_by_the_readings_spread(least),
            };
            let still = onward.still_to_come.map_or(String::new(), |share| {
                text::balance::all_rinses_to_come_would_take_out(points(share))
            });
            text::balance::the_last_rinse_took_out(
                format_args!("{ratio:.2}"),
                more,
                &range,
                &below,
                &still,
            )
        }
    }
}
