//! Why a verdict is what it is, in words.

use super::{
    DealtAnew, UNBOUNDED_DE00, Verdict,
    change::{Against, Change},
    design::{Contrast, Design},
    shown::{Along, Shown},
};
use inference::{length::Length, quantile};

/// Units per arm beyond which more of them is no advice.
const MOST_UNITS: usize = 60;

/// What a sentence is made from.
pub(super) struct Evidence<'a> {
    pub stage: u32,
    pub a: &'a Change<'a>,
    pub b: &'a Change<'a>,
    pub margin_de00: f64,
    pub de00: f64,
    pub verdict: Verdict,
    pub contrast: &'a Contrast,
    pub shown: &'a Shown,
    pub dealt_anew: Option<DealtAnew>,
    /// A set-up check tells how well a reading repeats.
    pub checked: bool,
}

/// The reason for a verdict with its figures.
pub(super) fn sentence(e: &Evidence) -> String {
    let rounds = if e.stage == 1 {
        "1 round".to_owned()
    } else {
        format!("{} rounds", e.stage)
    };
    let (de00, low, high) = (e.de00, e.shown.low, e.shown.high);
    let margin = e.margin_de00;
    let seen = format!(
        "After {rounds} {} and {} differ by {de00:.2} (95 % interval {low:.2} to {high:.2})",
        e.a.arm, e.b.arm
    );
    let mut text = match e.verdict {
        Verdict::Visible => {
            format!("{seen}: the whole interval lies above the margin of {margin}.")
        }
        Verdict::Small => format!(
            "{seen}: a difference is there, and with 95 % confidence it is below {:.2}, less than \
             the margin of {margin}.",
            e.shown.below
        ),
        Verdict::Alike => format!(
            "{seen}: no difference is shown, and with 95 % confidence any is below {:.2}, less \
             than the margin of {margin}.",
            e.shown.below
        ),
        Verdict::Open => open(e, &seen, &rounds),
    };
    if let Some(along) = &e.shown.along {
        text.push(' ');
        text.push_str(&along_in_words(e, along));
    }
    if let Some(dealt_anew) = e.dealt_anew {
        text.push(' ');
        text.push_str(&dealt_anew.in_words());
    }
    for note in notes(e) {
        text.push(' ');
        text.push_str(&note);
    }
    text
}

/// The difference along the fade as a technician wants it.
fn along_in_words(e: &Evidence, along: &Along) -> String {
    let (further, other, sign) = match along.de00 < 0.0 {
        false => (e.b.arm, e.a.arm, 1.0),
        true => (e.a.arm, e.b.arm, -1.0),
    };
    let ends = [along.low * sign, along.high * sign];
    format!(
        "Along the way both fade, {further} has gone {:.2} further than {other} (96 % interval {} to \
         {}, p {}).",
        along.de00.abs(),
        signed(ends[0].min(ends[1])),
        signed(ends[0].max(ends[1])),
        p_in_words(along.p),
    )
}

/// A number with a typographic minus.
fn signed(value: f64) -> String {
    format!("{value:.2}").replace('-', "\u{2212}")
}

/// A chance as written in reports: "0.03", "below 0.001".
fn p_in_words(p: f64) -> String {
    match p {
        p if p < 0.001 => "below 0.001".to_owned(),
        p if p < 0.1 => format!("{p:.3}"),
        p => format!("{p:.2}"),
    }
}

/// What weighing all pairs of a stage together adds to a visible difference.
pub(crate) fn together(pairs: usize, stands: bool) -> String {
    if stands {
        format!(" It stands when all {pairs} pairs of this stage are weighed together (Holm).")
    } else {
        format!(
            " Of {pairs} pairs at one stage one may look so by chance: weighed together (Holm) \
             it is not certain."
        )
    }
}

fn open(e: &Evidence, seen: &str, rounds: &str) -> String {
    let (a, b) = (e.a.pieces.len(), e.b.pieces.len());
    if a.min(b) < 2 {
        let who = match (a, b) {
            (1, 1) => "one piece per arm".to_owned(),
            (1, _) => format!("one piece in {}", e.a.arm),
            _ => format!("one piece in {}", e.b.arm),
        };
        let seen = if e.shown.high >= UNBOUNDED_DE00 {
            format!(
                "After {rounds} {} and {} differ by {:.2}",
                e.a.arm, e.b.arm, e.de00
            )
        } else {
            seen.to_owned()
        };
        return format!(
            "Not enough evidence: {who}. {seen}, but a single piece can't show how much pieces \
             of one arm differ among themselves. Use 3 pieces per arm at least."
        );
    }
    let margin = e.margin_de00;
    let state = if e.shown.low > 0.0 {
        format!(
            "a difference is there, but whether it reaches the margin of {margin} is not settled"
        )
    } else if e.de00 < margin {
        format!("no difference is shown, but one beyond the margin of {margin} remains possible")
    } else {
        format!("it looks larger than the margin of {margin}, but chance alone could do that")
    };
    format!("{seen}: {state}. {}", advice(e))
}

fn advice(e: &Evidence) -> String {
    let unit = match e.contrast.design {
        Design::Loads => "load",
        _ => "piece",
    };
    let keepers = if e.a.against.keepers() + e.b.against.keepers() > 0 {
        ", with keepers in step,"
    } else {
        ""
    };
    match e
        .shown
        .length
        .as_ref()
        .and_then(|length| more_units(length, e.contrast.units, e.margin_de00))
    {
        Some(1) => format!("About 1 more {unit} per arm{keepers} would probably settle it."),
        Some(more) => {
            format!("About {more} more {unit}s per arm{keepers} would probably settle it.")
        }
        None => format!(
            "The difference lies so near the margin, or the {unit}s scatter so much, that even \
             {MOST_UNITS} {unit}s per arm might not settle it."
        ),
    }
}

/// How many more units per arm would bring the interval clear of the margin if the
/// best guess of the true length held.
fn more_units(length: &Length, units: usize, margin: f64) -> Option<usize> {
    let noise = 3.0 * length.standard_error() * length.standard_error();
    let guess = (length.observed() * length.observed() - noise)
        .max(0.0)
        .sqrt();
    (units + 1..=MOST_UNITS)
        .find(|&n| {
            let part = units as f64 / n as f64;
            let error = length.standard_error() * part.sqrt();
            let df = length.df() / part;
            let expected = (guess * guess + noise * part).sqrt();
            if guess > margin {
                expected - quantile::student(0.975, df) * error > margin
            } else {
                expected + quantile::student(0.95, df) * error < margin
            }
        })
        .map(|n| n - units)
}

fn notes(e: &Evidence) -> Vec<String> {
    let mut notes = Vec::new();
    match e.contrast.design {
        Design::OwnLoad => notes.push(
            "Each arm had a load of its own, so the difference goes with the arm or with its \
             load: this trial can't tell which."
                .to_owned(),
        ),
        Design::Loads => notes.push(format!(
            "Loads, not pieces, are counted: {} in the arm with fewer.",
            e.contrast.units
        )),
        Design::Blocks => notes.push("Arms are compared within the loads they shared.".to_owned()),
        Design::Pieces => {}
    }
    if e.contrast.borrowed && !e.contrast.errors.is_empty() {
        notes.push("The scatter of one arm had to be taken from the other pieces.".to_owned());
    }
    let against_start = [e.a, e.b].iter().any(|arm| match &arm.against {
        Against::Drift(_) => true,
        Against::Start => arm.stated.is_some(),
        Against::Keepers(_) => false,
    });
    if e.checked && against_start && !e.contrast.in_one_photo {
        notes.push("How well photos repeat is taken from the set-up check.".to_owned());
    }
    let left_out = e.a.left_out + e.b.left_out;
    if left_out > 0 {
        notes.push(format!(
            "{left_out} test piece{} had neither a start nor a keeper to be compared with and \
             {} left out.",
            if left_out == 1 { "" } else { "s" },
            if left_out == 1 { "is" } else { "are" },
        ));
    }
    notes
}
