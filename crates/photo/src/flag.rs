//! What was noticed and is no reason to refuse.

/// Something about a photo or an area that its reader should know.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Flag {
    /// What it is, for programs.
    pub code: FlagCode,
    /// What it is and what to do, a sentence for the person.
    pub message: String,
}

/// The kinds of flags.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum FlagCode {
    /// Pixels at the end of the scale were left out.
    Clipped,
    /// Shining pixels were left out.
    Glare,
    /// Patches of the chart were burnt out and left aside.
    OverExposed,
    /// Edges are soft.
    Blurred,
    /// So dark that noise outweighs colour.
    UnderExposed,
    /// The piece sparkles all over, as wet cloth does.
    WetLook,
    /// The phone lit up dark places by itself.
    LocalToneMapping,
    /// Light falls very unevenly.
    UnevenLight,
    /// Few pixels.
    AreaTooSmall,
    /// The area runs out of the photo.
    AreaOutside,
    /// The area lies over the chart.
    AreaOnChart,
    /// The outline can't be used.
    AreaOutline,
    /// No colour profile in the file; taken as sRGB.
    ProfileMissing,
    /// A colour profile that can't be used; taken as sRGB.
    ProfileUnusable,
    /// The correction fits the chart only roughly.
    PoorFit,
    /// A board is there and can't be used.
    BoardUnread,
}

impl FlagCode {
    /// The code's name as it stands in JSON.
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Clipped => "clipped",
            Self::Glare => "glare",
            Self::OverExposed => "over_exposed",
            Self::Blurred => "blurred",
            Self::UnderExposed => "under_exposed",
            Self::WetLook => "wet_look",
            Self::LocalToneMapping => "local_tone_mapping",
            Self::UnevenLight => "uneven_light",
            Self::AreaTooSmall => "area_too_small",
            Self::AreaOutside => "area_outside",
            Self::AreaOnChart => "area_on_chart",
            Self::AreaOutline => "area_outline",
            Self::ProfileMissing => "profile_missing",
            Self::ProfileUnusable => "profile_unusable",
            Self::PoorFit => "poor_fit",
            Self::BoardUnread => "board_unread",
        }
    }
}

impl Flag {
    pub(crate) fn new(code: FlagCode, message: impl Into<String>) -> Self {
        Self {
            code,
            message: message.into(),
        }
    }
}
