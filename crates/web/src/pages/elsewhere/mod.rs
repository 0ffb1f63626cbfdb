//! Readings from elsewhere and grades by eye: adding them, withdrawing them.

pub(crate) mod add;
pub(crate) mod grade;
pub(crate) mod new;
pub(crate) mod preview;
pub(crate) mod sheet;
pub(crate) mod withdraw;
