//! What eyes say, laid out in cards and rows.

use crate::{chart, words};
use trial::{
    Results,
    eyes::{Agreement, Coefficient, EyeComparison, Eyes},
};

/// What a verdict from eyes is, in a sentence or two.
pub const ABOUT: &str = "Grades on the grey scale for change in colour, 5 for none to 1 for the most, that people gave the cloths. \
     They tell how far a piece has changed and not in which direction, and half-steps are coarse: where readings decide a stage, they decide.";

/// How agreement is to be read.
pub const ABOUT_AGREEMENT: &str = "Agreement is 1 where people always give the same grade and 0 where they agree no more than chance would bring; two half-steps \
     apart count four times as bad as one. Intervals hold at 95 % and are rough from fewer than 20 pairs.";

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
            1 => {
                Some("A session is open: its grades are shown and count once it is closed.".into())
            }
            count => Some(format!(
                "{count} sessions are open: their grades are shown and count once they are closed."
            )),
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
            true => "Readings say the same",
            false => "Readings decide this stage",
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
            true => "one piece in an arm: no interval can be given".to_owned(),
            false => format!(
                "{} grades (95 % interval {} to {}); margin {}",
                words::number(comparison.difference.abs()),
                words::number(low),
                words::number(high),
                words::number(comparison.margin_grades)
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
        cautions.push(format!(
            "{} saw a difference in {} of {} pairs without one {}, down to grade {}: take this person's \
             grades with care. They count all the same.",
            own.judge,
            own.seen,
            own.pairs,
            words::stage(stage),
            own.lowest
        ));
    }
    if !eyes.not_blind.is_empty() {
        let stages: Vec<String> = eyes.not_blind.iter().map(|s| words::stage(*s)).collect();
        cautions.push(format!(
            "Grades {} were given one by one and not blind: whoever judged may have known the arm.",
            stages.join(" and ")
        ));
    }
    cautions
}

fn agreement(session: &Agreement) -> AgreementCard {
    let mut rows = vec![[
        "people with each other".to_owned(),
        match session.people.judges {
            1 => "1 person".to_owned(),
            count => format!("{count} people"),
        },
        session.people.pairs.to_string(),
        figure(&session.people),
        session.people.plain.clone(),
    ]];
    for own in &session.repeats {
        rows.push([
            "with themself".to_owned(),
            own.judge.clone(),
            own.pairs.to_string(),
            format!(
                "same grade {} of {} ({} to {})",
                own.same,
                own.pairs,
                words::percent(own.same_interval[0]),
                words::percent(own.same_interval[1])
            ),
            format!(
                "{} of {} within a half-step; one look scatters by {} of a grade.",
                own.near,
                own.pairs,
                words::number(own.sd)
            ),
        ]);
    }
    for own in &session.catch_pairs {
        rows.push([
            "pairs without a difference".to_owned(),
            own.judge.clone(),
            own.pairs.to_string(),
            format!(
                "seen in {} of {} ({} to {})",
                own.seen,
                own.pairs,
                words::percent(own.interval[0]),
                words::percent(own.interval[1])
            ),
            match (own.seen, own.fails) {
                (0, _) => "Saw none where there was none.".to_owned(),
                (_, false) => format!(
                    "Lowest grade {}: near what an eye does at its limit.",
                    own.lowest
                ),
                (_, true) => format!(
                    "Lowest grade {}: sees differences where there are none.",
                    own.lowest
                ),
            },
        ]);
    }
    for own in &session.with_instrument {
        let interval = own.mean_interval.map_or(String::new(), |[low, high]| {
            format!(" ({} to {})", words::number(low), words::number(high))
        });
        rows.push([
            match own.staining {
                true => "with readings, staining".to_owned(),
                false => "with readings, change".to_owned(),
            },
            own.judge.clone(),
            own.pairs.to_string(),
            format!(
                "{}; eye less readings {} grades{interval}",
                figure(&own.kappa),
                words::number(own.mean)
            ),
            match own.mean {
                mean if mean <= -0.25 => format!("Stricter than the formula. {}", own.kappa.plain),
                mean if mean >= 0.25 => format!("Milder than the formula. {}", own.kappa.plain),
                _ => own.kappa.plain.clone(),
            },
        ]);
    }
    let who = match session.people.judges {
        0 => "Nobody graded a pair.".to_owned(),
        1 => "One person judged.".to_owned(),
        count => format!("{count} people judged {}.", session.way.in_words()),
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
        (None, _) => "no figure".to_owned(),
    }
}
