//! From written cells to samples.

use super::{
    Sample, Table, TableError, Value,
    column::{Meaning, WAVELENGTHS_NM, meaning},
    light::{Seen, seen},
    written::{Cell, Written},
};
use crate::text;
use crate::{Lab, Spectrum, View, Xyz};

/// A reflectance above which values must be percent: no surface sends back twice the light.
const HIGHEST_SHARE: f64 = 2.0;
/// How far below zero an instrument's black may fall, as a share of the light.
const NOISE_BELOW_ZERO: f64 = 0.01;
/// The widest step of a spectrum, nm.
const WIDEST_STEP_NM: f64 = 20.0;

/// What a table's columns hold of colour.
enum Colours {
    /// Columns with their wavelengths, ascending.
    Spectra(Vec<(usize, f64)>),
    /// Columns of L*, a*, b*, and what their names say of the light.
    Lab([usize; 3], Seen),
    /// Columns of X, Y, Z, likewise.
    Xyz([usize; 3], Seen),
}

/// The samples of the first table with spectra, or else of the first with any colour.
pub(super) fn best(
    tables: &[Written],
    mut notes: Vec<String>,
    unsaid: View,
) -> Result<Table, TableError> {
    let mut found = Vec::new();
    for table in tables {
        if let Some(colours) = colours(table)? {
            found.push((table, colours));
        }
    }
    let others = found.len().saturating_sub(1);
    let spectra = found
        .iter()
        .position(|(_, c)| matches!(c, Colours::Spectra(_)));
    if found.is_empty() {
        return Err(TableError::NoColour);
    }
    let (table, colours) = found.swap_remove(spectra.unwrap_or(0));
    if others > 0 {
        notes.push(text::table::the_file_holds_tables_of_colours(
            others + 1,
            table.line,
        ));
    }
    samples(table, &colours, notes, unsaid)
}

fn colours(table: &Written) -> Result<Option<Colours>, TableError> {
    let meanings: Vec<Meaning> = table.names.iter().map(|name| meaning(name)).collect();
    let wavelengths = wavelengths(table, &meanings)?;
    if wavelengths.len() >= 6 {
        return Ok(Some(Colours::Spectra(wavelengths)));
    }
    let lab = triple(table, &meanings, ["L", "a", "b"], |m| {
        if let Meaning::Lab(k, seen) = m {
            Some((*k, *seen))
        } else {
            None
        }
    })?;
    if let Some((places, seen)) = lab {
        return Ok(Some(Colours::Lab(places, seen)));
    }
    let xyz = triple(table, &meanings, ["X", "Y", "Z"], |m| {
        if let Meaning::Xyz(k, seen) = m {
            Some((*k, *seen))
        } else {
            None
        }
    })?;
    Ok(xyz.map(|(places, seen)| Colours::Xyz(places, seen)))
}

/// The columns of wavelengths in use, ascending and evenly stepped; none if they are too few.
fn wavelengths(table: &Written, meanings: &[Meaning]) -> Result<Vec<(usize, f64)>, TableError> {
    let mut found: Vec<(usize, f64)> = Vec::new();
    for (i, meaning) in meanings.iter().enumerate() {
        if let Meaning::Wavelength(nm) = meaning
            && WAVELENGTHS_NM.contains(nm)
            // Instruments write the ends they can't measure as empty columns.
            && table.rows.iter().any(|row| !table.text(row, i).is_empty())
        {
            found.push((i, *nm));
        }
    }
    if found.len() < 6 {
        return Ok(Vec::new());
    }
    found.sort_by(|a, b| a.1.total_cmp(&b.1));
    let step_nm = found[1].1 - found[0].1;
    for pair in found.windows(2) {
        let [(_, from_nm), (i, to_nm)] = [pair[0], pair[1]];
        if to_nm - from_nm < 1e-6 {
            return Err(TableError::ColumnTwice {
                line: table.line,
                column: table.names[i].clone(),
            });
        }
        if (to_nm - from_nm - step_nm).abs() > 1e-6 {
            return Err(TableError::Uneven {
                line: table.line,
                step_nm,
                from_nm,
                to_nm,
            });
        }
    }
    if step_nm > WIDEST_STEP_NM {
        return Err(TableError::Coarse {
            line: table.line,
            step_nm,
        });
    }
    Ok(found)
}

/// Three columns that belong together; of several lights D65 with ten degrees first.
fn triple(
    table: &Written,
    meanings: &[Meaning],
    names: [&str; 3],
    is: fn(&Meaning) -> Option<(usize, Seen)>,
) -> Result<Option<([usize; 3], Seen)>, TableError> {
    let of = |k: usize| {
        meanings
            .iter()
            .enumerate()
            .filter_map(move |(i, m)| is(m).filter(|(c, _)| *c == k).map(|(_, seen)| (i, seen)))
    };
    let mut lights: Vec<Seen> = of(0).map(|(_, seen)| seen).collect();
    let first = lights.first().copied();
    let usual = Seen {
        illuminant: Some(View::D65_10.illuminant),
        observer: Some(View::D65_10.observer),
    };
    lights.sort_by_key(|seen| (*seen != usual, Some(*seen) != first));
    lights.dedup();
    'lights: for light in lights {
        let mut places = [0; 3];
        for k in 0..3 {
            let exact: Vec<usize> = of(k)
                .filter(|(_, seen)| *seen == light)
                .map(|(i, _)| i)
                .collect();
            let silent: Vec<usize> = of(k)
                .filter(|(_, seen)| *seen == Seen::default())
                .map(|(i, _)| i)
                .collect();
            let mut fit = if exact.is_empty() { silent } else { exact };
            if fit.len() > 1 {
                // "b" beside "B": the one written as usual is meant.
                let usual: Vec<usize> = fit
                    .iter()
                    .copied()
                    .filter(|i| table.names[*i].trim() == names[k])
                    .collect();
                if usual.len() == 1 {
                    fit = usual;
                }
            }
            places[k] = match fit.as_slice() {
                [] => continue 'lights,
                [one] => *one,
                [_, again, ..] => {
                    return Err(TableError::ColumnTwice {
                        line: table.line,
                        column: table.names[*again].clone(),
                    });
                }
            };
        }
        return Ok(Some((places, light)));
    }
    Ok(None)
}

fn samples(
    table: &Written,
    colours: &Colours,
    mut notes: Vec<String>,
    unsaid: View,
) -> Result<Table, TableError> {
    let meanings: Vec<Meaning> = table.names.iter().map(|name| meaning(name)).collect();
    let rows: Vec<&Vec<Cell>> = table
        .rows
        .iter()
        .filter(|row| row.iter().any(|cell| !cell.text.trim().is_empty()))
        .collect();
    if rows.is_empty() {
        return Err(TableError::NoSamples { line: table.line });
    }
    let name_column = name_column(table, &meanings, &rows);
    let name = |i: usize, row: &[Cell]| {
        let text = name_column.map_or("", |column| table.text(row, column));
        if text.is_empty() {
            (i + 1).to_string()
        } else {
            text.chars().take(200).collect()
        }
    };
    let values = match colours {
        Colours::Spectra(columns) => spectra(table, columns, &rows, &name, &mut notes)?,
        Colours::Lab(columns, seen) => {
            points(table, columns, *seen, &rows, &meanings, unsaid, &mut notes)?
                .into_iter()
                .map(|([l, a, b], view)| (Lab::new(l, a, b), view))
                .map(|(lab, view)| Value::Lab { lab, view })
                .collect()
        }
        Colours::Xyz(columns, seen) => {
            let points = points(table, columns, *seen, &rows, &meanings, unsaid, &mut notes)?;
            let shares = points.iter().all(|([_, y, _], _)| *y <= HIGHEST_SHARE);
            let scale = if shares { 100.0 } else { 1.0 };
            let lab = |(xyz, view): ([f64; 3], View)| Value::Lab {
                lab: Xyz::from(xyz.map(|v| v * scale)).to_lab(view.white()),
                view,
            };
            points.into_iter().map(lab).collect()
        }
    };
    let mut samples = Vec::with_capacity(rows.len());
    for (i, (row, value)) in rows.into_iter().zip(values).enumerate() {
        let sample = Sample {
            name: name(i, row),
            value,
            line: table.line(row, 0),
            place: place(table, &meanings, row)?,
        };
        if let Value::Lab { lab, .. } = &sample.value
            && (!(-5.0..=105.0).contains(&lab.l) || lab.a.abs() > 200.0 || lab.b.abs() > 200.0)
        {
            return Err(TableError::NoSurface {
                line: sample.line,
                sample: sample.name,
                lab: lab.to_array(),
            });
        }
        samples.push(sample);
    }
    Ok(Table {
        samples,
        instrument: table.said.instrument.clone(),
        notes,
        said_layout: table.said.layout,
    })
}

/// The column with the best names; else the first that means nothing else and isn't all numbers.
fn name_column(table: &Written, meanings: &[Meaning], rows: &[&Vec<Cell>]) -> Option<usize> {
    let named = meanings.iter().enumerate().filter_map(|(i, m)| {
        if let Meaning::Name(rank) = m {
            Some((*rank, i))
        } else {
            None
        }
    });
    named.min().map(|(_, i)| i).or_else(|| {
        meanings
            .iter()
            .enumerate()
            .filter(|(_, m)| **m == Meaning::Other)
            .map(|(i, _)| i)
            .find(|i| {
                rows.iter().any(|row| {
                    let text = table.text(row, *i);
                    !text.is_empty() && super::written::number(text).is_none()
                })
            })
    })
}

fn spectra(
    table: &Written,
    columns: &[(usize, f64)],
    rows: &[&Vec<Cell>],
    name: &dyn Fn(usize, &[Cell]) -> String,
    notes: &mut Vec<String>,
) -> Result<Vec<Value>, TableError> {
    let (start_nm, step_nm) = (columns[0].1, columns[1].1 - columns[0].1);
    let mut read: Vec<Vec<f64>> = Vec::with_capacity(rows.len());
    for row in rows {
        read.push(
            columns
                .iter()
                .map(|(i, _)| table.number(row, *i))
                .collect::<Result<_, _>>()?,
        );
    }
    let highest = read.iter().flatten().copied().fold(0.0, f64::max);
    let percent = table.said.percent.unwrap_or(highest > HIGHEST_SHARE);
    if table.said.percent.is_none() && highest > 1.2 && !percent {
        notes.push(text::table::the_highest_reflectance_is_and_was_taken(
            highest,
        ));
    }
    let unit = if percent { 100.0 } else { 1.0 };
    let mut below_zero = 0;
    let mut values = Vec::with_capacity(rows.len());
    for (i, (row, read)) in rows.iter().zip(read).enumerate() {
        let shares = read
            .into_iter()
            .map(|v| v / unit)
            .map(|v| {
                if (-NOISE_BELOW_ZERO..0.0).contains(&v) {
                    below_zero += 1;
                    0.0
                } else {
                    v
                }
            })
            .collect();
        let spectrum =
            Spectrum::new(start_nm, step_nm, shares).map_err(|cause| TableError::Spectrum {
                line: table.line(row, 0),
                sample: name(i, row),
                cause,
            })?;
        values.push(Value::Spectrum(spectrum));
    }
    if below_zero > 0 {
        notes.push(text::table::values_lay_just_below_zero(below_zero));
    }
    Ok(values)
}

/// Three numbers a row, with their view.
fn points(
    table: &Written,
    columns: &[usize; 3],
    in_names: Seen,
    rows: &[&Vec<Cell>],
    meanings: &[Meaning],
    unsaid: View,
    notes: &mut Vec<String>,
) -> Result<Vec<([f64; 3], View)>, TableError> {
    let mut silent = 0;
    let mut points = Vec::with_capacity(rows.len());
    for row in rows {
        let mut point = [0.0; 3];
        for (value, column) in point.iter_mut().zip(columns) {
            *value = table.number(row, *column)?;
        }
        let mut of_row = Seen::default();
        for (i, _) in meanings
            .iter()
            .enumerate()
            .filter(|(_, m)| **m == Meaning::View)
        {
            let text = table.text(row, i);
            let found = seen(text)
                .ok()
                .filter(|found| text.is_empty() || *found != Seen::default());
            let found = found.ok_or_else(|| TableError::View {
                line: table.line(row, i),
                text: text.chars().take(40).collect(),
            })?;
            of_row = of_row.or(found);
        }
        let (view, unknown) = of_row.or(in_names).or(table.said.seen).view(unsaid);
        silent += usize::from(unknown);
        points.push((point, view));
    }
    if silent > 0 {
        notes.push(text::table::the_light_or_observer_of_samples(
            silent, unsaid,
        ));
    }
    Ok(points)
}

/// Row and column of a chart, from 0, where the table has such columns.
fn place(
    table: &Written,
    meanings: &[Meaning],
    row: &[Cell],
) -> Result<Option<(usize, usize)>, TableError> {
    let of = |wanted: Meaning| meanings.iter().position(|m| *m == wanted);
    let (Some(down), Some(across)) = (of(Meaning::Row), of(Meaning::Column)) else {
        return Ok(None);
    };
    let count = |column: usize| -> Result<usize, TableError> {
        let value = table.number(row, column)?;
        if (1.0..=1000.0).contains(&value) && value.fract() == 0.0 {
            // A whole number up to 1000, by the line above.
            return Ok(value as usize - 1);
        }
        Err(TableError::Layout(
            text::table::line_column_column2_is_no_place(
                table.line(row, column),
                &table.names[column],
                value,
            ),
        ))
    };
    Ok(Some((count(down)?, count(across)?)))
}
