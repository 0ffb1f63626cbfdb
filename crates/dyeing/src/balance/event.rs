//! Readings as they were noted: added, corrected by another one, taken back, never changed.

use serde::{Deserialize, Serialize};

use crate::balance::{WrittenCalibration, WrittenReading, WrittenWaters};

/// What was noted of the waters of a run.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum WaterNote {
    /// A reading of the spent bath; the newest that stands counts.
    Bath(WrittenReading),
    /// A reading of a rinse; rinses stand in the order in which they were first noted.
    Rinse(WrittenReading),
    /// Standards for absorbances; the newest that stands counts.
    Calibration(WrittenCalibration),
    /// An earlier note doesn't count, with the reason.
    Withdrawn(String),
}

/// One note.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct WaterEvent {
    /// Its number in the run, from 1.
    pub number: u32,
    /// When it was noted, s since 1970.
    pub noted_s: i64,
    /// What was noted.
    pub what: WaterNote,
    /// Number of the earlier note that it takes the place of, or that it withdraws.
    pub of: Option<u32>,
}

/// A note as it counts now.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StandingWater {
    /// Number of the note that was first made.
    pub number: u32,
    /// What counts.
    pub what: WaterNote,
    /// Whether a later note corrected it.
    pub corrected: bool,
}

/// What counts of all notes, in the order in which they were first made.
pub fn standing(events: &[WaterEvent]) -> Vec<StandingWater> {
    let mut stand: Vec<StandingWater> = Vec::new();
    for event in events {
        let place = |of: u32| stand.iter().position(|s| s.number == of);
        match (event.of.map(place), &event.what) {
            (Some(Some(place)), WaterNote::Withdrawn(_)) => {
                stand.remove(place);
            }
            (Some(Some(place)), what) => {
                stand[place].what = what.clone();
                stand[place].corrected = true;
            }
            (None, WaterNote::Withdrawn(_)) => {}
            (None, what) => stand.push(StandingWater {
                number: event.number,
                what: what.clone(),
                corrected: false,
            }),
            // What was withdrawn before can't be corrected.
            (Some(None), _) => {}
        }
    }
    stand
}

/// The readings that count.
pub fn waters(events: &[WaterEvent]) -> WrittenWaters {
    let mut waters = WrittenWaters::default();
    for note in standing(events) {
        match note.what {
            WaterNote::Bath(reading) => waters.bath = Some(reading),
            WaterNote::Rinse(reading) => waters.rinse.push(reading),
            WaterNote::Calibration(calibration) => waters.calibration = Some(calibration),
            WaterNote::Withdrawn(_) => {}
        }
    }
    waters
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rinse(volume: &str) -> WaterNote {
        WaterNote::Rinse(WrittenReading {
            volume: volume.to_owned(),
            ..WrittenReading::default()
        })
    }

    #[test]
    fn corrections_take_the_place_and_withdrawals_the_note() {
        let notes = [
            (rinse("1 L"), None),
            (rinse("2 L"), None),
            (rinse("1.5 L"), Some(1)),
            (WaterNote::Withdrawn("spilt".into()), Some(2)),
            (rinse("9 L"), Some(2)),
            (rinse("3 L"), None),
        ];
        let events: Vec<WaterEvent> = (1u32..)
            .zip(notes)
            .map(|(number, (what, of))| WaterEvent {
                number,
                noted_s: 0,
                what,
                of,
            })
            .collect();
        let volumes: Vec<_> = waters(&events)
            .rinse
            .into_iter()
            .map(|r| r.volume)
            .collect();
        assert_eq!(volumes, ["1.5 L", "3 L"]);
        assert!(standing(&events)[0].corrected && standing(&events)[1].number == 6);
    }
}
