//! How much goes into a bath: an amount, or a rule that gives one for any bath.

use crate::text;
use serde::{Deserialize, Serialize};

use crate::{
    error::DyeingError,
    quantity::{
        Amount, Cursor, Kitchen, Mass, PercentOwf, PercentWv, Volume, amount::amount_from, number,
    },
};

/// How much goes into a bath.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Dose {
    /// So much, whatever the bath.
    Fixed(Amount),
    /// So much for each weight of dry goods.
    PerGoods {
        /// How much.
        amount: Amount,
        /// For that weight.
        goods: Mass,
    },
    /// So much for each volume of liquor.
    PerLiquor {
        /// How much.
        amount: Amount,
        /// For that volume.
        liquor: Volume,
    },
}

impl Dose {
    /// Reads `60 g/L`, `20 % owf`, `1/3 cup per gallon`, `half a bottle to a pound` or `30 g`.
    ///
    /// # Errors
    /// Points at the character at fault. A bare `%` is refused, for it may mean two things.
    pub fn read(text: &str, kitchen: Kitchen) -> Result<Self, DyeingError> {
        let mut cursor = Cursor::new(text);
        let value = number::read(&mut cursor)?;
        cursor.skip_space();
        let dose = if cursor.eat('%') {
            Self::of_goods(&mut cursor, value)?
        } else {
            let amount = amount_from(&mut cursor, value, kitchen)?;
            Self::of_whole(&mut cursor, amount, kitchen)?
        };
        cursor.finish()?;
        Ok(dose)
    }

    fn of_goods(cursor: &mut Cursor, percent: f64) -> Result<Self, DyeingError> {
        let (at, word) = cursor.word();
        let fibre = match word.as_str() {
            "owf" | "wof" | "owg" => true,
            "on" => {
                cursor.eat_word(&["weight"]) && cursor.eat_word(&["of"]) && {
                    let (_, goods) = cursor.word();
                    matches!(goods.as_str(), "fibre" | "fiber" | "goods")
                }
            }
            _ => false,
        };
        if !fibre {
            let why = text::quantity::say_of_what_owf_is_by_weight();
            return Err(cursor.fault(at, why));
        }
        Ok(Self::PerGoods {
            amount: Amount::Mass(Mass::from_grams(percent)?),
            goods: Mass::from_grams(100.0)?,
        })
    }

    fn of_whole(
        cursor: &mut Cursor,
        amount: Amount,
        kitchen: Kitchen,
    ) -> Result<Self, DyeingError> {
        cursor.skip_space();
        if !cursor.eat('/') && !cursor.eat_word(&["per", "to", "for", "in", "each"]) {
            return Ok(Self::Fixed(amount));
        }
        cursor.eat_word(&["each", "every"]);
        let value = if number::starts(cursor) {
            number::read(cursor)?
        } else {
            1.0
        };
        cursor.skip_space();
        let at = cursor.at;
        let whole = amount_from(cursor, value, kitchen)?;
        // "to a pound of dry goods", "to a gallon of water": said for people, no more.
        if cursor.eat_word(&["of"]) {
            cursor.eat_word(&["dry", "hot", "the"]);
            cursor.eat_word(&[
                "goods", "fibre", "fiber", "fabric", "cloth", "water", "liquor", "yarn",
            ]);
        }
        if whole.is_zero() {
            return Err(cursor.fault(at, text::quantity::it_has_to_be_for_more()));
        }
        match whole {
            Amount::Mass(goods) => Ok(Self::PerGoods { amount, goods }),
            Amount::Volume(liquor) => Ok(Self::PerLiquor { amount, liquor }),
            Amount::Bottles(_) => {
                Err(cursor.fault(at, text::quantity::a_weight_of_goods_or_a_volume()))
            }
        }
    }

    /// So many grams for each litre of liquor.
    ///
    /// # Errors
    /// Refuses what is below 0 or not finite.
    pub fn grams_per_litre(grams: f64) -> Result<Self, DyeingError> {
        Ok(Self::PerLiquor {
            amount: Amount::Mass(Mass::from_grams(grams)?),
            liquor: Volume::from_millilitres(1000.0)?,
        })
    }

    /// By percent on weight of fibre.
    ///
    /// # Errors
    /// Refuses what overflows.
    pub fn owf(share: PercentOwf) -> Result<Self, DyeingError> {
        Ok(Self::PerGoods {
            amount: Amount::Mass(Mass::from_grams(share.percent())?),
            goods: Mass::from_grams(100.0)?,
        })
    }

    /// The amount for a bath.
    ///
    /// # Errors
    /// Refuses what overflows.
    pub fn for_bath(self, goods: Mass, liquor: Volume) -> Result<Amount, DyeingError> {
        match self {
            Self::Fixed(amount) => Ok(amount),
            Self::PerGoods {
                amount,
                goods: each,
            } => amount.times(goods.grams() / each.grams()),
            Self::PerLiquor {
                amount,
                liquor: each,
            } => amount.times(liquor.millilitres() / each.millilitres()),
        }
    }

    /// How many times the other dose it is, if both are of one kind.
    ///
    /// ```
    /// use dyeing::{Dose, Kitchen};
    /// let label = Dose::read("2 tbsp to 1 gallon", Kitchen::Us)?;
    /// let done = Dose::read("4 tbsp to 3 gallons", Kitchen::Us)?;
    /// assert!((label.over(done).unwrap() - 1.5).abs() < 1e-12);
    /// # Ok::<(), dyeing::DyeingError>(())
    /// ```
    pub fn over(self, other: Self) -> Option<f64> {
        let ratio = match (self, other) {
            (Self::Fixed(a), Self::Fixed(b)) => a.over(b)?,
            (
                Self::PerGoods {
                    amount: a,
                    goods: m,
                },
                Self::PerGoods {
                    amount: b,
                    goods: n,
                },
            ) => a.over(b)? * n.grams() / m.grams(),
            (
                Self::PerLiquor {
                    amount: a,
                    liquor: v,
                },
                Self::PerLiquor {
                    amount: b,
                    liquor: w,
                },
            ) => a.over(b)? * w.millilitres() / v.millilitres(),
            _ => return None,
        };
        ratio.is_finite().then_some(ratio)
    }
}

impl PercentWv {
    /// Reads `1 %`, `20 % w/v` or `10 g/L`.
    ///
    /// # Errors
    /// Points at the character at fault.
    pub fn read(text: &str) -> Result<Self, DyeingError> {
        let mut cursor = Cursor::new(text);
        let value = number::read(&mut cursor)?;
        cursor.skip_space();
        let percent = if cursor.eat('%') {
            cursor.skip_space();
            let at = cursor.at;
            let whole = cursor.is_done()
                || cursor.eat_word(&["w"]) && cursor.eat('/') && cursor.eat_word(&["v"]);
            if !whole {
                return Err(cursor.fault(at, text::quantity::a_solutions_strength_is_w_v_grams()));
            }
            value
        } else {
            let amount = amount_from(&mut cursor, value, Kitchen::Metric)?;
            let at = cursor.at;
            match Dose::of_whole(&mut cursor, amount, Kitchen::Metric)? {
                Dose::PerLiquor {
                    amount: Amount::Mass(solid),
                    liquor,
                } => 100.0 * solid.grams() / liquor.millilitres(),
                _ => return Err(cursor.fault(at, text::quantity::a_strength_is_wanted_as_in_1())),
            }
        };
        cursor.finish()?;
        Self::new(percent).map_err(|e| cursor.fault(0, e.to_string()))
    }
}
