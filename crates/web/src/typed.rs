//! Examples of what can be typed into a form, in the bench's measures and currency.

use crate::text;
use locale::Measures;

/// One example by the measures that come first.
fn either(metric: &'static str, us_customary: &'static str) -> &'static str {
    match locale::current().measures {
        Measures::Metric => metric,
        Measures::UsCustomary => us_customary,
    }
}

/// A weight as a lot comes in.
pub(crate) fn weight() -> &'static str {
    either("250 g", "8 oz")
}

/// A little of a lot.
pub(crate) fn little() -> &'static str {
    either("30 g", "1 oz")
}

/// The price of a dye.
pub(crate) fn price() -> &'static str {
    either(
        text::typed::n_9_50_per_100_g(),
        text::typed::n_9_50_per_4_oz(),
    )
}

/// The price of salt and the like.
pub(crate) fn bulk_price() -> &'static str {
    either(text::typed::n_4_20_per_kg(), text::typed::n_4_20_per_lb())
}

/// A bath's heat.
pub(crate) fn heat() -> &'static str {
    either("60 °C", "140 °F")
}

/// A bath's water.
pub(crate) fn volume() -> &'static str {
    either("5 L", text::typed::n_1_1_4_gallons())
}

#[cfg(test)]
mod tests {
    use super::*;
    use dyeing::{Amount, Celsius, Kitchen, Price, Volume};
    use locale::Locale;

    #[test]
    fn every_example_can_be_typed() {
        for measures in Measures::ALL {
            let locale = Locale {
                measures,
                ..Locale::DATA
            };
            locale::within(locale, || {
                for amount in [weight(), little()] {
                    assert!(Amount::read(amount, Kitchen::usual()).is_ok(), "{amount}");
                }
                for sum in [price(), bulk_price()] {
                    assert!(Price::read(sum, Kitchen::usual(), None).is_ok(), "{sum}");
                }
                assert!(heat().parse::<Celsius>().is_ok() && volume().parse::<Volume>().is_ok());
            });
        }
    }
}
