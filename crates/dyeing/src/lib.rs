//! The dyer's arithmetic: from a recipe to baths, a run sheet, cautions and a price.
//!
//! In: quantities with units, written as people write them; recipes; classes of dye; what
//! goes wrong; how dye shares itself between cloth and water; where it went, by readings of the waters. Out: colours, clocks, files.
//! Numbers go in with their unit and come out in metric and in kitchen measures.
//!
//! ```
//! use dyeing::{LiquorRatio, Mass, PercentOwf};
//!
//! let goods: Mass = "250 g".parse()?;
//! let dye = PercentOwf::new(2.5)?.of(goods)?;
//! let liquor = "20:1".parse::<LiquorRatio>()?.liquor(goods)?;
//! assert_eq!((dye.metric(), liquor.metric()), ("6.25 g".into(), "5 L".into()));
//! # Ok::<(), dyeing::DyeingError>(())
//! ```

pub mod absorbance;
pub mod balance;
pub mod caution;
pub mod check;
pub mod class;
pub mod cost;
pub mod entries;
mod error;
pub mod exhaustion;
pub mod fibre;
pub mod goods;
pub mod heat;
pub mod hydrate;
pub mod kitchen;
mod known;
pub mod material;
mod place;
pub mod plan;
pub mod programme;
mod quantity;
pub mod recipe;
pub mod rinse;
pub mod run;
pub mod run_sheet;
pub mod scale;
pub mod stock;
mod text;

pub use error::{DyeingError, ParseFault};
pub use place::{Added, Entry, Part, Place};
pub use plan::Plan;
pub use quantity::{
    Amount, Celsius, Dose, Kitchen, LiquorRatio, Mass, MassUnit, Minutes, Money, PercentOwf,
    PercentWv, Price, Volume, VolumeUnit,
};
pub use recipe::Recipe;

/// The water that brings a bath to its volume, after liquids that are in it already.
///
/// # Errors
/// Refuses liquids that are more than the bath.
pub fn top_up(
    bath: Volume,
    liquids: impl IntoIterator<Item = Volume>,
) -> Result<Volume, DyeingError> {
    let liquids: Volume = liquids.into_iter().sum();
    // Sums of stock solutions may miss the bath's volume by a rounding.
    let rest_ml = bath.millilitres() - liquids.millilitres();
    if rest_ml < -1e-9 * bath.millilitres() {
        return Err(Part::Water
            .whole()
            .says(text::dyeing::the_solutions_alone_are_more_2(
                liquids.shown(),
                bath.shown(),
            )));
    }
    Volume::from_millilitres(rest_ml.max(0.0))
}
