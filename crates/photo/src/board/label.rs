//! What a board's corner codes say: `WB1-6A-C1`, then the trial and the stage.

use super::{Board, Kind, Paper};

/// The newest version of boards that is read; a change of the geometry raises it.
pub const VERSION: u32 = 1;

/// Longest name of a trial that a board carries, characters: with more the
/// corners' modules would become too small for a photo from above.
pub const LONGEST_TRIAL: usize = 60;

/// What one corner's code says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Label {
    pub version: u32,
    pub board: Board,
    /// 0 upper left, 1 upper right, 2 lower right, 3 lower left.
    pub corner: usize,
    pub trial: Option<String>,
    pub stage: Option<u32>,
}

/// Why a code is no label of a board that can be used.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum NoLabel {
    /// Some other code.
    Foreign,
    /// A board of a version that is not known here.
    Version(u32),
}

impl Label {
    /// The text, of characters that the alphanumeric mode of ISO/IEC 18004 knows.
    pub fn text(&self) -> String {
        let kind = match self.board.kind {
            Kind::Six => "6",
            Kind::Twelve => "12",
        };
        let paper = match self.board.paper {
            Paper::A4 => "A",
            Paper::Letter => "L",
        };
        let mut text = format!("WB{}-{kind}{paper}-C{}", self.version, self.corner + 1);
        if let Some(stage) = self.stage {
            text.push_str(&format!("-S{stage}"));
        }
        if let Some(trial) = &self.trial {
            text.push_str(&format!("-T{}", trial.to_ascii_uppercase()));
        }
        text
    }

    /// Reads a corner's text.
    pub fn parse(text: &str) -> Result<Self, NoLabel> {
        let rest = text.strip_prefix("WB").ok_or(NoLabel::Foreign)?;
        let (version, rest) = rest.split_once('-').ok_or(NoLabel::Foreign)?;
        let version = number(version).ok_or(NoLabel::Foreign)?;
        if version != VERSION {
            return Err(NoLabel::Version(version));
        }
        let (board, rest) = rest.split_once("-C").ok_or(NoLabel::Foreign)?;
        let kind = match board.trim_end_matches(['A', 'L']) {
            "6" => Kind::Six,
            "12" => Kind::Twelve,
            _ => return Err(NoLabel::Foreign),
        };
        let paper = match board.trim_start_matches(|c: char| c.is_ascii_digit()) {
            "A" => Paper::A4,
            "L" => Paper::Letter,
            _ => return Err(NoLabel::Foreign),
        };
        let (corner, rest) = match rest.split_once('-') {
            Some((corner, rest)) => (corner, Some(rest)),
            None => (rest, None),
        };
        let corner = match corner {
            "1" => 0,
            "2" => 1,
            "3" => 2,
            "4" => 3,
            _ => return Err(NoLabel::Foreign),
        };
        let mut label = Self {
            version,
            board: Board { kind, paper },
            corner,
            trial: None,
            stage: None,
        };
        let Some(mut rest) = rest else {
            return Ok(label);
        };
        if let Some(more) = rest.strip_prefix('S') {
            let (stage, more) = more.split_once('-').unwrap_or((more, ""));
            label.stage = Some(number(stage).ok_or(NoLabel::Foreign)?);
            rest = more;
        }
        if let Some(trial) = rest.strip_prefix('T') {
            label.trial = Some(trial.to_ascii_lowercase());
        } else if !rest.is_empty() {
            return Err(NoLabel::Foreign);
        }
        Ok(label)
    }
}

/// A number of up to six digits.
fn number(text: &str) -> Option<u32> {
    (text.len() <= 6 && text.bytes().all(|b| b.is_ascii_digit()))
        .then(|| text.parse().ok())
        .flatten()
}

/// A trial's name as a board can carry it; none where it holds other characters
/// than letters, digits and hyphens, or too many.
pub(super) fn trial_name(text: &str) -> Option<String> {
    let sound = !text.is_empty()
        && text.len() <= LONGEST_TRIAL
        && text
            .bytes()
            .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-');
    sound.then(|| text.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn every_label_is_read_as_it_was_written() {
        for board in Board::ALL {
            for corner in 0..4 {
                for trial in [None, Some("madder-rinse-2".to_owned())] {
                    for stage in [None, Some(0), Some(12)] {
                        let label = Label {
                            version: VERSION,
                            board,
                            corner,
                            trial: trial.clone(),
                            stage,
                        };
                        assert_eq!(Label::parse(&label.text()), Ok(label));
                    }
                }
            }
        }
    }

    #[test]
    fn other_codes_are_told_from_other_versions() {
        for text in [
            "",
            "WB",
            "WB1",
            "WB1-6A",
            "WB1-7A-C1",
            "WB1-6X-C1",
            "WB1-6A-C5",
            "WB1-6A-C1-Sx",
            "WB1-6A-C1-Z",
            "https://example.test/",
        ] {
            assert_eq!(Label::parse(text), Err(NoLabel::Foreign), "{text}");
        }
        assert_eq!(Label::parse("WB2-24A-Q9"), Err(NoLabel::Version(2)));
    }

    proptest! {
        #[test]
        fn no_text_breaks_it(text in "(WB1-)?.{0,40}") {
            let _ = Label::parse(&text);
        }
    }
}
