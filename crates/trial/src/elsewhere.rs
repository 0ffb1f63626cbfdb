//! From a table of an instrument to readings of a trial's pieces.

use crate::text;
use crate::{PieceId, Reflectance, Source, Trial, TrialError};
use colour::{
    View,
    table::{Table, Value},
};

/// The repeatability that is taken where none is given, CIELAB units: what bench
/// instruments reach on even cloth that is laid anew between measurements.
///
/// # Source
/// common practice, from memory
pub const USUAL_REPEATABILITY_DE: f64 = 0.3;

/// A reading from elsewhere that is to be added.
#[derive(Debug, Clone, PartialEq)]
pub struct NewReading {
    /// The piece.
    pub piece: PieceId,
    /// Its colour in `view`: L*, a*, b*.
    pub lab: [f64; 3],
    /// Covariance of `lab`.
    pub cov: [[f64; 3]; 3],
    /// Light and observer.
    pub view: View,
    /// A spectrum or Lab; never a photo.
    pub source: Source,
    /// Its spectrum, if it has one.
    pub spectrum: Option<Reflectance>,
}

/// What a table gives to a trial.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Matched {
    /// Readings of the trial's pieces, in the order of the table.
    pub readings: Vec<NewReading>,
    /// Names in the table that are no piece's code.
    pub unknown: Vec<String>,
    /// What was taken for granted, in sentences.
    pub notes: Vec<String>,
}

/// Matches the samples of a table with the trial's pieces by their codes.
///
/// Codes are compared without regard to case and white space around them; several
/// samples of one piece are repeat readings. A spectrum is seen in D65/10, the view
/// of photo readings; Lab stays in its own view. `repeatability_de` is the root mean
/// square CIELAB difference between repeat measurements and their mean, and is
/// shared out evenly over L*, a* and b*.
///
/// # Errors
/// A repeatability that is negative or above 10.
pub fn matched(trial: &Trial, table: &Table, repeatability_de: f64) -> Result<Matched, TrialError> {
    if !(0.0..=10.0).contains(&repeatability_de) {
        return Err(TrialError {
            field: "repeatability".into(),
            message: text::elsewhere::give_the_repeatability_as_a_cielab(USUAL_REPEATABILITY_DE),
        });
    }
    let variance = repeatability_de * repeatability_de / 3.0;
    let mut cov = [[0.0; 3]; 3];
    for (k, row) in cov.iter_mut().enumerate() {
        row[k] = variance;
    }
    let mut matched = Matched {
        notes: table.notes.clone(),
        ..Matched::default()
    };
    for sample in &table.samples {
        let name = sample.name.trim();
        let exact = trial.pieces.iter().find(|piece| piece.code == name);
        let loose = || {
            let mut alike = trial
                .pieces
                .iter()
                .filter(|piece| piece.code.trim().to_lowercase() == name.to_lowercase());
            // Codes may differ by case alone; then only the exact one is meant.
            alike.next().filter(|_| alike.next().is_none())
        };
        let Some(piece) = exact.or_else(loose) else {
            matched.unknown.push(name.to_owned());
            continue;
        };
        let (lab, view, source, spectrum) = match &sample.value {
            Value::Spectrum(spectrum) => (
                spectrum.lab(View::D65_10),
                View::D65_10,
                Source::Spectrum,
                Some(Reflectance::from(spectrum)),
            ),
            Value::Lab { lab, view } => (*lab, *view, Source::Lab, None),
        };
        matched.readings.push(NewReading {
            piece: piece.id,
            lab: lab.to_array(),
            cov,
            view,
            source,
            spectrum,
        });
    }
    let other: Vec<String> = matched
        .readings
        .iter()
        .filter(|r| r.view != View::D65_10)
        .map(|r| r.view.to_string())
        .collect();
    if let Some(view) = other.first() {
        matched
            .notes
            .push(text::elsewhere::these_colours_are_for_not_for_d65(view));
    }
    Ok(matched)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Arm, ArmId, Piece, Role, TrialId};
    use colour::table;

    fn trial() -> Trial {
        let piece = |id, code: &str| Piece {
            tag: photo::board::Code::from_number(1),
            id: PieceId(id),
            arm: ArmId(1),
            code: code.into(),
            role: Role::Test,
            load: None,
        };
        Trial {
            id: TrialId(1),
            slug: "t".into(),
            title: "t".into(),
            question: "?".into(),
            margin_de00: 1.0,
            rounds: 1,
            invented: true,
            made_at: "2020-01-01T00:00:00Z".into(),
            method: String::new(),
            arms: vec![Arm {
                id: ArmId(1),
                name: "plain".into(),
                treatment: String::new(),
            }],
            pieces: vec![piece(1, "P1"), piece(2, "P2"), piece(3, "x"), piece(4, "X")],
        }
    }

    #[test]
    fn samples_find_their_pieces_and_strangers_are_named() {
        let text = "name,L,a,b,view\n p1 ,40,1,2,D65/10\nP2,41,1,2,D65/10\nP2,42,1,2,D65/10\nX,43,1,2,D65/10\nP9,1,1,1,D65/10\n";
        let table = table::read(text, View::D65_10).unwrap();
        let found = matched(&trial(), &table, 0.3).unwrap();
        let pieces: Vec<i64> = found.readings.iter().map(|r| r.piece.0).collect();
        assert_eq!(pieces, [1, 2, 2, 4]);
        assert_eq!(found.unknown, ["P9"]);
        let cov = found.readings[0].cov;
        assert!((cov[0][0] + cov[1][1] + cov[2][2] - 0.09).abs() < 1e-12 && cov[0][1] == 0.0);
        assert!(
            matched(&trial(), &table, -1.0).is_err()
                && matched(&trial(), &table, f64::NAN).is_err()
        );
    }

    #[test]
    fn spectra_are_seen_as_photos_are_and_kept() {
        let names: Vec<String> = (0..16).map(|i| (400 + 20 * i).to_string()).collect();
        let text = format!("piece,{}\nP1{}\n", names.join(","), ",0.5".repeat(16));
        let found = matched(&trial(), &table::read(&text, View::D50_2).unwrap(), 0.3).unwrap();
        let reading = &found.readings[0];
        assert_eq!(
            (reading.view, reading.source),
            (View::D65_10, Source::Spectrum)
        );
        // A surface that sends back half of all light: L* from Y = 50 by CIELAB's definition.
        assert!((reading.lab[0] - 76.0693).abs() < 1e-3 && reading.lab[1].abs() < 1e-9);
        assert_eq!(reading.spectrum.as_ref().unwrap().values, [0.5; 16]);
    }

    #[test]
    fn lab_of_another_light_is_left_as_it_is_and_said() {
        let table = table::read("piece,L,a,b\nP1,40,1,2\n", View::D50_2).unwrap();
        let found = matched(&trial(), &table, 0.3).unwrap();
        assert_eq!(
            (found.readings[0].lab, found.readings[0].view),
            ([40.0, 1.0, 2.0], View::D50_2)
        );
        assert!(
            found.notes.iter().any(|n| n.contains("among themselves")),
            "{:?}",
            found.notes
        );
    }
}
