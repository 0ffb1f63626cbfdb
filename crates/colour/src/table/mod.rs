//! Named samples from a table that an instrument or a person wrote.
//!
//! In: the text of a CGATS file or of a CSV, with reflectance by wavelength,
//! CIELAB or tristimulus values. Out: files; a name for what a sample is of.
//!
//! ```
//! use colour::{Lab, View, table};
//! let text = "name;L;a;b;view\nP1;41,2;20,1;5,0;D65/10\n";
//! let read = table::read(text, View::D65_10)?;
//! assert_eq!(read.samples[0].name, "P1");
//! let lab = Lab::new(41.2, 20.1, 5.0);
//! let view = View::D65_10;
//! assert_eq!(read.samples[0].value, table::Value::Lab { lab, view });
//! # Ok::<(), table::TableError>(())
//! ```

mod cgats;
mod column;
mod delimited;
mod error;
mod interpret;
mod layout;
mod light;
mod said;
mod text;
mod written;

pub use error::TableError;
pub use layout::Layout;
pub use text::text;

use crate::{Lab, Spectrum, View};

/// The longest text that is taken, bytes: some hundred times the largest chart's.
pub const MOST_BYTES: usize = 8 * 1024 * 1024;
/// The most samples that are taken from one table.
pub const MOST_SAMPLES: usize = 10_000;

/// The samples of one table, in the order they stand in it.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// The samples, at least one.
    pub samples: Vec<Sample>,
    /// The instrument, where the table names it.
    pub instrument: Option<String>,
    /// What was taken for granted or left out, in sentences.
    pub notes: Vec<String>,
    said_layout: said::SaidLayout,
}

/// One sample of a table.
#[derive(Debug, Clone, PartialEq)]
pub struct Sample {
    /// Its name; its number in the table, from 1, where the table has no names.
    pub name: String,
    /// Its colour.
    pub value: Value,
    /// The line of the text it stands on, from 1.
    pub line: usize,
    /// Row and column of a chart, from 0, where the table gives them.
    place: Option<(usize, usize)>,
}

/// What a table knows of a sample's colour.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// Its reflectance by wavelength.
    Spectrum(Spectrum),
    /// Its CIELAB under one light.
    Lab {
        /// The colour.
        lab: Lab,
        /// Its light and observer.
        view: View,
    },
}

/// Reads CGATS text or a CSV.
///
/// CGATS is known by its `BEGIN_DATA`; anything else is a CSV parted by commas,
/// semicolons or tabs, with a sample a row (or, for spectra, a sample a column).
/// Numbers may have a decimal comma. Columns, by their names in any case:
///
/// - a wavelength in nm, alone or behind a word (`400`, `nm400`, `SPECTRAL_NM_400`,
///   `R 400 nm`): 300 to 830 nm are taken, evenly stepped by 20 nm at most, and
///   400 to 700 nm have to be there. Reflectance is a share of the light, or
///   percent when any value is above 2 or the table says so (`# unit percent`);
/// - `L`, `a`, `b` (`LAB_L`, `L*(10°/D65)`, ...), or `X`, `Y`, `Z` (`XYZ_X`, ...);
/// - the sample's name (`SAMPLE_NAME`, `SAMPLE_ID`, `name`, `piece`, `patch`, ...);
/// - `view`, or `illuminant` and `observer`, for a row's light and observer; the
///   whole table's come from keywords (`ILLUMINATION_NAME`, `OBSERVER_ANGLE`, ...),
///   from a comment such as `# view D50/2` or from the columns' names;
/// - `row` and `column` of a chart, counted from 1.
///
/// Where nothing names light and observer, `unsaid` is taken and a note says so.
/// Spectra are preferred where a table has several kinds.
///
/// # Errors
/// A text that is no table, or a cell that can't be taken: the line, the column
/// and what to do.
///
/// # Source
/// ISO 28178 (CGATS), from memory and public descriptions.
pub fn read(text: &str, unsaid: View) -> Result<Table, TableError> {
    if text.len() > MOST_BYTES {
        return Err(TableError::TooLarge);
    }
    let text = text.trim_start_matches('\u{feff}');
    if text.trim().is_empty() {
        return Err(TableError::Empty);
    }
    if cgats::is_cgats(text) {
        let (tables, notes) = cgats::tables(text)?;
        interpret::best(&tables, notes, unsaid)
    } else {
        interpret::best(&[delimited::table(text)?], Vec::new(), unsaid)
    }
}

#[cfg(test)]
mod tests;
