//! Rows and columns of a chart.

use super::{Sample, Table, TableError};
use crate::text;

/// How a chart's patches are laid out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Layout {
    /// Patches from top to bottom.
    pub rows: usize,
    /// Patches from left to right.
    pub columns: usize,
}

impl Table {
    /// The samples as patches of a chart, row by row from the top left one.
    ///
    /// Their places come from the columns `row` and `column`; else, where the table
    /// says its rows and columns (`# rows 4 columns 6`, the keywords `ROWS` and
    /// `COLUMNS`), from the order of the samples or from names like A1 to F4; else
    /// from such names alone, a chart lying on its long side; else, for 24 samples,
    /// the order is that of 4 rows of 6.
    ///
    /// # Errors
    /// Places that are not said, or that two samples or none have.
    pub fn laid_out(&self) -> Result<(Layout, Vec<&Sample>), TableError> {
        let count = self.samples.len();
        if self.samples.iter().any(|s| s.place.is_some()) {
            return self.by_place();
        }
        let said = match (self.said_layout.rows, self.said_layout.columns) {
            (Some(rows), Some(columns)) => Some(Layout { rows, columns }),
            (Some(rows), None) => layout_of(count, rows).map(|columns| Layout { rows, columns }),
            (None, Some(columns)) => layout_of(count, columns).map(|rows| Layout { rows, columns }),
            (None, None) => None,
        };
        if let Some(layout) = said {
            if layout.rows.checked_mul(layout.columns) != Some(count) {
                return Err(TableError::Layout(
                    text::table::the_table_says_rows_of_patches(layout.rows, layout.columns, count),
                ));
            }
            let placed = self.by_name().filter(|(found, _)| *found == layout);
            return Ok(placed.unwrap_or_else(|| (layout, self.samples.iter().collect())));
        }
        if self.said_layout.rows.is_some() || self.said_layout.columns.is_some() {
            return Err(TableError::Layout(
                text::table::the_tables_samples_dont_fill_whole_rows(count),
            ));
        }
        if let Some(placed) = self.by_name() {
            return Ok(placed);
        }
        if count == 24 {
            return Ok((
                Layout {
                    rows: 4,
                    columns: 6,
                },
                self.samples.iter().collect(),
            ));
        }
        Err(TableError::Layout(
            text::table::the_table_has_patches_and_their_rows(count),
        ))
    }

    fn by_place(&self) -> Result<(Layout, Vec<&Sample>), TableError> {
        let mut placed = Vec::with_capacity(self.samples.len());
        for sample in &self.samples {
            let place = sample.place.ok_or_else(|| {
                TableError::Layout(text::table::line_sample_its_row_or_column(
                    sample.line,
                    &sample.name,
                ))
            })?;
            placed.push((place, sample));
        }
        complete(placed.clone()).ok_or_else(|| {
            placed.sort_by_key(|(place, _)| *place);
            let twice = placed.windows(2).find(|pair| pair[0].0 == pair[1].0);
            TableError::Layout(match twice {
                Some([(_, one), (_, other)]) => text::table::line_has_the_same_row_and_column(
                    other.line,
                    &other.name,
                    &one.name,
                    one.line,
                ),
                _ => text::table::the_rows_and_columns_leave_places().into(),
            })
        })
    }

    /// Places from names of a letter and a number, if they fill a rectangle.
    fn by_name(&self) -> Option<(Layout, Vec<&Sample>)> {
        let mut by_letter = Vec::with_capacity(self.samples.len());
        for sample in &self.samples {
            let mut chars = sample.name.chars();
            let letter = chars
                .next()
                .filter(char::is_ascii_alphabetic)?
                .to_ascii_uppercase();
            let number: usize = chars
                .as_str()
                .parse()
                .ok()
                .filter(|n| (1..=99).contains(n))?;
            by_letter.push(((letter as usize - 'A' as usize, number - 1), sample));
        }
        let (layout, _) = complete(by_letter.clone())?;
        let letters_down = match (self.said_layout.rows, self.said_layout.columns) {
            (Some(rows), _) => rows == layout.rows,
            (None, Some(columns)) => columns == layout.columns,
            (None, None) => layout.rows <= layout.columns,
        };
        if letters_down {
            return complete(by_letter);
        }
        complete(
            by_letter
                .into_iter()
                .map(|((letter, number), s)| ((number, letter), s))
                .collect(),
        )
    }
}

fn layout_of(count: usize, one: usize) -> Option<usize> {
    (one > 0 && count.is_multiple_of(one)).then(|| count / one)
}

/// The layout and the samples in its order, if every place is taken once.
fn complete(mut placed: Vec<((usize, usize), &Sample)>) -> Option<(Layout, Vec<&Sample>)> {
    placed.sort_by_key(|(place, _)| *place);
    let &((last_row, last_column), _) = placed.last()?;
    let (rows, columns) = (last_row + 1, last_column + 1);
    let full = rows.checked_mul(columns) == Some(placed.len())
        && placed
            .iter()
            .enumerate()
            .all(|(i, (place, _))| *place == (i / columns, i % columns));
    full.then(|| {
        (
            Layout { rows, columns },
            placed.into_iter().map(|(_, sample)| sample).collect(),
        )
    })
}
