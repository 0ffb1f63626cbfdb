//! How strong in dye a water is, from what a person saw or measured.

use crate::text;
use serde::Serialize;

use crate::{
    Entry, Mass, Part, Volume,
    absorbance::Calibration,
    balance::{Estimate, Start, WrittenCalibration, WrittenReading},
    error::DyeingError,
    quantity::{Cursor, figure, read_number},
};

/// A ladder whose steps double is told to half a step: a factor of the root of 2 (common practice,
/// no source).
const LADDER_SPREAD: f64 = std::f64::consts::SQRT_2 - 1.0;
/// How far a stated concentration may be off where nothing is said (common practice, no source).
const STATED_SPREAD: f64 = 0.10;
/// How far a jug or a bucket may be off (common practice, no source).
const VOLUME_SPREAD: f64 = 0.05;
/// Below this a blank was taken wrongly.
const LEAST_ABSORBANCE: f64 = -0.02;

/// A water's volume and its strength.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Reading {
    /// How much water.
    pub volume: Volume,
    /// Volume with its spread, L.
    pub litres: Estimate,
    /// Dye in it, as a share of the bath's concentration at its start.
    pub strength: Estimate,
    /// How that was told, in words.
    pub how: String,
    /// The darkest absorbance it rests on.
    #[serde(skip)]
    pub(super) absorbance: Option<f64>,
}

/// A concentration by weight, or as a dilution of the bath.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Concentration {
    GramsPerLitre(f64),
    OfBath(f64),
}

/// Standards with the line through them, in shares of the bath's concentration.
pub(super) struct Line {
    calibration: Calibration,
    /// Absorbances of the weakest and of the strongest standard.
    range: [f64; 2],
    /// Whether the weakest standard holds no dye.
    has_blank: bool,
}

impl Concentration {
    /// As a share of the bath's concentration at its start.
    fn share(self, start: &Start) -> Result<f64, DyeingError> {
        match (self, start.dye) {
            (Self::OfBath(share), _) => Ok(share),
            (Self::GramsPerLitre(0.0), _) => Ok(0.0),
            (Self::GramsPerLitre(g), Some(dye)) => Ok(g * start.liquor.litres() / dye.grams()),
            (Self::GramsPerLitre(_), None) => {
                Err(recipe(text::balance::how_many_grams_of_dye_went_into()))
            }
        }
    }
}

fn recipe(sentence: impl Into<String>) -> DyeingError {
    DyeingError::Recipe(sentence.into())
}

impl Reading {
    /// What a person wrote of one water, `line` being the calibration if there is one.
    pub(super) fn of(
        written: &WrittenReading,
        start: &Start,
        line: Option<&Line>,
    ) -> Result<Self, DyeingError> {
        let volume = crate::quantity::read_volume(&written.volume, start.kitchen)
            .and_then(some_water)
            .map_err(|e| e.at(Part::Reading.at(Entry::Volume)))?;
        let spread = |text: &Option<String>, entry| -> Result<Option<f64>, DyeingError> {
            let text = text.as_deref().filter(|t| !t.trim().is_empty());
            text.map(|t| percent(t).map_err(|e| e.at(Part::Reading.at(entry))))
                .transpose()
        };
        let litres = Estimate::within(
            volume.litres(),
            spread(&written.volume_spread, Entry::VolumeSpread)?.unwrap_or(VOLUME_SPREAD),
        );
        let stated = spread(&written.spread, Entry::Spread)?;
        let diluted = written.dilution.as_deref().filter(|t| !t.trim().is_empty());
        let dilution = diluted
            .map(|text| dilution(text).map_err(|e| e.at(Part::Reading.at(Entry::Dilution))))
            .transpose()?
            .unwrap_or(1.0);
        let (seen, mut how, absorbance) = seen(written, start, line, stated)?;
        if let Some(text) = diluted {
            how.push_str(&text::balance::sample_diluted(text.trim()));
        }
        let strength = seen.scaled(1.0 / dilution);
        if strength.low > 1.0 {
            return Err(recipe(text::balance::this_water_would_be_stronger(figure(
                strength.middle,
            )))
            .at(Part::Reading.at(Entry::Strength)));
        }
        Ok(Self {
            volume,
            litres,
            strength,
            how,
            absorbance,
        })
    }
}

fn some_water(volume: Volume) -> Result<Volume, DyeingError> {
    if volume > Volume::ZERO {
        Ok(volume)
    } else {
        Err(recipe(text::balance::no_water_at_all_holds_no_dye()))
    }
}

/// The strength of the sample as it was looked at, how it was told, and its absorbance.
fn seen(
    written: &WrittenReading,
    start: &Start,
    line: Option<&Line>,
    stated: Option<f64>,
) -> Result<(Estimate, String, Option<f64>), DyeingError> {
    let text = |entry: &Option<String>| entry.clone().filter(|t| !t.trim().is_empty());
    match (
        text(&written.looks_like),
        &written.absorbance,
        text(&written.concentration),
    ) {
        (Some(step), None, None) => {
            let seen =
                ladder(&step, stated).map_err(|e| e.at(Part::Reading.at(Entry::LooksLike)))?;
            Ok((seen, text::balance::looks_like_2(step.trim()), None))
        }
        (None, Some(absorbances), None) => {
            let at = |e: DyeingError| e.at(Part::Reading.at(Entry::Absorbance));
            let line = line
                .ok_or_else(|| at(recipe(text::balance::an_absorbance_says_nothing_without())))?;
            let (seen, mean) = line.read(absorbances.all(), stated).map_err(at)?;
            Ok((seen, text::balance::absorbance(figure(mean)), Some(mean)))
        }
        (None, None, Some(text)) => {
            let share = concentration(&text)
                .and_then(|c| c.share(start))
                .map_err(|e| e.at(Part::Reading.at(Entry::Concentration)))?;
            let seen = Estimate::within(share, stated.unwrap_or(STATED_SPREAD));
            Ok((seen, text::balance::stated_as(text.trim()), None))
        }
        (None, None, None) => Err(recipe(text::balance::say_how_strong_it_is_the_step())
            .at(Part::Reading.at(Entry::Strength))),
        _ => Err(recipe(text::balance::say_how_strong()).at(Part::Reading.at(Entry::Strength))),
    }
}

/// A step of the ladder, a step between two, or weaker than its weakest.
fn ladder(text: &str, stated: Option<f64>) -> Result<Estimate, DyeingError> {
    let mut cursor = Cursor::new(text);
    if cursor.eat_word(&["weaker", "paler", "below"]) {
        cursor.eat_word(&["than"]);
        let weakest = part(&mut cursor)?;
        cursor.finish()?;
        // Anything from nothing to the weakest step is as likely as anything else.
        return Ok(Estimate {
            middle: weakest / 2.0,
            low: 0.0,
            high: weakest,
        });
    }
    cursor.eat_word(&["between"]);
    let first = part(&mut cursor)?;
    if cursor.eat_word(&["to", "and"]) {
        let second = part(&mut cursor)?;
        cursor.finish()?;
        let middle = libm::sqrt(first * second);
        return Ok(Estimate {
            middle,
            low: first.min(second),
            high: first.max(second),
        });
    }
    cursor.finish()?;
    Ok(Estimate::within(first, stated.unwrap_or(LADDER_SPREAD)))
}

/// A dilution as the share of the stronger liquid in it.
fn dilution(text: &str) -> Result<f64, DyeingError> {
    let mut cursor = Cursor::new(text);
    let share = part(&mut cursor)?;
    cursor.finish()?;
    Ok(share)
}

/// `1:50`, one part in fifty of the whole.
fn part(cursor: &mut Cursor) -> Result<f64, DyeingError> {
    let what = text::balance::a_step_of_the_ladder_is_wanted();
    cursor.skip_space();
    let start = cursor.at;
    let one = read_number(cursor)?;
    let share = parts(cursor, start, one)?;
    share.ok_or_else(|| cursor.fault(cursor.at, what))
}

/// What comes after the colon of a dilution whose first number was read; none without a colon.
fn parts(cursor: &mut Cursor, start: usize, one: f64) -> Result<Option<f64>, DyeingError> {
    cursor.skip_space();
    if !cursor.eat(':') {
        return Ok(None);
    }
    let whole = read_number(cursor)?;
    let fine = one > 0.0 && whole >= one;
    if !fine {
        let why = text::balance::a_dilution_is_one_part();
        return Err(cursor.fault(start, why));
    }
    Ok(Some(one / whole))
}

/// `38.9 mg/L`, `0.2 g/L` or a dilution of the bath.
fn concentration(text: &str) -> Result<Concentration, DyeingError> {
    let mut cursor = Cursor::new(text);
    let value = read_number(&mut cursor)?;
    if let Some(share) = parts(&mut cursor, 0, value)? {
        cursor.finish()?;
        return Ok(Concentration::OfBath(share));
    }
    let (at, unit) = cursor.word();
    let grams = match unit.as_str() {
        "mg" => 0.001,
        "g" => 1.0,
        _ => {
            let why = text::balance::a_unit_is_wanted_here_mg_l();
            return Err(cursor.fault(at, why));
        }
    };
    cursor.skip_space();
    let by = cursor.eat('/') || cursor.eat_word(&["per"]);
    if !(by && cursor.eat_word(&["l", "litre", "liter"])) {
        let why = text::balance::a_concentration_is_by_litre();
        return Err(cursor.fault(cursor.at, why));
    }
    cursor.finish()?;
    Ok(Concentration::GramsPerLitre(value * grams))
}

/// A spread, such as `20 %`, as a share.
fn percent(text: &str) -> Result<f64, DyeingError> {
    let mut cursor = Cursor::new(text);
    let value = read_number(&mut cursor)?;
    cursor.skip_space();
    if !cursor.eat('%') {
        return Err(cursor.fault(cursor.at, text::balance::a_spread_is_in_percent()));
    }
    cursor.finish()?;
    let fine = value <= 900.0;
    DyeingError::unless(
        fine,
        text::balance::spread(),
        value,
        "%",
        text::balance::n_0_to_900(),
    )
    .map(|p| p / 100.0)
}

impl WrittenCalibration {
    /// Fails for standards through which no line can be laid.
    ///
    /// # Errors
    /// Says at which standard what is wrong, or that there are too few.
    pub fn check(&self, start: &Start) -> Result<(), DyeingError> {
        Line::of(self, start)
            .map(|_| ())
            .map_err(|e| e.at(Part::Calibration.whole()))
    }
}

impl Line {
    /// The line through standards.
    pub(super) fn of(written: &WrittenCalibration, start: &Start) -> Result<Self, DyeingError> {
        let mut pairs = Vec::new();
        for (k, text) in written.standards.iter().enumerate() {
            let at = |e: DyeingError| e.at(Part::Standard(k + 1).whole());
            let (strong, absorbs) = text
                .split_once('=')
                .ok_or_else(|| at(recipe(text::balance::has_no_write_a_concentration(text))))?;
            let share = concentration(strong).and_then(|c| c.share(start));
            let absorbs = absorbs.trim().replace(',', ".");
            let absorbance = absorbs.parse::<f64>().ok().filter(|a| a.is_finite());
            let absorbance = absorbance.ok_or_else(|| {
                at(recipe(text::balance::is_no_absorbance_write_a_number(
                    &absorbs,
                )))
            })?;
            // Thousandths, so that the line's slope keeps its digits.
            pairs.push((1000.0 * share.map_err(at)?, absorbance));
        }
        let calibration = Calibration::fit(&pairs)?;
        let weakest = pairs.iter().map(|p| p.0).fold(f64::INFINITY, f64::min);
        let absorbances = || pairs.iter().map(|p| p.1);
        Ok(Self {
            calibration,
            range: [
                absorbances().fold(f64::INFINITY, f64::min),
                absorbances().fold(f64::NEG_INFINITY, f64::max),
            ],
            has_blank: weakest == 0.0,
        })
    }

    /// The strength for absorbances of one water, and their mean.
    fn read(&self, all: &[f64], stated: Option<f64>) -> Result<(Estimate, f64), DyeingError> {
        let mean = all.iter().sum::<f64>() / all.len() as f64;
        if !(mean.is_finite() && mean >= LEAST_ABSORBANCE) {
            return Err(recipe(
                text::balance::an_absorbance_of_isnt_possible_measure(mean),
            ));
        }
        let [least, most] = self.range;
        if mean > most {
            return Err(recipe(text::balance::the_absorbance_is_above(
                figure(mean),
                figure(most),
            )));
        }
        if mean < least && !self.has_blank {
            return Err(recipe(text::balance::the_absorbance_is_below(
                figure(mean),
                figure(least),
            )));
        }
        let found = self.calibration.concentration(mean, all.len() as u32)?;
        let spread = |bound: f64| Estimate::within(bound.max(0.0) / 1000.0, stated.unwrap_or(0.0));
        let seen = Estimate {
            middle: found.mg_per_l.max(0.0) / 1000.0,
            low: spread(found.low_mg_per_l).low,
            high: spread(found.high_mg_per_l).high,
        };
        Ok((seen, mean))
    }
}

/// The dye put in as a weight, where a litre's worth of grams can be set against it.
pub(super) fn grams(share: Estimate, dye: Option<Mass>) -> Option<Estimate> {
    dye.map(|dye| share.scaled(dye.grams()))
}
