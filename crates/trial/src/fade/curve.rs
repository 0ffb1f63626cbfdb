//! A curve as it is shown.

use super::against::WHOLE_DE;
use crate::text;
use colour::grade::{self, Grade};
use inference::decay::{self, Decay, Question, Round, Shape, Shared, State, Value};
use serde::Serialize;

/// Points that the line of a curve is drawn by.
const POINTS: u32 = 48;

/// What the values of a curve count.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Unit {
    /// The share left.
    Share,
    /// Change in dE_F.
    De,
}

impl Unit {
    /// A share left in this unit.
    fn of(self, left: f64) -> f64 {
        match self {
            Self::Share => left,
            Self::De => WHOLE_DE * (1.0 - left),
        }
    }

    /// An interval of the share left in this unit.
    fn interval(self, interval: inference::Interval) -> [f64; 2] {
        let ends = [self.of(interval.low), self.of(interval.high)];
        match self {
            Self::Share => ends,
            Self::De => [ends[1], ends[0]],
        }
    }
}

/// Where the curve stands, as far as its figures can be told.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum FoundShape {
    /// It falls and levels off.
    LevelsOff,
    /// It falls; the looks don't show where it would level off.
    NoFloor,
    /// All that leaves has left by the first look after the start.
    AtOnce,
    /// No fall is shown.
    Flat,
    /// The values rise above the start by more than chance: nothing that washing does.
    Rising,
}

/// A fitted curve with what is shown of it. Values are shares of the strength left, or
/// changes in dE_F.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FadeCurve {
    /// What the fit came to.
    pub shape: FoundShape,
    /// The value that it levels off at.
    pub floor: f64,
    /// Its 95 % interval; none of a single piece.
    pub floor_interval: Option<[f64; 2]>,
    /// How fast, per round.
    pub rate: f64,
    /// Its 95 % interval.
    pub rate_interval: Option<[f64; 2]>,
    /// Last round looked at.
    pub last_round: u32,
    /// Mean of the pieces at each stage.
    pub means: Vec<AtRound>,
    /// The curve from the start to twice the last round looked at.
    pub line: Vec<OnCurve>,
    /// The curve at the last round looked at.
    pub at_last: OnCurve,
    /// The curve beside a straight line and no change; none where there are too few
    /// looks to compare them.
    pub shapes: Option<Shapes>,
}

/// A value at a round.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct AtRound {
    /// After how many rounds.
    pub round: u32,
    /// The value.
    pub value: f64,
}

/// A point of the curve.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct OnCurve {
    /// After how many rounds.
    pub rounds: f64,
    /// The value.
    pub value: f64,
    /// Its 95 % interval; none of a single piece.
    pub interval: Option<[f64; 2]>,
    /// Whether nothing was looked at so far on.
    pub extrapolated: bool,
}

/// Akaike's criterion, corrected for few values, of three shapes: less is better.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Shapes {
    /// Of no change.
    pub no_change: f64,
    /// Of a straight line.
    pub line: f64,
    /// Of the curve.
    pub curve: f64,
    /// The best by it.
    pub best: &'static str,
}

/// How a number of rounds is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Mark {
    /// Within the rounds looked at.
    Seen,
    /// Beyond them, by the curve.
    Extrapolated,
    /// Beyond twice the rounds looked at, or never: no number is given.
    Later,
}

/// A number of rounds with its mark.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct MarkedRound {
    /// Rounds; none where they are later than can be told.
    pub rounds: Option<f64>,
    /// How it is known.
    pub mark: Mark,
}

impl From<Round> for MarkedRound {
    fn from(round: Round) -> Self {
        Self {
            rounds: round.rounds(),
            mark: match round {
                Round::Seen(_) => Mark::Seen,
                Round::Extrapolated(_) => Mark::Extrapolated,
                Round::Later => Mark::Later,
            },
        }
    }
}

/// When the change becomes worse than a grade.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct GradePassed {
    /// The grade, such as `4`.
    pub grade: String,
    /// The dE_F from which it is worse, by the table of ISO 105-A05.
    pub from_de: f64,
    /// After how many rounds.
    pub estimate: MarkedRound,
    /// Lower and upper end of the 95 % interval; none of a single piece.
    pub interval: Option<[MarkedRound; 2]>,
}

/// The curve through values, or why there is none.
pub(super) fn of(
    values: &[Value],
    shared: &Shared,
    seed: u64,
    unit: Unit,
) -> Result<(Decay, FadeCurve), String> {
    if values.is_empty() {
        return Err(text::fade::no_test_piece_was_read().to_owned());
    }
    let decay =
        decay::fit(values, shared, &Question::usual(seed)).map_err(|error| error.to_string())?;
    let shown = shown(&decay, unit);
    Ok((decay, shown))
}

fn shown(decay: &Decay, unit: Unit) -> FadeCurve {
    let point = |rounds: f64| {
        let found = decay.left(rounds).ok();
        OnCurve {
            rounds,
            value: unit.of(decay.curve.left(rounds)),
            interval: found.and_then(|f| f.interval).map(|i| unit.interval(i)),
            extrapolated: found.is_none_or(|f| f.extrapolated),
        }
    };
    let (last, furthest) = (decay.last_round(), decay.furthest_round());
    FadeCurve {
        shape: match decay.state {
            State::Within => FoundShape::LevelsOff,
            State::NoFloor => FoundShape::NoFloor,
            State::AtOnce => FoundShape::AtOnce,
            State::Flat => FoundShape::Flat,
            State::Rising => FoundShape::Rising,
        },
        floor: unit.of(decay.curve.floor),
        floor_interval: decay.floor_interval().map(|i| unit.interval(i)),
        rate: decay.curve.rate,
        rate_interval: decay.rate_interval().map(|i| [i.low, i.high]),
        last_round: last as u32,
        means: decay
            .means
            .iter()
            .map(|(rounds, left)| AtRound {
                round: *rounds as u32,
                value: unit.of(*left),
            })
            .collect(),
        line: (0..=POINTS)
            .map(|i| point(furthest * f64::from(i) / f64::from(POINTS)))
            .collect(),
        at_last: point(last),
        shapes: shapes(decay),
    }
}

fn shapes(decay: &Decay) -> Option<Shapes> {
    Some(Shapes {
        no_change: decay.shapes.no_change?,
        line: decay.shapes.line?,
        curve: decay.shapes.curve?,
        best: match decay.shapes.best()? {
            Shape::NoChange => "no_change",
            Shape::Line => "line",
            Shape::Curve => "curve",
        },
    })
}

/// When a curve of change becomes worse than a grade; none of grade 1 and of what is no
/// grade.
pub(super) fn passed(decay: &Decay, grade: &str) -> Option<GradePassed> {
    let from_de = grade::worse_from(grade.parse::<Grade>().ok()?)?;
    let found = decay.passes(1.0 - from_de / WHOLE_DE);
    Some(GradePassed {
        grade: grade.to_owned(),
        from_de,
        estimate: found.estimate.into(),
        interval: found.interval.map(|(low, high)| [low.into(), high.into()]),
    })
}
