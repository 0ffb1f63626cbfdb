//! Fibres: how hot they may get, how much moisture their dry weight holds.
//!
//! The table is `data/fibres.toml`, which says where its figures come from.

use crate::known;
use crate::text;
use std::sync::LazyLock;

use serde::{Deserialize, Serialize};

use crate::{Celsius, error::DyeingError, quantity::Cursor, quantity::read_number};

/// A fibre.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Fibre {
    /// The word that recipes use, whatever the language.
    pub key: String,
    /// Other words that recipes may use.
    #[serde(default)]
    pub also: Vec<String>,
    /// What it is made of: cellulose, protein, polyamide, polyester, acetate or acrylic.
    pub kind: String,
    /// How hot its bath may get.
    pub limit_c: Celsius,
    /// Moisture of air-dry fibre, percent of its oven-dry mass.
    pub regain_percent: f64,
    /// Where its figures come from.
    pub source: String,
}

/// A fibre and its share of the goods.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct FibreShare {
    /// The fibre.
    pub fibre: Fibre,
    /// Percent of the goods' weight.
    pub percent: f64,
}

#[derive(Deserialize)]
struct Table {
    fibre: Vec<Fibre>,
}

static TABLE: LazyLock<Vec<Fibre>> = LazyLock::new(|| {
    toml::from_str::<Table>(include_str!("../data/fibres.toml"))
        .expect("the table comes with the program, and a test reads it")
        .fibre
});

/// Every fibre of the table.
pub fn all() -> &'static [Fibre] {
    &TABLE
}

/// The fibre of that name, whatever the capitals.
///
/// # Errors
/// Names the fibres there are.
pub fn find(name: &str) -> Result<&'static Fibre, DyeingError> {
    let wanted = name.trim().to_lowercase();
    let is = |f: &&Fibre| f.key == wanted || f.also.contains(&wanted);
    all().iter().find(is).ok_or_else(|| DyeingError::Unknown {
        what: text::fibre::fibre(),
        name: name.trim().to_owned(),
        known: all()
            .iter()
            .map(|f| f.key.as_str())
            .collect::<Vec<_>>()
            .join(", "),
    })
}

impl Fibre {
    /// Its name.
    pub fn name(&self) -> &'static str {
        known::known(text::known_fibres::said, &self.key, "")
    }

    /// What happens above the hottest it bears, as the end of a sentence.
    pub fn above(&self) -> &'static str {
        known::known(text::known_fibres::said, &self.key, "above")
    }
}

/// Reads `cotton` or `60 % cotton, 40 % polyester`.
///
/// # Errors
/// Says which fibre isn't known, or that the shares don't make 100 %.
pub fn blend(text: &str) -> Result<Vec<FibreShare>, DyeingError> {
    if !text.contains('%') {
        let fibre = find(text)?.clone();
        return Ok(vec![FibreShare {
            fibre,
            percent: 100.0,
        }]);
    }
    let mut shares = Vec::new();
    for part in text.split(',') {
        let mut cursor = Cursor::new(part);
        let percent = read_number(&mut cursor)?;
        cursor.skip_space();
        if !cursor.eat('%') {
            return Err(cursor.fault(cursor.at, text::fibre::write_a_blend_as_60_cotton_40()));
        }
        let name: String = part.chars().skip(cursor.at).collect();
        shares.push(FibreShare {
            fibre: find(&name)?.clone(),
            percent,
        });
    }
    let sum: f64 = shares.iter().map(|s| s.percent).sum();
    if (sum - 100.0).abs() > 1.0 {
        return Err(DyeingError::Recipe(text::fibre::the_shares_of_make(
            text, sum,
        )));
    }
    Ok(shares)
}

#[cfg(test)]
mod tests {
    use super::{all, blend};
    use crate::known::{hold, name};
    use crate::text::known_fibres;

    #[test]
    fn each_fibre_has_its_texts_and_there_are_no_others() {
        let asked = all().iter().flat_map(|fibre| {
            let of = |part| (name(&fibre.key, part), true);
            [of(""), of("above")]
        });
        hold(known_fibres::said, &known_fibres::NAMES, asked);
    }

    #[test]
    fn the_table_holds_together() {
        for fibre in all() {
            assert!(fibre.regain_percent >= 0.0 && !fibre.source.is_empty());
        }
    }

    #[test]
    fn blends_are_read_and_have_to_be_whole() {
        let shares = blend("60 % cotton, 40 % polyester").unwrap();
        assert_eq!(
            (shares[0].percent, shares[1].fibre.key.as_str()),
            (60.0, "polyester")
        );
        assert!(
            blend("60 % cotton")
                .unwrap_err()
                .to_string()
                .contains("make 60 %")
        );
        assert!(blend("glass").unwrap_err().to_string().contains("cotton, "));
    }
}
