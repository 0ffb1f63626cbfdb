//! How to take a refused photo again, step by step.

use crate::RefusalCode;
use crate::text;

impl RefusalCode {
    /// Every cause.
    pub const ALL: [Self; 16] = [
        Self::NotAPhoto,
        Self::DamagedFile,
        Self::TooLarge,
        Self::HeicUnsupported,
        Self::ChartMissing,
        Self::ChartCutOff,
        Self::TwoCharts,
        Self::Mirrored,
        Self::GreyscalePhoto,
        Self::OverExposed,
        Self::UnderExposed,
        Self::PoorFit,
        Self::BadCorners,
        Self::BoardUnread,
        Self::BoardVersion,
        Self::BoardMixed,
    ];

    /// The cause of that name, as [`RefusalCode::as_str`] gives it.
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|code| code.as_str() == name)
    }

    /// What to do to get a photo that can be read, a short sentence a step.
    ///
    /// # Source
    /// Common practice of photographing flat work; no standard.
    pub fn retake(self) -> Vec<&'static str> {
        match self {
            Self::NotAPhoto => vec![
                text::retake::send_the_picture_itself_a_jpeg(),
                text::retake::a_screenshot_a_film_or_a_link(),
            ],
            Self::DamagedFile => vec![
                text::retake::copy_the_file_from_the_camera(),
                text::retake::if_it_is_broken_there_too_take(),
            ],
            Self::TooLarge => vec![
                text::retake::set_the_camera_to_jpeg_not_raw(),
                text::retake::n_12_to_50_megapixels_are_plenty(),
            ],
            Self::HeicUnsupported => vec![
                text::retake::set_the_phones_camera_to_the_most(),
                text::retake::or_export_this_photo_as_jpeg(),
            ],
            Self::ChartMissing => vec![
                text::retake::lay_the_chart_flat_beside_the_pieces(),
                text::retake::stand_straight_above_let_chart_and(),
                text::retake::no_shadow_no_glare_on_the_chart(),
                text::retake::if_it_is_plainly_there_give(),
            ],
            Self::ChartCutOff => vec![text::retake::step_back_or_lay_the_chart_further()],
            Self::TwoCharts => {
                vec![text::retake::leave_one_chart_on_the_table()]
            }
            Self::Mirrored => vec![
                text::retake::use_the_camera_on_the_back(),
                text::retake::or_switch_off_mirror_in_the_cameras(),
            ],
            Self::GreyscalePhoto => vec![text::retake::switch_off_black_and_white_and_every()],
            Self::OverExposed => vec![
                text::retake::tap_the_white_patch_on_the_screen(),
                text::retake::move_out_of_direct_sun_and_switch(),
            ],
            Self::UnderExposed => vec![
                text::retake::more_light_nearer_to_a_window(),
                text::retake::tap_the_chart_on_the_screen(),
            ],
            Self::PoorFit => vec![
                text::retake::see_that_the_chart_chosen_here(),
                text::retake::one_kind_of_light_only_daylight(),
                text::retake::switch_off_hdr_portrait_and_night_modes(),
            ],
            Self::BadCorners => vec![
                text::retake::give_the_four_outer_corners(),
                text::retake::or_leave_the_field_empty_and_let(),
            ],
            Self::BoardUnread => vec![
                text::retake::get_all_four_corner_codes_into(),
                text::retake::nothing_over_the_codes_and_no_glare(),
            ],
            Self::BoardVersion => {
                vec![text::retake::print_the_board_anew_from_this_program()]
            }
            Self::BoardMixed => vec![text::retake::one_board_to_a_photo_put()],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::HashSet;

    #[test]
    fn every_cause_is_found_by_its_name_and_says_what_to_do() {
        let names: HashSet<&str> = RefusalCode::ALL.iter().map(|code| code.as_str()).collect();
        assert_eq!(names.len(), RefusalCode::ALL.len());
        for code in RefusalCode::ALL {
            assert_eq!(RefusalCode::named(code.as_str()), Some(code));
            assert!(!code.retake().is_empty(), "{code:?}");
            for step in code.retake() {
                assert!(step.ends_with('.') && step.contains(' '), "{step}");
            }
        }
        assert_eq!(RefusalCode::named("vault_file_missing"), None);
    }
}
