//! From the form to the recipe that it describes.

use super::Draft;
use crate::form::Problems;
use crate::text;
use dyeing::recipe::{
    Written, WrittenAfter, WrittenAuxiliary, WrittenDye, WrittenGoods, WrittenPot, WrittenProcess,
    WrittenWater,
};
use std::collections::BTreeMap;

impl Draft {
    /// The recipe that the form describes, or what in it is no number.
    pub(crate) fn written(&self) -> Result<Written, Problems> {
        let mut problems = Problems::default();
        let text = |field: &str| Some(self.at(field).to_owned()).filter(|t| !t.is_empty());
        let ratio = self.at("water") == "ratio";
        let volume = self.at("water") == "volume";
        let amount = self.at("water-amount").to_owned();
        if (ratio || volume) && amount.is_empty() {
            problems.add(
                "water-amount",
                text::recipe::say_how_much_water_such_as_20(),
            );
        }
        let pot = text("pot").map(|capacity| WrittenPot {
            capacity,
            headroom_percent: self.number("headroom", "25", &mut problems),
            heater_kw: self.number("heater", "2", &mut problems),
        });
        let mut arms = BTreeMap::new();
        for row in self.used("arm") {
            let (name, pieces) = (format!("arm-{row}-name"), format!("arm-{row}-pieces"));
            let pieces = self.whole(&pieces, &mut problems).unwrap_or(0);
            if arms.insert(self.at(&name).to_owned(), pieces).is_some() {
                problems.add(name, text::recipe::two_arms_have_this_name_give());
            }
        }
        let row = |kind: &str, row: usize, field: &str| text(&format!("{kind}-{row}-{field}"));
        let written = Written {
            name: self.at("name").to_owned(),
            class: self.at("class").to_owned(),
            fibre: self.at("fibre").to_owned(),
            kitchen: match self.at("kitchen") {
                "metric" => dyeing::Kitchen::Metric,
                "imperial" => dyeing::Kitchen::Imperial,
                _ => dyeing::Kitchen::Us,
            },
            currency: self.at("currency").to_owned(),
            goods: WrittenGoods {
                weight: text("weight"),
                typical: text("typical"),
                pieces: self.whole("pieces", &mut problems),
            },
            arms,
            water: WrittenWater {
                liquor_ratio: ratio.then(|| amount.clone()),
                volume: volume.then_some(amount),
            },
            pot,
            dye: self
                .used("dye")
                .into_iter()
                .map(|n| self.written_dye(n, &mut problems))
                .collect(),
            auxiliary: self
                .used("auxiliary")
                .into_iter()
                .map(|n| WrittenAuxiliary {
                    name: row("auxiliary", n, "name").unwrap_or_default(),
                    material: row("auxiliary", n, "material"),
                    amount: row("auxiliary", n, "amount").unwrap_or_default(),
                    label: row("auxiliary", n, "label"),
                    bottle: row("auxiliary", n, "bottle"),
                    price: row("auxiliary", n, "price"),
                    in_bath: row("auxiliary", n, "in_bath"),
                })
                .collect(),
            after: self
                .used("after")
                .into_iter()
                .map(|n| WrittenAfter {
                    name: row("after", n, "name").unwrap_or_default(),
                    material: row("after", n, "material"),
                    amount: row("after", n, "amount").unwrap_or_default(),
                    label: row("after", n, "label"),
                    bottle: row("after", n, "bottle"),
                    price: row("after", n, "price"),
                    water: row("after", n, "water"),
                    temperature: row("after", n, "temperature").unwrap_or_default(),
                    time: row("after", n, "time").unwrap_or_default(),
                    arms: row("after", n, "arms").map(|names| names_of(&names)),
                })
                .collect(),
            process: WrittenProcess {
                presoak: text("presoak"),
                hold: text("hold"),
                time: text("time"),
                ph: self.number("ph", "7", &mut problems),
            },
        };
        if problems.is_empty() {
            Ok(written)
        } else {
            Err(problems)
        }
    }

    fn written_dye(&self, row: usize, problems: &mut Problems) -> WrittenDye {
        let at = |field: &str| format!("dye-{row}-{field}");
        let text = |field: &str| Some(self.at(&at(field)).to_owned()).filter(|t| !t.is_empty());
        let form = self.at(&at("form"));
        if matches!(form, "stock" | "liquid") && text("strength").is_none() {
            problems.add(at("strength"), text::recipe::say_how_strong_it_is_such());
        }
        WrittenDye {
            name: text("name").unwrap_or_default(),
            amount: text("amount").unwrap_or_default(),
            strength_percent: match form {
                "stock" | "liquid" | "unknown" => None,
                _ => self.number(&at("strength"), "100", problems),
            },
            stock: text("strength").filter(|_| form == "stock"),
            liquid: match form {
                "unknown" => Some("unknown".to_owned()),
                "liquid" => text("strength"),
                _ => None,
            },
            bottle: text("bottle"),
            price: text("price"),
            in_bath: text("in_bath"),
        }
    }

    fn number(&self, field: &str, example: &str, problems: &mut Problems) -> Option<f64> {
        let text = self.at(field).trim_end_matches('%').trim();
        if text.is_empty() {
            return None;
        }
        let read = text.replace(',', ".").parse::<f64>().ok();
        let read = read.filter(|number| number.is_finite());
        if read.is_none() {
            let message = text::recipe::give_a_number_such_as_or_leave(example);
            problems.add(field, message);
        }
        read
    }

    fn whole(&self, field: &str, problems: &mut Problems) -> Option<u32> {
        let text = self.at(field);
        if text.is_empty() {
            return None;
        }
        let read = text.parse().ok();
        if read.is_none() {
            problems.add(field, text::recipe::give_a_whole_number_such_as_5());
        }
        read
    }
}

/// Names apart by semicolons, or by commas where there is none.
pub(super) fn names_of(text: &str) -> Vec<String> {
    let between = if text.contains(';') { ';' } else { ',' };
    let names = text.split(between).map(str::trim);
    names.filter(|n| !n.is_empty()).map(str::to_owned).collect()
}
