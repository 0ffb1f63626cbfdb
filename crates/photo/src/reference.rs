//! What the chart's patches truly are.

use colour::{Lab, Spectrum, View, Xyz, adapt};
use thiserror::Error;

/// The published average spectra, in the chart's order.
const PUBLISHED: &str = include_str!("../data/chart24_spectra_10nm.csv");

/// The true colours of the 24 patches, row by row from the brown one.
#[derive(Debug, Clone, PartialEq)]
pub struct ChartReference(Known);

#[derive(Debug, Clone, PartialEq)]
enum Known {
    Spectra(Vec<Spectrum>),
    Lab { patches: Vec<Lab>, view: View },
}

/// Why a table of patches can't be used.
#[derive(Debug, Error)]
pub enum ReferenceError {
    /// It can't be taken apart.
    #[error("the chart's table can't be read: {0}")]
    Table(#[from] csv::Error),
    /// It has not 24 rows.
    #[error(
        "the chart's table has {rows} patches; this chart has 24, row by row from the brown one"
    )]
    Rows {
        /// How many it has.
        rows: usize,
    },
    /// It has neither spectra nor Lab.
    #[error(
        "the chart's table needs the columns L, a, b, or one column per wavelength such as 400, 410, ... 700"
    )]
    Columns,
    /// A cell that is no number.
    #[error("row {row} of the chart's table holds \"{text}\" where a number belongs")]
    Number {
        /// Row, counted from 1 below the heading.
        row: usize,
        /// What stands there.
        text: String,
    },
    /// A spectrum or view that makes no sense.
    #[error("the chart's table: {0}")]
    Colour(#[from] colour::ColourError),
}

impl ChartReference {
    /// The published average of many charts, as spectra from 380 to 730 nm.
    ///
    /// # Source
    /// colour-science 0.4.7, its averaged 24-patch data set.
    pub fn published() -> Self {
        Self::from_csv(PUBLISHED).expect("the table is part of the program and covered by a test")
    }

    /// The person's own chart: a CSV with a row a patch, in the chart's order.
    ///
    /// Either a column for each wavelength in nm (reflectance as a share, or in
    /// percent when a value is above 2), or columns L, a, b; a column `view` names their
    /// light and observer, D50/2 where there is none.
    ///
    /// # Errors
    /// Not 24 rows, neither kind of columns, a cell that is no number.
    pub fn from_csv(text: &str) -> Result<Self, ReferenceError> {
        let text = text.trim_start_matches('\u{feff}');
        let mut reader = csv::ReaderBuilder::new()
            .comment(Some(b'#'))
            .trim(csv::Trim::All)
            .from_reader(text.as_bytes());
        let names: Vec<String> = reader.headers()?.iter().map(str::to_owned).collect();
        let rows: Vec<csv::StringRecord> = reader.records().collect::<Result<_, _>>()?;
        if rows.len() != 24 {
            return Err(ReferenceError::Rows { rows: rows.len() });
        }
        let wavelengths: Vec<(usize, f64)> = names
            .iter()
            .enumerate()
            .filter_map(|(i, name)| Some((i, wavelength_nm(name)?)))
            .collect();
        if wavelengths.len() >= 6 {
            return spectra(&rows, &wavelengths);
        }
        let column = |wanted: &str| names.iter().position(|n| n.eq_ignore_ascii_case(wanted));
        let (Some(l), Some(a), Some(b)) = (column("L"), column("a"), column("b")) else {
            return Err(ReferenceError::Columns);
        };
        let view = match column("view").and_then(|i| rows[0].get(i)) {
            Some(name) => name.parse()?,
            None => View::D50_2,
        };
        let patches = rows
            .iter()
            .enumerate()
            .map(|(row, r)| {
                Ok(Lab::new(
                    number(r, row, l)?,
                    number(r, row, a)?,
                    number(r, row, b)?,
                ))
            })
            .collect::<Result<_, ReferenceError>>()?;
        Ok(Self(Known::Lab { patches, view }))
    }

    /// The patches' tristimulus values in a view. From spectra they are exact;
    /// from Lab of another view they are adapted (CAT16), which is an estimate.
    pub fn xyz(&self, view: View) -> Vec<Xyz> {
        match &self.0 {
            Known::Spectra(spectra) => spectra.iter().map(|s| s.xyz(view)).collect(),
            Known::Lab { patches, view: own } => patches
                .iter()
                .map(|lab| {
                    let xyz = lab.to_xyz(own.white());
                    adapt::cat16(xyz, own.white(), view.white())
                })
                .collect(),
        }
    }
}

fn spectra(
    rows: &[csv::StringRecord],
    wavelengths: &[(usize, f64)],
) -> Result<ChartReference, ReferenceError> {
    let (start, step) = (wavelengths[0].1, wavelengths[1].1 - wavelengths[0].1);
    let even = wavelengths
        .windows(2)
        .all(|pair| (pair[1].1 - pair[0].1 - step).abs() < 1e-6);
    if !even {
        return Err(ReferenceError::Columns);
    }
    let mut table = Vec::with_capacity(rows.len());
    for (row, record) in rows.iter().enumerate() {
        let values: Vec<f64> = wavelengths
            .iter()
            .map(|&(i, _)| number(record, row, i))
            .collect::<Result<_, _>>()?;
        table.push(values);
    }
    let percent = table.iter().flatten().any(|&v| v > 2.0);
    let unit = if percent { 100.0 } else { 1.0 };
    let spectra = table
        .into_iter()
        .map(|values| Spectrum::new(start, step, values.iter().map(|v| v / unit).collect()))
        .collect::<Result<_, _>>()?;
    Ok(ChartReference(Known::Spectra(spectra)))
}

/// The wavelength that a column's name gives, such as `400` or `nm400`.
fn wavelength_nm(name: &str) -> Option<f64> {
    let digits = name.trim_start_matches(|c: char| !c.is_ascii_digit());
    let nm: f64 = digits.trim_end_matches("nm").trim().parse().ok()?;
    (300.0..=900.0).contains(&nm).then_some(nm)
}

fn number(record: &csv::StringRecord, row: usize, column: usize) -> Result<f64, ReferenceError> {
    let text = record.get(column).unwrap_or("");
    match text.parse::<f64>() {
        Ok(value) if value.is_finite() => Ok(value),
        _ => Err(ReferenceError::Number {
            row: row + 1,
            text: text.to_owned(),
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_published_white_is_white_and_the_black_is_black() {
        let xyz = ChartReference::published().xyz(View::D65_10);
        assert_eq!(xyz.len(), 24);
        assert!(xyz[18].y > 85.0 && xyz[23].y < 4.0);
    }

    #[test]
    fn lab_of_the_same_view_comes_back() {
        let white = View::D65_10.white();
        let labs: Vec<Lab> = ChartReference::published()
            .xyz(View::D65_10)
            .iter()
            .map(|xyz| xyz.to_lab(white))
            .collect();
        let mut text = String::from("patch,L,a,b,view\n");
        for (i, lab) in labs.iter().enumerate() {
            text += &format!("p{i},{},{},{},D65/10\n", lab.l, lab.a, lab.b);
        }
        let own = ChartReference::from_csv(&text).unwrap();
        for (xyz, lab) in own.xyz(View::D65_10).iter().zip(&labs) {
            assert!((xyz.to_lab(white).l - lab.l).abs() < 1e-6);
        }
    }

    #[test]
    fn tables_that_are_no_chart_are_named() {
        assert!(matches!(
            ChartReference::from_csv("patch,L,a,b\none,1,2,3\n"),
            Err(ReferenceError::Rows { rows: 1 })
        ));
        let rows = "x,1,2\n".repeat(24);
        assert!(matches!(
            ChartReference::from_csv(&format!("patch,u,v\n{rows}")),
            Err(ReferenceError::Columns)
        ));
        let rows = "x,1,2,red\n".repeat(24);
        assert!(matches!(
            ChartReference::from_csv(&format!("patch,L,a,b\n{rows}")),
            Err(ReferenceError::Number { row: 1, .. })
        ));
    }
}
