//! Why a photo is not read.

use crate::text;
use thiserror::Error;

/// A photo that can't be read: what is wrong and how to mend it.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("{message}")]
pub struct Refusal {
    /// The cause, for programs.
    pub code: RefusalCode,
    /// The cause and its remedy, a sentence for the person.
    pub message: String,
}

/// The causes of a refusal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum RefusalCode {
    /// The file is empty or no picture.
    NotAPhoto,
    /// The file is a picture that is cut short or broken.
    DamagedFile,
    /// The file or the picture is larger than is sensible.
    TooLarge,
    /// A HEIC file, which can't be decoded here.
    HeicUnsupported,
    /// No chart was found.
    ChartMissing,
    /// The chart runs out of the picture.
    ChartCutOff,
    /// More than one chart was found.
    TwoCharts,
    /// The chart is seen in a mirror.
    Mirrored,
    /// The picture has no colours.
    GreyscalePhoto,
    /// The chart's light patches are burnt out.
    OverExposed,
    /// The chart is nearly black.
    UnderExposed,
    /// The patches don't look like the chart that was named.
    PoorFit,
    /// The corners given can't be those of a chart.
    BadCorners,
    /// A board is there, but too few of its corner codes can be read.
    BoardUnread,
    /// The board is of a version that is not known here.
    BoardVersion,
    /// Corners of more than one board are in the photo.
    BoardMixed,
}

impl RefusalCode {
    /// The code's name as it stands in JSON.
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::NotAPhoto => "not_a_photo",
            Self::DamagedFile => "damaged_file",
            Self::TooLarge => "too_large",
            Self::HeicUnsupported => "heic_unsupported",
            Self::ChartMissing => "chart_missing",
            Self::ChartCutOff => "chart_cut_off",
            Self::TwoCharts => "two_charts",
            Self::Mirrored => "mirrored",
            Self::GreyscalePhoto => "greyscale_photo",
            Self::OverExposed => "over_exposed",
            Self::UnderExposed => "under_exposed",
            Self::PoorFit => "poor_fit",
            Self::BadCorners => "bad_corners",
            Self::BoardUnread => "board_unread",
            Self::BoardVersion => "board_version",
            Self::BoardMixed => "board_mixed",
        }
    }
}

impl Refusal {
    /// The refusal of a photo seen in a mirror.
    pub(crate) fn mirrored() -> Self {
        Self::new(
            RefusalCode::Mirrored,
            text::refusal::the_photo_is_mirrored_as_some_front(),
        )
    }

    pub(crate) fn new(code: RefusalCode, message: impl Into<String>) -> Self {
        Self {
            code,
            message: message.into(),
        }
    }
}
