//! Areas of one name in different photos.

use photo::Difference;

use super::Read;

/// How an area differs from that of the same name in a later photo.
pub struct Across {
    /// Which photo the area is in, from 0.
    pub from: usize,
    /// Which later photo it is compared with.
    pub to: usize,
    /// The difference with its interval.
    pub difference: Difference,
}

/// Every area of every photo beside those of its name in later photos.
pub fn differences(many: &[Read]) -> Vec<Across> {
    let mut all = Vec::new();
    for (from, earlier) in many.iter().enumerate() {
        for (to, later) in many.iter().enumerate().skip(from + 1) {
            let (Ok(a), Ok(b)) = (&earlier.outcome, &later.outcome) else {
                continue;
            };
            let found = a
                .readings
                .iter()
                .filter_map(|reading| a.difference_across(&reading.id, b, &reading.id));
            all.extend(found.map(|difference| Across {
                from,
                to,
                difference,
            }));
        }
    }
    all
}
