//! From a photograph to colours with an honest plus-or-minus.
//!
//! In: decoding to upright pixels, finding the 24-patch chart, correcting tone,
//! colour and light by it, reading areas, refusing in words what can't be read.
//! Out: who a piece is, what it means, where files are kept. Start with
//! [`read`] and [`Request`]; [`survey`] looks whether a photo can be read at all.
//!
//! Nothing here reads a file or a clock: a photo comes in as bytes.
//!
//! ```
//! let refusal = photo::survey(b"just some words", None).unwrap_err();
//! assert_eq!(refusal.code.as_str(), "not_a_photo");
//! ```

mod area;
mod bell;
mod blur;
pub mod board;
mod chart;
mod correct;
mod decode;
mod flag;
mod interval;
mod light;
mod likely;
mod map;
mod matrix;
mod median;
mod mixture;
mod patches;
mod preview;
mod read;
mod reference;
mod refusal;
mod request;
mod retake;
mod survey;
mod text;

pub use flag::{Flag, FlagCode};
pub use map::{LightGrid, PatchPlace, PhotoMap, Spot, Trouble};
pub use preview::{Tiles, preview, tiles};
pub use read::{
    AreaReading, ChartFit, Difference, GreyComparison, GreyRequest, Parts, PhotoReading,
    SeenColour, Split, SplitPart, compare_by_grey, covariance_of_difference,
    covariance_of_errors_across, de00_interval, read,
};
pub use reference::{ChartReference, KnownAs, ReferenceError};
pub use refusal::{Refusal, RefusalCode};
pub use request::{Area, Point, Request};
pub use survey::{Survey, chart_is_usable, survey, survey_by};
