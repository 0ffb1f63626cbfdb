//! The run sheet: what to do, for how long, how warm, and what to beware of.

use serde::{Deserialize, Serialize};

use crate::{
    Celsius,
    caution::{Caution, Hazard, gather},
    plan::{AfterPlan, Baths, Line},
    programme::Programme,
    recipe::Recipe,
};

/// Hotter than this scalds at once.
const SCALDING_C: f64 = 55.0;
/// How long weighing and dissolving take, min; common practice, no source.
const PREPARING_MIN: f64 = 15.0;
/// How long goods soak before they are dyed, min; common practice, no source.
const PRESOAK_MIN: f64 = 30.0;

/// What kind of step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StepKind {
    /// Wetting the goods out.
    PreSoak,
    /// Weighing and dissolving.
    Prepare,
    /// Putting something into the bath.
    Add,
    /// Getting hotter.
    Raise,
    /// Keeping the temperature.
    Hold,
    /// Getting cooler.
    Cool,
    /// Rinsing with water.
    Rinse,
    /// Washing with soap.
    Wash,
    /// An after-treatment.
    AfterTreat,
    /// Plain water for arms without the after-treatment, so that only the agent differs.
    MatchingSoak,
    /// Drying.
    Dry,
}

/// A step.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Step {
    /// Its number, from 1.
    pub number: u32,
    /// What kind.
    pub kind: StepKind,
    /// A few words.
    pub title: String,
    /// What to do.
    pub text: String,
    /// When it is planned to begin, minutes since the first step began.
    pub begins_min: f64,
    /// How long it is planned to take, min; nothing where it ends when it is done.
    pub minutes: Option<f64>,
    /// Temperature at its beginning.
    pub from_c: Option<Celsius>,
    /// Temperature at its end.
    pub to_c: Option<Celsius>,
    /// The arms it is for; empty where it is for all.
    pub arms: Vec<String>,
    /// What to beware of.
    pub cautions: Vec<Caution>,
}

/// Builds steps one after the other.
struct Sheet {
    steps: Vec<Step>,
    now_min: f64,
}

/// The steps of a recipe.
pub(crate) fn steps(
    recipe: &Recipe,
    baths: &Baths,
    lines: &[Line],
    programme: &Programme,
    after: &[AfterPlan],
) -> Vec<Step> {
    let mut sheet = Sheet {
        steps: Vec::new(),
        now_min: 0.0,
    };
    sheet.prepare(recipe, baths, lines);
    sheet.bath(lines, programme, baths);
    sheet.wash_off(recipe);
    for treatment in after {
        sheet.after(recipe, treatment);
    }
    sheet.dry(recipe);
    sheet.steps
}

impl Sheet {
    fn push(
        &mut self,
        kind: StepKind,
        title: &str,
        text: String,
        minutes: Option<f64>,
        heat: [Option<Celsius>; 2],
    ) -> &mut Step {
        let [from_c, to_c] = heat;
        let hot = heat.iter().flatten().any(|c| c.celsius() > SCALDING_C);
        let begins_min = self.now_min;
        self.now_min += minutes.unwrap_or(0.0);
        let at = self.steps.len();
        self.steps.push(Step {
            number: at as u32 + 1,
            kind,
            title: title.to_owned(),
            text,
            begins_min,
            minutes,
            from_c,
            to_c,
            arms: Vec::new(),
            cautions: gather(hot.then(|| (Hazard::Hot, String::new()))),
        });
        &mut self.steps[at]
    }

    fn prepare(&mut self, recipe: &Recipe, baths: &Baths, lines: &[Line]) {
        let soak = recipe.process.presoak.map_or(PRESOAK_MIN, |t| t.minutes());
        let text = format!(
            "Weigh the goods dry, then wet {} out in lukewarm water with a drop of detergent until no dry spot is left; all arms alike.",
            recipe.goods.mass.metric()
        );
        self.push(
            StepKind::PreSoak,
            "Soak the goods",
            text,
            Some(soak),
            [None, None],
        );
        // Weighing is done while the goods soak.
        self.now_min = (soak - PREPARING_MIN).max(0.0);
        let list: Vec<String> = lines
            .iter()
            .map(|l| format!("{} {}", l.metric, l.name))
            .collect();
        let mut text = format!(
            "Read the data sheets. Measure {} of water for the bath",
            baths.metric
        );
        if !list.is_empty() {
            text.push_str(&format!(", and set out: {}", list.join("; ")));
        }
        text.push_str(
            ". Wet powders to a paste, then dissolve them in some hot water of the bath.",
        );
        if baths.count > 1 {
            text.push_str(&format!(
                " Share all of it over {} baths by weight of goods.",
                baths.count
            ));
        }
        let hazards = lines
            .iter()
            .flat_map(|l| l.hazards.iter().map(|h| (*h, l.name.clone())));
        let class = recipe
            .class
            .hazards
            .iter()
            .map(|h| (*h, recipe.class.name.clone()));
        let always = [
            (Hazard::DataSheet, String::new()),
            (Hazard::Pots, String::new()),
            (Hazard::Children, String::new()),
        ];
        let cautions = gather(hazards.chain(class).chain(always));
        self.push(
            StepKind::Prepare,
            "Weigh and dissolve",
            text,
            Some(PREPARING_MIN),
            [None, None],
        )
        .cautions = cautions;
        self.now_min = soak.max(PREPARING_MIN);
    }

    fn bath(&mut self, lines: &[Line], programme: &Programme, baths: &Baths) {
        for stage in &programme.stages {
            let (from, to) = (Some(stage.from_c), Some(stage.to_c));
            if !stage.add.is_empty() {
                let here: Vec<&Line> = lines
                    .iter()
                    .filter(|l| stage.add.contains(&l.name))
                    .collect();
                let what = here.iter().map(|l| {
                    let each = l
                        .each_bath
                        .as_ref()
                        .map_or(String::new(), |e| format!(" ({e} to each bath)"));
                    format!("{} {}{each}", l.metric, l.name)
                });
                let mut text = format!("Stir in {}.", what.collect::<Vec<_>>().join("; "));
                if baths.count > 1 && here.iter().all(|l| l.each_bath.is_none()) {
                    text.push_str(" Share it over the baths by weight of goods.");
                }
                if here.iter().any(|l| l.role.is_none()) {
                    text.push_str(" Then put the wet goods in.");
                }
                let hazards: Vec<_> = here
                    .iter()
                    .flat_map(|l| l.hazards.iter().map(|h| (*h, l.name.clone())))
                    .collect();
                let step = self.push(
                    StepKind::Add,
                    "Add",
                    text,
                    Some(stage.adding_min),
                    [from, from],
                );
                let hot = step
                    .cautions
                    .iter()
                    .map(|c| (c.hazard, String::new()))
                    .collect::<Vec<_>>();
                step.cautions = gather(hazards.into_iter().chain(hot));
            }
            if stage.raising_min > 0.0 {
                let up = stage.to_c > stage.from_c;
                let (kind, title) = if up {
                    (StepKind::Raise, "Raise")
                } else {
                    (StepKind::Cool, "Cool")
                };
                let text = format!("From {} to {}. {}", stage.from_c, stage.to_c, stage.how);
                let step = self.push(kind, title, text, Some(stage.raising_min), [from, to]);
                if stage.to_c.celsius() > 100.0 {
                    step.cautions.push(Hazard::Pressure.caution(Vec::new()));
                }
            }
            if stage.holding_min > 0.0 {
                let text = format!("Keep at {}. {}", stage.to_c, stage.how);
                self.push(
                    StepKind::Hold,
                    "Hold",
                    text,
                    Some(stage.holding_min),
                    [to, to],
                );
            }
        }
        if programme.cooling_min > 0.0 {
            let from = programme.stages.last().map(|s| s.to_c);
            let text = format!(
                "Heat off; let the bath cool to {} before the goods come out.",
                programme.cool_to_c
            );
            self.push(
                StepKind::Cool,
                "Cool",
                text,
                Some(programme.cooling_min),
                [from, Some(programme.cool_to_c)],
            );
        }
    }

    fn wash_off(&mut self, recipe: &Recipe) {
        for (k, wash) in recipe.class.wash_off.iter().enumerate() {
            let (kind, title) = if wash.soap {
                (StepKind::Wash, "Wash")
            } else {
                (StepKind::Rinse, "Rinse")
            };
            // Tender fibres are washed no hotter than they bear.
            let bears = recipe.fibres.iter().map(|s| s.fibre.limit_c);
            let at = bears.fold(wash.at_c, |at, limit| if limit < at { limit } else { at });
            let step = self.push(
                kind,
                title,
                format!("{} All arms alike.", wash.how),
                Some(wash.minutes),
                [Some(at), Some(at)],
            );
            if k == 0 {
                step.cautions.push(Hazard::Disposal.caution(Vec::new()));
            }
        }
    }

    fn after(&mut self, recipe: &Recipe, plan: &AfterPlan) {
        let heat = [Some(plan.temperature), Some(plan.temperature)];
        let minutes = Some(plan.time.minutes());
        let begins = self.now_min;
        let text = format!(
            "{} {} in {} of water at {} for {} ({} piece(s)).",
            plan.line.metric,
            plan.line.name,
            plan.liquor.metric(),
            plan.temperature,
            plan.time,
            plan.pieces
        );
        let hazards = plan
            .line
            .hazards
            .iter()
            .map(|h| (*h, plan.line.name.clone()));
        let hazards: Vec<_> = hazards
            .chain([(Hazard::DataSheet, plan.line.name.clone())])
            .collect();
        let step = self.push(StepKind::AfterTreat, &plan.line.name, text, minutes, heat);
        let hot = step
            .cautions
            .iter()
            .map(|c| (c.hazard, String::new()))
            .collect::<Vec<_>>();
        step.cautions = gather(hazards.into_iter().chain(hot));
        step.arms.clone_from(&plan.arms);
        let others: Vec<String> = recipe
            .arms
            .iter()
            .map(|a| a.name.clone())
            .filter(|name| !plan.arms.contains(name))
            .collect();
        if !others.is_empty() {
            // Controls go through the same water, heat and time, so that only the agent differs.
            self.now_min = begins;
            let text = format!(
                "Plain water, same ratio, {} for {}, moved the same way, in a vessel of its own: what the after-treated arms went through without the agent.",
                plan.temperature, plan.time
            );
            self.push(StepKind::MatchingSoak, "Matching soak", text, minutes, heat)
                .arms = others;
        }
        let cold = Celsius::new(25.0).ok();
        let text = "Rinse until the water runs clear; all arms alike, arms apart.".to_owned();
        let step = self.push(StepKind::Rinse, "Rinse", text, Some(5.0), [cold, cold]);
        step.cautions
            .push(Hazard::Disposal.caution(vec![plan.line.name.clone()]));
    }

    fn dry(&mut self, recipe: &Recipe) {
        let text = format!(
            "Dry all {} piece(s) the same way, out of the sun, arms apart; look at them only when they are quite dry, for wet cloth looks darker.",
            recipe.goods.pieces
        );
        self.push(StepKind::Dry, "Dry", text, None, [None, None]);
    }
}
