//! The file: JPEG with EXIF data and a colour profile.

use jpeg_encoder::{ChromaSubsamplingMethod, ColorType, Encoder, SamplingFactor};
use moxcms::{ColorDateTime, ColorProfile};

/// How the camera was held, as the EXIF data tell it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Orientation {
    /// 1: the file's pixels stand upright.
    Upright,
    /// 3: the file's pixels stand on their head.
    HalfTurn,
    /// 6: the file's pixels must turn clockwise by a quarter.
    QuarterClockwise,
    /// 8: the file's pixels must turn anticlockwise by a quarter.
    QuarterAnticlockwise,
}

impl Orientation {
    /// The value of the EXIF tag 0x0112.
    pub const fn exif(self) -> u16 {
        match self {
            Self::Upright => 1,
            Self::HalfTurn => 3,
            Self::QuarterClockwise => 6,
            Self::QuarterAnticlockwise => 8,
        }
    }
}

/// The colour space of the file's values, and its profile.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Profile {
    /// sRGB, with its profile.
    Srgb,
    /// Display P3, with its profile.
    DisplayP3,
    /// sRGB, with no profile.
    None,
}

/// How the file is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Jpeg {
    /// Quality, 1 to 100.
    pub quality: u8,
    /// Whether colour is kept at half the resolution, as most cameras do.
    pub halved_colour: bool,
    /// The colour space.
    pub profile: Profile,
    /// How the camera was held.
    pub orientation: Orientation,
}

impl Default for Jpeg {
    /// Quality 92, halved colour, sRGB, upright.
    fn default() -> Self {
        Self {
            quality: 92,
            halved_colour: true,
            profile: Profile::Srgb,
            orientation: Orientation::Upright,
        }
    }
}

impl Jpeg {
    /// The file of upright RGB pixels, row by row.
    pub(crate) fn write(&self, width: usize, height: usize, rgb: &[u8], camera: &str) -> Vec<u8> {
        let (width, height, rgb) = turn(self.orientation, width, height, rgb);
        let side = |px: usize| u16::try_from(px).expect("render() holds sides to 65,535 px");
        let mut bytes = Vec::new();
        let mut encoder = Encoder::new(&mut bytes, self.quality.clamp(1, 100));
        encoder.set_sampling_factor(if self.halved_colour {
            SamplingFactor::F_2_2
        } else {
            SamplingFactor::F_1_1
        });
        encoder.set_chroma_subsampling_method(ChromaSubsamplingMethod::Average);
        encoder
            .add_exif_metadata(&exif(self.orientation, camera))
            .expect("these EXIF data are far smaller than a segment");
        if let Some(profile) = self.profile.icc() {
            encoder
                .add_icc_profile(&profile)
                .expect("this profile is far smaller than 255 segments");
        }
        encoder
            .encode(&rgb, side(width), side(height), ColorType::Rgb)
            .expect("writing to memory can't fail and the pixels fill the size");
        bytes
    }
}

impl Profile {
    /// The bytes of the ICC profile, where one is written.
    fn icc(self) -> Option<Vec<u8>> {
        let mut profile = match self {
            Self::Srgb => ColorProfile::new_srgb(),
            Self::DisplayP3 => ColorProfile::new_display_p3(),
            Self::None => return None,
        };
        // Left alone it would be the time of day, and no two files would be alike.
        profile.creation_date_time = ColorDateTime {
            year: 2026,
            month: 1,
            day_of_the_month: 1,
            hours: 12,
            minutes: 0,
            seconds: 0,
        };
        Some(profile.encode().expect("a built-in profile encodes"))
    }
}

/// The pixels as the sensor lay, so that the EXIF orientation sets them upright.
fn turn(held: Orientation, w: usize, h: usize, rgb: &[u8]) -> (usize, usize, Vec<u8>) {
    let (width, height) = match held {
        Orientation::Upright | Orientation::HalfTurn => (w, h),
        Orientation::QuarterClockwise | Orientation::QuarterAnticlockwise => (h, w),
    };
    let mut turned = Vec::with_capacity(rgb.len());
    for y in 0..height {
        for x in 0..width {
            let (from_x, from_y) = match held {
                Orientation::Upright => (x, y),
                Orientation::HalfTurn => (w - 1 - x, h - 1 - y),
                Orientation::QuarterClockwise => (w - 1 - y, x),
                Orientation::QuarterAnticlockwise => (y, h - 1 - x),
            };
            let at = (from_y * w + from_x) * 3;
            turned.extend_from_slice(&rgb[at..at + 3]);
        }
    }
    (width, height, turned)
}

/// A TIFF block with the camera's name, the orientation and a date.
///
/// # Source
/// CIPA DC-008 (EXIF 2.32), baseline TIFF 6.0, least significant byte first.
fn exif(held: Orientation, camera: &str) -> Vec<u8> {
    const ENTRIES: u16 = 4;
    const ASCII: u16 = 2;
    let texts = [
        (0x010F, "Invented\0".to_owned()),
        (0x0110, format!("{camera} \0")),
        (0x0132, "2026:01:01 12:00:00\0".to_owned()),
    ];
    let mut data_at = 8 + 2 + 12 * u32::from(ENTRIES) + 4;
    let mut block = b"II\x2A\0\x08\0\0\0".to_vec();
    block.extend(ENTRIES.to_le_bytes());
    let mut entry = |tag: u16, kind: u16, count: u32, value: u32| {
        block.extend(tag.to_le_bytes());
        block.extend(kind.to_le_bytes());
        block.extend(count.to_le_bytes());
        block.extend(value.to_le_bytes());
    };
    for (tag, text) in &texts {
        if *tag == 0x0132 {
            // Tags have to rise: the orientation (a SHORT) stands before the date.
            entry(0x0112, 3, 1, u32::from(held.exif()));
        }
        entry(*tag, ASCII, text.len() as u32, data_at);
        data_at += text.len() as u32;
    }
    block.extend([0; 4]);
    for (_, text) in texts {
        block.extend(text.bytes());
    }
    block
}
