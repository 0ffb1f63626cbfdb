//! A fade in plain words, and in a technician's.

use super::{
    Against, ArmFade, FadeCurve, FoundShape, GradePassed, Mark, MarkedRound, StrengthBy,
    against::{Compared, WHOLE_DE},
};

/// Width of an interval of the floor beyond which it tells nothing to a follower.
const WIDE: f64 = 0.25;

/// Exponent at the first look beyond which a rate is as good as endless.
const SUDDEN: f64 = inference::decay::AT_ONCE;

/// How strength was summed up.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sums {
    pub strength_by: StrengthBy,
    pub cloth_taken_off: bool,
}

/// What an arm's fade means, for someone who has never met a curve.
pub(super) fn plain(fade: &ArmFade) -> String {
    let mut said = Vec::new();
    match &fade.strength {
        Some(curve) => said.push(strength(&fade.arm, curve)),
        None => said.extend(fade.why_not.clone()),
    }
    said.extend(fade.passes.first().map(|grade| {
        let last = fade.change.as_ref().map_or(0, |curve| curve.last_round);
        format!("Its change {}.", passing(grade, last))
    }));
    said.join(" ")
}

fn strength(arm: &str, curve: &FadeCurve) -> String {
    let rounds = rounds(f64::from(curve.last_round));
    let left = percent(curve.at_last.value);
    let range = curve
        .at_last
        .interval
        .map(|i| format!(" (95 % interval {} to {} %)", whole(i[0]), whole(i[1])));
    let range = range.unwrap_or_default();
    match curve.shape {
        FoundShape::Rising => {
            return format!(
                "{arm} reads stronger than at its start, which washing does not bring about: look \
                 at the photos and their keeper before trusting its readings."
            );
        }
        FoundShape::Flat => {
            let at_least = curve.at_last.interval.map_or_else(String::new, |i| {
                format!("; {} % or more is left", whole(i[0]))
            });
            return format!("{arm}: no loss of strength is shown after {rounds}{at_least}.");
        }
        _ => {}
    }
    let floor = match curve.floor_interval {
        Some([low, high])
            if curve.shape != FoundShape::NoFloor
                && high - low <= WIDE
                && curve.shapes.is_some_and(|s| s.best == "curve") =>
        {
            format!(
                " It levels off near {} % ({} to {} %).",
                whole(curve.floor),
                whole(low),
                whole(high)
            )
        }
        _ => " Where it levels off can't be told yet.".to_owned(),
    };
    let single = if curve.at_last.interval.is_none() {
        " That is one piece; how pieces differ can't be told from it."
    } else {
        ""
    };
    format!(
        "{arm}: after {rounds} about {left} of the dye\u{2019}s strength is left{range}.{floor}{single}"
    )
}

/// When a grade is passed, as the end of a sentence: "falls below grade 4 after ...".
///
/// `last` is the last round looked at.
pub fn passing(passed: &GradePassed, last: u32) -> String {
    let grade = &passed.grade;
    let furthest = 2 * last;
    let ends = passed.interval.map(|[low, high]| {
        let end = |round: MarkedRound| match (round.rounds, round.mark) {
            (Some(n), Mark::Extrapolated) => format!("{n:.1} (by the curve)"),
            (Some(n), _) => format!("{n:.1}"),
            (None, _) => format!("more than {furthest}"),
        };
        format!("95 % interval {} to {}", end(low), end(high))
    });
    match (passed.estimate.rounds, passed.estimate.mark) {
        (Some(n), Mark::Seen) => match ends {
            Some(ends) => format!(
                "falls below grade {grade} after about {} ({ends})",
                rounds(n)
            ),
            None => format!("falls below grade {grade} after about {}", rounds(n)),
        },
        (Some(n), _) => {
            let ends = ends.map_or_else(String::new, |ends| format!(", {ends}"));
            format!(
                "was still at grade {grade} or better after {}; by the curve alone it falls below \
                 after about {}{ends}",
                rounds(f64::from(last)),
                rounds(n)
            )
        }
        (None, _) => {
            let doubt = match passed.interval {
                None => String::new(),
                Some([low, _]) => match low.rounds {
                    Some(n) => {
                        format!("; the 95 % interval of when it falls below begins at {n:.1}")
                    }
                    None => ", even at the near end of the 95 % interval".to_owned(),
                },
            };
            format!(
                "stays at grade {grade} or better through {furthest} rounds by the curve ({last} \
                 looked at){doubt}"
            )
        }
    }
}

/// The figures with what they rest on.
pub(super) fn technical(fade: &ArmFade, compared: &Compared, sums: Sums) -> String {
    let mut said = Vec::new();
    if let Some(curve) = &fade.strength {
        said.push(format!(
            "S(n) = {:.3} + {:.3} exp(\u{2212}{:.3} n){}",
            curve.floor,
            1.0 - curve.floor,
            curve.rate,
            figures(curve, "S\u{221e}")
        ));
        said.push(shapes(curve, "strength"));
    }
    if let Some(curve) = &fade.change {
        said.push(format!(
            "dE_F(n) = {:.2} (1 \u{2212} exp(\u{2212}{:.3} n)){}",
            curve.floor,
            curve.rate,
            figures(curve, "plateau")
        ));
        said.push(shapes(curve, "change"));
    }
    let stages: Vec<String> = compared.stages.iter().map(u32::to_string).collect();
    let against = match fade.against {
        Against::KeeperAndStart => "each against its keeper of the same stage and its own start",
        Against::Start => {
            "each against its own start; what a photo does to all its pieces alike is not in the \
             intervals"
        }
        Against::Keeper => "each against the keeper of the same stage",
    };
    let by = match sums.strength_by {
        StrengthBy::Spectrum => "K/S summed over 400 to 700 nm",
        StrengthBy::Channels => {
            "K/S of three channels worked out from Lab, which by itself errs by up to some 5 points of 100"
        }
    };
    let off = if sums.cloth_taken_off {
        "undyed cloth taken off"
    } else {
        "no undyed cloth was read at the start, so its own K/S is counted in"
    };
    let pieces = match fade.pieces {
        1 => "1 piece".to_owned(),
        n => format!("{n} pieces"),
    };
    said.push(format!(
        "{pieces} at rounds {}, {against}; {by}, {off}.",
        stages.join(", ")
    ));
    if fade.left_out > 0 {
        said.push(format!(
            "{} more had nothing to be compared with.",
            fade.left_out
        ));
    }
    said.retain(|sentence| !sentence.is_empty());
    said.join(" ")
}

fn figures(curve: &FadeCurve, floor: &str) -> String {
    let (Some([low, high]), Some([slow, fast])) = (curve.floor_interval, curve.rate_interval)
    else {
        return ", a single piece, without intervals.".to_owned();
    };
    let note = match curve.shape {
        FoundShape::LevelsOff => "",
        FoundShape::NoFloor => " The floor is at its bound.",
        FoundShape::AtOnce => " The rate is at its bound: all of it had left by the first look.",
        FoundShape::Flat => " The loss is at its bound of 0.",
        FoundShape::Rising => " The values rise; the loss is held at 0.",
    };
    let first = curve
        .means
        .first()
        .map_or(1.0, |mean| f64::from(mean.round));
    let fast = if fast * first >= 0.99 * SUDDEN {
        "no upper end".to_owned()
    } else {
        format!("{fast:.3}")
    };
    // A plateau may be as far as anything can change.
    let high = if high >= 0.99 * WHOLE_DE {
        "no upper end".to_owned()
    } else {
        format!("{high:.3}")
    };
    format!(", 95 % intervals: {floor} {low:.3} to {high}, k {slow:.3} to {fast} per round.{note}")
}

fn shapes(curve: &FadeCurve, of: &str) -> String {
    let Some(shapes) = curve.shapes else {
        return format!("Too few looks to compare shapes of the {of}.");
    };
    let best = match shapes.best {
        "no_change" => "no change",
        "line" => "a straight line",
        _ => "the curve",
    };
    format!(
        "AICc of the {of}: no change {}, line {}, curve {}; {best} is best.",
        minus(shapes.no_change),
        minus(shapes.line),
        minus(shapes.curve)
    )
}

/// A number with a true minus sign.
fn minus(value: f64) -> String {
    format!("{value:.1}").replace('-', "\u{2212}")
}

fn rounds(n: f64) -> String {
    if (n - 1.0).abs() < 0.05 {
        "1 round".to_owned()
    } else if n.fract() == 0.0 && n > 1.0 {
        format!("{n:.0} rounds")
    } else {
        format!("{n:.1} rounds")
    }
}

fn whole(share: f64) -> String {
    format!("{:.0}", 100.0 * share)
}

fn percent(share: f64) -> String {
    format!("{} %", whole(share))
}
