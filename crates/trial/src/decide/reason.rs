//! Why a verdict is what it is, in words.

use super::{
    DealtAnew, UNBOUNDED_DE00, Verdict,
    change::{Against, Change},
    design::{Contrast, Design},
    shown::{Along, Shown},
};
use crate::text;
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
        text::decide::n_1_round().to_owned()
    } else {
        text::decide::rounds(e.stage)
    };
    let (de00, low, high) = (e.de00, e.shown.low, e.shown.high);
    let margin = e.margin_de00;
    let seen = text::decide::after_and_arm2_differ_by_de00_95(
        &rounds,
        e.a.arm,
        e.b.arm,
        format_args!("{de00:.2}"),
        format_args!("{low:.2}"),
        format_args!("{high:.2}"),
    );
    let mut text = match e.verdict {
        Verdict::Visible => text::decide::the_whole_interval_lies_above_the_margin(&seen, margin),
        Verdict::Small => text::decide::a_difference_is_there_and_with_95(
            &seen,
            format_args!("{:.2}", e.shown.below),
            margin,
        ),
        Verdict::Alike => text::decide::no_difference_is_shown_and_with_95(
            &seen,
            format_args!("{:.2}", e.shown.below),
            margin,
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
    text::decide::along_the_way_both_fade_has_gone(
        further,
        format_args!("{:.2}", along.de00.abs()),
        other,
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
        p if p < 0.001 => text::decide::below_0_001().to_owned(),
        p if p < 0.1 => format!("{p:.3}"),
        p => format!("{p:.2}"),
    }
}

/// What weighing all pairs of a stage together adds to a visible difference.
pub(crate) fn together(pairs: usize, stands: bool) -> String {
    if stands {
        text::decide::it_stands_when_all_pairs(pairs)
    } else {
        text::decide::of_pairs_at_one_stage(pairs)
    }
}

fn open(e: &Evidence, seen: &str, rounds: &str) -> String {
    let (a, b) = (e.a.pieces.len(), e.b.pieces.len());
    if a.min(b) < 2 {
        let who = match (a, b) {
            (1, 1) => text::decide::one_piece_per_arm().to_owned(),
            (1, _) => text::decide::one_piece(e.a.arm),
            _ => text::decide::one_piece(e.b.arm),
        };
        let seen = if e.shown.high >= UNBOUNDED_DE00 {
            text::decide::after_and_arm2_differ_by_de00(
                rounds,
                e.a.arm,
                e.b.arm,
                format_args!("{:.2}", e.de00),
            )
        } else {
            seen.to_owned()
        };
        return text::decide::not_enough_evidence_but_a_single_piece(&who, &seen);
    }
    let margin = e.margin_de00;
    let state = if e.shown.low > 0.0 {
        text::decide::a_difference_is_there_but_whether(margin)
    } else if e.de00 < margin {
        text::decide::no_difference_is_shown_but_one_beyond(margin)
    } else {
        text::decide::it_looks_larger_than_the_margin(margin)
    };
    format!("{seen}: {state}. {}", advice(e))
}

fn advice(e: &Evidence) -> String {
    // A key, by which the messages choose their words.
    let unit = match e.contrast.design {
        Design::Loads => "load",
        _ => "piece",
    };
    let keepers = if e.a.against.keepers() + e.b.against.keepers() > 0 {
        text::decide::with_keepers_in_step()
    } else {
        ""
    };
    match e
        .shown
        .length
        .as_ref()
        .and_then(|length| more_units(length, e.contrast.units, e.margin_de00))
    {
        Some(1) => text::decide::about_1_more_per_arm_would_probably(unit, keepers),
        Some(more) => text::decide::about_more_s_per_arm_would_probably(more, unit, keepers),
        None => text::decide::the_difference_lies_so_near_the_margin(unit, MOST_UNITS),
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
        Design::OwnLoad => notes.push(text::decide::each_arm_had_a_load().to_owned()),
        Design::Loads => notes.push(text::decide::loads_not_pieces_are_counted(e.contrast.units)),
        Design::Blocks => notes.push(text::decide::arms_are_compared_within_the_loads().to_owned()),
        Design::Pieces => {}
    }
    if e.contrast.borrowed && !e.contrast.errors.is_empty() {
        notes.push(text::decide::the_scatter_of_one_arm_had().to_owned());
    }
    let against_start = [e.a, e.b].iter().any(|arm| match &arm.against {
        Against::Drift(_) => true,
        Against::Start => arm.stated.is_some(),
        Against::Keepers(_) => false,
    });
    if e.checked && against_start && !e.contrast.in_one_photo {
        notes.push(text::decide::how_well_photos_repeat_is_taken().to_owned());
    }
    let left_out = e.a.left_out + e.b.left_out;
    if left_out > 0 {
        notes.push(text::decide::test_piece_had_neither_a_start_nor(left_out));
    }
    notes
}
