//! One-time codes: shown at the computer, typed or scanned at the phone, good once and for minutes.

use crate::token::Token;
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

/// How long a code is good.
pub(crate) const GOOD_FOR: Duration = Duration::from_secs(5 * 60);

/// Letters and digits that aren't taken for one another, 32 of them.
const SIGNS: &[u8; 32] = b"ABCDEFGHJKLMNPQRSTUVWXYZ23456789";
/// Signs of a code: 32^8 codes, 40 bits.
const LENGTH: usize = 8;

/// The code that is good at this moment, if there is one. A new one ends the one before.
#[derive(Default)]
pub(crate) struct Codes(Mutex<Option<Code>>);

struct Code {
    signs: Token,
    until: Instant,
}

/// A code as it is shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Shown {
    /// Its signs without a break.
    pub(crate) signs: String,
    /// How long it is still good.
    pub(crate) left: Duration,
}

impl Codes {
    /// Makes a new code, the only good one from now on.
    pub(crate) fn make(&self, now: Instant) {
        let random: [u8; LENGTH] = rand::random();
        // 256 is a multiple of 32: every sign is as likely as the others.
        let signs = random.map(|byte| char::from(SIGNS[usize::from(byte) % SIGNS.len()]));
        *self.lock() = Some(Code {
            signs: Token::of(signs.iter().collect()),
            until: now + GOOD_FOR,
        });
    }

    /// The good code, to be shown at the computer.
    pub(crate) fn shown(&self, now: Instant) -> Option<Shown> {
        let kept = self.lock();
        let code = kept.as_ref().filter(|code| now < code.until)?;
        Some(Shown {
            signs: code.signs.as_str().to_owned(),
            left: code.until - now,
        })
    }

    /// Takes a code; true once for the good one, which is then used up.
    pub(crate) fn take(&self, given: &str, now: Instant) -> bool {
        let given = tidy(given);
        let mut kept = self.lock();
        let is_good = kept
            .as_ref()
            .is_some_and(|code| now < code.until && code.signs.is(&given));
        if is_good {
            *kept = None;
        }
        is_good
    }

    /// Ends whatever code there is.
    pub(crate) fn end(&self) {
        *self.lock() = None;
    }

    fn lock(&self) -> std::sync::MutexGuard<'_, Option<Code>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// A code as a person may type it: breaks and small letters don't matter.
fn tidy(given: &str) -> String {
    given
        .chars()
        .filter(char::is_ascii_alphanumeric)
        .take(4 * LENGTH)
        .map(|c| c.to_ascii_uppercase())
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_code_is_good_once_and_for_minutes() {
        let (codes, now) = (Codes::default(), Instant::now());
        assert!(codes.shown(now).is_none());
        assert!(!codes.take("", now));
        codes.make(now);
        let shown = codes.shown(now).unwrap();
        assert_eq!((shown.signs.len(), shown.left), (LENGTH, GOOD_FOR));
        let typed = format!(
            " {}-{} ",
            &shown.signs[..4].to_lowercase(),
            &shown.signs[4..]
        );
        assert!(codes.take(&typed, now + Duration::from_secs(299)));
        assert!(
            !codes.take(&typed, now + Duration::from_secs(299)),
            "used up"
        );

        codes.make(now);
        let signs = codes.shown(now).unwrap().signs;
        assert!(!codes.take(&signs, now + GOOD_FOR), "too late");
        assert!(codes.shown(now + GOOD_FOR).is_none());
    }

    #[test]
    fn a_new_code_ends_the_one_before_and_guesses_use_nothing_up() {
        let (codes, now) = (Codes::default(), Instant::now());
        codes.make(now);
        let first = codes.shown(now).unwrap().signs;
        codes.make(now);
        let second = codes.shown(now).unwrap().signs;
        assert_ne!(first, second);
        assert!(!codes.take(&first, now));
        assert!(!codes.take(&second[1..], now));
        assert!(codes.take(&second, now));
        codes.make(now);
        let third = codes.shown(now).unwrap().signs;
        codes.end();
        assert!(!codes.take(&third, now));
    }
}
