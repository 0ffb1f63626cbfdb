//! Classes of dye: what each dyes, with what, how hot and how long, and how it lasts.
//!
//! The table is `data/classes.toml`, which says where its figures come from.

use crate::known;
use crate::text;
use std::sync::LazyLock;

use serde::{Deserialize, Serialize};

use crate::{
    Celsius, LiquorRatio,
    caution::Hazard,
    error::DyeingError,
    fibre::{self, Fibre},
    material::Role,
};

/// A class of dye.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DyeClass {
    /// Its short name, as recipes use it whatever the language.
    pub key: String,
    /// Keys of the fibres it dyes.
    pub fibres: Vec<String>,
    /// Acidity of the bath, least and most.
    pub ph: [f64; 2],
    /// Usual liquor ratios, least and most.
    pub liquor_ratio: [LiquorRatio; 2],
    /// Usual depths, palest and deepest, % owf.
    pub depth_usual_owf: [f64; 2],
    /// Above this a depth is a slip of the pen, % owf.
    pub depth_limit_owf: f64,
    /// What helps the dye.
    #[serde(default)]
    pub helper: Vec<Helper>,
    /// The bath, stage by stage.
    pub stage: Vec<Stage>,
    /// To what the bath cools before the goods come out.
    pub cool_to_c: Celsius,
    /// Share of the dye that is usually taken up, percent.
    pub exhaustion_percent: [f64; 2],
    /// Share of the dye that usually stays for good, percent.
    pub fixation_percent: [f64; 2],
    /// Rinses and washes that take loose dye off.
    pub wash_off: Vec<WashOff>,
    /// After-treatments that are met: a word for each, by which its text is found.
    #[serde(default)]
    pub after: Vec<String>,
    /// What the dye itself can do to people.
    #[serde(default)]
    pub hazards: Vec<Hazard>,
    /// Where its figures come from.
    pub source: String,
}

/// How badly a class needs a helper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Need {
    /// It doesn't work without.
    Needed,
    /// It works worse without.
    Usual,
    /// Some recipes have it.
    Optional,
}

/// By what a helper is dosed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum By {
    /// Grams in a litre of liquor.
    #[serde(rename = "g/L")]
    GramsPerLitre,
    /// Percent on weight of fibre.
    #[serde(rename = "% owf")]
    PercentOwf,
}

/// Something that helps a dye: salt, alkali, acid, reducer or mordant.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Helper {
    /// What it does.
    pub role: Role,
    /// Which material the amounts are of.
    pub material: String,
    /// By what it is dosed.
    pub by: By,
    /// Depths (% owf) and amounts; between them it goes by straight lines.
    pub by_depth: Vec<[f64; 2]>,
    /// How badly it is needed.
    pub need: Need,
}

/// A stage of the bath: add, go to a temperature, stay.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stage {
    /// What goes in at its start: `dye`, or a role.
    #[serde(default)]
    pub add: Vec<String>,
    /// Where it goes.
    pub to_c: Celsius,
    /// How fast it goes there, °C a minute.
    #[serde(default = "usual_rise")]
    pub rise_c_per_min: f64,
    /// How long it stays there.
    pub minutes: f64,
    /// Whether the goods stay out when the dye goes in, as of a vat that isn't ready yet.
    #[serde(default)]
    pub goods_wait: bool,
}

fn usual_rise() -> f64 {
    2.0
}

/// A rinse or a wash after the bath.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WashOff {
    /// How long.
    pub minutes: f64,
    /// How warm.
    pub at_c: Celsius,
    /// Whether soap is used: a wash, not a rinse.
    #[serde(default)]
    pub soap: bool,
}

/// How well a class usually lasts, in words.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Fastness {
    /// To washing.
    pub wash: String,
    /// To light.
    pub light: String,
}

/// What to do at a stage of the bath; each may be nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct How {
    /// How what goes in is stirred in, after a colon.
    pub add: Option<&'static str>,
    /// What to do on the way to the temperature.
    pub rise: Option<&'static str>,
    /// What is left to do of adding, once the stage is at its temperature.
    pub rest: Option<&'static str>,
    /// What to do while it stays there.
    pub hold: Option<&'static str>,
}

#[derive(Deserialize)]
struct Table {
    class: Vec<DyeClass>,
}

static TABLE: LazyLock<Vec<DyeClass>> = LazyLock::new(|| {
    toml::from_str::<Table>(include_str!("../data/classes.toml"))
        .expect("the table comes with the program, and a test reads it")
        .class
});

/// Every class of the table.
pub fn all() -> &'static [DyeClass] {
    &TABLE
}

/// The class of that key.
///
/// # Errors
/// Names the classes there are.
pub fn find(key: &str) -> Result<&'static DyeClass, DyeingError> {
    let wanted = key.trim().to_lowercase();
    all()
        .iter()
        .find(|c| c.key == wanted)
        .ok_or_else(|| DyeingError::Unknown {
            what: text::class::class_of_dye(),
            name: key.to_owned(),
            known: all()
                .iter()
                .map(|c| c.key.as_str())
                .collect::<Vec<_>>()
                .join(", "),
        })
}

impl DyeClass {
    fn said(&self, part: &str) -> &'static str {
        known::known(text::known_classes::said, &self.key, part)
    }

    /// Its name, as `warm reactive dye`.
    pub fn name(&self) -> &'static str {
        self.said("")
    }

    /// What it is good for, in a sentence.
    pub fn about(&self) -> &'static str {
        self.said("about")
    }

    /// After-treatments that are met, and what they are worth, a sentence or two for each.
    pub fn after_treatments(&self) -> Vec<&'static str> {
        let texts = self.after.iter();
        texts.map(|a| self.said(&format!("after-{a}"))).collect()
    }

    /// How well it usually lasts.
    pub fn fastness(&self) -> Fastness {
        Fastness {
            wash: self.said("wash").to_owned(),
            light: self.said("light").to_owned(),
        }
    }

    /// Names of the fibres it dyes.
    pub fn fibre_names(&self) -> Vec<&'static str> {
        let fibres = self.fibres.iter();
        fibres
            .map(|key| fibre::find(key).map_or("", Fibre::name))
            .collect()
    }

    /// Why one of its helpers is there, as the end of a sentence.
    pub fn why(&self, helper: &Helper) -> &'static str {
        self.said(helper.role.key())
    }

    /// What to do at a stage, counted from 0.
    pub fn how(&self, stage: usize) -> How {
        let of = |when: &str| {
            let part = format!("stage-{}-{when}", stage + 1);
            known::maybe_known(text::known_classes::said, &self.key, &part)
        };
        How {
            add: of("add"),
            rise: of("rise"),
            rest: of("rest"),
            hold: of("hold"),
        }
    }

    /// What to do at a rinse or wash after the bath, counted from 0.
    pub fn wash_off_how(&self, k: usize) -> &'static str {
        self.said(&format!("wash-off-{}", k + 1))
    }

    /// What helps it in that way, if anything does.
    pub fn helper(&self, role: Role) -> Option<&Helper> {
        self.helper.iter().find(|h| h.role == role)
    }

    /// The hottest of its bath.
    pub fn hottest(&self) -> Celsius {
        let first = self.cool_to_c;
        self.stage
            .iter()
            .fold(first, |most, s| if s.to_c > most { s.to_c } else { most })
    }

    /// The middle of its usual liquor ratios, L/kg.
    pub fn middle_ratio(&self) -> f64 {
        let [low, high] = self.liquor_ratio.map(LiquorRatio::litres_per_kilogram);
        (low + high) / 2.0
    }
}

impl Helper {
    /// The usual amount for a depth; for an unknown depth, from the least to the most.
    pub fn usual(&self, depth_owf: Option<f64>) -> [f64; 2] {
        let amounts = self.by_depth.iter().map(|row| row[1]);
        let (least, most) = amounts.fold((f64::INFINITY, 0.0), |(l, m), a| {
            (f64::min(l, a), f64::max(m, a))
        });
        let Some(depth) = depth_owf else {
            return [least, most];
        };
        let above = self.by_depth.iter().position(|row| row[0] >= depth);
        let at = match above {
            Some(0) => self.by_depth[0][1],
            None => self.by_depth[self.by_depth.len() - 1][1],
            Some(k) => {
                let ([x0, y0], [x1, y1]) = (self.by_depth[k - 1], self.by_depth[k]);
                y0 + (y1 - y0) * (depth - x0) / (x1 - x0)
            }
        };
        [at, at]
    }

    /// The unit of its amounts, as it is written.
    pub fn unit(&self) -> &'static str {
        match self.by {
            By::GramsPerLitre => "g/L",
            By::PercentOwf => "% owf",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::all;
    use crate::known::{hold, name};
    use crate::{fibre, material, text::known_classes};

    #[test]
    fn each_class_has_its_texts_and_there_are_no_others() {
        let mut asked = Vec::new();
        for class in all() {
            let mut ask = |part: &str, is_needed| asked.push((name(&class.key, part), is_needed));
            for part in ["", "about", "wash", "light"] {
                ask(part, true);
            }
            for helper in &class.helper {
                ask(helper.role.key(), true);
            }
            for k in 1..=class.stage.len() {
                for when in ["add", "rise", "rest"] {
                    ask(&format!("stage-{k}-{when}"), false);
                }
                ask(&format!("stage-{k}-hold"), true);
            }
            for k in 1..=class.wash_off.len() {
                ask(&format!("wash-off-{k}"), true);
            }
            for after in &class.after {
                ask(&format!("after-{after}"), true);
            }
        }
        hold(known_classes::said, &known_classes::NAMES, asked);
    }

    #[test]
    fn the_table_holds_together() {
        for class in all() {
            for name in &class.fibres {
                assert!(fibre::find(name).is_ok(), "{}: {name}", class.key);
            }
            for helper in &class.helper {
                let material = material::find(&helper.material).unwrap();
                assert_eq!(material.role, helper.role, "{}", class.key);
                assert!(!helper.by_depth.is_empty());
                assert!(
                    helper.by_depth.is_sorted_by(|a, b| a[0] < b[0]),
                    "{}",
                    class.key
                );
            }
            let dye_goes_in = class
                .stage
                .iter()
                .flat_map(|s| &s.add)
                .filter(|a| *a == "dye");
            assert_eq!(dye_goes_in.count(), 1, "{}", class.key);
            for range in [
                class.ph,
                class.exhaustion_percent,
                class.fixation_percent,
                class.depth_usual_owf,
            ] {
                assert!(range[0] <= range[1], "{}", class.key);
            }
            assert!(
                class.fixation_percent[1] <= class.exhaustion_percent[1],
                "{}",
                class.key
            );
            assert!(class.depth_usual_owf[1] < class.depth_limit_owf && !class.source.is_empty());
        }
    }

    #[test]
    fn amounts_go_by_depth() {
        let salt = super::find("reactive-warm").unwrap().helper[0].clone();
        assert_eq!(salt.usual(Some(0.1)), [20.0, 20.0]);
        assert_eq!(salt.usual(Some(1.0)), [35.0, 35.0]);
        assert_eq!(salt.usual(Some(9.0)), [70.0, 70.0]);
        assert_eq!(salt.usual(None), [20.0, 70.0]);
    }
}
