//! Arms by stages, each cell with a mean of its own.

use super::{
    Fit, Place,
    data::{Data, Fixed},
};
use crate::InferenceError;
use std::collections::BTreeMap;

/// Values of arms at stages: the fixed effects are the means of the cells that occur.
///
/// Cells may be missing; then only what needs them is refused.
#[derive(Debug, Clone)]
pub struct Cells {
    data: Data,
    /// Column of each arm and stage that occurs.
    columns: BTreeMap<(usize, usize), usize>,
}

impl Cells {
    /// No values yet; `kinds` of loads (0 to 8).
    pub fn new(kinds: usize) -> Self {
        Self {
            data: Data::with(0, kinds, Fixed::Cell(Vec::new())),
            columns: BTreeMap::new(),
        }
    }

    /// Adds the value of a piece of an arm at a stage.
    ///
    /// # Errors
    /// As for [`Data::add`].
    pub fn add(
        &mut self,
        place: Place,
        arm: usize,
        stage: usize,
        value: f64,
    ) -> Result<(), InferenceError> {
        self.data.put(place, value)?;
        let next = self.columns.len();
        let column = *self.columns.entry((arm, stage)).or_insert(next);
        self.data.columns = self.columns.len();
        if let Fixed::Cell(of_rows) = &mut self.data.fixed {
            of_rows.push(column);
        }
        Ok(())
    }

    /// The values as a model's data.
    pub fn data(&self) -> &Data {
        &self.data
    }

    /// The model by restricted likelihood.
    ///
    /// # Errors
    /// As for [`super::restricted`].
    pub fn fit(&self) -> Result<Fit, InferenceError> {
        super::restricted(&self.data)
    }

    /// Weights of an arm's mean at a stage.
    ///
    /// # Errors
    /// A cell without values.
    pub fn mean(&self, arm: usize, stage: usize) -> Result<Vec<f64>, InferenceError> {
        let column = self
            .columns
            .get(&(arm, stage))
            .ok_or(InferenceError::EmptyCell { arm, stage })?;
        let mut weights = vec![0.0; self.columns.len()];
        weights[*column] = 1.0;
        Ok(weights)
    }

    /// Weights of the second arm less the first at a stage.
    ///
    /// # Errors
    /// A cell without values.
    pub fn difference(
        &self,
        first: usize,
        second: usize,
        stage: usize,
    ) -> Result<Vec<f64>, InferenceError> {
        Ok(less(&self.mean(second, stage)?, &self.mean(first, stage)?))
    }

    /// Weights of an arm's change from one stage to another.
    ///
    /// # Errors
    /// A cell without values.
    pub fn change(&self, arm: usize, from: usize, to: usize) -> Result<Vec<f64>, InferenceError> {
        Ok(less(&self.mean(arm, to)?, &self.mean(arm, from)?))
    }

    /// Weights of the second arm's change less the first's, from one stage to another.
    ///
    /// # Errors
    /// A cell without values.
    pub fn difference_of_changes(
        &self,
        first: usize,
        second: usize,
        from: usize,
        to: usize,
    ) -> Result<Vec<f64>, InferenceError> {
        Ok(less(
            &self.change(second, from, to)?,
            &self.change(first, from, to)?,
        ))
    }

    /// Weights of the second arm less the first, on average over the stages at which
    /// both have values.
    ///
    /// # Errors
    /// No such stage.
    pub fn average_difference(
        &self,
        first: usize,
        second: usize,
    ) -> Result<Vec<f64>, InferenceError> {
        let shared: Vec<usize> = self
            .columns
            .keys()
            .filter(|(arm, stage)| *arm == first && self.columns.contains_key(&(second, *stage)))
            .map(|(_, stage)| *stage)
            .collect();
        if shared.is_empty() {
            return Err(InferenceError::TooFew { given: 0, least: 1 });
        }
        let mut weights = vec![0.0; self.columns.len()];
        for &stage in &shared {
            for (sum, weight) in weights
                .iter_mut()
                .zip(self.difference(first, second, stage)?)
            {
                *sum += weight / shared.len() as f64;
            }
        }
        Ok(weights)
    }
}

fn less(a: &[f64], b: &[f64]) -> Vec<f64> {
    a.iter().zip(b).map(|(a, b)| a - b).collect()
}
