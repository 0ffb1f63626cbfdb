//! The board: a printed sheet on which pieces lie for a photo.
//!
//! In: where everything on it lies, what its codes say, the code of a tag, and
//! finding all of that in a photo. Out: words and drawing, which are `report`'s.
//! Know [`Board::layout`], [`Code`] and [`BoardSeen`] first.

mod ask;
mod code;
mod corners;
mod finder;
mod label;
mod layout;
mod outline;
mod paper;
mod picture;
mod print;
mod seen;
mod window;

pub use code::{Code, CodeError};
pub use label::{LONGEST_TRIAL, VERSION};
pub use layout::{Board, Kind, Layout, Paper, Rect, TAG, Window};
pub use print::{Printed, tag_code};
pub use seen::{BoardSeen, WindowSeen};

pub(crate) use ask::{asked, chart_in_dock, noticed};
