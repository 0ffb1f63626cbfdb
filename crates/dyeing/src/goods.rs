//! Typical dry weights, for when nothing was weighed.
//!
//! The table is `data/goods.toml`. A typical weight is a guess, and is marked as one.

use crate::known;
use crate::text;
use std::sync::LazyLock;

use serde::{Deserialize, Serialize};

use crate::{Mass, error::DyeingError};

/// What a piece of a kind usually weighs when dry.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TypicalGoods {
    /// The word that recipes use, whatever the language.
    pub key: String,
    /// Other words that recipes may use.
    #[serde(default)]
    pub also: Vec<String>,
    /// The lightest that is usual.
    pub low_g: Mass,
    /// The heaviest that is usual.
    pub high_g: Mass,
}

#[derive(Deserialize)]
struct Table {
    goods: Vec<TypicalGoods>,
}

static TABLE: LazyLock<Vec<TypicalGoods>> = LazyLock::new(|| {
    toml::from_str::<Table>(include_str!("../data/goods.toml"))
        .expect("the table comes with the program, and a test reads it")
        .goods
});

/// Every kind of goods of the table.
pub fn all() -> &'static [TypicalGoods] {
    &TABLE
}

/// The goods of that name, whatever the capitals.
///
/// # Errors
/// Names the goods there are.
pub fn find(name: &str) -> Result<&'static TypicalGoods, DyeingError> {
    all()
        .iter()
        .find(|g| g.is_called(name))
        .ok_or_else(|| DyeingError::Unknown {
            what: text::goods::typical_piece(),
            name: name.to_owned(),
            known: all()
                .iter()
                .map(|g| g.key.as_str())
                .collect::<Vec<_>>()
                .join(", "),
        })
}

impl TypicalGoods {
    /// Whether that is a word of recipes for it, whatever the capitals.
    pub fn is_called(&self, word: &str) -> bool {
        let word = word.trim().to_lowercase();
        self.key.to_lowercase() == word || self.also.contains(&word)
    }

    /// What it is.
    pub fn name(&self) -> &'static str {
        known::known(text::known_goods::said, &self.key, "")
    }

    /// What several of it are called.
    pub fn many(&self) -> &'static str {
        known::known(text::known_goods::said, &self.key, "many")
    }

    /// Midway between the lightest and the heaviest.
    ///
    /// # Errors
    /// None for a table that holds together.
    pub fn middle(&self) -> Result<Mass, DyeingError> {
        (self.low_g + self.high_g).times(0.5)
    }
}

#[cfg(test)]
mod tests {
    use super::{all, find};
    use crate::known::{hold, name};
    use crate::text::known_goods;

    #[test]
    fn each_kind_has_its_texts_and_there_are_no_others() {
        let asked = all().iter().flat_map(|goods| {
            let of = |part| (name(&goods.key, part), true);
            [of(""), of("many")]
        });
        hold(known_goods::said, &known_goods::NAMES, asked);
    }

    #[test]
    fn the_table_holds_together() {
        for goods in all() {
            assert!(goods.low_g <= goods.high_g && goods.low_g.grams() > 0.0);
        }
    }

    /// Common practice, no source: a pound of dry goods is about two or three adult shirts.
    #[test]
    fn two_or_three_shirts_make_a_pound() {
        let shirts = 453.592_37 / find("T-shirt").unwrap().middle().unwrap().grams();
        assert!((2.0..3.5).contains(&shirts));
    }
}
