//! Stages: after how many rounds pieces were looked at.

/// The latest stage there can be, rounds gone through. More is a slip of the hand.
pub const LATEST_STAGE: u32 = 10_000;

/// A stage as a person types it, rounds gone through; none if it is no whole number from 0 to
/// [`LATEST_STAGE`].
pub fn read_stage(text: &str) -> Option<u32> {
    let stage = text.trim().parse().ok();
    stage.filter(|stage| *stage <= LATEST_STAGE)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stages_are_whole_numbers_of_rounds() {
        for (text, stage) in [("0", 0), (" 5 ", 5), ("10000", 10_000)] {
            assert_eq!(read_stage(text), Some(stage), "{text}");
        }
        for text in ["", "-1", "2.5", "five", "10001", "99999999999", "1e3", "٣"] {
            assert_eq!(read_stage(text), None, "{text}");
        }
    }
}
