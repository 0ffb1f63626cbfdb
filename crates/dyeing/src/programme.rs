//! The bath's temperature over time, with what is added when.

use crate::text;
use serde::{Deserialize, Serialize};

use crate::{Celsius, class::Stage, plan::Line, recipe::Recipe};

/// How long adding something takes, min.
pub const ADDING_MIN: f64 = 3.0;
/// How fast a pot cools with the heat off and its lid open, °C a minute; common practice, no source.
const COOLING_C_PER_MIN: f64 = 2.0;

/// A point of the curve.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Point {
    /// Minutes since the bath began.
    pub minute: f64,
    /// Temperature.
    pub celsius: Celsius,
}

/// Something that goes in.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Addition {
    /// Minutes since the bath began.
    pub minute: f64,
    /// Temperature then.
    pub celsius: Celsius,
    /// Names of what goes in.
    pub what: Vec<String>,
}

/// A stage with its times worked out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct TimedStage {
    /// When it begins, minutes since the bath began.
    pub begins_min: f64,
    /// Temperature at its beginning.
    pub from_c: Celsius,
    /// Temperature it goes to.
    pub to_c: Celsius,
    /// How long adding takes.
    pub adding_min: f64,
    /// How long it goes there.
    pub raising_min: f64,
    /// How long it stays.
    pub holding_min: f64,
    /// Names of what goes in.
    pub add: Vec<String>,
    /// What to do while it stays there.
    pub how: String,
    /// How what goes in is stirred in, after a colon.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub how_to_add: String,
    /// What to do on the way to the temperature.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub how_to_raise: String,
    /// Whether the goods stay out when the dye goes in.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub goods_wait: bool,
}

/// The bath's temperature over time.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Programme {
    /// Corners of the curve, in order of time.
    pub points: Vec<Point>,
    /// What goes in when.
    pub additions: Vec<Addition>,
    /// The stages.
    pub stages: Vec<TimedStage>,
    /// How long cooling takes at the end.
    pub cooling_min: f64,
    /// To what it cools.
    pub cool_to_c: Celsius,
    /// Where it keeps below the class's usual temperature, and why.
    pub note: Option<String>,
}

impl Programme {
    /// The class's programme for a recipe, with the recipe's own temperature and time in it.
    ///
    /// Where the recipe says nothing, the bath stays 3 °C below what its tenderest fibre bears.
    pub fn of(recipe: &Recipe, lines: &[Line]) -> Self {
        let class = &recipe.class;
        let hottest = class.hottest();
        let (top, note) = top(recipe, hottest);
        let mut programme = Self {
            points: Vec::new(),
            additions: Vec::new(),
            stages: Vec::new(),
            cooling_min: 0.0,
            cool_to_c: class.cool_to_c,
            note,
        };
        let mut minute = 0.0;
        let mut now = lower(class.stage.first().map_or(top, |s| s.to_c), top);
        programme.points.push(Point {
            minute,
            celsius: now,
        });
        for (k, stage) in class.stage.iter().enumerate() {
            let to_c = if stage.to_c == hottest {
                top
            } else {
                lower(stage.to_c, top)
            };
            let add = added(&class.stage, k, lines);
            let adding_min = if add.is_empty() { 0.0 } else { ADDING_MIN };
            let raising_min = (to_c.celsius() - now.celsius()).abs() / stage.rise_c_per_min;
            let last = k + 1 == class.stage.len();
            let holding_min = match recipe.process.time {
                Some(time) if last => time.minutes(),
                _ => stage.minutes,
            };
            if !add.is_empty() {
                programme.additions.push(Addition {
                    minute,
                    celsius: now,
                    what: add.clone(),
                });
            }
            let how = class.how(k);
            let rest = how.rest.filter(|_| !add.is_empty());
            let meanwhile: Vec<&str> = rest.into_iter().chain(how.hold).collect();
            programme.stages.push(TimedStage {
                begins_min: minute,
                from_c: now,
                to_c,
                adding_min,
                raising_min,
                holding_min,
                add,
                how: meanwhile.join(" "),
                how_to_add: how.add.unwrap_or_default().to_owned(),
                how_to_raise: how.rise.unwrap_or_default().to_owned(),
                goods_wait: stage.goods_wait,
            });
            for (minutes, celsius) in [(adding_min, now), (raising_min, to_c), (holding_min, to_c)]
            {
                if minutes > 0.0 {
                    minute += minutes;
                    programme.points.push(Point { minute, celsius });
                }
            }
            now = to_c;
        }
        if now > class.cool_to_c {
            programme.cooling_min = (now.celsius() - class.cool_to_c.celsius()) / COOLING_C_PER_MIN;
            minute += programme.cooling_min;
            programme.points.push(Point {
                minute,
                celsius: class.cool_to_c,
            });
        } else {
            programme.cool_to_c = now;
        }
        programme
    }

    /// How long all of it takes, min.
    pub fn minutes(&self) -> f64 {
        self.points.last().map_or(0.0, |p| p.minute)
    }

    /// The hottest of it.
    pub fn hottest(&self) -> Celsius {
        let first = self.cool_to_c;
        self.points.iter().fold(
            first,
            |most, p| if p.celsius > most { p.celsius } else { most },
        )
    }
}

fn lower(a: Celsius, b: Celsius) -> Celsius {
    if a < b { a } else { b }
}

/// The hottest of this bath, and why it is not the class's.
fn top(recipe: &Recipe, usual: Celsius) -> (Celsius, Option<String>) {
    if let Some(hold) = recipe.process.hold {
        return (hold, None);
    }
    let tender = recipe
        .fibres
        .iter()
        .map(|s| &s.fibre)
        .reduce(|a, b| if b.limit_c < a.limit_c { b } else { a });
    match tender {
        Some(fibre) if fibre.limit_c < usual => {
            let kept = Celsius::new(fibre.limit_c.celsius() - 3.0).unwrap_or(fibre.limit_c);
            let note = text::programme::the_bath_stays_at_instead(kept, usual, fibre.above());
            (kept, Some(note))
        }
        _ => (usual, None),
    }
}

/// What goes in at a stage; what no stage names goes in with the first.
fn added(stages: &[Stage], k: usize, lines: &[Line]) -> Vec<String> {
    let goes_in = |line: &Line| {
        let kind = match line.role {
            None => "dye".to_owned(),
            Some(role) => role.key().to_owned(),
        };
        stages
            .iter()
            .position(|s| s.add.contains(&kind))
            .unwrap_or(0)
    };
    let here = lines.iter().filter(|line| goes_in(line) == k);
    here.map(|line| line.name.clone()).collect()
}
