//! A verdict from eyes in sentences.

use super::{
    contrast::{Contrast, Units},
    decide::Asked,
    more::advice,
};
use crate::decide::{DealtAnew, Verdict};
use crate::text;

/// Everything a sentence may speak of.
pub(super) struct Evidence<'a> {
    pub asked: &'a Asked<'a>,
    /// A witness was in a load with pieces of another arm.
    pub shared: bool,
    pub pieces: [usize; 2],
    /// The margin in grades.
    pub margin: f64,
    pub low: f64,
    pub high: f64,
    /// The interval leaves 0 out.
    pub shown: bool,
    pub verdict: Verdict,
    pub dealt_anew: Option<DealtAnew>,
    pub contrast: &'a Contrast,
}

/// For anybody, and with the figures.
pub(super) fn of(e: &Evidence) -> (String, String) {
    (plain(e), reason(e))
}

fn rounds(stage: u32) -> String {
    match stage {
        0 => text::eyes::before_the_first_round().to_owned(),
        1 => text::eyes::after_1_round().to_owned(),
        n => text::eyes::after_rounds(n),
    }
}

/// Who has changed more, and who less.
fn further<'a>(e: &Evidence<'a>) -> (&'a str, &'a str) {
    match e.contrast.difference() > 0.0 {
        true => (e.asked.names[1], e.asked.names[0]),
        false => (e.asked.names[0], e.asked.names[1]),
    }
}

fn eyes(judges: usize) -> String {
    match judges {
        1 => text::eyes::one_pair_of_eyes_sees().to_owned(),
        count => text::eyes::people_see(count),
    }
}

fn plain(e: &Evidence) -> String {
    let when = rounds(e.asked.stage);
    let [a, b] = e.asked.names;
    let (more, less) = further(e);
    let see = eyes(e.contrast.judges);
    let one_piece = e.pieces.contains(&1);
    match (e.verdict, e.asked.staining) {
        (Verdict::Visible, false) => {
            text::eyes::judged_by_eye_that_has_clearly_faded(&when, &see, more, less)
        }
        (Verdict::Visible, true) => {
            text::eyes::judged_by_eye_that_has_clearly_stained(&when, &see, more, less)
        }
        (Verdict::Small, false) => {
            text::eyes::judged_by_eye_that_has_faded(&when, &see, more, less)
        }
        (Verdict::Small, true) => {
            text::eyes::judged_by_eye_that_has_stained(&when, &see, more, less)
        }
        (Verdict::Alike, false) => {
            text::eyes::judged_by_eye_and_have_changed_equally(&when, a, b, &see)
        }
        (Verdict::Alike, true) => {
            text::eyes::judged_by_eye_and_have_stained_equally(&when, a, b, &see)
        }
        (Verdict::Open, true) if e.shared => {
            text::eyes::witness_cloths_washed_with_other_arms(&when, a, b)
        }
        (Verdict::Open, false) if one_piece => {
            text::eyes::one_piece_of_an_arm_says_nothing(&when, a, b)
        }
        (Verdict::Open, true) if one_piece => {
            text::eyes::one_witness_of_an_arm_says_nothing(&when, a, b)
        }
        (Verdict::Open, false) if e.shown => {
            text::eyes::judged_by_eye_that_has_faded_further(&when, &see, more, less)
        }
        (Verdict::Open, true) if e.shown => {
            text::eyes::judged_by_eye_that_has_stained_further(&when, &see, more, less)
        }
        (Verdict::Open, false) => text::eyes::eyes_cant_tell_from_and_cant_show(&when, a, b),
        (Verdict::Open, true) => text::eyes::eyes_cant_tell_stains_of_from(&when, a, b),
    }
}

fn reason(e: &Evidence) -> String {
    let [a, b] = e.asked.names;
    let [of_a, of_b] = e.contrast.means;
    let cloths = e.pieces.map(|n| match e.asked.staining {
        true => text::eyes::witness_cloths(n),
        false => text::eyes::pieces(n),
    });
    let [of_a, of_b] = [of_a, of_b].map(|grade| format!("{grade:.2}"));
    let by = text::eyes::people(e.contrast.judges);
    let [cloths_a, cloths_b] = cloths;
    let (mut text, scale) = match e.asked.staining {
        true => (
            text::eyes::mean_grades_of_staining_are(of_a, a, cloths_a, of_b, b, cloths_b, by),
            text::eyes::the_difference_of_the_scale_for_staining(),
        ),
        false => (
            text::eyes::mean_grades_are_for_and_for_pieces2(
                of_a, a, cloths_a, of_b, b, cloths_b, by,
            ),
            text::eyes::the_grey_scales_own_difference(),
        ),
    };
    text.push(' ');
    text.push_str(&text::eyes::they_differ_by_of_a_grade(
        format_args!("{:.2}", e.contrast.difference().abs()),
        signed(e.low, e),
        signed(e.high, e),
        number(e.asked.margin_de00),
        format_args!("{:.2}", e.margin),
        scale,
    ));
    for sentence in notes(e) {
        text.push(' ');
        text.push_str(&sentence);
    }
    text
}

/// An end of the interval, turned so that the difference seen is above 0.
fn signed(end: f64, e: &Evidence) -> String {
    let turned = e.contrast.difference() < 0.0;
    // The ends change places too.
    let value = match turned {
        true if end == e.low => -e.high,
        true => -e.low,
        false => end,
    };
    format!("{value:.2}").replace('-', "\u{2212}")
}

fn notes(e: &Evidence) -> Vec<String> {
    let mut notes = Vec::new();
    if e.contrast.judges == 1 {
        notes.push(text::eyes::one_person_judged_the_verdict_leans().to_owned());
    }
    match e.contrast.units {
        Units::OwnLoad => notes.push(text::eyes::each_arm_had_a_load().to_owned()),
        Units::Loads => notes.push(text::eyes::loads_not_pieces_are_counted(
            e.contrast.fewest(),
        )),
        Units::Pieces => {}
    }
    if e.shared {
        notes.push(text::eyes::a_witness_was_in_a_load_with().to_owned());
    }
    if matches!(e.verdict, Verdict::Alike | Verdict::Small) {
        notes.push(match e.asked.staining {
            true => text::eyes::grades_tell_how_much_a_cloth().to_owned(),
            false => text::eyes::grades_tell_how_far_a_piece().to_owned(),
        });
    }
    if let Some(dealt) = e.dealt_anew {
        notes.push(dealt.in_words());
    }
    if e.verdict == Verdict::Open && !e.shared {
        notes.push(advice(e.contrast, e.margin, e.asked.staining));
    }
    notes
}

/// Where nobody judged pieces of both arms.
pub(super) fn apart(asked: &Asked) -> (String, String) {
    let [a, b] = asked.names;
    let reason = match asked.staining {
        true => text::eyes::nobody_judged_witnesses_of_both(a, b),
        false => text::eyes::nobody_judged_pieces_of_both_and_nor(a, b),
    };
    (
        text::eyes::different_people_judged_and_so_eyes_cant(rounds(asked.stage), a, b),
        reason,
    )
}

fn number(value: f64) -> String {
    let text = format!("{value:.2}");
    text.strip_suffix('0').map_or(text.clone(), str::to_owned)
}
