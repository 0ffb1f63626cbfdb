//! Quantities that carry their unit in their type, and reading them as people write them.

mod amount;
mod celsius;
mod cursor;
mod dose;
mod format;
mod liquor_ratio;
mod mass;
mod minutes;
mod money;
mod number;
mod percent;
mod price;
mod retold;
mod term;
mod unit;
mod volume;

pub use amount::Amount;
pub use celsius::Celsius;
pub use dose::Dose;
pub use liquor_ratio::LiquorRatio;
pub use mass::{Mass, MassUnit};
pub use minutes::Minutes;
pub use money::Money;
pub use percent::{PercentOwf, PercentWv};
pub use price::Price;
pub use unit::Kitchen;
pub use volume::{Volume, VolumeUnit};

pub(crate) use cursor::Cursor;
pub(crate) use format::figure;
pub(crate) use number::read as read_number;
pub(crate) use price::sum as read_sum;
pub(crate) use retold::retold;
pub(crate) use term::volume as read_volume;
