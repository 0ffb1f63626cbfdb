//! The code on a piece's tag: short, without look-alikes, with a check character.

use std::{fmt, str::FromStr};

use serde::{Deserialize, Deserializer, Serialize, Serializer, de};
use thiserror::Error;

/// The characters of a code.
///
/// Characters that look or sound alike on cloth tags, in handwriting and over a
/// telephone are left out, both of a pair rather than one, so that nobody has to
/// remember which: 0 O Q D, 1 I L, 2 Z, 5 S, 8 B, U V. 6 and C stay without the G
/// between them, M without N. That leaves 19, a prime number, which the check needs.
const ALPHABET: &[u8; SIZE as usize] = b"34679ACEFHJKMPRTWXY";
/// How many characters there are.
const SIZE: u32 = 19;
/// Characters of a code, the last being the check.
const LENGTH: usize = 6;

/// The code of a piece's tag, such as `K7H-4PX`.
///
/// The sixth character is a check: the places' values, weighed with 1 to 6, add
/// up to a multiple of 19. As 19 is prime and weights differ by less than it, any
/// single wrong character and any two characters that changed places are noticed.
///
/// # Source
/// The weighted sum modulo a prime is that of ISO 7064's forerunners (as in
/// ten-digit book numbers); the alphabet is our own.
///
/// # Example
/// ```
/// let code = photo::board::Code::from_number(2026);
/// assert_eq!(code.to_string().parse(), Ok(code));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Code([u8; LENGTH]);

impl Code {
    /// How many codes there are: 19 to the fifth power.
    pub const COUNT: u32 = SIZE.pow(LENGTH as u32 - 1);

    /// The code of a number; numbers that are equal modulo [`Self::COUNT`] share one.
    pub fn from_number(number: u32) -> Self {
        let mut rest = number % Self::COUNT;
        let mut places = [0; LENGTH];
        for place in places[..LENGTH - 1].iter_mut().rev() {
            *place = (rest % SIZE) as u8;
            rest /= SIZE;
        }
        // The last weight, 6, has the inverse 16: 6 x 16 = 96 = 5 x 19 + 1.
        places[LENGTH - 1] = ((SIZE - sum(&places)) * 16 % SIZE) as u8;
        Self(places)
    }
}

/// The weighted sum modulo [`SIZE`], 0 for a sound code.
fn sum(places: &[u8; LENGTH]) -> u32 {
    places
        .iter()
        .zip(1..)
        .map(|(&place, weight)| u32::from(place) * weight)
        .sum::<u32>()
        % SIZE
}

impl fmt::Display for Code {
    /// Writes two groups of three: `K7H-4PX`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut text = String::with_capacity(LENGTH + 1);
        for (i, &place) in self.0.iter().enumerate() {
            if i == LENGTH / 2 {
                text.push('-');
            }
            text.push(ALPHABET[usize::from(place)].into());
        }
        f.pad(&text)
    }
}

/// Why a text is no code of a tag.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum CodeError {
    /// Too many or too few characters.
    #[error(
        "{}",
        crate::text::board::the_tag_code_has_characters_a_code(
            text,
            found,
            LENGTH,
            Code::from_number(2026)
        )
    )]
    Length {
        /// What was written.
        text: String,
        /// Characters without spaces and hyphens.
        found: usize,
    },
    /// A character that no code has.
    #[error(
        "{}",
        crate::text::board::the_tag_code_holds_which_no_code(
            text,
            found,
            String::from_utf8_lossy(ALPHABET)
        )
    )]
    Character {
        /// What was written.
        text: String,
        /// The character.
        found: char,
    },
    /// The check character says that something was copied wrongly.
    #[error("{}", crate::text::board::the_tag_code_cant_be_right(text))]
    Check {
        /// What was written.
        text: String,
    },
}

impl FromStr for Code {
    type Err = CodeError;

    /// Reads a code in any case, with or without hyphens and spaces.
    fn from_str(text: &str) -> Result<Self, CodeError> {
        let shown = || text.chars().take(40).collect::<String>();
        let written: Vec<char> = text
            .chars()
            .filter(|c| !c.is_whitespace() && *c != '-')
            .collect();
        if written.len() != LENGTH {
            return Err(CodeError::Length {
                text: shown(),
                found: written.len(),
            });
        }
        let mut places = [0; LENGTH];
        for (place, found) in places.iter_mut().zip(written) {
            let upper = found.to_ascii_uppercase();
            let at = ALPHABET.iter().position(|&c| char::from(c) == upper);
            *place = at.ok_or_else(|| CodeError::Character {
                text: shown(),
                found,
            })? as u8;
        }
        if sum(&places) == 0 {
            Ok(Self(places))
        } else {
            Err(CodeError::Check { text: shown() })
        }
    }
}

impl Serialize for Code {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Code {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        String::deserialize(deserializer)?
            .parse()
            .map_err(de::Error::custom)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_number_has_its_own_sound_code() {
        let mut last = None;
        for number in 0..Code::COUNT {
            let code = Code::from_number(number);
            assert_eq!(sum(&code.0), 0);
            assert!(last < Some(code), "codes rise with their numbers");
            last = Some(code);
        }
    }

    /// All codes, all places, all characters: 2.5 million x 6 x 18 errors.
    #[test]
    fn one_wrong_character_is_always_noticed() {
        for number in 0..Code::COUNT {
            let code = Code::from_number(number);
            for i in 0..LENGTH {
                for wrong in (0..SIZE as u8).filter(|&w| w != code.0[i]) {
                    let mut places = code.0;
                    places[i] = wrong;
                    assert_ne!(sum(&places), 0);
                }
            }
        }
    }

    #[test]
    fn two_characters_that_changed_places_are_always_noticed() {
        for number in 0..Code::COUNT {
            let code = Code::from_number(number);
            for i in 0..LENGTH {
                for j in i + 1..LENGTH {
                    let mut places = code.0;
                    places.swap(i, j);
                    assert!(sum(&places) != 0 || places == code.0);
                }
            }
        }
    }

    #[test]
    fn no_look_alikes_share_the_alphabet() {
        for family in ["0OQD", "1IL", "2Z", "5S", "8B", "6G", "CG", "UV", "MN"] {
            let used = family.chars().filter(|&c| ALPHABET.contains(&(c as u8)));
            assert!(used.count() <= 1, "{family}");
        }
    }

    #[test]
    fn hands_may_write_it_as_they_like() {
        let code = Code::from_number(777_777);
        let text = code.to_string();
        for written in [
            text.clone(),
            text.replace('-', ""),
            text.replace('-', " ").to_lowercase(),
        ] {
            assert_eq!(written.parse(), Ok(code));
        }
    }

    #[test]
    fn what_is_wrong_is_said() {
        let said = |text: &str| text.parse::<Code>().unwrap_err().to_string();
        assert!(said("").contains("has 0 characters"));
        assert!(said("34679").contains("has 5 characters"));
        assert!(said("34679O").contains("\"O\", which no code has"));
        assert!(said("3é679A").contains("\"é\""));
        assert!(said("333-334").contains("changed places"));
    }
}
