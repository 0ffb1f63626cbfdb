//! What a recipe's prices are in: one currency for all of them, since sums are made of them.

use super::{super::written::Written, Read};
use crate::text;
use crate::{Kitchen, Price, error::DyeingError};
use locale::Currency;

/// What a recipe's prices are in.
pub(super) struct Prices {
    /// As the recipe names it, else the code that its prices name; empty: neither does.
    pub(super) currency: String,
    /// Whether the recipe says so itself.
    is_said_once: bool,
    kitchen: Kitchen,
}

impl Prices {
    pub(super) fn of(file: &Written) -> Self {
        let said = file.currency.trim();
        if !said.is_empty() {
            return Self {
                currency: said.to_owned(),
                is_said_once: true,
                kitchen: file.kitchen,
            };
        }
        let dyes = file.dye.iter().map(|dye| &dye.price);
        let others = file.auxiliary.iter().map(|other| &other.price);
        let prices = dyes
            .chain(others)
            .chain(file.after.iter().map(|a| &a.price));
        // One that can't be read is refused where it stands.
        let read = |text| Price::read(text, file.kitchen, None).ok()?.currency;
        let named = prices.flatten().find_map(|text| read(text));
        Self {
            currency: named.map_or(String::new(), String::from),
            is_said_once: false,
            kitchen: file.kitchen,
        }
    }

    /// Reads a price, which has to be in the recipe's currency.
    pub(super) fn read(&self, text: &str) -> Read<Price> {
        let own = Currency::named(&self.currency);
        let context = own.filter(|_| self.is_said_once);
        let price = Price::read(text, self.kitchen, context)?;
        let fault = match price.currency {
            Some(currency) if Some(currency) != own => {
                text::recipe::the_price_is_in_another_currency(currency.code(), &self.currency)
            }
            None if !self.is_said_once && own.is_some() => {
                text::recipe::the_price_names_no_currency(text, &self.currency)
            }
            _ => return Ok(price),
        };
        Err(DyeingError::Recipe(fault))
    }
}
