//! What baths can do to people and places, said before the step where it matters.
//!
//! These are the usual cautions of the trade, no more: the safety data sheet of the product, local
//! rules and qualified people go before them.

use serde::{Deserialize, Serialize};

/// What can go wrong with something in or around a bath.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Hazard {
    /// Said always: whose word counts.
    #[serde(rename = "data sheet")]
    DataSheet,
    /// Powder in the air.
    #[serde(rename = "dust")]
    Dust,
    /// Dyes that can make lungs allergic for life.
    #[serde(rename = "sensitiser")]
    Sensitiser,
    /// Dyes whose parents are known only if they are new and labelled.
    #[serde(rename = "old dye")]
    OldDye,
    /// Hot liquor and steam.
    #[serde(rename = "hot")]
    Hot,
    /// Heat above the boil of an open pot.
    #[serde(rename = "pressure")]
    Pressure,
    /// Soda.
    #[serde(rename = "alkali")]
    Alkali,
    /// Caustic soda.
    #[serde(rename = "caustic")]
    Caustic,
    /// Acids of a kitchen's strength and somewhat above.
    #[serde(rename = "acid")]
    Acid,
    /// Mineral acids.
    #[serde(rename = "strong acid")]
    StrongAcid,
    /// Reducing agents.
    #[serde(rename = "reducer")]
    Reducer,
    /// Iron, copper and tin.
    #[serde(rename = "metal")]
    Metal,
    /// Chromium.
    #[serde(rename = "chrome")]
    Chrome,
    /// Agents that give off formaldehyde.
    #[serde(rename = "formaldehyde")]
    Formaldehyde,
    /// Chlorine bleach.
    #[serde(rename = "bleach")]
    Bleach,
    /// Vessels and food.
    #[serde(rename = "pots")]
    Pots,
    /// Children and animals.
    #[serde(rename = "children")]
    Children,
    /// Where spent baths go.
    #[serde(rename = "disposal")]
    Disposal,
}

/// A caution with its reason.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Caution {
    /// What it is about.
    pub hazard: Hazard,
    /// What to do, in words.
    pub sentence: String,
    /// What in the bath makes it needed; empty where every bath does.
    pub because: Vec<String>,
}

impl Hazard {
    /// What to do. Common practice, from public guidance on handling dyes; no single source.
    pub fn sentence(self) -> &'static str {
        match self {
            Self::DataSheet => {
                "Read the label and the safety data sheet of every product first; they, local rules and qualified people go before this sheet."
            }
            Self::Dust => {
                "Weigh powders out of draughts with a mask for fine dust (N95, FFP2 or better), gloves and eye protection, wet them to a paste at once, and wipe up with a damp cloth."
            }
            Self::Sensitiser => {
                "Reactive dye powders can make lungs allergic for good, and then the least trace brings it back: never raise dust, and let nobody with asthma handle the powder."
            }
            Self::OldDye => {
                "Don't use old or unlabelled dye powder: some dyes of the past are made from substances that cause cancer."
            }
            Self::Hot => {
                "Hot liquor and steam scald: use a steady pot that is at most three quarters full, a lid tilted away from you, tongs and long gloves, and don't leave it alone."
            }
            Self::Pressure => {
                "Above the boil a bath needs a machine built for pressure; don't use a kitchen pressure cooker."
            }
            Self::Alkali => {
                "Soda irritates eyes, skin and lungs: wear gloves and eye protection, and strew it slowly into water while stirring."
            }
            Self::Caustic => {
                "Caustic soda burns skin and blinds: goggles and long gloves, always caustic into cold water and never water onto caustic, and running water within reach."
            }
            Self::Acid => {
                "Acid goes into water, never water into acid; wear gloves and eye protection, and keep its vapour away from your face."
            }
            Self::StrongAcid => {
                "A mineral acid burns and heats water to spitting: goggles, long gloves, acid slowly into cold water; if you haven't been trained with it, use another class of dye."
            }
            Self::Reducer => {
                "A reducing agent must stay dry and apart from acids and bleach: damp powder heats up by itself, and its fumes choke. Strew it slowly into the bath with the window open."
            }
            Self::Metal => {
                "Metal mordants are poisonous to swallow and harmful to water life: gloves, no food near, out of reach of children, and spent baths kept out of soil, septic tanks and streams."
            }
            Self::Chrome => {
                "Chromium mordants are poisonous and cause cancer: not for homes, schools or studios; use alum."
            }
            Self::Formaldehyde => {
                "This agent can give off formaldehyde, which makes skin and lungs allergic and can cause cancer: prefer one that is free of it, or air the room well and wear gloves."
            }
            Self::Bleach => {
                "Never mix chlorine bleach with acid, vinegar or ammonia: poisonous gas forms at once."
            }
            Self::Pots => {
                "Pots, spoons and cups that held dye never go back to food; mark them. Don't eat or drink where you dye."
            }
            Self::Children => {
                "Keep children and animals away from powders, acids, alkalis and heat; children work with dye that an adult has dissolved."
            }
            Self::Disposal => {
                "Spent baths go well thinned down the sewer only where local rules allow it; never into soil, a septic tank or a stream."
            }
        }
    }

    /// What it is about, in a few words.
    pub fn name(self) -> &'static str {
        match self {
            Self::DataSheet => "read the data sheet",
            Self::Dust => "dust",
            Self::Sensitiser => "can make lungs allergic",
            Self::OldDye => "old dye",
            Self::Hot => "hot liquor and steam",
            Self::Pressure => "above the boil",
            Self::Alkali => "soda",
            Self::Caustic => "caustic alkali",
            Self::Acid => "acid",
            Self::StrongAcid => "strong acid",
            Self::Reducer => "reducing agent",
            Self::Metal => "metal mordant",
            Self::Chrome => "chromium",
            Self::Formaldehyde => "formaldehyde",
            Self::Bleach => "bleach",
            Self::Pots => "pots not for food",
            Self::Children => "children and animals",
            Self::Disposal => "disposal",
        }
    }

    /// The caution, for what makes it needed.
    pub fn caution(self, because: Vec<String>) -> Caution {
        Caution {
            hazard: self,
            sentence: self.sentence().to_owned(),
            because,
        }
    }
}

/// One caution for each hazard, with everything that brings it; in the order of [`Hazard`].
pub fn gather(found: impl IntoIterator<Item = (Hazard, String)>) -> Vec<Caution> {
    let mut by_hazard = std::collections::BTreeMap::<Hazard, Vec<String>>::new();
    for (hazard, because) in found {
        let all = by_hazard.entry(hazard).or_default();
        if !because.is_empty() && !all.contains(&because) {
            all.push(because);
        }
    }
    by_hazard
        .into_iter()
        .map(|(hazard, because)| hazard.caution(because))
        .collect()
}
