//! What eyes say, laid out in cards and rows.

use crate::text;
use crate::{chart, words};
use trial::{
    Results,
    eyes::{Agreement, Coefficient, EyeComparison, Eyes},
};

/// What a verdict from eyes is, in a sentence or two.
pub fn about() -> &'static str {
    text::eyes::grades_on_the_grey_scale_for_change()
}

/// How agreement is to be read.
pub fn about_agreement() -> &'static str {
    text::eyes::agreement_is_1_where_people_always_give()
}

/// All that eyes say of a trial.
pub struct EyeSection {
    /// Verdicts that stand because no reading decides their stage.
    pub verdicts: Vec<EyeCard>,
    /// Verdicts that stand beside those of readings.
    pub beside: Vec<EyeCard>,
    /// Mean grades: arm, stage, what of, pieces, people, grade.
    pub arms: Vec<[String; 6]>,
    /// How far eyes agree, for each closed session.
    pub agreement: Vec<AgreementCard>,
    /// What is to be known before one believes it, each a sentence.
    pub cautions: Vec<String>,
    /// That people may still judge, if they may.
    pub open: Option<String>,
}

impl EyeSection {
    /// Whether there is nothing yet that may be told.
    pub fn is_silent(&self) -> bool {
        self.verdicts.is_empty() && self.beside.is_empty() && self.agreement.is_empty()
    }
}

/// One pair of arms at one stage.
pub struct EyeCard {
    /// `visible`, `small`, `alike` or `open`.
    pub code: &'static str,
    /// The verdict's name.
    pub name: String,
    /// One arm.
    pub a: String,
    /// The other.
    pub b: String,
    /// The stage in words, with a capital.
    pub when: String,
    /// For anybody.
    pub plain: String,
    /// The difference with its interval.
    pub figures: String,
    /// Why, with figures.
    pub reason: String,
    /// What limits it, each a sentence or two.
    pub limits: Vec<String>,
    /// What readings say of the same pair and stage, if they say anything.
    pub readings: Option<String>,
    /// The interval between the margins, SVG.
    pub strip: String,
    /// The verdict's sign, SVG.
    pub sign: String,
}

/// How far the eyes of one session agree.
pub struct AgreementCard {
    /// Which session, in words.
    pub title: String,
    /// What it shows, each a sentence.
    pub sentences: Vec<String>,
    /// What, who, pairs, figure with interval, meaning.
    pub rows: Vec<[String; 5]>,
}

/// Everything eyes say; none where none looked.
pub fn section(results: &Results) -> Option<EyeSection> {
    let eyes = results.eyes.as_ref()?;
    let verdict = eyes.verdict.clone().unwrap_or_default();
    let top = verdict
        .comparisons
        .iter()
        .map(|c| c.margin_grades.max(c.difference.abs()))
        .fold(0.5, f64::max)
        * 1.8;
    let mut pairs: Vec<&EyeComparison> = verdict.comparisons.iter().collect();
    pairs.sort_by_key(|c| std::cmp::Reverse(c.stage));
    let (beside, verdicts) = pairs
        .into_iter()
        .map(|comparison| card(results, comparison, top))
        .partition(|card: &EyeCard| card.readings.is_some());
    let arms = verdict.arms.iter().map(|arm| {
        [
            arm.arm.clone(),
            words::stage_heading(arm.stage),
            match arm.staining {
                true => "staining".to_owned(),
                false => "change".to_owned(),
            },
            arm.pieces.to_string(),
            arm.judges.to_string(),
            words::number(arm.grade),
        ]
    });
    Some(EyeSection {
        verdicts,
        beside,
        arms: arms.collect(),
        agreement: eyes.agreement.iter().map(agreement).collect(),
        cautions: cautions(eyes),
        open: match eyes.open {
            0 => None,
            1 => Some(text::eyes::a_session_is_open_its_grades().into()),
            count => Some(text::eyes::sessions_are_open_their_grades_are_shown(count)),
        },
    })
}

fn card(results: &Results, comparison: &EyeComparison, top: f64) -> EyeCard {
    let same = |c: &&trial::decide::Comparison| {
        let pair = [c.a.as_str(), c.b.as_str()];
        c.stage == comparison.stage
            && pair.contains(&comparison.a.as_str())
            && pair.contains(&comparison.b.as_str())
    };
    let decision = results.decision.iter().flat_map(|d| &d.comparisons);
    let readings = decision.clone().find(same).map(|c| {
        let agree = match c.verdict == comparison.verdict {
            true => text::eyes::readings_say_the_same(),
            false => text::eyes::readings_decide_this_stage(),
        };
        format!(
            "{agree}: {}, {} CIEDE2000.",
            c.verdict.in_words(),
            words::with_interval(c.de00, c.low, c.high)
        )
    });
    let turned = comparison.difference < 0.0;
    let (low, high) = match turned {
        true => (-comparison.high, -comparison.low),
        false => (comparison.low, comparison.high),
    };
    EyeCard {
        code: comparison.verdict.as_str(),
        name: words::verdict(comparison.verdict),
        a: comparison.a.clone(),
        b: comparison.b.clone(),
        when: words::stage_heading(comparison.stage),
        plain: comparison.plain.clone(),
        figures: match comparison.pieces.contains(&1) {
            true => text::eyes::one_piece_in_an_arm_no_interval().to_owned(),
            false => text::eyes::grades_95_interval_to_margin(
                words::number(comparison.difference.abs()),
                words::number(low),
                words::number(high),
                words::number(comparison.margin_grades),
            ),
        },
        reason: comparison.reason.clone(),
        limits: results.limits_of_eyes(comparison),
        readings,
        strip: chart::grades_against_margin(comparison, top),
        sign: chart::verdict_sign(comparison.verdict),
    }
}

fn cautions(eyes: &Eyes) -> Vec<String> {
    let mut cautions = Vec::new();
    let fails = eyes.agreement.iter().flat_map(|session| {
        let of_session = session.catch_pairs.iter().filter(|own| own.fails);
        of_session.map(move |own| (session.stage, own))
    });
    for (stage, own) in fails {
        cautions.push(text::eyes::saw_a_difference_in_of_pairs_without(
            &own.judge,
            own.seen,
            own.pairs,
            words::stage(stage),
            &own.lowest,
        ));
    }
    if !eyes.not_blind.is_empty() {
        let stages: Vec<String> = eyes.not_blind.iter().map(|s| words::stage(*s)).collect();
        cautions.push(text::eyes::grades_were_given(stages.join(" and ")));
    }
    cautions
}

fn agreement(session: &Agreement) -> AgreementCard {
    let mut rows = vec![[
        text::eyes::people_with_each_other().to_owned(),
        match session.people.judges {
            1 => text::eyes::n_1_person().to_owned(),
            count => text::eyes::people(count),
        },
        session.people.pairs.to_string(),
        figure(&session.people),
        session.people.plain.clone(),
    ]];
    for own in &session.repeats {
        rows.push([
            text::eyes::with_themself().to_owned(),
            own.judge.clone(),
            own.pairs.to_string(),
            text::eyes::same_grade_of_to_same_interval2(
                own.same,
                own.pairs,
                words::percent(own.same_interval[0]),
                words::percent(own.same_interval[1]),
            ),
            text::eyes::of_within_a_half_step_one_look(own.near, own.pairs, words::number(own.sd)),
        ]);
    }
    for own in &session.catch_pairs {
        rows.push([
            text::eyes::pairs_without_a_difference().to_owned(),
            own.judge.clone(),
            own.pairs.to_string(),
            text::eyes::seen_in_of_to_interval2(
                own.seen,
                own.pairs,
                words::percent(own.interval[0]),
                words::percent(own.interval[1]),
            ),
            match (own.seen, own.fails) {
                (0, _) => text::eyes::saw_none_where_there_was_none().to_owned(),
                (_, false) => text::eyes::lowest_grade_near_what_an_eye_does(&own.lowest),
                (_, true) => text::eyes::lowest_grade_sees_differences_where(&own.lowest),
            },
        ]);
    }
    for own in &session.with_instrument {
        let interval = own.mean_interval.map_or(String::new(), |[low, high]| {
            format!(" ({} to {})", words::number(low), words::number(high))
        });
        rows.push([
            match own.staining {
                true => text::eyes::with_readings_staining().to_owned(),
                false => text::eyes::with_readings_change().to_owned(),
            },
            own.judge.clone(),
            own.pairs.to_string(),
            text::eyes::eye_less_readings_grades(
                figure(&own.kappa),
                words::number(own.mean),
                &interval,
            ),
            match own.mean {
                mean if mean <= -0.25 => text::eyes::stricter_than_the_formula(&own.kappa.plain),
                mean if mean >= 0.25 => text::eyes::milder_than_the_formula(&own.kappa.plain),
                _ => own.kappa.plain.clone(),
            },
        ]);
    }
    let who = match session.people.judges {
        0 => text::eyes::nobody_graded_a_pair().to_owned(),
        1 => text::eyes::one_person_judged().to_owned(),
        count => text::eyes::people_judged(count, session.way.in_words()),
    };
    AgreementCard {
        title: format!(
            "{}, {}",
            words::stage_heading(session.stage),
            session.way.in_words()
        ),
        sentences: vec![who, session.people.plain.clone()],
        rows,
    }
}

fn figure(found: &Coefficient) -> String {
    match (found.value, found.interval) {
        (Some(value), Some([low, high])) => format!(
            "{} ({} to {})",
            words::number(value),
            words::number(low),
            words::number(high)
        ),
        (Some(value), None) => words::number(value),
        (None, _) => text::eyes::no_figure().to_owned(),
    }
}
