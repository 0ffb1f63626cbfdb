//! What is wrong with something that was chosen.

use thiserror::Error;

/// Why a choice can't be taken; each is a sentence for the person.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum LocaleError {
    /// Not three letters.
    #[error("{}", crate::text::error::is_no_currencys_code_give_its_three(typed))]
    NotACode {
        /// What was given, shortened.
        typed: String,
    },
    /// Three letters that no currency has.
    #[error("{}", crate::text::error::there_is_no_currency_in_todays_list(code))]
    NoSuchCurrency {
        /// The code that was given.
        code: String,
    },
    /// A currency whose sums have no decimals, or more than two.
    #[error(
        "{}",
        crate::text::error::sums_in_have_decimals_woadstone_counts(code, decimals)
    )]
    NoCents {
        /// The currency's code.
        code: String,
        /// How many decimals its sums have.
        decimals: u8,
    },
    /// A code for a metal, a unit of account, or no currency at all.
    #[error("{}", crate::text::error::is_a_code_that_nobody_pays(code))]
    NoMoney {
        /// The code.
        code: String,
    },
    /// A choice that isn't offered.
    #[error("{}", crate::text::error::this_is_none_of_the_choices_pick())]
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
