//! Choices of a form, read back by the keys that they were offered under.

use crate::{Clock, DateFormat, LocaleError, Measures, SumOrder};
use std::str::FromStr;

macro_rules! by_keys {
    ($($choice:ty),*) => {$(
        impl FromStr for $choice {
            type Err = LocaleError;

            /// The choice that has this key.
            fn from_str(key: &str) -> Result<Self, LocaleError> {
                let found = Self::ALL.into_iter().find(|choice| choice.key() == key);
                found.ok_or(LocaleError::NoSuchChoice)
            }
        }
    )*};
}

by_keys!(Clock, DateFormat, Measures, SumOrder);
