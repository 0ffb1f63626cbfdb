//! A stain in plain words, and in a technician's.

use super::{Stain, StainedCloth, Whose};
use std::fmt::Write;

/// What a stain means, for someone who grades nothing.
pub(super) fn plain(stain: &Stain) -> String {
    let rounds = if stain.stage == 1 {
        "1 round".to_owned()
    } else {
        format!("{} rounds", stain.stage)
    };
    let what = match stain.cloth {
        StainedCloth::WitnessCloth => format!("The witness cloth {}", stain.code),
        StainedCloth::PalePart => format!("The pale part of {}", stain.code),
    };
    let [worst, best] = &stain.grade_interval;
    if !stain.seen {
        return format!(
            "{what} shows no stain after {rounds} beyond what its readings scatter by; if there is \
             one, it is of grade {worst} or better."
        );
    }
    let grade = &stain.grade;
    let range = if worst == best {
        String::new()
    } else {
        format!(" (between {worst} and {best})")
    };
    let whose = match &stain.whose {
        Whose::NoStain => String::new(),
        Whose::Of(arms) => format!("; its hue is that of the dye of {}", list(arms)),
        Whose::CantTell(_) if stain.likenesses.len() < 2 => {
            "; whether it is the trial\u{2019}s own \
             dye can't be told, its hue is too unsure"
                .to_owned()
        }
        Whose::CantTell(arms) if arms.len() < 2 => format!(
            "; whose dye it is can't be told: that of {} is nearest in hue but may not fit",
            list(arms)
        ),
        Whose::CantTell(arms) => format!("; whose dye it is can't be told between {}", list(arms)),
        Whose::NoneFits => {
            "; its hue is that of no arm\u{2019}s dye, so it may be something else: \
                            soil, yellowing, another load"
                .to_owned()
        }
        Whose::NoHue => "; no arm\u{2019}s dye has a hue to know it by".to_owned(),
    };
    format!("{what} is stained to grade {grade}{range} after {rounds}{whose}.")
}

/// The figures.
pub(super) fn technical(stain: &Stain) -> String {
    let [before, after] = [stain.before, stain.after];
    let change = [0, 1, 2].map(|k| format!("{:+.2}", after[k] - before[k]));
    let [d_l, d_a, d_b] = change.map(|text| minus(&text));
    let mut said = format!(
        "\u{394}L* {d_l}, \u{394}a* {d_a}, \u{394}b* {d_b}; dE_GS {:.2}, grade by the formula {} ({})",
        stain.de_gs,
        minus(&format!("{:.2}", stain.value)),
        stain.view
    );
    for likeness in &stain.likenesses {
        let _ = write!(
            said,
            "; cosine in a*b* with {} {}",
            list(&likeness.arms),
            minus(&format!(
                "{:.2} (95 % interval {:.2} to {:.2})",
                likeness.cosine, likeness.interval[0], likeness.interval[1]
            ))
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
