//! Tables of the CIE: observers and illuminants.

pub(crate) mod cmf_1931;
pub(crate) mod cmf_1964;
pub(crate) mod illuminants;
