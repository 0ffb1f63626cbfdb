//! How a trial's pieces were dyed, for the report's method.

use crate::chart;
use crate::text;
use dyeing::{balance::DyeBalance, plan::Line};
use trial::Bath;

/// One bath with its amounts, its heat and its price.
pub(crate) struct BathSection {
    pub(crate) name: String,
    pub(crate) about: String,
    /// What, how much, in the kitchen, by which rule.
    pub(crate) rows: Vec<[String; 4]>,
    pub(crate) curve: String,
    pub(crate) costs: Vec<String>,
    pub(crate) balances: Vec<BalanceSection>,
}

/// Where the dye of one run went.
pub(crate) struct BalanceSection {
    pub(crate) run: String,
    pub(crate) plot: String,
    /// What doesn't fit, then what the readings say.
    pub(crate) sentences: Vec<String>,
}

impl BalanceSection {
    fn of((run, balance): &(String, DyeBalance)) -> Self {
        let checks = balance.checks.iter().map(|c| c.sentence.clone());
        Self {
            run: run.clone(),
            plot: chart::dye_balance(balance),
            sentences: checks.chain(balance.sentences.iter().cloned()).collect(),
        }
    }
}

impl BathSection {
    pub(crate) fn all(baths: &[Bath]) -> Vec<Self> {
        baths.iter().map(Self::of).collect()
    }

    fn of(bath: &Bath) -> Self {
        let plan = &bath.plan;
        let guess = if plan.goods.typical.is_some() {
            text::baths::a_guess_not_weighed()
        } else {
            ""
        };
        let followed = match bath.runs {
            0 => text::baths::not_dyed_yet().to_owned(),
            1 => text::baths::dyed_once().to_owned(),
            runs => text::baths::dyed_times(runs),
        };
        let mut rows: Vec<[String; 4]> = plan.lines.iter().map(row).collect();
        rows.push([
            "water".to_owned(),
            plan.top_up.shown(),
            String::new(),
            text::baths::to_fill_up().to_owned(),
        ]);
        rows.extend(plan.after.iter().map(|after| {
            let [name, take, kitchen, rule] = row(&after.line);
            let way = text::baths::after_treatment_2(
                &name,
                after.arms.join(", "),
                after.liquor.shown(),
                after.temperature,
                after.time,
            );
            [way, take, kitchen, rule]
        }));
        Self {
            name: plan.name.clone(),
            about: text::baths::recipe_revision_on_of_liquor_2(
                bath.revision,
                &followed,
                &plan.class,
                plan.goods.mass,
                guess,
                plan.baths.liquor.shown(),
                plan.baths.ratio,
            ),
            rows,
            curve: chart::temperature_over_time(&plan.programme, &[]),
            costs: costs(bath),
            balances: bath.balances.iter().map(BalanceSection::of).collect(),
        }
    }
}

fn row(line: &Line) -> [String; 4] {
    let kitchen = match (&line.kitchen, &line.off) {
        (Some(measure), Some(off)) => format!("{measure}: {off}"),
        (Some(measure), None) => measure.clone(),
        _ => String::new(),
    };
    [line.name.clone(), line.shown(), kitchen, line.rule.clone()]
}

fn costs(bath: &Bath) -> Vec<String> {
    let cost = &bath.plan.cost;
    if cost.lines.is_empty() {
        return Vec::new();
    }
    let each = cost.arms.iter().map(|arm| {
        let sum = arm.per_piece.shown(&cost.currency);
        text::baths::for_each_piece_2(&arm.arm, &sum)
    });
    let mut said: Vec<String> = cost
        .steps
        .iter()
        .map(|s| format!("{}.", s.sentence))
        .collect();
    said.extend(each);
    if !cost.unpriced.is_empty() {
        said.push(text::baths::without_a_price_so_not_counted(
            cost.unpriced.join(", "),
        ));
    }
    said
}
