//! Results laid out in rows, for a page or a report to print.

use crate::text;
use crate::{chart, swatch, words};
use colour::Lab;
use trial::decide::{Comparison, Decision};
use trial::{EyeGrade, Reading, Results, Trial};

/// One pair of arms at one stage, ready to read.
pub struct VerdictRow {
    /// Rounds gone through.
    pub stage: u32,
    /// The stage in words, with a capital.
    pub when: String,
    /// One arm.
    pub a: String,
    /// The other.
    pub b: String,
    /// `visible`, `small`, `alike` or `open`.
    pub code: &'static str,
    /// The verdict's name.
    pub name: String,
    /// What it means, in a plain sentence.
    pub sentence: String,
    /// The difference with its interval.
    pub difference: String,
    /// Why, with figures.
    pub reason: String,
    /// What limits it, each a sentence or two.
    pub limits: Vec<String>,
    /// The interval against the margin, SVG.
    pub strip: String,
    /// The verdict's sign, SVG: its shape says what its name says.
    pub sign: String,
}

/// Every verdict of a trial, the latest stage first.
pub fn verdicts(results: &Results) -> Vec<VerdictRow> {
    let margin_de00 = results.trial.margin_de00;
    let Some(decision) = &results.decision else {
        return Vec::new();
    };
    let top = chart::scale_top(&decision.comparisons, margin_de00);
    let mut sorted: Vec<_> = decision.comparisons.iter().collect();
    sorted.sort_by_key(|c| std::cmp::Reverse(c.stage));
    sorted
        .into_iter()
        .map(|c| VerdictRow {
            stage: c.stage,
            when: words::stage_heading(c.stage),
            a: c.a.clone(),
            b: c.b.clone(),
            code: c.verdict.as_str(),
            name: words::verdict(c.verdict),
            sentence: words::sentence(c, margin_de00),
            difference: words::with_interval(c.de00, c.low, c.high),
            reason: format!("{}{}", c.reason, moved(decision, c).unwrap_or_default()),
            limits: results.limits_of(c),
            strip: chart::difference_against_margin(c, margin_de00, top),
            sign: chart::verdict_sign(c.verdict),
        })
        .collect()
}

/// The rows of the latest stage, and those of the stages before it.
pub fn by_recency(rows: Vec<VerdictRow>) -> (Vec<VerdictRow>, Vec<VerdictRow>) {
    let last = rows.iter().map(|row| row.stage).max();
    rows.into_iter().partition(|row| Some(row.stage) == last)
}

/// How far each of the two has moved from its start.
fn moved(decision: &Decision, comparison: &Comparison) -> Option<String> {
    let of = |name: &str| {
        decision
            .arms
            .iter()
            .find(|c| c.arm == name && c.stage == comparison.stage)
            .map(|c| words::number(c.de00))
    };
    Some(text::table::from_its_start_has_changed_by_a2(
        &comparison.a,
        of(&comparison.a)?,
        &comparison.b,
        of(&comparison.b)?,
    ))
}

/// How far one arm has changed at one stage.
pub struct ChangeRow {
    /// Name of the arm.
    pub arm: String,
    /// The stage in words, with a capital.
    pub when: String,
    /// How many test pieces.
    pub pieces: usize,
    /// CIEDE2000 with its interval.
    pub change: String,
    /// Lighter or darker, redder or greener, yellower or bluer, in figures.
    pub direction: String,
    /// Grade of fade on the grey scale.
    pub grade: String,
}

/// Every arm's change, arm by arm in the order of the trial and by stage.
pub fn changes(trial: &Trial, decision: &Decision) -> Vec<ChangeRow> {
    let place = |name: &str| {
        trial
            .arms
            .iter()
            .position(|a| a.name == name)
            .unwrap_or(usize::MAX)
    };
    let mut sorted: Vec<_> = decision.arms.iter().collect();
    sorted.sort_by_key(|c| (place(&c.arm), c.stage));
    sorted
        .into_iter()
        .map(|c| ChangeRow {
            arm: c.arm.clone(),
            when: words::stage_heading(c.stage),
            pieces: c.pieces,
            change: words::with_range(c.de00, c.low, c.high),
            direction: format!(
                "\u{394}L* {:+.1} \u{394}a* {:+.1} \u{394}b* {:+.1}",
                c.change[0], c.change[1], c.change[2]
            )
            .replace('-', "\u{2212}"),
            grade: c.fade_grade.clone(),
        })
        .collect()
}

/// One reading of one piece.
pub struct ReadingRow {
    /// Code of the piece.
    pub code: String,
    /// Name of its arm.
    pub arm: String,
    /// What the piece is for.
    pub role: &'static str,
    /// The stage in words, with a capital.
    pub when: String,
    /// Its colour as numbers.
    pub numbers: String,
    /// What it was got from, by whom, when and with what.
    pub source: String,
    /// Its uncertainty: the standard deviation of each of L*, a*, b*.
    pub spread: String,
    /// Its swatch, SVG.
    pub swatch: String,
    /// What was noticed about it.
    pub notes: Vec<String>,
}

/// Every reading of a piece of this trial, by stage and then in the order of the pieces.
pub fn readings(trial: &Trial, readings: &[Reading]) -> Vec<ReadingRow> {
    let place = |r: &Reading| trial.pieces.iter().position(|p| p.id == r.piece);
    let mut sorted: Vec<_> = readings.iter().collect();
    sorted.sort_by_key(|r| (r.stage, place(r), r.id));
    sorted
        .into_iter()
        .filter_map(|r| {
            let piece = trial.piece(r.piece)?;
            let arm = trial.arm(piece.arm).map_or("", |a| a.name.as_str());
            let lab = Lab::from(r.lab);
            let sd = |i: usize| r.cov[i][i].max(0.0).sqrt();
            Some(ReadingRow {
                code: piece.code.clone(),
                arm: arm.to_owned(),
                role: words::role(piece.role),
                when: words::stage_heading(r.stage),
                numbers: in_view(swatch::numbers(lab), &r.view),
                source: words::source(r),
                spread: format!("\u{b1} {:.2}, {:.2}, {:.2}", sd(0), sd(1), sd(2)),
                swatch: swatch::svg(lab, &format!("{} {}", piece.code, words::stage(r.stage))),
                notes: r.notes.iter().map(|n| n.message.clone()).collect(),
            })
        })
        .collect()
}

/// Numbers with their view, where it isn't that of photo readings.
fn in_view(numbers: String, view: &str) -> String {
    match view {
        "D65/10" => numbers,
        other => format!("{numbers} ({other})"),
    }
}

/// One grade judged by eye.
pub struct EyeGradeRow {
    /// Code of the piece.
    pub code: String,
    /// Name of its arm.
    pub arm: String,
    /// The stage in words, with a capital.
    pub when: String,
    /// What the scale grades.
    pub scale: &'static str,
    /// The grade, such as `4-5`.
    pub grade: String,
    /// What it was judged against.
    pub against: String,
    /// Who judged, when and under which light.
    pub judged: String,
    /// Anything else that was written down.
    pub remark: String,
}

/// Every grade judged by eye, by stage and then in the order of the pieces.
pub fn eye_grades(trial: &Trial, grades: &[EyeGrade]) -> Vec<EyeGradeRow> {
    let place = |g: &EyeGrade| trial.pieces.iter().position(|p| p.id == g.judged.piece);
    let mut sorted: Vec<_> = grades.iter().collect();
    sorted.sort_by_key(|g| (g.judged.stage, place(g), g.id));
    sorted
        .into_iter()
        .filter_map(|grade| {
            let judged = &grade.judged;
            let piece = trial.piece(judged.piece)?;
            let against = judged.against.and_then(|id| trial.piece(id));
            let on = words::day(match judged.on.as_str() {
                "" => &grade.made_at,
                on => on,
            });
            Some(EyeGradeRow {
                code: piece.code.clone(),
                arm: trial
                    .arm(piece.arm)
                    .map_or_else(String::new, |a| a.name.clone()),
                when: words::stage_heading(judged.stage),
                scale: judged.scale.in_words(),
                grade: judged.grade.clone(),
                against: against.map_or_else(
                    || text::table::its_own_original().to_owned(),
                    |p| format!("{} {}", words::role(p.role), p.code),
                ),
                judged: text::table::under(&judged.by, on, &judged.light),
                remark: judged.remark.clone(),
            })
        })
        .collect()
}
