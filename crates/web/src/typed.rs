//! Examples of what can be typed into a form, in the bench's measures and currency.

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
    either("9.50 per 100 g", "9.50 per 4 oz")
}

/// The price of salt and the like.
pub(crate) fn bulk_price() -> &'static str {
    either("4.20 per kg", "4.20 per lb")
}

/// A bath's heat.
pub(crate) fn heat() -> &'static str {
    either("60 °C", "140 °F")
}

/// A bath's water.
pub(crate) fn volume() -> &'static str {
    either("5 L", "1 1/4 gallons")
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
                    assert!(Price::read(sum, Kitchen::usual()).is_ok(), "{sum}");
                }
                assert!(heat().parse::<Celsius>().is_ok() && volume().parse::<Volume>().is_ok());
            });
        }
    }
}
