//! A stain in plain words, and in a technician's.

use super::{Stain, StainedCloth, Whose};
use crate::text;
use std::fmt::Write;

/// What a stain means, for someone who grades nothing.
pub(super) fn plain(stain: &Stain) -> String {
    let rounds = if stain.stage == 1 {
        text::stain::n_1_round().to_owned()
    } else {
        text::stain::rounds(stain.stage)
    };
    let what = match stain.cloth {
        StainedCloth::WitnessCloth => text::stain::the_witness_cloth(&stain.code),
        StainedCloth::PalePart => text::stain::the_pale_part(&stain.code),
    };
    let [worst, best] = &stain.grade_interval;
    if !stain.seen {
        return text::stain::shows_no_stain_after_beyond(&what, &rounds, worst);
    }
    let grade = &stain.grade;
    let range = if worst == best {
        String::new()
    } else {
        text::stain::between_and(worst, best)
    };
    let whose = match &stain.whose {
        Whose::NoStain => String::new(),
        Whose::Of(arms) => text::stain::its_hue_is_that_of_the_dye(list(arms)),
        Whose::CantTell(_) if stain.likenesses.len() < 2 => {
            text::stain::whether_it_is_the_trials_own_dye().to_owned()
        }
        Whose::CantTell(arms) if arms.len() < 2 => {
            text::stain::whose_dye_it_is_cant_be_told(list(arms))
        }
        Whose::CantTell(arms) => text::stain::whose_dye_it_is_cant_be_told_2(list(arms)),
        Whose::NoneFits => text::stain::its_hue_is_that_of_no_arms().to_owned(),
        Whose::NoHue => text::stain::no_arms_dye_has_a_hue().to_owned(),
    };
    text::stain::is_stained_to_grade_after(&what, grade, &range, &rounds, &whose)
}

/// The figures.
pub(super) fn technical(stain: &Stain) -> String {
    let [before, after] = [stain.before, stain.after];
    let change = [0, 1, 2].map(|k| format!("{:+.2}", after[k] - before[k]));
    let [d_l, d_a, d_b] = change.map(|text| minus(&text));
    let mut said = text::stain::l_a_b_de_gs_grade(
        &d_l,
        &d_a,
        &d_b,
        format_args!("{:.2}", stain.de_gs),
        minus(&format!("{:.2}", stain.value)),
        &stain.view,
    );
    for likeness in &stain.likenesses {
        let _ = write!(
            said,
            "{}",
            text::stain::cosine_in_a_b(
                list(&likeness.arms),
                minus(&text::stain::n_95_interval_to_interval2(
                    format_args!("{:.2}", likeness.cosine),
                    format_args!("{:.2}", likeness.interval[0]),
                    format_args!("{:.2}", likeness.interval[1])
                ))
            )
        );
    }
    said.push('.');
    said
}

/// A number's text with a true minus sign.
fn minus(text: &str) -> String {
    text.replace('-', "\u{2212}")
}

/// Names with a stroke between them, for a name may hold commas.
fn list(names: &[String]) -> String {
    names.join(" / ")
}
