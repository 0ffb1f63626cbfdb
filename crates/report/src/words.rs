//! Results in plain words.

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
        0 => "before the first round".to_owned(),
        1 => "after 1 round".to_owned(),
        n => format!("after {n} rounds"),
    }
}

/// The same with a capital, for headings.
pub fn stage_heading(number: u32) -> String {
    capital(&stage(number))
}

/// The words with a capital.
pub(crate) fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters
        .next()
        .map(|first| first.to_uppercase().chain(letters).collect())
        .unwrap_or_default()
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
            Some((more, less)) => format!(
                "{when}, {more} has clearly faded further than {less}, by more than the margin of {margin} \
                 that was set as what matters."
            ),
            None => format!(
                "{when}, {a} and {b} have clearly changed in different ways, by more than the margin of \
                 {margin} that was set as what matters."
            ),
        },
        Verdict::Small => match further(comparison) {
            Some((more, less)) => format!(
                "{when}, {more} has faded a little further than {less}, but by less than the margin of {margin}: \
                 too little to matter."
            ),
            None => format!(
                "{when}, {a} and {b} do differ, but by less than the margin of {margin}: too little to matter."
            ),
        },
        Verdict::Alike => format!(
            "{when}, {a} and {b} have lasted alike: no difference is shown, and one as large as the \
             margin of {margin} does not fit the readings."
        ),
        Verdict::Open if comparison.low > 0.0 => match further(comparison) {
            Some((more, less)) => format!(
                "{when}, {more} has faded further than {less}, but whether by as much as the margin of {margin} \
                 is not settled."
            ),
            None => format!(
                "{when}, {a} and {b} differ, but whether by as much as the margin of {margin} is not settled."
            ),
        },
        Verdict::Open => format!(
            "{when}, the readings can't tell {a} from {b}, and can't show them to be alike either. \
             Treat the question as open."
        ),
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
        "This stands when all pairs are weighed together."
    } else if pair.p <= 0.05 {
        "It doesn\u{2019}t stand when all pairs are weighed together."
    } else {
        "Chance alone may show as much."
    };
    format!(
        "{}, {ahead} has faded {by} further than {behind} (95 % interval {low} to {high}). {weighed}",
        stage_heading(pair.stage)
    )
}

/// An interval in words: "1.2 (95 % interval 0.8 to 1.6)".
pub fn with_interval(de00: f64, low: f64, high: f64) -> String {
    format!("{} ({})", number(de00), interval(low, high))
}

/// The same for a table whose heading speaks of the interval: "1.2 (0.8 to 1.6)".
pub fn with_range(de00: f64, low: f64, high: f64) -> String {
    if bounded(high) {
        format!("{} ({} to {})", number(de00), number(low), number(high))
    } else {
        with_interval(de00, low, high)
    }
}

/// "95 % interval 0.8 to 1.6", or that there is none.
pub fn interval(low: f64, high: f64) -> String {
    match (low.is_finite(), bounded(high)) {
        (true, true) => format!("95 % interval {} to {}", number(low), number(high)),
        (true, false) if low > 0.0 => format!("at least {}, no upper limit known", number(low)),
        _ => "no interval can be given".to_owned(),
    }
}

/// A colour difference to the precision that a camera reading deserves.
pub fn number(value: f64) -> String {
    if !value.is_finite() {
        return "not known".to_owned();
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
        None => "later".to_owned(),
    };
    let range = passed
        .interval
        .as_ref()
        .map(|[low, high]| (low.rounds.is_some(), number(low), number(high)));
    match (passed.estimate.rounds, passed.estimate.mark, range) {
        (Some(n), Mark::Seen, Some((_, low, high))) => {
            format!("after {n:.1} rounds ({low} to {high})")
        }
        (Some(n), Mark::Seen, None) => format!("after {n:.1} rounds (one piece)"),
        (Some(n), _, Some((_, low, high))) => {
            format!("by the curve, {n:.1} rounds ({low} to {high})")
        }
        (Some(n), _, None) => format!("by the curve, {n:.1} rounds (one piece)"),
        (None, _, Some((true, low, _))) => format!("not in sight ({low} at the earliest)"),
        (None, ..) => "not in sight".to_owned(),
    }
}

/// A number of pieces.
pub fn pieces(count: usize) -> String {
    match count {
        1 => "1 piece".to_owned(),
        n => format!("{n} pieces"),
    }
}

/// Day and time of an RFC 3339 time, to the minute.
pub fn moment(time: &str) -> String {
    match clock(time) {
        Some(clock) => format!("{}, {clock} UTC", day(time)),
        None => time.to_owned(),
    }
}

/// The time of day of an RFC 3339 time, to the minute; nothing where there is none.
pub fn clock(time: &str) -> Option<String> {
    let (hour, rest) = time.split_once('T')?.1.split_once(':')?;
    let minute = rest.get(..2)?;
    Some(locale::time_of_day(
        hour.parse().ok()?,
        minute.parse().ok()?,
    ))
}

/// What a piece is for.
pub fn role(role: Role) -> &'static str {
    match role {
        Role::Test => "test piece",
        Role::Keeper => "keeper",
        Role::Witness => "witness cloth",
    }
}

/// What a reading was got from, by whom, when and with what.
pub fn source(reading: &Reading) -> String {
    let what = match reading.source {
        Source::Photo => "photo",
        Source::Spectrum => "spectrum",
        Source::Lab => "Lab values",
    };
    let Some(origin) = &reading.origin else {
        return what.to_owned();
    };
    let mut text = what.to_owned();
    let on = day(&origin.on);
    for (before, said) in [
        (" by ", &origin.by),
        (", ", &on),
        (", ", &origin.instrument),
        (", file ", &origin.file),
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
        PhotoState::Unmarked => "areas not marked yet",
        PhotoState::Waiting => "waits to be read",
        PhotoState::TakenOut => "not read: taken out of the queue",
        PhotoState::Read { .. } => "read",
        PhotoState::Refused { .. } => "could not be read",
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
