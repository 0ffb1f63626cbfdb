//! What baths can do to people and places, said before the step where it matters.
//!
//! These are the usual cautions of the trade, no more: the safety data sheet of the product, local
//! rules and qualified people go before them.

use crate::text;
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
            Self::DataSheet => text::caution::read_the_label_and_the_safety_data(),
            Self::Dust => text::caution::weigh_powders_out_of_draughts(),
            Self::Sensitiser => text::caution::reactive_dye_powders_can_make_lungs(),
            Self::OldDye => text::caution::dont_use_old_or_unlabelled_dye_powder(),
            Self::Hot => text::caution::hot_liquor_and_steam_scald_use(),
            Self::Pressure => text::caution::above_the_boil_a_bath_needs(),
            Self::Alkali => text::caution::soda_irritates_eyes_skin_and_lungs_wear(),
            Self::Caustic => text::caution::caustic_soda_burns_skin_and_blinds(),
            Self::Acid => text::caution::acid_goes_into_water_never_water_into(),
            Self::StrongAcid => text::caution::a_mineral_acid_burns_and_heats_water(),
            Self::Reducer => text::caution::a_reducing_agent_must_stay_dry(),
            Self::Metal => text::caution::metal_mordants_are_poisonous_to_swallow(),
            Self::Chrome => text::caution::chromium_mordants_are_poisonous_and(),
            Self::Formaldehyde => text::caution::this_agent_can_give_off_formaldehyde(),
            Self::Bleach => text::caution::never_mix_chlorine_bleach_with_acid(),
            Self::Pots => text::caution::pots_spoons_and_cups_that_held_dye(),
            Self::Children => text::caution::keep_children_and_animals_away_from(),
            Self::Disposal => text::caution::spent_baths_go_well_thinned_down(),
        }
    }

    /// What it is about, in a few words.
    pub fn name(self) -> &'static str {
        match self {
            Self::DataSheet => text::caution::read_the_data_sheet(),
            Self::Dust => text::caution::dust(),
            Self::Sensitiser => text::caution::can_make_lungs_allergic(),
            Self::OldDye => text::caution::old_dye(),
            Self::Hot => text::caution::hot_liquor_and_steam(),
            Self::Pressure => text::caution::above_the_boil(),
            Self::Alkali => text::caution::soda(),
            Self::Caustic => text::caution::caustic_alkali(),
            Self::Acid => text::caution::acid(),
            Self::StrongAcid => text::caution::strong_acid(),
            Self::Reducer => text::caution::reducing_agent(),
            Self::Metal => text::caution::metal_mordant(),
            Self::Chrome => text::caution::chromium(),
            Self::Formaldehyde => text::caution::formaldehyde(),
            Self::Bleach => text::caution::bleach(),
            Self::Pots => text::caution::pots_not_for_food(),
            Self::Children => text::caution::children_and_animals(),
            Self::Disposal => text::caution::disposal(),
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
