//! Why a table can't be used.

use super::{MOST_BYTES, MOST_SAMPLES};
use crate::ColourError;

/// What is wrong with a table of colours, where, and what to do.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum TableError {
    /// There is nothing in it.
    #[error("{}", crate::text::table::the_table_is_empty_export_it_again())]
    Empty,
    /// It is not text.
    #[error("{}", crate::text::table::this_is_not_a_text_file_export())]
    NotText,
    /// The text is too long.
    #[error("{}", crate::text::table::the_table_is_larger_than_mb_split(MOST_BYTES / 1024 / 1024))]
    TooLarge,
    /// It has too many rows.
    #[error(
        "{}",
        crate::text::table::the_table_has_more_than_samples_split(MOST_SAMPLES)
    )]
    TooMany,
    /// No column holds a colour.
    #[error("{}", crate::text::table::no_column_of_the_table_holds())]
    NoColour,
    /// Column names but no rows.
    #[error("{}", crate::text::table::the_table_names_its_columns_but(line))]
    NoSamples {
        /// Line of the column names, from 1.
        line: usize,
    },
    /// Two columns of one name.
    #[error(
        "{}",
        crate::text::table::line_names_the_column_twice_leave(line, column)
    )]
    ColumnTwice {
        /// Line of the column names, from 1.
        line: usize,
        /// The column.
        column: String,
    },
    /// A cell holds no number.
    #[error(
        "{}",
        crate::text::table::line_column_is_no_number_write(line, column, text)
    )]
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
        "{}",
        crate::text::table::line_column_nothing_stands_there_fill(line, column)
    )]
    Missing {
        /// The line, from 1.
        line: usize,
        /// The column's name.
        column: String,
    },
    /// A value that no surface has.
    #[error("{}", crate::text::table::line_sample_is_no_surface(line, sample, lab[0], lab[1], lab[2]))]
    NoSurface {
        /// The line, from 1.
        line: usize,
        /// The sample's name.
        sample: String,
        /// L*, a*, b*.
        lab: [f64; 3],
    },
    /// A spectrum that is none.
    #[error("{}", crate::text::table::line_sample_cause(line, sample, cause))]
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
        "{}",
        crate::text::table::line_the_wavelengths_go_by_nm(line, step_nm, from_nm, to_nm)
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
    #[error(
        "{}",
        crate::text::table::line_the_wavelengths_go_by_nm_export(line, step_nm)
    )]
    Coarse {
        /// Line of the column names, from 1.
        line: usize,
        /// The step, nm.
        step_nm: f64,
    },
    /// A light or observer that is not known here.
    #[error("{}", crate::text::table::line_names_no_light_and_observer(line, text))]
    View {
        /// The line, from 1.
        line: usize,
        /// What stands there.
        text: String,
    },
    /// A CGATS file without names for its columns.
    #[error("{}", crate::text::table::line_begin_data_comes_before_any_begin(line))]
    NoFormat {
        /// The line, from 1.
        line: usize,
    },
    /// A row of a CGATS file that has not as many values as there are columns.
    #[error(
        "{}",
        crate::text::table::line_values_stand_where_columns_are(line, found, expected)
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
        "{}",
        crate::text::table::the_file_ends_within_its_data(found, expected)
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
