//! A fade in plain words, and in a technician's.

use super::{
    Against, ArmFade, FadeCurve, FoundShape, GradePassed, Mark, MarkedRound, StrengthBy,
    against::{Compared, WHOLE_DE},
};
use crate::text;

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
        text::fade::its_change(passing(grade, last))
    }));
    said.join(" ")
}

fn strength(arm: &str, curve: &FadeCurve) -> String {
    let rounds = rounds(f64::from(curve.last_round));
    let left = percent(curve.at_last.value);
    let range = curve
        .at_last
        .interval
        .map(|i| text::fade::n_95_interval_to_i2(whole(i[0]), whole(i[1])));
    let range = range.unwrap_or_default();
    match curve.shape {
        FoundShape::Rising => {
            return text::fade::reads_stronger_than_at_its_start(arm);
        }
        FoundShape::Flat => {
            let at_least = curve
                .at_last
                .interval
                .map_or_else(String::new, |i| text::fade::or_more_is_left(whole(i[0])));
            return text::fade::no_loss_of_strength_is_shown_after(arm, &rounds, &at_least);
        }
        _ => {}
    }
    let floor = match curve.floor_interval {
        Some([low, high])
            if curve.shape != FoundShape::NoFloor
                && high - low <= WIDE
                && curve.shapes.is_some_and(|s| s.best == "curve") =>
        {
            text::fade::it_levels_off_near(whole(curve.floor), whole(low), whole(high))
        }
        _ => text::fade::where_it_levels_off_cant_be_told().to_owned(),
    };
    let single = if curve.at_last.interval.is_none() {
        text::fade::that_is_one_piece_how_pieces_differ()
    } else {
        ""
    };
    text::fade::after_about_of_the_dyes_strength(arm, &rounds, &left, &range, &floor, single)
}

/// When a grade is passed, as the end of a sentence: "falls below grade 4 after ...".
///
/// `last` is the last round looked at.
pub fn passing(passed: &GradePassed, last: u32) -> String {
    let grade = &passed.grade;
    let furthest = 2 * last;
    let ends = passed.interval.map(|[low, high]| {
        let end = |round: MarkedRound| match (round.rounds, round.mark) {
            (Some(n), Mark::Extrapolated) => text::fade::by_the_curve(format_args!("{n:.1}")),
            (Some(n), _) => format!("{n:.1}"),
            (None, _) => text::fade::more_than(furthest),
        };
        text::fade::n_95_interval(end(low), end(high))
    });
    match (passed.estimate.rounds, passed.estimate.mark) {
        (Some(n), Mark::Seen) => match ends {
            Some(ends) => text::fade::falls_below_grade_after_about(grade, rounds(n), &ends),
            None => text::fade::falls_below_grade_after_about_2(grade, rounds(n)),
        },
        (Some(n), _) => {
            let ends = ends.map_or_else(String::new, |ends| format!(", {ends}"));
            text::fade::was_still_at_grade_or_better_after(
                grade,
                rounds(f64::from(last)),
                rounds(n),
                &ends,
            )
        }
        (None, _) => {
            let doubt = match passed.interval {
                None => String::new(),
                Some([low, _]) => match low.rounds {
                    Some(n) => text::fade::the_95_interval_of_when_it_falls(format_args!("{n:.1}")),
                    None => text::fade::even_at_the_near_end().to_owned(),
                },
            };
            text::fade::stays_at_grade_or_better_through_rounds(grade, furthest, last, &doubt)
        }
    }
}

/// The figures with what they rest on.
pub(super) fn technical(fade: &ArmFade, compared: &Compared, sums: Sums) -> String {
    let mut said = Vec::new();
    if let Some(curve) = &fade.strength {
        said.push(text::fade::s_n_floor2_exp_n(
            format_args!("{:.3}", curve.floor),
            format_args!("{:.3}", 1.0 - curve.floor),
            format_args!("{:.3}", curve.rate),
            figures(curve, "S\u{221e}"),
        ));
        said.push(shapes(curve, "strength"));
    }
    if let Some(curve) = &fade.change {
        said.push(text::fade::de_f_n_1_exp_n(
            format_args!("{:.2}", curve.floor),
            format_args!("{:.3}", curve.rate),
            figures(curve, "plateau"),
        ));
        said.push(shapes(curve, "change"));
    }
    let stages: Vec<String> = compared.stages.iter().map(u32::to_string).collect();
    let against = match fade.against {
        Against::KeeperAndStart => text::fade::each_against_its_keeper_of_the_same(),
        Against::Start => text::fade::each_against_its_own_start(),
        Against::Keeper => text::fade::each_against_the_keeper_of_the_same(),
    };
    let by = match sums.strength_by {
        StrengthBy::Spectrum => text::fade::k_s_summed_over_400_to_700(),
        StrengthBy::Channels => text::fade::k_s_of_three_channels_worked_out(),
    };
    let off = if sums.cloth_taken_off {
        text::fade::undyed_cloth_taken_off()
    } else {
        text::fade::no_undyed_cloth_was_read()
    };
    let pieces = match fade.pieces {
        1 => text::fade::n_1_piece().to_owned(),
        n => text::fade::pieces(n),
    };
    said.push(text::fade::at_rounds(
        &pieces,
        stages.join(", "),
        against,
        by,
        off,
    ));
    if fade.left_out > 0 {
        said.push(text::fade::more_had_nothing_to_be_compared(fade.left_out));
    }
    said.retain(|sentence| !sentence.is_empty());
    said.join(" ")
}

fn figures(curve: &FadeCurve, floor: &str) -> String {
    let (Some([low, high]), Some([slow, fast])) = (curve.floor_interval, curve.rate_interval)
    else {
        return text::fade::a_single_piece_without_intervals().to_owned();
    };
    let note = match curve.shape {
        FoundShape::LevelsOff => "",
        FoundShape::NoFloor => text::fade::the_floor_is_at_its_bound(),
        FoundShape::AtOnce => text::fade::the_rate_is_at_its_bound(),
        FoundShape::Flat => text::fade::the_loss_is_at_its_bound(),
        FoundShape::Rising => text::fade::the_values_rise_the_loss_is_held(),
    };
    let first = curve
        .means
        .first()
        .map_or(1.0, |mean| f64::from(mean.round));
    let fast = if fast * first >= 0.99 * SUDDEN {
        text::fade::no_upper_end().to_owned()
    } else {
        format!("{fast:.3}")
    };
    // A plateau may be as far as anything can change.
    let high = if high >= 0.99 * WHOLE_DE {
        text::fade::no_upper_end().to_owned()
    } else {
        format!("{high:.3}")
    };
    text::fade::n_95_intervals_to_k_to_per_round(
        floor,
        format_args!("{low:.3}"),
        &high,
        format_args!("{slow:.3}"),
        &fast,
        note,
    )
}

fn shapes(curve: &FadeCurve, of: &str) -> String {
    let Some(shapes) = curve.shapes else {
        return text::fade::too_few_looks_to_compare_shapes(of);
    };
    let best = match shapes.best {
        "no_change" => text::fade::no_change(),
        "line" => text::fade::a_straight_line(),
        _ => text::fade::the_curve(),
    };
    text::fade::aicc_of_the_no_change_line_curve(
        of,
        minus(shapes.no_change),
        minus(shapes.line),
        minus(shapes.curve),
        best,
    )
}

/// A number with a true minus sign.
fn minus(value: f64) -> String {
    format!("{value:.1}").replace('-', "\u{2212}")
}

fn rounds(n: f64) -> String {
    if (n - 1.0).abs() < 0.05 {
        text::fade::n_1_round().to_owned()
    } else if n.fract() == 0.0 && n > 1.0 {
        text::fade::rounds(format_args!("{n:.0}"))
    } else {
        text::fade::rounds(format_args!("{n:.1}"))
    }
}

fn whole(share: f64) -> String {
    format!("{:.0}", 100.0 * share)
}

fn percent(share: f64) -> String {
    format!("{} %", whole(share))
}
