//! How hard a drawn photograph is to read.

/// The bounds within which a photograph is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Difficulty {
    /// Taken with care: daylight or a good white diode, even light, hardly any
    /// tilt (up to 8 degrees), plain tones, grey or white paper.
    Easy,
    /// Taken at home: any light, narrow-banded at times, the tones of a telephone,
    /// tilt up to 15 degrees, light that falls off by 15 to 25 %, dark corners.
    #[default]
    Medium,
    /// Taken in haste: narrow-banded and mixed light, strong tones, tilt up to 25
    /// degrees, light that falls off by up to 40 %, shadows, hands, busy tables and
    /// JPEG quality 70 to 82.
    Hard,
}
