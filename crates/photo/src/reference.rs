//! What the chart's patches truly are.

mod estimate;

use colour::{
    Lab, Spectrum, View, Xyz,
    table::{self, Layout, TableError, Value},
};
use estimate::Estimate;
use thiserror::Error;

/// The published average spectra, in the chart's order.
const PUBLISHED: &str = include_str!("../data/chart24_spectra_10nm.csv");

/// Chroma C*ab below which a patch counts as neutral. Charts' greys lie below 4,
/// their palest colours above 9.
const NEUTRAL_BELOW: f64 = 6.0;
/// The most rows or columns a chart may have.
const MOST_ACROSS: usize = 64;

/// The true colours of a chart's patches, row by row from its first.
#[derive(Debug, Clone, PartialEq)]
pub struct ChartReference {
    layout: Layout,
    known: Known,
}

#[derive(Debug, Clone, PartialEq)]
enum Known {
    Spectra(Vec<Spectrum>),
    Lab { patches: Vec<Lab>, view: View },
}

/// How well a chart's patches are known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum KnownAs {
    /// By their spectra: exact in every view.
    Spectra,
    /// By their CIELAB in one view, and an estimate in any other.
    Lab(View),
}

/// Why a table of patches can't be used.
#[derive(Debug, Error)]
pub enum ReferenceError {
    /// It is no table of colours, or its rows and columns aren't told.
    #[error("{}", crate::text::reference::the_charts_table(.0))]
    Table(#[from] TableError),
    /// Fewer than two rows or columns, or far too many.
    #[error(
        "{}",
        crate::text::reference::the_charts_table_tells_of_rows(rows, columns, MOST_ACROSS)
    )]
    Size {
        /// Rows told.
        rows: usize,
        /// Columns told.
        columns: usize,
    },
    /// Some patches in one view, some in another.
    #[error(
        "{}",
        crate::text::reference::the_charts_table_gives(first, first_view, other, other_view)
    )]
    MixedViews {
        /// Name of the first patch.
        first: String,
        /// Its view.
        first_view: View,
        /// Name of a patch in another view.
        other: String,
        /// That view.
        other_view: View,
    },
}

impl ChartReference {
    /// The published average of many charts, as spectra from 380 to 730 nm.
    ///
    /// # Source
    /// colour-science 0.4.7, its averaged 24-patch data set.
    pub fn published() -> Self {
        Self::from_text(PUBLISHED).expect("the table is part of the program and covered by a test")
    }

    /// The person's own chart: CGATS text or a CSV with a row a patch.
    ///
    /// Colours as [`colour::table::read`] takes them, spectra or Lab; D50/2 where light
    /// and observer aren't said, as chart makers publish. Rows and columns as
    /// [`colour::table::Table::laid_out`] finds them; a chart of 24 goes by 4 rows of 6
    /// from the brown patch where nothing says otherwise.
    ///
    /// # Errors
    /// A table that can't be read, that leaves rows and columns open, or that gives
    /// patches for several lights.
    pub fn from_text(text: &str) -> Result<Self, ReferenceError> {
        let table = table::read(text, View::D50_2)?;
        let (layout, patches) = table.laid_out()?;
        let Layout { rows, columns } = layout;
        let sizes = 2..=MOST_ACROSS;
        if !(sizes.contains(&rows) && sizes.contains(&columns)) {
            return Err(ReferenceError::Size { rows, columns });
        }
        let mut spectra = Vec::new();
        let mut labs = Vec::new();
        for patch in patches {
            match &patch.value {
                Value::Spectrum(spectrum) => spectra.push(spectrum.clone()),
                Value::Lab { lab, view } => labs.push((patch, *lab, *view)),
            }
        }
        // A table holds colours of one kind.
        let Some(&(first, _, view)) = labs.first() else {
            let known = Known::Spectra(spectra);
            return Ok(Self { layout, known });
        };
        if let Some((other, _, other_view)) = labs.iter().find(|(_, _, v)| *v != view) {
            return Err(ReferenceError::MixedViews {
                first: first.name.clone(),
                first_view: view,
                other: other.name.clone(),
                other_view: *other_view,
            });
        }
        let patches = labs.into_iter().map(|(_, lab, _)| lab).collect();
        Ok(Self {
            layout,
            known: Known::Lab { patches, view },
        })
    }

    /// The same from a file's bytes, in the encodings that spreadsheets write.
    ///
    /// # Errors
    /// As of [`ChartReference::from_text`], or bytes that are no text.
    pub fn from_bytes(bytes: &[u8]) -> Result<Self, ReferenceError> {
        Self::from_text(&table::text(bytes)?)
    }

    /// Patches from top to bottom.
    pub const fn rows(&self) -> usize {
        self.layout.rows
    }

    /// Patches from left to right.
    pub const fn columns(&self) -> usize {
        self.layout.columns
    }

    /// How well the patches are known.
    pub const fn known_as(&self) -> KnownAs {
        match &self.known {
            Known::Spectra(_) => KnownAs::Spectra,
            Known::Lab { view, .. } => KnownAs::Lab(*view),
        }
    }

    /// The patches' tristimulus values in a view. From spectra they are exact; from
    /// Lab of another view they are estimated by what that change of view does to the
    /// published spectra, see [`ChartReference::estimate_sd`].
    pub fn xyz(&self, view: View) -> Vec<Xyz> {
        match &self.known {
            Known::Spectra(spectra) => spectra.iter().map(|s| s.xyz(view)).collect(),
            Known::Lab { patches, view: own } => {
                let known = patches.iter().map(|lab| lab.to_xyz(own.white()));
                if *own == view {
                    return known.collect();
                }
                let estimate = Estimate::learn(*own, view, &published_pairs(*own, view));
                known.map(|xyz| estimate.apply(xyz)).collect()
            }
        }
    }

    /// The neutral patches, darkest first: their places in [`ChartReference::xyz`].
    ///
    /// Neutral is what has a chroma C*ab below 6 in the view the patches are known
    /// in, in D65/10 if they are known by spectra.
    pub fn neutrals(&self) -> Vec<usize> {
        let labs: Vec<Lab> = match &self.known {
            Known::Spectra(spectra) => spectra.iter().map(|s| s.lab(View::D65_10)).collect(),
            Known::Lab { patches, .. } => patches.clone(),
        };
        let mut neutrals: Vec<usize> = (0..labs.len())
            .filter(|i| labs[*i].chroma() < NEUTRAL_BELOW)
            .collect();
        neutrals.sort_by(|a, b| labs[*a].l.total_cmp(&labs[*b].l));
        neutrals
    }

    /// By how much the patches' Lab in a view may miss the truth because they are
    /// known in another one: a standard deviation for each of L*, a* and b*.
    /// None where they are exact.
    ///
    /// The figure is the root mean square by which the estimate misses the 24
    /// published spectra, each left out of it in turn. It says nothing of a chart's own
    /// spread from its reference.
    pub fn estimate_sd(&self, view: View) -> Option<[f64; 3]> {
        match &self.known {
            Known::Lab { view: own, .. } if *own != view => {
                let pairs = published_pairs(*own, view);
                Some(estimate::left_out_sd(*own, view, &pairs))
            }
            _ => None,
        }
    }
}

/// The published patches in two views.
fn published_pairs(one: View, other: View) -> Vec<(Xyz, Xyz)> {
    let published = ChartReference::published();
    let pairs = published.xyz(one).into_iter().zip(published.xyz(other));
    pairs.collect()
}

#[cfg(test)]
mod tests;
