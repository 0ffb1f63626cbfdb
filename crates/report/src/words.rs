//! Results in plain words.

use crate::text;
use locale::capital;
pub use locale::day;
use trial::decide::{Comparison, Decision, OverRounds, UNBOUNDED_DE00, Verdict};
use trial::fade::{GradePassed, Mark, MarkedRound};
use trial::{PhotoState, Reading, Role, Source};

/// Part of a difference that has to lie along the fade to be called fading further:
/// within 45 degrees of it.
const MOSTLY: f64 = 0.7;

/// When a piece was looked at: "before the first round", "after 1 round", "after 5 rounds".
pub fn stage(stage: u32) -> String {
    match stage {
        0 => text::words::before_the_first_round().to_owned(),
        1 => text::words::after_1_round().to_owned(),
        n => text::words::after_rounds(n),
    }
}

/// The same with a capital, for headings.
pub fn stage_heading(number: u32) -> String {
    capital(&stage(number))
}

/// Whether an interval's upper end says anything.
pub fn bounded(high_de00: f64) -> bool {
    high_de00 < UNBOUNDED_DE00
}

/// The verdict's name with a capital, for headings.
pub fn verdict(verdict: Verdict) -> String {
    capital(verdict.in_words())
}

/// What a comparison means, as a sentence for someone who has never met an interval.
pub fn sentence(comparison: &Comparison, margin_de00: f64) -> String {
    let (a, b) = (&comparison.a, &comparison.b);
    let when = stage_heading(comparison.stage);
    let margin = number(margin_de00);
    match comparison.verdict {
        Verdict::Visible => match further(comparison) {
            Some((more, less)) => {
                text::words::has_clearly_faded_further_than_by_more(&when, more, less, &margin)
            }
            None => text::words::and_have_clearly_changed_in_different(&when, a, b, &margin),
        },
        Verdict::Small => match further(comparison) {
            Some((more, less)) => {
                text::words::has_faded_a_little_further_than_but(&when, more, less, &margin)
            }
            None => text::words::and_do_differ_but_by_less(&when, a, b, &margin),
        },
        Verdict::Alike => text::words::and_have_lasted_alike_no_difference(&when, a, b, &margin),
        Verdict::Open if comparison.low > 0.0 => match further(comparison) {
            Some((more, less)) => {
                text::words::has_faded_further_than_but_whether(&when, more, less, &margin)
            }
            None => text::words::and_differ_but_whether_by_as_much(&when, a, b, &margin),
        },
        Verdict::Open => text::words::the_readings_cant_tell_from_and_cant(&when, a, b),
    }
}

/// Which arm has faded further and which less far, where that is what they differ in.
fn further(comparison: &Comparison) -> Option<(&str, &str)> {
    let along = comparison.along?;
    // Most of the difference lies along the fade, and chance explains it badly.
    let mostly = along.de00.abs() > MOSTLY * comparison.de00;
    let shown = along.low > 0.0 || along.high < 0.0;
    (mostly && shown).then_some(match along.de00 > 0.0 {
        true => (comparison.b.as_str(), comparison.a.as_str()),
        false => (comparison.a.as_str(), comparison.b.as_str()),
    })
}

/// What the model of all rounds says of every two arms at the last stage; empty where
/// there was none to fit.
pub fn over_rounds(decision: &Decision) -> Vec<String> {
    decision.over_rounds.iter().map(faded_further).collect()
}

fn faded_further(pair: &OverRounds) -> String {
    // Counted from the arm that has faded further, so that the number is above 0.
    let (ahead, behind, by, low, high) = if pair.de00 < 0.0 {
        (&pair.a, &pair.b, -pair.de00, -pair.high, -pair.low)
    } else {
        (&pair.b, &pair.a, pair.de00, pair.low, pair.high)
    };
    let [by, low, high] =
        [by, low, high].map(|value| format!("{value:.2}").replace('-', "\u{2212}"));
    let weighed = if pair.p_together <= 0.05 {
        text::words::this_stands_when_all_pairs_are_weighed()
    } else if pair.p <= 0.05 {
        text::words::it_doesnt_stand_when_all_pairs()
    } else {
        text::words::chance_alone_may_show_as_much()
    };
    text::words::has_faded_further_than_95_interval(
        stage_heading(pair.stage),
        ahead,
        &by,
        behind,
        &low,
        &high,
        weighed,
    )
}

/// An interval in words: "1.2 (95 % interval 0.8 to 1.6)".
pub fn with_interval(de00: f64, low: f64, high: f64) -> String {
    format!("{} ({})", number(de00), interval(low, high))
}

/// The same for a table whose heading speaks of the interval: "1.2 (0.8 to 1.6)".
pub fn with_range(de00: f64, low: f64, high: f64) -> String {
    if bounded(high) {
        text::words::to(number(de00), number(low), number(high))
    } else {
        with_interval(de00, low, high)
    }
}

/// "95 % interval 0.8 to 1.6", or that there is none.
pub fn interval(low: f64, high: f64) -> String {
    match (low.is_finite(), bounded(high)) {
        (true, true) => text::words::n_95_interval(number(low), number(high)),
        (true, false) if low > 0.0 => text::words::at_least_no_upper_limit_known(number(low)),
        _ => text::words::no_interval_can_be_given().to_owned(),
    }
}

/// A colour difference to the precision that a camera reading deserves.
pub fn number(value: f64) -> String {
    if !value.is_finite() {
        return text::words::not_known().to_owned();
    }
    format!("{value:.2}").replace('-', "\u{2212}")
}

/// A share as whole percent: "72 %".
pub fn percent(share: f64) -> String {
    format!("{:.0} %", 100.0 * share).replace('-', "\u{2212}")
}

/// When a grade is passed: "after 2.3 rounds (1.8 to 3.1)", with what is only the curve's
/// said.
pub fn passed_at(passed: &GradePassed) -> String {
    let number = |round: &MarkedRound| match round.rounds {
        Some(n) => format!("{n:.1}"),
        None => text::words::later().to_owned(),
    };
    let range = passed
        .interval
        .as_ref()
        .map(|[low, high]| (low.rounds.is_some(), number(low), number(high)));
    match (passed.estimate.rounds, passed.estimate.mark, range) {
        (Some(n), Mark::Seen, Some((_, low, high))) => {
            text::words::after_rounds_2(format_args!("{n:.1}"), &low, &high)
        }
        (Some(n), Mark::Seen, None) => text::words::after_rounds_one_piece(format_args!("{n:.1}")),
        (Some(n), _, Some((_, low, high))) => {
            text::words::by_the_curve_rounds(format_args!("{n:.1}"), &low, &high)
        }
        (Some(n), _, None) => text::words::by_the_curve_rounds_one_piece(format_args!("{n:.1}")),
        (None, _, Some((true, low, _))) => text::words::not_in_sight_at_the_earliest(&low),
        (None, ..) => text::words::not_in_sight().to_owned(),
    }
}

/// A number of pieces.
pub fn pieces(count: usize) -> String {
    match count {
        1 => text::words::n_1_piece().to_owned(),
        n => text::words::pieces(n),
    }
}

/// Day and time of an RFC 3339 time, to the minute.
pub fn moment(time: &str) -> String {
    match locale::time_at(time) {
        Some(clock) => text::words::utc(day(time), &clock),
        None => time.to_owned(),
    }
}

/// What a piece is for.
pub fn role(role: Role) -> &'static str {
    match role {
        Role::Test => text::words::test_piece(),
        Role::Keeper => text::words::keeper(),
        Role::Witness => text::words::witness_cloth(),
    }
}

/// What a reading was got from, by whom, when and with what.
pub fn source(reading: &Reading) -> String {
    let what = match reading.source {
        Source::Photo => text::words::photo(),
        Source::Spectrum => text::words::spectrum(),
        Source::Lab => text::words::lab_values(),
    };
    let Some(origin) = &reading.origin else {
        return what.to_owned();
    };
    let mut text = what.to_owned();
    let on = day(&origin.on);
    for (before, said) in [
        (text::words::by(), &origin.by),
        (", ", &on),
        (", ", &origin.instrument),
        (text::words::file(), &origin.file),
    ] {
        if !said.is_empty() {
            text += before;
            text += said;
        }
    }
    text
}

/// How far a photo has come.
pub fn photo_state(state: &PhotoState) -> &'static str {
    match state {
        PhotoState::Unmarked => text::words::areas_not_marked_yet(),
        PhotoState::Waiting => text::words::waits_to_be_read(),
        PhotoState::TakenOut => text::words::not_read_taken_out_of_the_queue(),
        PhotoState::Read { .. } => text::words::read(),
        PhotoState::Refused { .. } => text::words::could_not_be_read(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_moment_is_told_to_the_minute() {
        assert_eq!(moment("2030-04-01T09:05:59Z"), "2030-04-01, 09:05 UTC");
        assert_eq!(moment("in spring"), "in spring");
        let american = locale::Locale {
            dates: locale::DateFormat::MonthNamed,
            clock: locale::Clock::Hours12,
            ..locale::Locale::DATA
        };
        locale::within(american, || {
            assert_eq!(moment("2030-04-01T21:05:59Z"), "Apr 1, 2030, 9:05 pm UTC");
        });
    }

    #[test]
    fn stages_read_as_english() {
        assert_eq!(stage_heading(0), "Before the first round");
        assert_eq!(stage(1), "after 1 round");
        assert_eq!(stage(12), "after 12 rounds");
    }

    #[test]
    fn what_only_the_curve_says_is_said_so() {
        let at = |rounds: Option<f64>, mark| MarkedRound { rounds, mark };
        let passed = |estimate, interval| GradePassed {
            grade: "4".into(),
            from_de: 2.1,
            estimate,
            interval,
        };
        let seen = at(Some(2.3), Mark::Seen);
        let beyond = at(Some(7.04), Mark::Extrapolated);
        let later = at(None, Mark::Later);
        for (estimate, interval, words) in [
            (seen, Some([seen, beyond]), "after 2.3 rounds (2.3 to 7.0)"),
            (
                beyond,
                Some([seen, later]),
                "by the curve, 7.0 rounds (2.3 to later)",
            ),
            (
                later,
                Some([beyond, later]),
                "not in sight (7.0 at the earliest)",
            ),
            (later, Some([later, later]), "not in sight"),
            (seen, None, "after 2.3 rounds (one piece)"),
            (later, None, "not in sight"),
        ] {
            assert_eq!(passed_at(&passed(estimate, interval)), words);
        }
    }

    #[test]
    fn an_interval_without_an_end_is_said_so() {
        assert_eq!(
            interval(0.5, UNBOUNDED_DE00),
            "at least 0.50, no upper limit known"
        );
        assert_eq!(interval(0.0, UNBOUNDED_DE00), "no interval can be given");
        assert_eq!(
            with_interval(1.0, 0.5, 1.5),
            "1.00 (95 % interval 0.50 to 1.50)"
        );
        assert_eq!(with_range(1.0, 0.5, 1.5), "1.00 (0.50 to 1.50)");
    }
}
