//! A plan from its text.

use super::{Enquiry, Plan, PlanError};
use crate::text;
use serde::de::DeserializeOwned;

/// Bytes of a plan's text; a plan of the greatest size needs a tenth.
const MOST_BYTES: usize = 1_000_000;

impl Plan {
    /// Reads a plan from TOML and checks it.
    ///
    /// # Errors
    /// Text that is no plan (with line and column), or the first field that
    /// can't be taken.
    pub fn from_toml(text: &str) -> Result<Self, PlanError> {
        let plan: Self = read(text, text::plan::the_plan())?;
        plan.check()?;
        Ok(plan)
    }

    /// Writes the plan as TOML that [`Self::from_toml`] reads.
    ///
    /// # Errors
    /// A number that TOML has no place for.
    pub fn to_toml(&self) -> Result<String, PlanError> {
        toml::to_string_pretty(self)
            .map_err(|error| PlanError::new("", text::plan::the_plan_cant_be_written(&error)))
    }
}

impl Enquiry {
    /// Reads an enquiry from TOML.
    ///
    /// # Errors
    /// Text that is no enquiry, with line and column.
    pub fn from_toml(text: &str) -> Result<Self, PlanError> {
        read(text, text::plan::the_enquiry())
    }
}

fn read<T: DeserializeOwned>(text: &str, what: &str) -> Result<T, PlanError> {
    if text.len() > MOST_BYTES {
        return Err(PlanError::new(
            "",
            text::plan::this_file_has_bytes_a_plan(text.len(), MOST_BYTES),
        ));
    }
    dyeing::entries::read(text, what).map_err(|unread| PlanError::new("", unread.to_string()))
}
