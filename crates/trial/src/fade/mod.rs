//! How an arm's colour fades from round to round, as a curve.
//!
//! Two figures are followed for each arm. The strength left is the ratio of K/S now to
//! K/S at the start, less the undyed cloth's own where a witness cloth was read at the
//! start: it is proportional to the dye on the cloth. The change is the fastness
//! difference dE_F of ISO 105-A05 along the arm's own way of fading: each piece's terms
//! (lightness, chroma, hue) are laid along the direction of the pooled mean change, so
//! that noise, which lengthens every distance, averages out; a change across that
//! direction isn't counted. Both follow first-order decay to a floor
//! ([`inference::decay`]), and the change tells after how many rounds grade 4 and 3-4
//! are passed.
//!
//! A piece is compared with its arm's keeper of the same stage and with its own start
//! where both were read, so that what a photo does to all its pieces cancels and the
//! keeper's own error is counted; else with its own start; else with the keeper alone
//! ([`Against`]).

mod against;
mod curve;
mod look;
mod words;

use crate::text;
pub use against::Against;
pub use curve::{AtRound, FadeCurve, FoundShape, GradePassed, Mark, MarkedRound, OnCurve, Shapes};
pub use words::passing;

use crate::{Reading, Source, Trial, decide::Row};
use against::Compared;
use look::Look;
use serde::Serialize;

/// Grades of which it is told when they are passed.
const GRADES: [&str; 2] = ["4", "3-4"];

/// What strength is worked out from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum StrengthBy {
    /// The sum of K/S of reflectance spectra.
    Spectrum,
    /// The sum of K/S of three channels worked out from Lab.
    Channels,
}

/// The fades of all arms.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Fades {
    /// What strength is worked out from.
    pub strength_by: StrengthBy,
    /// Whether the undyed cloth's own K/S was taken off.
    pub cloth_taken_off: bool,
    /// Where the readings come from; none where a table doesn't tell.
    pub source: Option<Source>,
    /// Light and observer of the readings, such as `D65/10`.
    pub view: String,
    /// Each arm with test pieces read after the start, in the order of the readings.
    pub arms: Vec<ArmFade>,
}

/// The fade of one arm.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ArmFade {
    /// Name of the arm.
    pub arm: String,
    /// What its pieces are compared with.
    pub against: Against,
    /// Test pieces that the curves rest on.
    pub pieces: usize,
    /// Test pieces that were read but have nothing to be compared with.
    pub left_out: usize,
    /// The share of the strength left; none where it can't be had.
    pub strength: Option<FadeCurve>,
    /// The change along the arm's own way of fading, dE_F of ISO 105-A05; none where it
    /// can't be had.
    pub change: Option<FadeCurve>,
    /// When the grades are passed; empty without a curve of change.
    pub passes: Vec<GradePassed>,
    /// Why a curve is missing, in a sentence.
    pub why_not: Option<String>,
    /// What this means, in a few sentences for someone who has never met a curve.
    pub plain: String,
    /// The figures with what they rest on, for a technician.
    pub technical: String,
}

/// The fades of a trial's arms by its current readings.
///
/// All rest on readings of one source and view: those by which most arms get a curve,
/// then those with most values; of equals spectra before Lab before photos. None where
/// no test piece was read after the start.
pub fn of_trial(trial: &Trial, readings: &[Reading]) -> Option<Fades> {
    let mut best: Option<(usize, usize, Fades)> = None;
    for kind in look::kinds(trial, readings) {
        let looks = kind.looks.len();
        let fades = of_looks(kind.looks, kind.strength_by, Some(kind.source), kind.view);
        let Some(fades) = fades else {
            continue;
        };
        let curves = fades.arms.iter().filter(|a| a.strength.is_some()).count();
        if best.as_ref().is_none_or(|b| (curves, looks) > (b.0, b.1)) {
            best = Some((curves, looks, fades));
        }
    }
    best.map(|(_, _, fades)| fades)
}

/// The fades of the arms of a table of colours for D65 and the 10 degree observer.
///
/// None where no test piece was read after the start.
///
/// ```
/// let table = "arm,piece,role,load,stage,L,a,b\n\
///     plain,P1,test,,0,40,20,5\nplain,P1,test,,2,44,18,5\nplain,P1,test,,5,46.2,17,5\n\
///     plain,P2,test,,0,40,20.2,5\nplain,P2,test,,2,44.3,18,5\nplain,P2,test,,5,46.4,17,5\n\
///     plain,P3,test,,0,40.1,20,5\nplain,P3,test,,2,44.2,18,5\nplain,P3,test,,5,46.1,17,5\n";
/// let rows = trial::decide::read_csv(table.as_bytes())?;
/// let fades = trial::fade::of_rows(&rows).unwrap();
/// let strength = fades.arms[0].strength.as_ref().unwrap();
/// assert_eq!(format!("{:.2} {:.2}", strength.floor, strength.rate), "0.63 0.56");
/// assert_eq!(fades.arms[0].passes[0].estimate.rounds.map(|n| n.round()), Some(1.0));
/// # Ok::<(), trial::decide::DecideError>(())
/// ```
pub fn of_rows(rows: &[Row]) -> Option<Fades> {
    let view = colour::View::D65_10;
    let looks = rows.iter().map(|row| Look::of_row(row, view)).collect();
    of_looks(looks, StrengthBy::Channels, None, view)
}

fn of_looks(
    looks: Vec<Look>,
    strength_by: StrengthBy,
    source: Option<Source>,
    view: colour::View,
) -> Option<Fades> {
    let table = look::Table::of(&looks);
    let cloth_taken_off = table.bare.is_some();
    let mut fades = Fades {
        strength_by,
        cloth_taken_off,
        source,
        view: view.to_string(),
        arms: Vec::new(),
    };
    for (at, arm) in table.arms.iter().enumerate() {
        let Some(compared) = Compared::of(arm, table.bare) else {
            continue;
        };
        let mut fade = curves(arm.name, &compared, at as u64);
        let sums = words::Sums {
            strength_by,
            cloth_taken_off,
        };
        fade.plain = words::plain(&fade);
        fade.technical = words::technical(&fade, &compared, sums);
        fades.arms.push(fade);
    }
    (!fades.arms.is_empty()).then_some(fades)
}

fn curves(name: &str, compared: &Compared, seed: u64) -> ArmFade {
    let strength = match &compared.strengths {
        Ok(values) => curve::of(values, &compared.shared, seed, curve::Unit::Share),
        Err(sentence) => Err(sentence.clone()),
    };
    let change = curve::of(&compared.changes, &compared.shared, seed, curve::Unit::De);
    let passes = match &change {
        Ok((decay, _)) => GRADES
            .into_iter()
            .filter_map(|grade| curve::passed(decay, grade))
            .collect(),
        Err(_) => Vec::new(),
    };
    let why_not = strength
        .as_ref()
        .err()
        .or(change.as_ref().err())
        .map(|why| {
            text::fade::has_no_curve(
                name,
                if strength.is_err() {
                    "strength"
                } else {
                    "change"
                },
                why,
            )
        });
    ArmFade {
        arm: name.to_owned(),
        against: compared.against,
        pieces: compared.pieces,
        left_out: compared.left_out,
        strength: strength.ok().map(|(_, curve)| curve),
        change: change.ok().map(|(_, curve)| curve),
        passes,
        why_not,
        plain: String::new(),
        technical: String::new(),
    }
}
