//! What the journal's events are called. The journal keeps their English names, as keys.

use crate::Entry;
use crate::text::event_words as say;

impl Entry {
    /// What was done, in words; the name that is kept, where this version knows no words for it.
    pub fn in_words(&self) -> &str {
        named(&self.what).unwrap_or(&self.what)
    }
}

pub(crate) fn named(what: &str) -> Option<&'static str> {
    Some(match what {
        "areas marked" => say::areas_marked(),
        "blind codes opened" => say::blind_codes_opened(),
        "chart added" => say::chart_added(),
        "device paired" => say::device_paired(),
        "device revoked" => say::device_revoked(),
        "grade by eye added" => say::grade_by_eye_added(),
        "judging by eye begun" => say::judging_by_eye_begun(),
        "judging by eye closed" => say::judging_by_eye_closed(),
        "lot added" => say::lot_added(),
        "material added" => say::material_added(),
        "person judges" => say::person_judges(),
        "photo added" => say::photo_added(),
        "photo read" => say::photo_read(),
        "photo refused" => say::photo_refused(),
        "photo taken out of the queue" => say::photo_taken_out_of_the_queue(),
        "photo's stage corrected" => say::photos_stage_corrected(),
        "plan changed" => say::plan_changed(),
        "plan kept" => say::plan_kept(),
        "put in the bin" => say::put_in_the_bin(),
        "readings added" => say::readings_added(),
        "recipe changed" => say::recipe_changed(),
        "recipe is for" => say::recipe_is_for(),
        "recipe kept" => say::recipe_kept(),
        "run begun" => say::run_begun(),
        "set-up checked" => say::set_up_checked(),
        "settings changed" => say::settings_changed(),
        "taken out of the bin" => say::taken_out_of_the_bin(),
        "trial entered" => say::trial_entered(),
        "withdrawn" => say::withdrawn(),
        "spent bath read" => say::spent_bath_read(),
        "rinse read" => say::rinse_read(),
        "standards for waters kept" => say::standards_for_waters_kept(),
        "reading of a water taken back" => say::reading_of_a_water_taken_back(),
        "clock started" => say::clock_started(),
        "clock stopped" => say::clock_stopped(),
        "temperature noted" => say::temperature_noted(),
        "done otherwise" => say::done_otherwise(),
        "remark" => say::remark(),
        "run finished" => say::run_finished(),
        "note taken back" => say::note_taken_back(),
        _ => return None,
    })
}
