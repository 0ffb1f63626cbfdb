//! Why a table can't be used.

use super::{MOST_BYTES, MOST_SAMPLES};
use crate::ColourError;

/// What is wrong with a table of colours, where, and what to do.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum TableError {
    /// There is nothing in it.
    #[error("the table is empty; export it again with a row for each sample")]
    Empty,
    /// It is not text.
    #[error("this is not a text file; export the readings as CSV or as CGATS text")]
    NotText,
    /// The text is too long.
    #[error("the table is larger than {} MB; split it", MOST_BYTES / 1024 / 1024)]
    TooLarge,
    /// It has too many rows.
    #[error("the table has more than {MOST_SAMPLES} samples; split it")]
    TooMany,
    /// No column holds a colour.
    #[error(
        "no column of the table holds a colour; name the columns L, a and b, or give each wavelength a column \
         such as 400, 410, ... 700"
    )]
    NoColour,
    /// Column names but no rows.
    #[error("the table names its columns but has no samples below line {line}; export it again")]
    NoSamples {
        /// Line of the column names, from 1.
        line: usize,
    },
    /// Two columns of one name.
    #[error("line {line} names the column \"{column}\" twice; leave one of them out")]
    ColumnTwice {
        /// Line of the column names, from 1.
        line: usize,
        /// The column.
        column: String,
    },
    /// A cell holds no number.
    #[error("line {line}, column \"{column}\": \"{text}\" is no number; write it like 41.2")]
    Number {
        /// The line, from 1.
        line: usize,
        /// The column's name.
        column: String,
        /// What stands there.
        text: String,
    },
    /// A cell is empty or missing.
    #[error(
        "line {line}, column \"{column}\": nothing stands there; fill it in or leave out the sample"
    )]
    Missing {
        /// The line, from 1.
        line: usize,
        /// The column's name.
        column: String,
    },
    /// A value that no surface has.
    #[error(
        "line {line}, sample \"{sample}\": L {}, a {}, b {} is no surface's colour; L lies between 0 and 100, \
         a and b between -200 and 200", lab[0], lab[1], lab[2]
    )]
    NoSurface {
        /// The line, from 1.
        line: usize,
        /// The sample's name.
        sample: String,
        /// L*, a*, b*.
        lab: [f64; 3],
    },
    /// A spectrum that is none.
    #[error("line {line}, sample \"{sample}\": {cause}")]
    Spectrum {
        /// The line, from 1.
        line: usize,
        /// The sample's name.
        sample: String,
        /// What is wrong with it.
        cause: ColourError,
    },
    /// Wavelengths that are not evenly stepped.
    #[error(
        "line {line}: the wavelengths go by {step_nm} nm and then from {from_nm} to {to_nm} nm; \
         export them evenly, by 1, 5, 10 or 20 nm"
    )]
    Uneven {
        /// Line of the column names, from 1.
        line: usize,
        /// The step before, nm.
        step_nm: f64,
        /// Where the step changes, nm.
        from_nm: f64,
        /// The next wavelength, nm.
        to_nm: f64,
    },
    /// Wavelengths too far apart.
    #[error("line {line}: the wavelengths go by {step_nm} nm; export them by 20 nm or finer")]
    Coarse {
        /// Line of the column names, from 1.
        line: usize,
        /// The step, nm.
        step_nm: f64,
    },
    /// A light or observer that is not known here.
    #[error(
        "line {line}: \"{text}\" names no light and observer that is known here; use D65/10, D65/2, D50/2, A/10, \
         FL2/10 or FL11/10"
    )]
    View {
        /// The line, from 1.
        line: usize,
        /// What stands there.
        text: String,
    },
    /// A CGATS file without names for its columns.
    #[error(
        "line {line}: BEGIN_DATA comes before any BEGIN_DATA_FORMAT with names for the columns; export the file again"
    )]
    NoFormat {
        /// The line, from 1.
        line: usize,
    },
    /// A row of a CGATS file that has not as many values as there are columns.
    #[error(
        "line {line}: {found} values stand where {expected} columns are named; see that no value is missing"
    )]
    RowLength {
        /// The line, from 1.
        line: usize,
        /// Values found.
        found: usize,
        /// Columns named.
        expected: usize,
    },
    /// A CGATS file that ends too soon.
    #[error(
        "the file ends within its data: {found} of {expected} samples are there; export or copy it again"
    )]
    CutOff {
        /// Samples found.
        found: usize,
        /// Samples announced.
        expected: usize,
    },
    /// Something about a chart's rows and columns.
    #[error("{0}")]
    Layout(String),
}
