//! How to take a refused photo again, step by step.

use crate::RefusalCode;

impl RefusalCode {
    /// Every cause.
    pub const ALL: [Self; 16] = [
        Self::NotAPhoto,
        Self::DamagedFile,
        Self::TooLarge,
        Self::HeicUnsupported,
        Self::ChartMissing,
        Self::ChartCutOff,
        Self::TwoCharts,
        Self::Mirrored,
        Self::GreyscalePhoto,
        Self::OverExposed,
        Self::UnderExposed,
        Self::PoorFit,
        Self::BadCorners,
        Self::BoardUnread,
        Self::BoardVersion,
        Self::BoardMixed,
    ];

    /// The cause of that name, as [`RefusalCode::as_str`] gives it.
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|code| code.as_str() == name)
    }

    /// What to do to get a photo that can be read, a short sentence a step.
    ///
    /// # Source
    /// Common practice of photographing flat work; no standard.
    pub const fn retake(self) -> &'static [&'static str] {
        match self {
            Self::NotAPhoto => &[
                "Send the picture itself, a JPEG or PNG, as the camera saved it.",
                "A screenshot, a film or a link to a picture won\u{2019}t do.",
            ],
            Self::DamagedFile => &[
                "Copy the file from the camera or phone once more, by cable or card.",
                "If it is broken there, too, take the photo again.",
            ],
            Self::TooLarge => &[
                "Set the camera to JPEG, not raw and not film.",
                "12 to 50 megapixels are plenty.",
            ],
            Self::HeicUnsupported => &[
                "Set the phone\u{2019}s camera to the most compatible format (JPEG).",
                "Or export this photo as JPEG at full size, and send that.",
            ],
            Self::ChartMissing => &[
                "Lay the chart flat beside the pieces, with all its patches open to view.",
                "Stand straight above; let chart and pieces fill the picture.",
                "No shadow, no glare on the chart.",
                "If it is plainly there, give its four corners below the photo.",
            ],
            Self::ChartCutOff => &[
                "Step back, or lay the chart further in, so that a finger\u{2019}s width of ground shows all round it.",
            ],
            Self::TwoCharts => {
                &["Leave one chart on the table and put the other out of the picture."]
            }
            Self::Mirrored => &[
                "Use the camera on the back of the phone.",
                "Or switch off \u{201c}mirror\u{201d} in the camera\u{2019}s settings.",
            ],
            Self::GreyscalePhoto => &["Switch off black-and-white and every filter."],
            Self::OverExposed => &[
                "Tap the white patch on the screen and draw the brightness down until it is light grey.",
                "Move out of direct sun, and switch off the flash.",
            ],
            Self::UnderExposed => &[
                "More light: nearer to a window, or a second lamp from the other side.",
                "Tap the chart on the screen, so that the phone exposes for it.",
            ],
            Self::PoorFit => &[
                "See that the chart chosen here is the one on the photo, and that its patches are clean.",
                "One kind of light only: daylight or lamps, not both.",
                "Switch off HDR, portrait and night modes, and every filter.",
            ],
            Self::BadCorners => &[
                "Give the four outer corners of the patches in pixels of the upright photo, in the order named at the field.",
                "Or leave the field empty and let the chart be found.",
            ],
            Self::BoardUnread => &[
                "Get all four corner codes into the picture, flat and sharp.",
                "Nothing over the codes, and no glare on them.",
            ],
            Self::BoardVersion => {
                &["Print the board anew from this program, and photograph the pieces on that."]
            }
            Self::BoardMixed => &["One board to a photo: put the other one out of the picture."],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::HashSet;

    #[test]
    fn every_cause_is_found_by_its_name_and_says_what_to_do() {
        let names: HashSet<&str> = RefusalCode::ALL.iter().map(|code| code.as_str()).collect();
        assert_eq!(names.len(), RefusalCode::ALL.len());
        for code in RefusalCode::ALL {
            assert_eq!(RefusalCode::named(code.as_str()), Some(code));
            assert!(!code.retake().is_empty(), "{code:?}");
            for step in code.retake() {
                assert!(step.ends_with('.') && step.contains(' '), "{step}");
            }
        }
        assert_eq!(RefusalCode::named("vault_file_missing"), None);
    }
}
