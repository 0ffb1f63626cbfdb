//! Everything that follows from a recipe.

mod baths;
mod line;
mod uptake;

use serde::Serialize;

pub use baths::Baths;
pub use line::{Into, Line};
pub use uptake::Uptake;

use crate::{
    Added, Celsius, Minutes, Part, Volume,
    caution::{Caution, Hazard, gather},
    check::{self, Check, Looked},
    cost::Cost,
    error::DyeingError,
    kitchen,
    programme::Programme,
    recipe::{AfterTreatment, Arm, Goods, Recipe},
    run_sheet::{self, Step},
    top_up,
};

/// Everything that follows from a recipe.
///
/// ```
/// let recipe = dyeing::Recipe::read(r#"
///     name = "green napkins"
///     class = "reactive-warm"
///     fibre = "cotton"
///     goods = { weight = "250 g", pieces = 5 }
///     water = { liquor_ratio = "20:1" }
///     dye = [
///         { name = "yellow", amount = "0.8 % owf", stock = "1 %" },
///         { name = "blue", amount = "0.5 % owf", stock = "1 %" },
///     ]
///     auxiliary = [
///         { name = "salt", amount = "45 g/L" },
///         { name = "soda ash", amount = "12 g/L" },
///     ]
/// "#)?;
/// let plan = dyeing::Plan::of(&recipe)?;
/// assert_eq!(plan.lines[0].metric, "200 ml");
/// assert_eq!(plan.top_up.metric(), "4.68 L");
/// assert!(plan.checks.is_empty());
/// # Ok::<(), dyeing::DyeingError>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Plan {
    /// What the person calls the recipe.
    pub name: String,
    /// Name of the class of dye.
    pub class: String,
    /// What the class is good for.
    pub about: String,
    /// How well the class usually lasts to washing and to light.
    pub fastness: crate::class::Fastness,
    /// After-treatments that are met for the class.
    pub after_usual: Vec<String>,
    /// The goods.
    pub goods: Goods,
    /// The arms.
    pub arms: Vec<Arm>,
    /// Liquor, and in how many baths.
    pub baths: Baths,
    /// What goes into the dye bath: dyes first.
    pub lines: Vec<Line>,
    /// Depth of all dyes, % owf; nothing if one has an unknown strength.
    pub depth_owf: Option<f64>,
    /// Water that brings the bath to its volume after solutions are in.
    pub top_up: Volume,
    /// After-treatments.
    pub after: Vec<AfterPlan>,
    /// Where the dye is likely to end up.
    pub uptake: Uptake,
    /// Temperature over time.
    pub programme: Programme,
    /// The run sheet.
    pub steps: Vec<Step>,
    /// What is wrong or unusual, what matters most first.
    pub checks: Vec<Check>,
    /// What to beware of, for all of it.
    pub cautions: Vec<Caution>,
    /// What it costs.
    pub cost: Cost,
}

/// An after-treatment with its amounts.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AfterPlan {
    /// The agent.
    pub line: Line,
    /// Its water.
    pub liquor: Volume,
    /// The same in the kitchen's measures.
    pub kitchen: String,
    /// How warm.
    pub temperature: Celsius,
    /// How long.
    pub time: Minutes,
    /// The arms that get it.
    pub arms: Vec<String>,
    /// Their pieces.
    pub pieces: u32,
}

impl Plan {
    /// Works a recipe out.
    ///
    /// # Errors
    /// Says what can't be: a ratio out of reach, solutions that are more than the bath, a weight of
    /// dye from a liquid of unknown strength, a price that doesn't fit the amount. What is merely
    /// wrong or unusual is in [`Plan::checks`].
    pub fn of(recipe: &Recipe) -> Result<Self, DyeingError> {
        let baths = Baths::of(recipe)?;
        let into = Into {
            goods: recipe.goods.mass,
            liquor: baths.liquor,
            baths: baths.count,
            kitchen: recipe.kitchen,
        };
        let mut lines = Vec::new();
        for (row, dye) in recipe.dyes.iter().enumerate() {
            let part = Part::added(Added::Dye, row, &dye.name);
            lines.push(Line::of_dye(dye, &part, into).map_err(|e| e.or_at(part.whole()))?);
        }
        let dyes = lines.len();
        for (row, auxiliary) in recipe.auxiliaries.iter().enumerate() {
            let part = Part::added(Added::Auxiliary, row, &auxiliary.name);
            lines.push(
                Line::of_auxiliary(auxiliary, &part, into).map_err(|e| e.or_at(part.whole()))?,
            );
        }
        let after = recipe
            .after
            .iter()
            .enumerate()
            .map(|(row, a)| {
                let part = Part::added(Added::AfterTreatment, row, &a.agent.name);
                AfterPlan::of(a, &part, recipe, &baths).map_err(|e| e.or_at(part.whole()))
            })
            .collect::<Result<Vec<_>, _>>()?;
        let depth_owf = lines[..dyes].iter().map(|l| l.depth_owf).sum();
        let programme = Programme::of(recipe, &lines);
        let looked = Looked {
            recipe,
            baths: &baths,
            lines: &lines,
            programme: &programme,
            depth_owf,
        };
        let checks = check::all(&looked);
        let agents: Vec<&Line> = after.iter().map(|a| &a.line).collect();
        let top_up = top_up(baths.liquor, lines.iter().map(Line::liquid))?;
        let steps = run_sheet::steps(recipe, &baths, &lines, &programme, &after, top_up);
        Ok(Self {
            name: recipe.name.clone(),
            class: recipe.class.name().to_owned(),
            about: recipe.class.about().to_owned(),
            fastness: recipe.class.fastness(),
            after_usual: recipe
                .class
                .after_treatments()
                .into_iter()
                .map(str::to_owned)
                .collect(),
            goods: recipe.goods.clone(),
            arms: recipe.arms.clone(),
            top_up,
            uptake: Uptake::of(&recipe.class, baths.ratio, &lines[..dyes])?,
            cost: Cost::of(recipe, &lines, &agents)?,
            cautions: cautions(&steps),
            steps,
            depth_owf,
            baths,
            lines,
            after,
            programme,
            checks,
        })
    }
}

impl AfterPlan {
    fn of(
        treatment: &AfterTreatment,
        part: &Part,
        recipe: &Recipe,
        baths: &Baths,
    ) -> Result<Self, DyeingError> {
        let pieces = recipe.pieces_of(&treatment.arms);
        let goods = recipe.goods.mass.times(treatment.share)?;
        let liquor = match treatment.water {
            Some(water) => water,
            None => baths.ratio.liquor(goods)?,
        };
        let into = Into {
            goods,
            liquor,
            baths: 1,
            kitchen: recipe.kitchen,
        };
        Ok(Self {
            line: Line::of_auxiliary(&treatment.agent, part, into)?,
            liquor,
            kitchen: kitchen::measure(liquor, recipe.kitchen)?.text,
            temperature: treatment.temperature,
            time: treatment.time,
            arms: treatment.arms.clone(),
            pieces,
        })
    }
}

/// The cautions of all steps, once each.
fn cautions(steps: &[Step]) -> Vec<Caution> {
    let all = steps.iter().flat_map(|s| &s.cautions);
    gather(all.flat_map(|c| {
        let alone = c.because.is_empty().then(String::new);
        c.because
            .iter()
            .cloned()
            .chain(alone)
            .map(move |b| -> (Hazard, String) { (c.hazard, b) })
    }))
}
