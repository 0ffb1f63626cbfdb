//! Salt, alkali, acid, reducer and mordant against what the class needs.

use super::{Check, Level, Looked};
use crate::text;
use crate::{
    Mass,
    class::{By, Helper, Need},
    material::{self, Role},
    quantity::figure,
};

/// Further off than this is far off.
const FAR: f64 = 2.0;

/// Roles that a class can need.
const ROLES: [Asked; 5] = [
    Asked {
        role: Role::Salt,
        code: "salt",
        name: text::check::salt,
    },
    Asked {
        role: Role::Alkali,
        code: "alkali",
        name: text::check::alkali,
    },
    Asked {
        role: Role::Acid,
        code: "acid",
        name: text::check::acid,
    },
    Asked {
        role: Role::Reducer,
        code: "reducing_agent",
        name: text::check::reducing_agent,
    },
    Asked {
        role: Role::Mordant,
        code: "mordant",
        name: text::check::mordant,
    },
];

/// A role that is looked at.
#[derive(Clone, Copy)]
struct Asked {
    role: Role,
    /// How the codes of checks name it.
    code: &'static str,
    name: fn() -> &'static str,
}

/// Looks at each role.
pub fn check(looked: &Looked, checks: &mut Vec<Check>) {
    for asked in ROLES {
        let role = asked.role;
        let class = &looked.recipe.class;
        let of_role = || looked.lines.iter().filter(|l| l.role == Some(role));
        match (class.helper(role), of_role().next()) {
            (Some(helper), None) => checks.extend(missing(looked, helper, asked)),
            (Some(helper), Some(_)) => {
                // An amount in bottles or of unknown density can't be judged.
                let base: Option<f64> = of_role().map(|l| l.base_g).sum();
                checks.extend(base.and_then(|g| amount(looked, helper, asked, g)));
            }
            (None, Some(line)) => {
                let sentence =
                    text::check::is_a_name2_and_a_name3(&line.name, (asked.name)(), class.name());
                checks.push(Check::new(Level::Doubtful, "unusual_helper", sentence));
            }
            (None, None) => {}
        }
    }
}

fn material_name(helper: &Helper) -> &str {
    material::find(&helper.material).map_or(&helper.material, |material| material.name())
}

fn usual(looked: &Looked, helper: &Helper) -> String {
    let [low, high] = helper.usual(looked.depth_owf);
    let amount = if low == high {
        figure(low)
    } else {
        text::check::to(figure(low), figure(high))
    };
    let depth = looked
        .depth_owf
        .map_or(String::new(), |d| text::check::for_owf_of_dye(figure(d)));
    let material = material_name(helper);
    text::check::of_is_usual(&amount, helper.unit(), material, &depth)
}

fn missing(looked: &Looked, helper: &Helper, asked: Asked) -> Option<Check> {
    let level = match helper.need {
        Need::Needed => Level::Wrong,
        Need::Usual => Level::Doubtful,
        Need::Optional => return None,
    };
    let why = looked.recipe.class.why(helper);
    let sentence = text::check::there_is_no_in_the_bath((asked.name)(), why, usual(looked, helper));
    Some(Check::new(level, &format!("no_{}", asked.code), sentence))
}

fn amount(looked: &Looked, helper: &Helper, asked: Asked, base_g: f64) -> Option<Check> {
    // Both sides in grams of the base material: washing soda and soda ash are one.
    let base = material::find(&helper.material).ok()?;
    let one = Mass::from_grams(1.0).ok()?;
    let share = base.as_base_g(one);
    let found = base_g
        / share
        / match helper.by {
            By::GramsPerLitre => looked.baths.liquor.litres(),
            By::PercentOwf => looked.recipe.goods.mass.grams() / 100.0,
        };
    let [low, high] = helper.usual(looked.depth_owf);
    if found >= low / FAR && found <= high * FAR {
        return None;
    }
    let much = if found < low {
        text::check::little()
    } else {
        text::check::much()
    };
    let sentence = text::check::the_does_the_work(
        (asked.name)(),
        figure(found),
        helper.unit(),
        base.name(),
        much,
        usual(looked, helper),
        looked.recipe.class.why(helper),
    );
    let level = if helper.need == Need::Needed && found < low / (2.0 * FAR) {
        Level::Wrong
    } else {
        Level::Doubtful
    };
    Some(Check::new(
        level,
        &format!("{}_far_off", asked.code),
        sentence,
    ))
}
