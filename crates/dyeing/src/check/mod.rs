//! What is wrong or unusual about a recipe, each as a sentence that says what is usual.

mod helpers;
mod process;

use crate::text;
use serde::{Deserialize, Serialize};

use crate::{
    class,
    plan::{Baths, Line},
    programme::Programme,
    recipe::{DyeForm, Recipe, Rule},
};

/// How much it matters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Level {
    /// It won't work, or does harm.
    Wrong,
    /// It is far from what is usual.
    Doubtful,
    /// It has to be known when the result is read.
    Note,
}

/// Something about a recipe.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Check {
    /// How much it matters.
    pub level: Level,
    /// A name for it that doesn't change.
    pub code: String,
    /// What is wrong and what is usual.
    pub sentence: String,
}

impl Check {
    /// With a sentence.
    pub(crate) fn new(level: Level, code: &str, sentence: String) -> Self {
        Self {
            level,
            code: code.to_owned(),
            sentence,
        }
    }
}

/// What the checks look at.
pub(crate) struct Looked<'a> {
    pub recipe: &'a Recipe,
    pub baths: &'a Baths,
    /// Lines of the dye bath.
    pub lines: &'a [Line],
    pub programme: &'a Programme,
    /// Depth of all dyes, % owf; nothing if one has an unknown strength.
    pub depth_owf: Option<f64>,
}

/// Everything that is wrong or unusual, what matters most first.
pub(crate) fn all(looked: &Looked) -> Vec<Check> {
    let mut checks = Vec::new();
    goods(looked, &mut checks);
    water(looked, &mut checks);
    fibres(looked, &mut checks);
    depth(looked, &mut checks);
    helpers::check(looked, &mut checks);
    process::check(looked, &mut checks);
    labels(looked, &mut checks);
    checks.sort_by_key(|c| c.level);
    checks
}

fn goods(looked: &Looked, checks: &mut Vec<Check>) {
    let goods = &looked.recipe.goods;
    if let Some(name) = &goods.typical {
        let sentence = text::check::the_weight_is_a_guess_from_typical_2(
            goods.pieces,
            name,
            goods.least.shown(),
            goods.most.shown(),
        );
        checks.push(Check::new(Level::Doubtful, "typical_weight", sentence));
    }
}

fn water(looked: &Looked, checks: &mut Vec<Check>) {
    if let Some(sentence) = &looked.baths.sentence {
        checks.push(Check::new(Level::Wrong, "pot_too_small", sentence.clone()));
    }
    let [low, high] = looked.recipe.class.liquor_ratio;
    let ratio = looked.baths.ratio;
    if ratio < low || ratio > high {
        let what = if ratio < low {
            text::check::goods_that_cant_move_freely_dye_unevenly()
        } else {
            text::check::more_dye_stays_in_the_water()
        };
        let sentence = text::check::the_liquor_ratio_is_to_is_usual(
            ratio,
            low,
            high,
            looked.recipe.class.name(),
            what,
        );
        checks.push(Check::new(Level::Doubtful, "liquor_ratio", sentence));
    }
}

fn fibres(looked: &Looked, checks: &mut Vec<Check>) {
    let class = &looked.recipe.class;
    for share in &looked.recipe.fibres {
        let (key, fibre) = (&share.fibre.key, share.fibre.name());
        if class.fibres.contains(key) {
            continue;
        }
        let others: Vec<&str> = class::all()
            .iter()
            .filter(|c| c.fibres.contains(key))
            .map(class::DyeClass::name)
            .collect();
        let instead = if others.is_empty() {
            text::check::no_class_of_the_table_dyes().to_owned()
        } else {
            text::check::is_usually_dyed(fibre, others.join(text::check::or()))
        };
        let sentence = text::check::a_doesnt_dye_it_dyes(
            class.name(),
            fibre,
            if share.percent < 100.0 {
                text::check::of_these_goods_which_stays(format_args!("{:.0}", share.percent))
            } else {
                String::new()
            },
            class.fibre_names().join(", "),
            &instead,
        );
        checks.push(Check::new(Level::Wrong, "wrong_fibre", sentence));
    }
}

fn depth(looked: &Looked, checks: &mut Vec<Check>) {
    let class = &looked.recipe.class;
    let [pale, deep] = class.depth_usual_owf;
    let of = class.name();
    if looked.recipe.dyes.is_empty() {
        let sentence = text::check::the_recipe_has_no_dye_add().to_owned();
        checks.push(Check::new(Level::Wrong, "no_dye", sentence));
        return;
    }
    let known: f64 = looked.lines.iter().filter_map(|l| l.depth_owf).sum();
    let all = crate::quantity::figure(known);
    if known > class.depth_limit_owf {
        let sentence = text::check::the_dyes_make_owf_which_cant(&all, pale, deep, of);
        checks.push(Check::new(Level::Wrong, "depth", sentence));
    } else if known > deep {
        let sentence = text::check::the_dyes_make_owf_to_owf(&all, pale, deep, of);
        checks.push(Check::new(Level::Doubtful, "depth", sentence));
    } else if looked.depth_owf.is_some_and(|d| d > 0.0 && d < pale) {
        let sentence = text::check::the_dyes_make_owf_below_the_owf(&all, pale, of);
        checks.push(Check::new(Level::Note, "depth", sentence));
    }
    let unknown = looked
        .recipe
        .dyes
        .iter()
        .filter(|d| d.form == DyeForm::Liquid(None));
    for dye in unknown {
        let sentence = text::check::the_strength_of_is_unknown(&dye.name);
        checks.push(Check::new(Level::Note, "unknown_strength", sentence));
    }
}

fn labels(looked: &Looked, checks: &mut Vec<Check>) {
    let recipe = looked.recipe;
    let auxiliaries = recipe
        .auxiliaries
        .iter()
        .chain(recipe.after.iter().map(|a| &a.agent));
    for auxiliary in auxiliaries {
        let Some(label) = &auxiliary.label else {
            continue;
        };
        checks.extend(departure(&auxiliary.name, label, &auxiliary.rule));
    }
}

/// How far what is done lies from what a label asks for.
fn departure(name: &str, label: &Rule, done: &Rule) -> Option<Check> {
    let Some(factor) = label.dose.over(done.dose) else {
        let sentence = text::check::the_label_of_asks_for_which_cant(name, &label.text, &done.text);
        return Some(Check::new(Level::Note, "label_unlike", sentence));
    };
    if (0.95..=1.05).contains(&factor) {
        return None;
    }
    let (way, by) = if factor > 1.0 {
        (text::check::weaker(), factor)
    } else {
        (text::check::stronger(), 1.0 / factor)
    };
    let sentence = text::check::at_is_than_the_labels(
        name,
        &done.text,
        way,
        &label.text,
        crate::quantity::figure(by),
    );
    Some(Check::new(Level::Doubtful, "label_departure", sentence))
}
