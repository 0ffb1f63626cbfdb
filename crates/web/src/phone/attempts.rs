//! How often codes may be tried: by one address, and by all together.

use std::collections::HashMap;
use std::net::IpAddr;
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

/// The time within which tries are counted.
const WITHIN: Duration = Duration::from_secs(10 * 60);
/// Most tries of one address in that time.
const BY_ONE: usize = 5;
/// Most tries of all together in that time: of 32^8 codes, 20 tries find one in
/// 50 thousand million times.
const BY_ALL: usize = 20;

/// The tries of late.
#[derive(Default)]
pub(crate) struct Attempts(Mutex<Vec<(Instant, IpAddr)>>);

/// Why no further try is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Refused;

impl Attempts {
    /// Counts a try, or refuses it: too many were made.
    pub(crate) fn note(&self, from: IpAddr, now: Instant) -> Result<(), Refused> {
        let mut tries = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        tries.retain(|(at, _)| now.duration_since(*at) < WITHIN);
        let mut counts: HashMap<IpAddr, usize> = HashMap::new();
        for (_, address) in tries.iter() {
            *counts.entry(*address).or_default() += 1;
        }
        if tries.len() >= BY_ALL || counts.get(&from).is_some_and(|count| *count >= BY_ONE) {
            return Err(Refused);
        }
        tries.push((now, from));
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn address(last: u8) -> IpAddr {
        IpAddr::from([192, 168, 1, last])
    }

    #[test]
    fn one_address_has_few_tries_and_others_still_have_theirs() {
        let (attempts, now) = (Attempts::default(), Instant::now());
        for _ in 0..BY_ONE {
            assert_eq!(attempts.note(address(1), now), Ok(()));
        }
        assert_eq!(attempts.note(address(1), now), Err(Refused));
        assert_eq!(attempts.note(address(2), now), Ok(()));
        assert_eq!(attempts.note(address(1), now + WITHIN), Ok(()));
    }

    #[test]
    fn all_addresses_together_have_a_limit_too() {
        let (attempts, now) = (Attempts::default(), Instant::now());
        let tries = (0..=255u8).map(|last| attempts.note(address(last), now));
        assert_eq!(tries.filter(Result::is_ok).count(), BY_ALL);
    }
}
