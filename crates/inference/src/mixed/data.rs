//! The values of a mixed model, and where each stands.

use crate::InferenceError;
use crate::text;

/// Values taken by one model at most.
pub(super) const MOST_VALUES: usize = 4_000_000;
/// Kinds of loads at most.
const MOST_KINDS: usize = 8;

/// Which piece a value is of, and the loads that it shares with others.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Place<'a> {
    /// Any number that stands for the piece.
    pub piece: usize,
    /// A number for the load of each kind (dye bath, wash), none where it was in
    /// none. As many as the model has kinds. A piece may change loads from stage to
    /// stage (crossed) or stay in one (nested); numbers count within their kind.
    pub loads: &'a [Option<usize>],
}

/// Values with their fixed effects, pieces and loads.
///
/// A missing value is one that isn't added: pieces may have any number of values.
#[derive(Debug, Clone)]
pub struct Data {
    /// Fixed effects.
    pub(super) columns: usize,
    pub(super) kinds: usize,
    pub(super) pieces: Vec<usize>,
    /// `kinds` for each value.
    pub(super) loads: Vec<Option<usize>>,
    pub(super) fixed: Fixed,
    pub(super) values: Vec<f64>,
}

/// The fixed effects of each value.
#[derive(Debug, Clone)]
pub(super) enum Fixed {
    /// A row of numbers each.
    Rows(Vec<f64>),
    /// The one column that is 1, the others being 0.
    Cell(Vec<usize>),
}

impl Data {
    /// No values yet, of a model with that many fixed effects, which have to hold a
    /// constant (or columns that add up to one) unless there is none, and that many
    /// kinds of loads (0 to 8).
    pub fn new(columns: usize, kinds: usize) -> Self {
        Self::with(columns, kinds, Fixed::Rows(Vec::new()))
    }

    pub(super) fn with(columns: usize, kinds: usize, fixed: Fixed) -> Self {
        Self {
            columns,
            kinds,
            pieces: Vec::new(),
            loads: Vec::new(),
            fixed,
            values: Vec::new(),
        }
    }

    /// Adds a value whose mean is the sum of the fixed effects times `row`.
    ///
    /// # Errors
    /// A number that is not finite, a row or loads of another length than the
    /// model's, more than 4 million values, more than 8 kinds of loads.
    pub fn add(&mut self, place: Place, row: &[f64], value: f64) -> Result<(), InferenceError> {
        length(row.len(), self.columns)?;
        if row.iter().any(|v| !v.is_finite()) {
            return Err(InferenceError::NotFinite);
        }
        self.put(place, value)?;
        if let Fixed::Rows(rows) = &mut self.fixed {
            rows.extend_from_slice(row);
        }
        Ok(())
    }

    /// Adds all but the fixed effects.
    pub(super) fn put(&mut self, place: Place, value: f64) -> Result<(), InferenceError> {
        length(place.loads.len(), self.kinds)?;
        if !value.is_finite() {
            return Err(InferenceError::NotFinite);
        }
        let kinds = self.kinds as f64;
        InferenceError::unless(
            self.kinds <= MOST_KINDS,
            text::error::number_of_kinds_of_loads(),
            kinds,
            text::error::at_most_8(),
        )?;
        let count = self.values.len();
        InferenceError::unless(
            count < MOST_VALUES,
            text::error::number_of_values(),
            count as f64,
            text::error::at_most_4_million(),
        )?;
        self.pieces.push(place.piece);
        self.loads.extend_from_slice(place.loads);
        self.values.push(value);
        Ok(())
    }

    /// How many values there are.
    pub fn len(&self) -> usize {
        self.values.len()
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.values.is_empty()
    }

    /// What stands in the fixed columns of a value, where it isn't 0.
    pub(super) fn each_fixed(&self, at: usize, mut to: impl FnMut(usize, f64)) {
        match &self.fixed {
            Fixed::Cell(columns) => to(columns[at], 1.0),
            Fixed::Rows(rows) => {
                let row = &rows[at * self.columns..(at + 1) * self.columns];
                for (column, &entry) in row.iter().enumerate() {
                    if entry != 0.0 {
                        to(column, entry);
                    }
                }
            }
        }
    }
}

pub(super) fn length(given: usize, wanted: usize) -> Result<(), InferenceError> {
    if given == wanted {
        Ok(())
    } else {
        Err(InferenceError::Length { given, wanted })
    }
}
