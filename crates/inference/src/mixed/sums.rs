//! What a mixed model needs to know of its values: sums that are made once.
//!
//! Each value has a row: fixed effects, one column for each load, the value itself.
//! The pieces' part of the covariance is a constant within each piece, so the inverse
//! takes from the rows' products those of the pieces' sums, with a weight that
//! depends only on how many values the piece has.

use super::data::Data;
use crate::InferenceError;
use crate::text;
use nalgebra::DMatrix;
use std::collections::BTreeMap;

/// Fixed effects and loads that are fitted together at most.
const MOST_COLUMNS: usize = 1000;
/// Numbers kept at most.
const MOST_KEPT: usize = 40_000_000;
/// Part of a column's length that has to be left beside those before it.
const NOTHING: f64 = 1e-10;

/// Sums of products.
#[derive(Debug, Clone)]
pub(super) struct Sums {
    /// Fixed effects, loads, the value.
    pub of_rows: DMatrix<f64>,
    /// For each number of values in a piece: how many pieces, products of their sums.
    pub of_pieces: Vec<(f64, f64, DMatrix<f64>)>,
    pub fixed: usize,
    /// Where the loads of each kind stand among all columns.
    pub kinds: Vec<std::ops::Range<usize>>,
    /// Values less fixed effects.
    pub free: f64,
    pub values: usize,
    /// Values of one piece, or of one load, at most.
    pub most_in_one: f64,
    /// What the fixed effects were divided by.
    pub scales: Vec<f64>,
    /// What the values were divided by.
    pub unit: f64,
    /// Fixed effects that were taken off the values before, in scaled columns.
    pub taken: Vec<f64>,
}

impl Sums {
    pub(super) fn of(data: &Data) -> Result<Self, InferenceError> {
        let (values, fixed) = (data.len(), data.columns);
        if values <= fixed || values == 0 {
            return Err(InferenceError::TooFew {
                given: values,
                least: fixed + 1,
            });
        }
        let (kinds, load_columns) = load_columns(data);
        let loads = kinds.last().map_or(fixed, |last| last.end);
        let what = text::error::number_of_fixed_effects_and_loads();
        InferenceError::unless(
            loads <= MOST_COLUMNS,
            what,
            loads as f64,
            text::error::at_most_1000(),
        )?;
        let scales = scales(data);
        let (taken, left) = ordinary(data, &scales)?;
        let size = data
            .values
            .iter()
            .fold(0.0_f64, |most, v| most.max(v.abs()));
        let unit = (left.iter().map(|v| v * v).sum::<f64>() / values as f64).sqrt();
        // Below this the rest is the rounding of the values.
        if unit <= 1e-13 * size {
            return Err(InferenceError::NoScatter);
        }
        let mut found = Self {
            of_rows: DMatrix::zeros(loads + 1, loads + 1),
            of_pieces: Vec::new(),
            fixed,
            kinds,
            free: (values - fixed) as f64,
            values,
            most_in_one: 1.0,
            scales,
            unit,
            taken,
        };
        found.add_up(data, &load_columns, &left)?;
        Ok(found)
    }

    fn add_up(
        &mut self,
        data: &Data,
        load_columns: &[usize],
        left: &[f64],
    ) -> Result<(), InferenceError> {
        let size = self.of_rows.nrows();
        let mut order: Vec<usize> = (0..data.len()).collect();
        order.sort_by_key(|&at| data.pieces[at]);
        let mut by_count: BTreeMap<usize, (usize, DMatrix<f64>)> = BTreeMap::new();
        let mut row: Vec<(usize, f64)> = Vec::new();
        let mut sum = vec![0.0; size];
        let mut touched: Vec<usize> = Vec::new();
        for piece in order.chunk_by(|&a, &b| data.pieces[a] == data.pieces[b]) {
            for &at in piece {
                row.clear();
                data.each_fixed(at, |column, entry| {
                    row.push((column, entry / self.scales[column]));
                });
                let own = &load_columns[at * data.kinds..(at + 1) * data.kinds];
                row.extend(own.iter().filter(|c| **c != usize::MAX).map(|c| (*c, 1.0)));
                row.push((size - 1, left[at] / self.unit));
                for &(i, a) in &row {
                    if sum[i] == 0.0 {
                        touched.push(i);
                    }
                    sum[i] += a;
                    for &(j, b) in &row {
                        self.of_rows[(i, j)] += a * b;
                    }
                }
            }
            touched.sort_unstable();
            touched.dedup();
            let kept = (by_count.len() + 1) * size * size;
            let what = text::error::number_of_fixed_effects_and_loads_2();
            InferenceError::unless(
                kept <= MOST_KEPT,
                what,
                kept as f64,
                text::error::at_most_40_million(),
            )?;
            let (count, products) = by_count
                .entry(piece.len())
                .or_insert_with(|| (0, DMatrix::zeros(size, size)));
            *count += 1;
            for &i in &touched {
                for &j in &touched {
                    products[(i, j)] += sum[i] * sum[j];
                }
            }
            touched.drain(..).for_each(|i| sum[i] = 0.0);
        }
        self.of_pieces = by_count
            .into_iter()
            .map(|(values, (count, products))| (values as f64, count as f64, products))
            .collect();
        let in_loads = (self.fixed..size - 1).map(|i| self.of_rows[(i, i)]);
        let in_pieces = self.of_pieces.iter().map(|(values, _, _)| *values);
        self.most_in_one = in_loads.chain(in_pieces).fold(1.0, f64::max);
        Ok(())
    }

    /// Size of each part's covariance, as its sum of squares: pieces, kinds of loads.
    pub(super) fn plain(&self) -> Vec<f64> {
        let pieces = self
            .of_pieces
            .iter()
            .map(|(n, count, _)| count * n * n)
            .sum();
        let kinds = self.kinds.iter().map(|range| {
            let sizes = range.clone().map(|i| self.of_rows[(i, i)]);
            sizes.map(|n| n * n).sum()
        });
        std::iter::once(pieces).chain(kinds).collect()
    }

    /// Fixed effects and loads.
    pub(super) fn columns(&self) -> usize {
        self.of_rows.nrows() - 1
    }
}

/// Where each kind's loads stand, and the column of each value's loads.
fn load_columns(data: &Data) -> (Vec<std::ops::Range<usize>>, Vec<usize>) {
    let mut found = vec![usize::MAX; data.loads.len()];
    let mut next = data.columns;
    let kinds = (0..data.kinds).map(|kind| {
        let mut known = BTreeMap::new();
        let from = next;
        for at in 0..data.len() {
            if let Some(load) = data.loads[at * data.kinds + kind] {
                let column = *known.entry(load).or_insert_with(|| {
                    next += 1;
                    next - 1
                });
                found[at * data.kinds + kind] = column;
            }
        }
        from..next
    });
    let kinds = kinds.collect();
    (kinds, found)
}

/// The length of each fixed column.
fn scales(data: &Data) -> Vec<f64> {
    let mut squares = vec![0.0; data.columns];
    for at in 0..data.len() {
        data.each_fixed(at, |column, entry| squares[column] += entry * entry);
    }
    squares
        .iter()
        .map(|s: &f64| if *s > 0.0 { s.sqrt() } else { 1.0 })
        .collect()
}

/// Fixed effects by ordinary least squares in scaled columns, and what they leave.
/// Done twice: the second pass takes away the rounding of the first.
fn ordinary(data: &Data, scales: &[f64]) -> Result<(Vec<f64>, Vec<f64>), InferenceError> {
    let fixed = data.columns;
    let mut normal = DMatrix::<f64>::zeros(fixed, fixed);
    let mut row: Vec<(usize, f64)> = Vec::new();
    for at in 0..data.len() {
        row.clear();
        data.each_fixed(at, |column, entry| {
            row.push((column, entry / scales[column]))
        });
        for &(i, a) in &row {
            for &(j, b) in &row {
                normal[(i, j)] += a * b;
            }
        }
    }
    let root = root(normal)?;
    let mut effects = vec![0.0; fixed];
    let mut left = data.values.clone();
    for _ in 0..2 {
        let mut right = nalgebra::DVector::<f64>::zeros(fixed);
        for (at, value) in left.iter().enumerate() {
            data.each_fixed(at, |column, entry| {
                right[column] += entry / scales[column] * value
            });
        }
        let step = root.solve(&right);
        for (at, value) in left.iter_mut().enumerate() {
            data.each_fixed(at, |column, entry| {
                *value -= entry / scales[column] * step[column]
            });
        }
        effects
            .iter_mut()
            .zip(step.iter())
            .for_each(|(e, s)| *e += s);
    }
    Ok((effects, left))
}

/// The root of the normal equations of columns of length 1.
fn root(normal: DMatrix<f64>) -> Result<nalgebra::Cholesky<f64, nalgebra::Dyn>, InferenceError> {
    let count = normal.nrows();
    let mut lower = DMatrix::<f64>::zeros(count, count);
    for j in 0..count {
        // What is left of the column beside those before it.
        let left = normal[(j, j)] - lower.row(j).columns(0, j).norm_squared();
        if left <= NOTHING {
            return Err(InferenceError::Inseparable { column: j });
        }
        lower[(j, j)] = left.sqrt();
        for i in j + 1..count {
            let shared = lower.row(i).columns(0, j).dot(&lower.row(j).columns(0, j));
            lower[(i, j)] = (normal[(i, j)] - shared) / lower[(j, j)];
        }
    }
    Ok(nalgebra::Cholesky::pack_dirty(lower))
}
