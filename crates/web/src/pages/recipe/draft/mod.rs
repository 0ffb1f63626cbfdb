//! The form of a recipe as typed.

mod fill;
mod read;

use crate::form::Signed;
use dyeing::Kitchen;
use locale::Currency;
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
        draft.set("kitchen", Kitchen::usual().key());
        let currency = locale::current().currency;
        draft.set("currency", currency.map_or("", Currency::code));
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
}

#[cfg(test)]
mod tests {
    use super::{Draft, read::names_of};
    use dyeing::recipe::Written;

    #[test]
    fn a_recipe_goes_through_the_form_and_comes_out_the_same() {
        for example in &crate::pages::recipe::EXAMPLES {
            let (name, text) = (example.name, example.text);
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
