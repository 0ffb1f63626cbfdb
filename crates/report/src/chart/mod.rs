//! Charts as SVG: a title and a description for everyone, labels on the lines, no scripts, no styles of their own.
//!
//! Colours are presentation attributes that a page's stylesheet may override by the classes
//! `series-1` to `series-6`, `axis`, `grid`, `mark`.

mod balance;
mod change;
mod fade;
mod grades;
mod margin;
mod power;
mod programme;
mod sign;

pub use balance::dye_balance;
pub use change::change_by_round;
pub use fade::{lowest_share, strength_by_round};
pub use grades::grades_against_margin;
pub use margin::{difference_against_margin, scale_top};
pub use power::power_by_pieces;
pub use programme::temperature_over_time;
pub use sign::verdict_sign;
