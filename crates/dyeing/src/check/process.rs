//! Temperature, time and acidity against what fibre, pot and class bear.

use super::{Check, Level, Looked};
use crate::text;
use crate::{heat, quantity::figure};

/// An open pot gets no hotter.
const BOIL_C: f64 = 100.0;

/// Looks at temperature, time and acidity.
pub fn check(looked: &Looked, checks: &mut Vec<Check>) {
    temperature(looked, checks);
    time(looked, checks);
    acidity(looked, checks);
    heating(looked, checks);
}

fn temperature(looked: &Looked, checks: &mut Vec<Check>) {
    let class = &looked.recipe.class;
    let usual = class.hottest();
    let after = looked.recipe.after.iter().map(|a| a.temperature);
    let hottest = looked.programme.hottest();
    let hottest_of_all = after.fold(hottest, |most, c| if c > most { c } else { most });
    for share in &looked.recipe.fibres {
        let fibre = &share.fibre;
        if hottest_of_all > fibre.limit_c {
            let sentence = text::check::is_too_hot_for_which_bears_about(
                hottest_of_all,
                fibre.name(),
                fibre.limit_c,
                fibre.above(),
            );
            checks.push(Check::new(Level::Wrong, "too_hot_for_fibre", sentence));
        }
    }
    if hottest.celsius() > BOIL_C {
        let sentence = text::check::is_above_the_boil_an_open_pot(hottest);
        checks.push(Check::new(Level::Wrong, "above_the_boil", sentence));
    }
    let Some(hold) = looked.recipe.process.hold else {
        if let Some(note) = &looked.programme.note {
            checks.push(Check::new(Level::Note, "kept_cooler", note.clone()));
        }
        return;
    };
    let off = hold.celsius() - usual.celsius();
    if off.abs() > 10.0 {
        let what = if off < 0.0 {
            text::check::cooler_than_that_less_dye_is_taken()
        } else {
            text::check::hotter_than_that_dye_comes_off_again()
        };
        let sentence = text::check::the_bath_is_held_at_is_usual(hold, usual, class.name(), what);
        checks.push(Check::new(Level::Doubtful, "temperature", sentence));
    }
}

fn time(looked: &Looked, checks: &mut Vec<Check>) {
    let class = &looked.recipe.class;
    let usual = class.stage.last().map_or(0.0, |s| s.minutes);
    let Some(time) = looked.recipe.process.time else {
        return;
    };
    if time.minutes() < usual / 2.0 || time.minutes() > usual * 4.0 {
        let sentence = text::check::the_last_stage_is_min_is_usual(time, usual, class.name());
        checks.push(Check::new(Level::Doubtful, "time", sentence));
    }
}

fn acidity(looked: &Looked, checks: &mut Vec<Check>) {
    let class = &looked.recipe.class;
    let [low, high] = class.ph;
    let Some(ph) = looked.recipe.process.ph else {
        return;
    };
    if ph < low || ph > high {
        let level = if ph < low - 1.5 || ph > high + 1.5 {
            Level::Wrong
        } else {
            Level::Doubtful
        };
        let sentence = text::check::the_bath_is_at_ph_ph(figure(ph), low, high, class.name());
        checks.push(Check::new(level, "ph", sentence));
    }
}

fn heating(looked: &Looked, checks: &mut Vec<Check>) {
    let Some(kw) = looked.recipe.pot.and_then(|p| p.heater_kw) else {
        return;
    };
    let rise = heat::fastest_c_per_min(looked.baths.each_liquor, kw);
    for stage in &looked.programme.stages {
        let degrees = stage.to_c.celsius() - stage.from_c.celsius();
        if degrees > 0.0 && stage.raising_min > 0.0 && degrees / stage.raising_min > rise * 1.1 {
            let sentence = text::check::a_heater_of_kw_brings_2(
                kw,
                looked.baths.each_liquor.shown(),
                stage.from_c,
                stage.to_c,
                format_args!("{:.0}", degrees / rise),
                format_args!("{:.0}", stage.raising_min),
            );
            checks.push(Check::new(Level::Note, "slow_heating", sentence));
        }
    }
}
