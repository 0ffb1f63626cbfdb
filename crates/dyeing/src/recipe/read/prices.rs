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
    /// The one currency that this means. Of several that share the recipe's sign it is the one that
    /// a price names, if any does.
    own: Option<Currency>,
    /// Those that share the recipe's sign, if `own` can't be told from it; the prices that have the
    /// sign, or no currency, are all in the same one of them.
    sharing: Vec<Currency>,
    kitchen: Kitchen,
}

impl Prices {
    pub(super) fn of(file: &Written) -> Self {
        let dyes = file.dye.iter().map(|dye| &dye.price);
        let others = file.auxiliary.iter().map(|other| &other.price);
        let after = file.after.iter().map(|after| &after.price);
        let prices = || dyes.clone().chain(others.clone()).chain(after.clone());
        // One that can't be read is refused where it stands.
        let read = |text: &String| Price::read(text, file.kitchen, None).ok()?.currency;
        let said = file.currency.trim();
        if said.is_empty() {
            let own = prices().flatten().find_map(read);
            return Self {
                currency: own.map_or(String::new(), String::from),
                is_said_once: false,
                own,
                sharing: Vec::new(),
                kitchen: file.kitchen,
            };
        }
        let meant = match Currency::of_sign(said) {
            Some((length, meant)) if length == said.chars().count() => meant,
            _ => Vec::new(),
        };
        let mut named = prices().flatten().filter_map(read);
        let own = Currency::named(said).or_else(|| named.find(|one| meant.contains(one)));
        Self {
            currency: said.to_owned(),
            is_said_once: true,
            own,
            sharing: if own.is_none() { meant } else { Vec::new() },
            kitchen: file.kitchen,
        }
    }

    /// Reads a price, which has to be in the recipe's currency.
    pub(super) fn read(&self, text: &str) -> Read<Price> {
        // Any of those that share the sign lets it be read; which one it is, nobody says.
        let any = self.sharing.first().copied();
        let context = self.own.filter(|_| self.is_said_once).or(any);
        let mut price = Price::read(text, self.kitchen, context)?;
        if any.is_some() && price.currency == any {
            price.currency = None;
        }
        let named = self.own.map_or(self.currency.as_str(), |own| own.code());
        let fault = match price.currency {
            Some(currency) if Some(currency) != self.own => {
                text::recipe::the_price_is_in_another_currency(currency.code(), named)
            }
            None if !self.is_said_once && self.own.is_some() => {
                text::recipe::the_price_names_no_currency(text, &self.currency)
            }
            _ => return Ok(price),
        };
        Err(DyeingError::Recipe(fault))
    }
}
