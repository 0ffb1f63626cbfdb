//! What the plan's weaknesses and the run's departures leave a verdict to say.

use crate::text;
use crate::{
    Departed, Results,
    decide::{Comparison, Verdict},
    eyes::EyeComparison,
    plan::{Finding, FindingCode},
};

impl Results {
    /// What limits the verdict on two arms, each a sentence or two: weaknesses that
    /// were known when the trial was planned, and what was done otherwise than planned,
    /// where they concern one of the two.
    pub fn limits_of(&self, comparison: &Comparison) -> Vec<String> {
        self.limits([&comparison.a, &comparison.b], comparison.verdict)
    }

    /// The same for a verdict from eyes.
    pub fn limits_of_eyes(&self, comparison: &EyeComparison) -> Vec<String> {
        self.limits([&comparison.a, &comparison.b], comparison.verdict)
    }

    fn limits(&self, pair: [&str; 2], verdict: Verdict) -> Vec<String> {
        let findings = self.planned.iter().flat_map(|from| &from.findings);
        let known = findings
            .filter(|finding| concerns(&finding.arms, pair))
            .filter_map(|finding| limit(finding, verdict));
        let departed = self
            .departures
            .iter()
            .filter(|departed| concerns(&departed.arms, pair))
            .map(|departed| departure(departed, pair));
        known.chain(departed).collect()
    }
}

/// Whether what is about these arms, or about all, is about one of the two.
fn concerns(arms: &[String], pair: [&str; 2]) -> bool {
    arms.is_empty() || arms.iter().any(|arm| pair.contains(&arm.as_str()))
}

/// What a departure leaves of a verdict: what befell one arm alone may be its cause.
fn departure(departed: &Departed, [a, b]: [&str; 2]) -> String {
    let sentence = &departed.sentence;
    let befell = |arm: &str| departed.arms.is_empty() || departed.arms.iter().any(|of| of == arm);
    match (befell(a), befell(b)) {
        (true, true) => text::limit::the_verdict_holds_for_what_was_done(sentence),
        (of_a, _) => {
            let arm = if of_a { a } else { b };
            text::limit::with_alone_something_was_done_otherwise(arm, sentence)
        }
    }
}

/// What a weakness leaves of a verdict; none where it is of no account.
fn limit(finding: &Finding, verdict: Verdict) -> Option<String> {
    let differ = matches!(verdict, Verdict::Visible | Verdict::Small);
    let found = &finding.sentence;
    let text = match kind(finding.code) {
        Limits::Cause(what) if differ => {
            text::limit::the_difference_is_real_but_this_trial(what, found)
        }
        Limits::Cause(what) if verdict == Verdict::Alike => {
            text::limit::that_they_are_alike_is_sure_only(what, found)
        }
        Limits::Cause(what) => text::limit::more_pieces_wont_tell_the_treatment(what, found),
        Limits::Travel if verdict == Verdict::Open => return None,
        Limits::Travel => text::limit::dye_that_travelled_may_be_part(found),
        Limits::Sharpness if verdict == Verdict::Open => {
            format!("{found} {}", finding.consequence)
        }
        Limits::Sharpness | Limits::Staining => return None,
        Limits::Meaning => format!("{found} {}", finding.consequence),
    };
    Some(text)
}

/// How a weakness limits a verdict.
enum Limits {
    /// Something else went with the arms and may be the cause.
    Cause(&'static str),
    /// Dye may have come from elsewhere.
    Travel,
    /// It makes verdicts rarer and none wrong.
    Sharpness,
    /// It says what the verdict is about.
    Meaning,
    /// It leaves verdicts on staining open, which say so themselves, and no others.
    Staining,
}

fn kind(code: FindingCode) -> Limits {
    match code {
        FindingCode::LoadIsArm => Limits::Cause(text::limit::the_load_that_an_arm_had()),
        FindingCode::DayIsArm => Limits::Cause(text::limit::the_day_on_which_it_was_worked()),
        FindingCode::PersonIsArm => Limits::Cause(text::limit::the_person_who_worked()),
        FindingCode::PlaceIsArm => Limits::Cause(text::limit::the_place_at_which_it_lay()),
        FindingCode::Tangled => Limits::Cause(text::limit::the_loads_days_and_places_that_went()),
        FindingCode::SoakMissing => Limits::Cause(text::limit::the_soak_in_warm_water_that_goes()),
        FindingCode::OrderOfUse => Limits::Cause(text::limit::the_order_in_which_the_arms_used()),
        FindingCode::DeepWithPale | FindingCode::WitnessMissing => Limits::Travel,
        FindingCode::OnePiece
        | FindingCode::KeeperMissing
        | FindingCode::StartMissing
        | FindingCode::Uneven => Limits::Sharpness,
        FindingCode::DoseDeparture => Limits::Meaning,
        FindingCode::StainingUntold => Limits::Staining,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn finding(code: FindingCode, arms: &[&str]) -> Finding {
        Finding {
            code,
            sentence: "In the wash arms have one load of their own.".into(),
            consequence: "So it is.".into(),
            arms: arms.iter().map(|arm| (*arm).to_owned()).collect(),
            mends: Vec::new(),
        }
    }

    #[test]
    fn a_difference_that_goes_with_something_else_is_said_to() {
        let own_wash = finding(FindingCode::LoadIsArm, &["agent"]);
        let text = limit(&own_wash, Verdict::Visible).expect("it limits");
        assert!(text.starts_with("The difference is real, but"), "{text}");
        assert!(text.contains("the treatment made it or the load"), "{text}");
        let text = limit(&own_wash, Verdict::Alike).expect("it limits");
        assert!(text.contains("may have hidden"), "{text}");
    }

    #[test]
    fn what_makes_verdicts_rarer_limits_only_open_ones() {
        let few = finding(FindingCode::KeeperMissing, &[]);
        assert!(limit(&few, Verdict::Visible).is_none());
        assert!(limit(&few, Verdict::Open).is_some());
    }

    #[test]
    fn other_arms_weaknesses_are_not_ones_own() {
        let pair = ["plain", "agent"];
        assert!(concerns(&[], pair));
        assert!(concerns(&["agent".to_owned()], pair));
        assert!(!concerns(&["other".to_owned()], pair));
        let departed = |arms: &[&str]| Departed {
            run: 1,
            title: "Dye day".into(),
            arms: arms.iter().map(|arm| (*arm).to_owned()).collect(),
            sentence: "The bath stood at 60 °C.".into(),
        };
        let alone = departure(&departed(&["agent"]), pair);
        assert!(alone.contains("With agent alone"), "{alone}");
        let both = departure(&departed(&[]), pair);
        assert!(
            both.starts_with("The verdict holds for what was done"),
            "{both}"
        );
    }
}
