//! What a trial's baths cost: by piece, by arm, by extra step.

use crate::text;
use serde::{Deserialize, Serialize};

use crate::{
    Added, Amount, Entry, Mass, Money, Part, Price, Volume, error::DyeingError, plan::Line,
    recipe::Recipe,
};

/// How sums are rounded.
pub fn rounding() -> &'static str {
    text::cost::each_material_is_price_times_amount_used()
}

/// What one material costs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CostLine {
    /// Its name.
    pub name: String,
    /// The after-treatment that it is for; nothing for the dye bath.
    pub step: Option<String>,
    /// What the amount used costs.
    pub money: Money,
}

/// What an arm costs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ArmCost {
    /// Its name.
    pub arm: String,
    /// Its pieces.
    pub pieces: u32,
    /// All of them together.
    pub money: Money,
    /// One of them.
    pub per_piece: Money,
}

/// What a step beyond the dye bath adds.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct StepCost {
    /// Its name.
    pub step: String,
    /// Pieces that get it.
    pub pieces: u32,
    /// For all of them.
    pub money: Money,
    /// For one.
    pub per_piece: Money,
    /// The same in words.
    pub sentence: String,
}

/// What the baths cost.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Cost {
    /// What sums are in, as the recipe names it.
    pub currency: String,
    /// Each material.
    pub lines: Vec<CostLine>,
    /// All of them together.
    pub total: Money,
    /// Each arm.
    pub arms: Vec<ArmCost>,
    /// Each extra step.
    pub steps: Vec<StepCost>,
    /// What has no price, so that it is missing above.
    pub unpriced: Vec<String>,
    /// How sums were rounded.
    pub rounding: String,
}

impl Cost {
    /// Of the dye bath's lines and those of after-treatments, in the order of the recipe.
    ///
    /// # Errors
    /// Says when a price is by weight and the amount by volume, with no density between them.
    pub fn of(recipe: &Recipe, bath: &[Line], after: &[&Line]) -> Result<Self, DyeingError> {
        let dyes = recipe.dyes.iter().enumerate();
        let dyes = dyes.map(|(row, d)| (Part::added(Added::Dye, row, &d.name), d.price));
        let others = recipe.auxiliaries.iter().enumerate();
        let others = others.map(|(row, a)| {
            let part = Part::added(Added::Auxiliary, row, &a.name);
            (part, a.price)
        });
        let mut cost = Self {
            currency: recipe.currency.clone(),
            lines: Vec::new(),
            total: Money::ZERO,
            arms: Vec::new(),
            steps: Vec::new(),
            unpriced: Vec::new(),
            rounding: rounding().to_owned(),
        };
        let mut of_bath = Money::ZERO;
        for (line, (part, price)) in bath.iter().zip(dyes.chain(others)) {
            of_bath = of_bath + cost.priced(line, part, price, None)?;
        }
        let names = recipe.arms.iter();
        let pieces: Vec<u32> = names.clone().map(|a| a.pieces).collect();
        let mut sums = shared(of_bath, &pieces);
        for (row, (treatment, line)) in recipe.after.iter().zip(after).enumerate() {
            let step = &treatment.agent.name;
            let part = Part::added(Added::AfterTreatment, row, step);
            let money = cost.priced(line, part, treatment.agent.price, Some(step.clone()))?;
            let of: Vec<u32> = names
                .clone()
                .map(|a| {
                    if treatment.arms.contains(&a.name) {
                        a.pieces
                    } else {
                        0
                    }
                })
                .collect();
            for (sum, part) in sums.iter_mut().zip(shared(money, &of)) {
                *sum = *sum + part;
            }
            let count = of.iter().sum();
            let per_piece = money.times(1.0 / f64::from(count))?;
            if treatment.agent.price.is_some() {
                let each = per_piece.shown(&recipe.currency);
                let sentence = text::cost::adds_per_piece_2(step, &each);
                cost.steps.push(StepCost {
                    step: step.clone(),
                    pieces: count,
                    money,
                    per_piece,
                    sentence,
                });
            }
        }
        cost.total = cost.lines.iter().map(|l| l.money).sum();
        for (arm, money) in names.zip(sums) {
            let per_piece = money.times(1.0 / f64::from(arm.pieces))?;
            cost.arms.push(ArmCost {
                arm: arm.name.clone(),
                pieces: arm.pieces,
                money,
                per_piece,
            });
        }
        Ok(cost)
    }

    fn priced(
        &mut self,
        line: &Line,
        part: Part,
        price: Option<Price>,
        step: Option<String>,
    ) -> Result<Money, DyeingError> {
        let Some(price) = price else {
            self.unpriced.push(line.name.clone());
            return Ok(Money::ZERO);
        };
        let Some(share) = share(line, price.per) else {
            let sentence = text::cost::the_price_of_is_for_but(&line.name, price.per, line.amount);
            return Err(part.at(Entry::Price).says(sentence));
        };
        let money = price.money.times(share)?;
        self.lines.push(CostLine {
            name: line.name.clone(),
            step,
            money,
        });
        Ok(money)
    }
}

/// How many times the priced amount is used.
fn share(line: &Line, per: Amount) -> Option<f64> {
    let per = match (per, line.bottle) {
        (Amount::Bottles(n), Some(size)) => Amount::Volume(size.times(n).ok()?),
        (other, _) => other,
    };
    if line.amount.is_zero() {
        return Some(0.0);
    }
    if let Some(share) = line.amount.over(per) {
        return Some(share);
    }
    match (line.amount, per) {
        (Amount::Volume(_), Amount::Mass(mass)) => {
            // Stock and powder by the cup hold a known weight.
            let solid = Mass::from_grams(line.solid_g?).ok()?;
            Amount::Mass(solid).over(Amount::Mass(mass))
        }
        (Amount::Mass(used), Amount::Volume(volume)) => {
            let ml = used.grams() / line.density?.typical_g_per_ml;
            Amount::Volume(Volume::from_millilitres(ml).ok()?).over(Amount::Volume(volume))
        }
        _ => None,
    }
}

/// A sum shared by pieces to the cent, so that the parts make the whole.
fn shared(money: Money, pieces: &[u32]) -> Vec<Money> {
    let all: i128 = pieces.iter().map(|n| i128::from(*n)).sum();
    if all == 0 {
        return vec![Money::ZERO; pieces.len()];
    }
    let cents = i128::from(money.cents());
    let mut parts: Vec<i128> = pieces
        .iter()
        .map(|n| cents * i128::from(*n) / all)
        .collect();
    let mut left = cents - parts.iter().sum::<i128>();
    for (part, n) in parts.iter_mut().zip(pieces) {
        if left > 0 && *n > 0 {
            *part += 1;
            left -= 1;
        }
    }
    // Each part is at most the sum, which was 64 bits wide.
    parts
        .into_iter()
        .map(|cents| Money::from_cents(cents as i64))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::shared;
    use crate::Money;

    #[test]
    fn parts_make_the_whole() {
        for cents in [0, 1, 2, 100, 101, 998] {
            let parts = shared(Money::from_cents(cents), &[3, 0, 4, 1]);
            assert_eq!(
                parts.iter().copied().sum::<Money>(),
                Money::from_cents(cents)
            );
            assert_eq!(parts[1], Money::ZERO);
        }
    }
}
