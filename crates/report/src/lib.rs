//! What a trial looks like on paper and on a page: charts, swatches, words, the published report.
//!
//! In: pictures of results as SVG, the plain sentence for each verdict, and one
//! self-contained HTML file with a print stylesheet. Out: the results themselves
//! (they come from `trial`), files, clocks, HTTP. Nothing made here holds a script
//! or asks another host for anything.
//! Start with [`publish`] and [`Published`].

pub mod agreement;
mod baths;
pub mod board;
pub mod chart;
pub mod compare;
mod error;
pub mod eyes;
pub mod fade;
pub mod iso_lines;
pub mod label;
mod limits;
pub mod margin_pair;
pub mod parts;
mod publish;
pub mod qr;
pub mod run_sheet;
pub mod staining;
mod svg;
pub mod swatch;
pub mod table;
mod text;
mod typeset;
pub mod words;

pub use error::ReportError;
pub use publish::{Published, PublishedPhoto, publish};
pub use typeset::typeset;
