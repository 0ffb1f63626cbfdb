//! What is wrong with something that was chosen.

use thiserror::Error;

/// Why a choice can't be taken; each is a sentence for the person.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum LocaleError {
    /// Not three letters.
    #[error(
        "\"{typed}\" is no currency's code. Give its three letters, such as EUR or USD, or leave it empty for plain numbers."
    )]
    NotACode {
        /// What was given, shortened.
        typed: String,
    },
    /// Three letters that no currency has.
    #[error(
        "There is no currency {code} in today's list of codes. Take one from the list, or leave it empty for plain numbers."
    )]
    NoSuchCurrency {
        /// The code that was given.
        code: String,
    },
    /// A currency whose sums have no decimals, or more than two.
    #[error(
        "Sums in {code} have {decimals} decimals; Woadstone counts in hundredths, with two. Leave the currency empty and sums stay plain numbers of two decimals."
    )]
    NoCents {
        /// The currency's code.
        code: String,
        /// How many decimals its sums have.
        decimals: u8,
    },
    /// A code for a metal, a unit of account, or no currency at all.
    #[error("{code} is a code that nobody pays with. Take a currency from the list.")]
    NoMoney {
        /// The code.
        code: String,
    },
    /// A choice that isn't offered.
    #[error("This is none of the choices. Pick one of those that are listed.")]
    NoSuchChoice,
}

impl LocaleError {
    /// A short name of the fault that stays the same when the words change.
    pub fn code(&self) -> &'static str {
        match self {
            Self::NotACode { .. } => "not_a_currency_code",
            Self::NoSuchCurrency { .. } => "no_such_currency",
            Self::NoCents { .. } => "currency_without_cents",
            Self::NoMoney { .. } => "code_is_no_money",
            Self::NoSuchChoice => "no_such_choice",
        }
    }
}
