//! A balance in words.

use crate::{
    Volume,
    balance::{DyeBalance, Estimate, Onward, Stop, WaterShare},
    check::{Check, Level},
    quantity::{counted, figure},
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
            "The spent bath wasn't read, so what stayed on the goods isn't known; take a jar of it next time, after the goods are out.".into(),
        ));
    }
    let bath = balance.waters.first().filter(|_| balance.in_bath.is_some());
    if let Some(bath) = bath {
        checks.extend(balance.rinses().filter_map(|r| stronger(r, bath)));
        checks.extend(carried(balance, bath));
    }
    let dark = balance.waters.iter();
    checks.extend(
        dark.filter(|w| w.reading.absorbance.is_some_and(|a| a > DARK))
            .map(|w| {
                let sentence = format!(
                    "The sample of {} was dark: above an absorbance of {DARK:.0} readings are less sure than they look; dilute it.",
                    the(&w.name)
                );
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
    let mend = "check volumes, dilutions and the ladder, and whether more dye went in than the recipe says";
    if found.low > 1.0 {
        let sentence = format!(
            "The balance doesn't close: the waters hold {} of the dye put in, more than there was; {mend}.",
            found.percent()
        );
        checks.push(Check::new(Level::Wrong, "more_than_put_in", sentence));
    } else if found.middle > 1.0 {
        let sentence = format!(
            "The waters seem to hold {} of the dye put in; the balance closes only because the readings are so unsure. As good as nothing seems to have stayed; if the cloth is dyed, {mend}.",
            found.percent()
        );
        checks.push(Check::new(Level::Doubtful, "barely_closes", sentence));
    }
}

fn the(name: &str) -> String {
    if name == "spent bath" {
        format!("the {name}")
    } else {
        name.to_owned()
    }
}

/// A rinse that is stronger than the bath it rinsed off.
fn stronger(rinse: &WaterShare, bath: &WaterShare) -> Option<Check> {
    let (rinse_at, bath_at) = (rinse.reading.strength, bath.reading.strength);
    if rinse_at.middle <= bath_at.middle {
        return None;
    }
    let sure = rinse_at.low > bath_at.high;
    let name = capital(&rinse.name);
    let sentence = format!(
        "{name} is stronger than the spent bath. Hot soaping can do that to a bath that gave up nearly all its dye; otherwise jars or dilutions were mixed up."
    );
    let level = if sure { Level::Doubtful } else { Level::Note };
    Some(Check::new(level, "rinse_stronger", sentence))
}

/// What the goods took along into the first rinse.
fn carried(balance: &DyeBalance, bath: &WaterShare) -> Option<Check> {
    let missing_l = balance.start.liquor.litres() - bath.reading.volume.litres();
    let missing = Volume::from_millilitres(1000.0 * missing_l).ok()?;
    let share = bath.reading.strength.middle * missing_l / balance.start.liquor.litres();
    (share >= 0.005).then(|| {
        let sentence = format!(
            "{} of the liquor is missing from the spent bath. What the goods carried along of it, up to {} of the dye, counts as washed out, so the bath seems to have given up that much more; what is fixed doesn't change.",
            missing.shown(),
            points(share)
        );
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
        said.push(format!(
            "The goods took {} of the dye out of the bath; {}.",
            exhaustion.percent(),
            against(exhaustion, usual, &start.class)
        ));
    }
    let rinses = balance.rinses().count() as u32;
    if rinses > 0 {
        said.push(format!(
            "{} washed out {}.",
            capital(&counted(rinses, "rinse", "rinses")),
            balance.washed_out.percent()
        ));
    }
    if let Some(fixed) = balance.fixed {
        let grams = start.dye.map_or(String::new(), |dye| {
            let mass = |share: f64| dye.times(share.clamp(0.0, 1.0)).map(|m| m.shown());
            match mass(fixed.middle) {
                Ok(fixed) => format!(", {fixed} of {}", dye.shown()),
                Err(_) => String::new(),
            }
        });
        said.push(format!(
            "What is missing from the waters is on the goods: {}{grams}; {}.",
            fixed.percent(),
            against(fixed, start.usual_fixation_percent, &start.class)
        ));
    }
    if let Some(stayed) = balance.fixed_of_exhausted.filter(|_| rinses > 0) {
        said.push(format!(
            "Of what the goods took up, {} stayed through these rinses.",
            stayed.percent()
        ));
    }
    match balance.onward {
        Some(onward) => said.push(further(onward)),
        None if rinses < 2 => {
            said.push("Read two rinses at least to be told what more of them would do.".to_owned())
        }
        None => {}
    }
    said
}

/// A share set against what is usual.
fn against(share: Estimate, [low, high]: [f64; 2], class: &str) -> String {
    let usual = format!("the {low:.0} to {high:.0} % usual for a {class} at this liquor ratio");
    let percent = |v: f64| 100.0 * v;
    if percent(share.high) < low {
        format!("less than {usual}")
    } else if percent(share.low) > high {
        format!("more than {usual}")
    } else if percent(share.low) >= low && percent(share.high) <= high {
        format!("within {usual}")
    } else {
        format!("perhaps within {usual}, perhaps not: the readings are too unsure to tell")
    }
}

fn further(onward: Onward) -> String {
    let below = points(onward.below);
    let ratio = onward.ratio.middle;
    match onward.stop {
        Stop::Now => format!("The last rinse held less than {below} of the dye: it was clear."),
        Stop::Never => "The last rinse took out no less than the one before, so there is no telling how many more it takes: dye still lets go of the cloth. Wash hotter, or with soap, as the class is washed off.".to_owned(),
        Stop::After { more, least, most } => {
            let range = match most {
                Some(most) if most == least => String::new(),
                Some(most) => format!(" ({least} to {most} by the readings' spread)"),
                None => format!(" ({least} at least; by the readings' spread they may not get weaker at all)"),
            };
            let still = onward.still_to_come.map_or(String::new(), |share| {
                format!(" All rinses to come would take out another {} of the dye.", points(share))
            });
            format!(
                "The last rinse took out {ratio:.2} of what the one before did. Going on so, {}{range} would bring a rinse below {below} of the dye; cloth lets go more and more slowly, so count on more.{still}",
                counted(more, "more rinse", "more rinses")
            )
        }
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|c| c.to_uppercase().to_string());
    first.unwrap_or_default() + letters.as_str()
}
