//! Colour of surfaces, by the published standards.
//!
//! In: reflectance spectra to tristimulus values to CIELAB under the usual
//! lights and observers, colour differences, the instrumental grey-scale grades
//! of ISO 105, strength of dyeing by Kubelka and Munk, chromatic adaptation, tables of samples as instruments write
//! them. Out: files, cameras, screens, dyes. Start with [`Lab`] and [`View`].
//!
//! ```
//! use colour::{Lab, difference, grade};
//! let before = Lab::new(52.31, -28.42, -24.77);
//! let after = Lab::new(55.10, -26.03, -22.91);
//! assert_eq!(format!("{:.4}", difference::ciede2000(before, after)), "2.9339");
//! assert_eq!(grade::fade(before, after).grade.to_string(), "3");
//! ```

pub mod adapt;
pub mod difference;
mod error;
pub mod grade;
mod lab;
mod spectrum;
pub mod strength;
pub mod table;
mod tables;
mod text;
mod typed;
mod view;

pub use error::ColourError;
pub use lab::{Lab, Xyz};
pub use spectrum::Spectrum;
pub use typed::typed_lab;
pub use view::{Illuminant, Observer, View};
