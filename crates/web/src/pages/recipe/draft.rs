//! The form of a recipe as typed, and the recipe that it describes.

use crate::form::{Problems, Signed};
use dyeing::recipe::{
    Written, WrittenAfter, WrittenAuxiliary, WrittenDye, WrittenGoods, WrittenPot, WrittenProcess,
    WrittenWater,
};
use std::collections::BTreeMap;

/// Rows of a kind that the form may grow to.
const MOST_ROWS: usize = 24;

/// The form: what stands in each field, and how many rows each kind has.
#[derive(Default)]
pub(crate) struct Draft {
    fields: BTreeMap<String, String>,
    pub(crate) arms: usize,
    pub(crate) dyes: usize,
    pub(crate) auxiliaries: usize,
    pub(crate) afters: usize,
}

/// Kinds of rows, with the field that every row of it has.
const KINDS: [&str; 4] = ["arm", "dye", "auxiliary", "after"];

impl Draft {
    /// An empty form with a few rows.
    pub(crate) fn blank() -> Self {
        let mut draft = Self::default();
        draft.set("kitchen", "us");
        draft.set("class", "direct");
        draft.set("fibre", "cotton");
        draft.set("water", "ratio");
        draft.set("water-amount", "20:1");
        (draft.dyes, draft.auxiliaries) = (1, 2);
        draft
    }

    /// What came from a form.
    pub(crate) fn typed(form: &Signed) -> Self {
        let rows = |kind: &str| {
            let has = |row: &usize| form.has(&format!("{kind}-{row}-name"));
            (1..=MOST_ROWS).take_while(has).count()
        };
        let [arms, dyes, auxiliaries, afters] = KINDS.map(rows);
        let mut draft = Self {
            fields: form.fields(),
            arms,
            dyes,
            auxiliaries,
            afters,
        };
        let more = form.text("more");
        for (kind, rows) in draft.counts() {
            if more == kind && *rows < MOST_ROWS {
                *rows += 1;
            }
        }
        draft
    }

    fn counts(&mut self) -> [(&'static str, &mut usize); 4] {
        [
            ("arm", &mut self.arms),
            ("dye", &mut self.dyes),
            ("auxiliary", &mut self.auxiliaries),
            ("after", &mut self.afters),
        ]
    }

    /// What stands in a field.
    pub(crate) fn at(&self, field: &str) -> &str {
        self.fields.get(field).map_or("", String::as_str)
    }

    fn set(&mut self, field: impl Into<String>, text: impl Into<String>) {
        self.fields.insert(field.into(), text.into());
    }

    fn set_some(&mut self, field: String, text: Option<&String>) {
        if let Some(text) = text {
            self.set(field, text);
        }
    }

    /// The form of a recipe that was written before.
    pub(crate) fn of(written: &Written) -> Self {
        let mut draft = Self::default();
        draft.set("name", &written.name);
        draft.set("class", &written.class);
        draft.set("fibre", &written.fibre);
        let kitchen = format!("{:?}", written.kitchen).to_lowercase();
        draft.set("kitchen", kitchen);
        draft.set("currency", &written.currency);
        let goods = &written.goods;
        draft.set_some("weight".into(), goods.weight.as_ref());
        draft.set_some("typical".into(), goods.typical.as_ref());
        draft.set_some(
            "pieces".into(),
            goods.pieces.map(|n| n.to_string()).as_ref(),
        );
        let (by, amount) = match (&written.water.liquor_ratio, &written.water.volume) {
            (Some(ratio), _) => ("ratio", ratio.as_str()),
            (None, Some(volume)) => ("volume", volume.as_str()),
            (None, None) => ("pot", ""),
        };
        draft.set("water", by);
        draft.set("water-amount", amount);
        if let Some(pot) = &written.pot {
            draft.set("pot", &pot.capacity);
            draft.set_some("headroom".into(), pot.headroom_percent.map(figure).as_ref());
            draft.set_some("heater".into(), pot.heater_kw.map(figure).as_ref());
        }
        let process = &written.process;
        draft.set_some("presoak".into(), process.presoak.as_ref());
        draft.set_some("hold".into(), process.hold.as_ref());
        draft.set_some("time".into(), process.time.as_ref());
        draft.set_some("ph".into(), process.ph.map(figure).as_ref());
        draft.arms_of(&written.arms);
        for (k, dye) in written.dye.iter().enumerate() {
            draft.dye(k + 1, dye);
        }
        for (k, auxiliary) in written.auxiliary.iter().enumerate() {
            draft.auxiliary(k + 1, auxiliary);
        }
        for (k, after) in written.after.iter().enumerate() {
            draft.after(k + 1, after);
        }
        draft.dyes = written.dye.len().max(1);
        draft.auxiliaries = written.auxiliary.len().max(1);
        draft.afters = written.after.len();
        draft
    }

    /// Rows for arms and their pieces.
    pub(crate) fn arms_of<'a>(&mut self, arms: impl IntoIterator<Item = (&'a String, &'a u32)>) {
        self.arms = 0;
        for (name, pieces) in arms {
            self.arms += 1;
            self.set(format!("arm-{}-name", self.arms), name);
            self.set(format!("arm-{}-pieces", self.arms), pieces.to_string());
        }
    }

    /// The recipe's name.
    pub(crate) fn name(&mut self, name: &str) {
        self.set("name", name);
    }

    fn dye(&mut self, row: usize, dye: &WrittenDye) {
        let at = |field: &str| format!("dye-{row}-{field}");
        self.set(at("name"), &dye.name);
        self.set(at("amount"), &dye.amount);
        let (form, strength) = match (&dye.stock, &dye.liquid) {
            (Some(stock), _) => ("stock", stock.clone()),
            (None, Some(liquid)) if liquid.trim() == "unknown" => ("unknown", String::new()),
            (None, Some(liquid)) => ("liquid", liquid.clone()),
            (None, None) => (
                "powder",
                dye.strength_percent.map(figure).unwrap_or_default(),
            ),
        };
        self.set(at("form"), form);
        self.set(at("strength"), strength);
        self.set_some(at("bottle"), dye.bottle.as_ref());
        self.set_some(at("price"), dye.price.as_ref());
        self.set_some(at("in_bath"), dye.in_bath.as_ref());
    }

    fn auxiliary(&mut self, row: usize, auxiliary: &WrittenAuxiliary) {
        let at = |field: &str| format!("auxiliary-{row}-{field}");
        self.set(at("name"), &auxiliary.name);
        self.set(at("amount"), &auxiliary.amount);
        self.set_some(at("material"), auxiliary.material.as_ref());
        self.set_some(at("label"), auxiliary.label.as_ref());
        self.set_some(at("bottle"), auxiliary.bottle.as_ref());
        self.set_some(at("price"), auxiliary.price.as_ref());
        self.set_some(at("in_bath"), auxiliary.in_bath.as_ref());
    }

    fn after(&mut self, row: usize, after: &WrittenAfter) {
        let at = |field: &str| format!("after-{row}-{field}");
        self.set(at("name"), &after.name);
        self.set(at("amount"), &after.amount);
        self.set(at("temperature"), &after.temperature);
        self.set(at("time"), &after.time);
        self.set_some(at("material"), after.material.as_ref());
        self.set_some(at("label"), after.label.as_ref());
        self.set_some(at("bottle"), after.bottle.as_ref());
        self.set_some(at("price"), after.price.as_ref());
        self.set_some(at("water"), after.water.as_ref());
        self.set_some(
            at("arms"),
            after.arms.as_ref().map(|a| a.join("; ")).as_ref(),
        );
    }

    /// Numbers of the rows of a kind in which anything is written.
    pub(crate) fn used(&self, kind: &str) -> Vec<usize> {
        let written = |row: &usize| {
            let start = format!("{kind}-{row}-");
            self.fields.iter().any(|(field, text)| {
                // What a choice says is no writing.
                field.starts_with(&start) && !field.ends_with("-form") && !text.is_empty()
            })
        };
        (1..=MOST_ROWS).filter(written).collect()
    }

    /// The recipe that the form describes, or what in it is no number.
    pub(crate) fn written(&self) -> Result<Written, Problems> {
        let mut problems = Problems::default();
        let text = |field: &str| Some(self.at(field).to_owned()).filter(|t| !t.is_empty());
        let ratio = self.at("water") == "ratio";
        let volume = self.at("water") == "volume";
        let amount = self.at("water-amount").to_owned();
        if (ratio || volume) && amount.is_empty() {
            problems.add("water-amount", "Say how much water, such as 20:1 or 5 L.");
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
                problems.add(name, "Two arms have this name. Give each its own.");
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
            problems.add(
                at("strength"),
                "Say how strong it is, such as 1 %. If nobody knows, choose a bottle of unknown strength.",
            );
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
            let message = format!("Give a number, such as {example}, or leave it empty.");
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
            problems.add(field, "Give a whole number, such as 5.");
        }
        read
    }
}

/// Names apart by semicolons, or by commas where there is none.
fn names_of(text: &str) -> Vec<String> {
    let between = if text.contains(';') { ';' } else { ',' };
    let names = text.split(between).map(str::trim);
    names.filter(|n| !n.is_empty()).map(str::to_owned).collect()
}

fn figure(number: f64) -> String {
    number.to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_recipe_goes_through_the_form_and_comes_out_the_same() {
        for (name, _, text) in super::super::EXAMPLES {
            let written = Written::from_toml(text).unwrap();
            let back = Draft::of(&written).written();
            assert!(back.is_ok_and(|back| back == written), "{name}");
        }
    }

    #[test]
    fn arms_are_told_apart() {
        assert_eq!(names_of("plain, fixed"), ["plain", "fixed"]);
        assert_eq!(names_of("a, b; c;"), ["a, b", "c"]);
    }
}
