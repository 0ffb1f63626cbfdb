//! A verdict from eyes in sentences.

use super::{
    contrast::{Contrast, Units},
    more::advice,
};
use crate::decide::{DealtAnew, Verdict};

/// Everything a sentence may speak of.
pub(super) struct Evidence<'a> {
    pub stage: u32,
    pub names: [&'a str; 2],
    pub pieces: [usize; 2],
    pub margin_de00: f64,
    /// The same in grades.
    pub margin: f64,
    pub low: f64,
    pub high: f64,
    /// The interval leaves 0 out.
    pub shown: bool,
    pub verdict: Verdict,
    pub dealt_anew: Option<DealtAnew>,
    pub contrast: &'a Contrast,
}

/// For anybody, and with the figures.
pub(super) fn of(e: &Evidence) -> (String, String) {
    (plain(e), reason(e))
}

fn rounds(stage: u32) -> String {
    match stage {
        0 => "Before the first round".to_owned(),
        1 => "After 1 round".to_owned(),
        n => format!("After {n} rounds"),
    }
}

/// Who has changed more, and who less.
fn further<'a>(e: &Evidence<'a>) -> (&'a str, &'a str) {
    match e.contrast.difference() > 0.0 {
        true => (e.names[1], e.names[0]),
        false => (e.names[0], e.names[1]),
    }
}

fn eyes(judges: usize) -> String {
    match judges {
        1 => "one pair of eyes sees".to_owned(),
        count => format!("{count} people see"),
    }
}

fn plain(e: &Evidence) -> String {
    let when = rounds(e.stage);
    let [a, b] = e.names;
    let (more, less) = further(e);
    let see = eyes(e.contrast.judges);
    match e.verdict {
        Verdict::Visible => format!(
            "{when}, judged by eye, {see} that {more} has clearly faded further than {less}, by more than \
             was set as what matters."
        ),
        Verdict::Small => format!(
            "{when}, judged by eye, {see} that {more} has faded a little further than {less}, but by too \
             little to matter."
        ),
        Verdict::Alike => format!(
            "{when}, judged by eye, {a} and {b} have changed equally far: {see} no difference that matters."
        ),
        Verdict::Open if e.pieces.contains(&1) => format!(
            "{when}, one piece of an arm says nothing of how much pieces differ, so eyes can't settle {a} \
             against {b}."
        ),
        Verdict::Open if e.shown => format!(
            "{when}, judged by eye, {see} that {more} has faded further than {less}, but whether by as much \
             as matters is not settled."
        ),
        Verdict::Open => format!(
            "{when}, eyes can't tell {a} from {b}, and can't show them to be alike either. Treat the question \
             as open."
        ),
    }
}

fn reason(e: &Evidence) -> String {
    let [a, b] = e.names;
    let [of_a, of_b] = e.contrast.means;
    let mut text = format!(
        "Mean grades are {of_a:.2} for {a} ({}) and {of_b:.2} for {b} ({}), by {}. They differ by {:.2} \
         of a grade (95 % interval {} to {}); the margin of {} is {:.2} of a grade here, taking one CIEDE2000 \
         as one unit of the grey scale's own difference (ISO 105-A05).",
        count(e.pieces[0], "piece", "pieces"),
        count(e.pieces[1], "piece", "pieces"),
        count(e.contrast.judges, "person", "people"),
        e.contrast.difference().abs(),
        signed(e.low, e),
        signed(e.high, e),
        number(e.margin_de00),
        e.margin,
    );
    for sentence in notes(e) {
        text.push(' ');
        text.push_str(&sentence);
    }
    text
}

/// An end of the interval, turned so that the difference seen is above 0.
fn signed(end: f64, e: &Evidence) -> String {
    let turned = e.contrast.difference() < 0.0;
    // The ends change places too.
    let value = match turned {
        true if end == e.low => -e.high,
        true => -e.low,
        false => end,
    };
    format!("{value:.2}").replace('-', "\u{2212}")
}

fn notes(e: &Evidence) -> Vec<String> {
    let mut notes = Vec::new();
    if e.contrast.judges == 1 {
        notes.push(
            "One person judged: the verdict leans on an assumption of how little people differ, and \
             tells nothing of other eyes."
                .to_owned(),
        );
    }
    match e.contrast.units {
        Units::OwnLoad => notes.push(
            "Each arm had a load of its own, so the difference goes with the arm or with its load: \
             this trial can't tell which."
                .to_owned(),
        ),
        Units::Loads => notes.push(format!(
            "Loads, not pieces, are counted: {} in the arm with fewer.",
            e.contrast.fewest()
        )),
        Units::Pieces => {}
    }
    if matches!(e.verdict, Verdict::Alike | Verdict::Small) {
        notes.push(
            "Grades tell how far a piece has changed, not in which direction: two arms of one grade may \
             still differ in hue."
                .to_owned(),
        );
    }
    if let Some(dealt) = e.dealt_anew {
        notes.push(dealt.in_words());
    }
    if e.verdict == Verdict::Open {
        notes.push(advice(e.contrast, e.margin));
    }
    notes
}

/// Where nobody judged pieces of both arms.
pub(super) fn apart(stage: u32, [a, b]: [&str; 2]) -> (String, String) {
    (
        format!(
            "{}, different people judged {a} and {b}, so eyes can't compare them.",
            rounds(stage)
        ),
        format!(
            "Nobody judged pieces of both {a} and {b}, nor is there a chain of people who did: a strict \
             judge can't be told from a faded piece. Let one person judge all pieces of both."
        ),
    )
}

fn count(count: usize, one: &str, more: &str) -> String {
    match count {
        1 => format!("1 {one}"),
        _ => format!("{count} {more}"),
    }
}

fn number(value: f64) -> String {
    let text = format!("{value:.2}");
    text.strip_suffix('0').map_or(text.clone(), str::to_owned)
}
