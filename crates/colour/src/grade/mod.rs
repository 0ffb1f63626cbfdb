//! The grey scales of ISO 105, by instrument: change in colour and staining.

mod along;
mod fade;
mod half_step;
mod stain;

pub use along::along;
pub use fade::{Fade, difference_of, fade, value_of, worse_from};
pub use half_step::Grade;
pub use stain::{Stain, nearest, stain, stain_difference_of, stain_value_of};
