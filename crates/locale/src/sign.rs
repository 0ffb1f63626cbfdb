//! Signs that people write for a currency, and which currencies they may mean.

use crate::Currency;

/// Which names a sign may stand for.
enum Meant {
    /// That one alone.
    One(&'static str),
    /// All whose English name has one of these words; two of them, as examples.
    Any(&'static [&'static str], [&'static str; 2]),
}

/// Signs, small letters; those that begin with another one first.
///
/// Common practice, no source: no standard gives signs to currencies.
const SIGNS: [(&str, Meant); 24] = [
    ("us$", Meant::One("USD")),
    ("ca$", Meant::One("CAD")),
    ("c$", Meant::One("CAD")),
    ("au$", Meant::One("AUD")),
    ("a$", Meant::One("AUD")),
    ("nz$", Meant::One("NZD")),
    ("hk$", Meant::One("HKD")),
    ("r$", Meant::One("BRL")),
    ("s$", Meant::One("SGD")),
    ("mx$", Meant::One("MXN")),
    ("nt$", Meant::One("TWD")),
    ("$", Meant::Any(&["Dollar", "Peso"], ["USD", "CAD"])),
    ("£", Meant::Any(&["Pound"], ["GBP", "EGP"])),
    ("€", Meant::One("EUR")),
    ("₹", Meant::One("INR")),
    ("₺", Meant::One("TRY")),
    ("₴", Meant::One("UAH")),
    ("₪", Meant::One("ILS")),
    ("kč", Meant::One("CZK")),
    ("kr.", Meant::Any(&["Krone", "Krona"], ["DKK", "SEK"])),
    ("kr", Meant::Any(&["Krone", "Krona"], ["SEK", "NOK"])),
    ("zł", Meant::One("PLN")),
    ("euros", Meant::One("EUR")),
    ("euro", Meant::One("EUR")),
];

impl Currency {
    /// The sign with which a text begins, how many characters it has, and the currencies that it may
    /// mean; nothing where it begins with none. Several currencies share `$`, `£` and `kr`: two that
    /// serve as examples come first, then the others by code.
    ///
    /// ```
    /// use locale::Currency;
    /// let (length, meant) = Currency::of_sign("€ 12").expect("the euro's sign");
    /// assert_eq!((length, meant[0].code(), meant.len()), (1, "EUR", 1));
    /// assert!(Currency::of_sign("$12").is_some_and(|(_, meant)| meant.len() > 20));
    /// assert!(Currency::of_sign("kron").is_none());
    /// ```
    pub fn of_sign(text: &str) -> Option<(usize, Vec<Self>)> {
        let small = text.to_lowercase();
        let (sign, meant) = SIGNS.iter().find(|(sign, _)| {
            let rest = small.strip_prefix(sign);
            // A word ends where its letters do.
            let ends_in_letter = sign.ends_with(char::is_alphabetic);
            rest.is_some_and(|rest| !ends_in_letter || !rest.starts_with(char::is_alphabetic))
        })?;
        let fits = |currency: &Self| match meant {
            Meant::One(code) => currency.code() == *code,
            Meant::Any(words, _) => words.iter().any(|word| currency.name().contains(word)),
        };
        let mut fitting: Vec<Self> = Self::all().filter(fits).collect();
        if let Meant::Any(_, first) = meant {
            let place = |currency: &Self| first.iter().position(|code| currency.code() == *code);
            fitting.sort_by_key(|currency| place(currency).unwrap_or(first.len()));
        }
        Some((sign.chars().count(), fitting))
    }

    /// The currency that a text names, by its code or by a sign that it doesn't share.
    ///
    /// ```
    /// use locale::Currency;
    /// assert_eq!(Currency::named(" € "), Currency::named("eur"));
    /// assert_eq!(Currency::named("$"), None);
    /// ```
    pub fn named(text: &str) -> Option<Self> {
        let text = text.trim();
        let (length, meant) = Self::of_sign(text).unwrap_or_default();
        match meant.as_slice() {
            [one] if length == text.chars().count() => Some(*one),
            _ => text.parse().ok(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_sign_means_a_currency_and_its_word_ends() {
        for (sign, meant) in &SIGNS {
            let (length, found) = Currency::of_sign(sign).unwrap();
            assert_eq!(length, sign.chars().count(), "{sign}");
            match meant {
                Meant::One(code) => assert_eq!(found[0].code(), *code),
                Meant::Any(_, first) => {
                    assert!(found.len() > 2, "{sign}");
                    assert_eq!([found[0].code(), found[1].code()], *first);
                }
            }
        }
        for none in ["", "12", "krill", "EUR", "eurozone", "per", "złoty"] {
            assert!(Currency::of_sign(none).is_none(), "{none}");
        }
        assert_eq!(Currency::of_sign("KR 5").unwrap().0, 2);
        assert_eq!(Currency::of_sign("Kr. 5").unwrap().0, 3);
        for (text, code) in [
            ("USD", "USD"),
            ("us$", "USD"),
            ("euros", "EUR"),
            ("zł", "PLN"),
            ("S$", "SGD"),
            ("MX$", "MXN"),
            ("NT$", "TWD"),
            ("€ 5", ""),
            ("kr.", ""),
            ("£", ""),
            ("shells", ""),
            ("", ""),
        ] {
            let found = Currency::named(text).map_or("", Currency::code);
            assert_eq!(found, code, "{text}");
        }
    }
}
