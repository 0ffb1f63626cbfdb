//! What a check means and what to do next.

use super::{Cause, Plan, SetupCheck};
use crate::text;

/// The difference that most people see side by side, CIEDE2000; common practice.
const USUAL_MARGIN: f64 = 1.0;
/// Pieces an arm that the first sentence speaks of.
const USUAL_PIECES: usize = 5;
/// Upper over lower end of the scatter within, from which on more photos are due.
const VAGUE: f64 = 2.0;
/// More than this within a photo is no scatter: a piece went under another's name.
const MIXED_UP_DE00: f64 = 3.0;
/// A cause with more than this share is the one to mend.
const MOST: f64 = 0.5;

pub(super) fn sentences(check: &SetupCheck) -> Vec<String> {
    let mut all = Vec::new();
    all.extend(mixed_up(check));
    all.push(pieces(check));
    all.push(two_photos(check));
    all.push(keeper(check));
    all.extend(cause(check));
    all.extend(vague(check));
    all.extend(left_out(check));
    all
}

fn mixed_up(check: &SetupCheck) -> Option<String> {
    (check.within_sd_de00 > MIXED_UP_DE00)
        .then(|| text::setup::pieces_differ_so_much_from_photo().to_owned())
}

fn pieces(check: &SetupCheck) -> String {
    let usual = check.provable(&Plan::of(USUAL_PIECES)).changes_de00;
    let needed = match check.pieces_for(USUAL_MARGIN, &Plan::of(2)) {
        Some(pieces) => text::setup::a_margin_of_needs(format_args!("{:.1}", USUAL_MARGIN), pieces),
        None => text::setup::a_margin_of_is_out_of_reach(format_args!("{:.1}", USUAL_MARGIN)),
    };
    text::setup::with_this_set_up_pieces_an_arm(USUAL_PIECES, format_args!("{usual:.1}"), &needed)
}

fn two_photos(check: &SetupCheck) -> String {
    let plan = Plan {
        photos: 2,
        ..Plan::of(USUAL_PIECES)
    };
    text::setup::two_photos_at_each_stage(
        USUAL_PIECES,
        format_args!("{:.1}", check.provable(&plan).changes_de00),
    )
}

fn keeper(check: &SetupCheck) -> String {
    let usual = check.provable(&Plan::of(USUAL_PIECES));
    let (with, without) = (
        usual.change_with_keeper_de00,
        usual.change_without_keeper_de00,
    );
    let found = text::setup::one_arms_change_from_photo_to_photo(
        format_args!("{with:.1}"),
        format_args!("{without:.1}"),
    );
    if with < without {
        text::setup::keep_a_keeper_on_every_photo(&found)
    } else {
        text::setup::photos_agree_so_well_here(&found)
    }
}

fn cause(check: &SetupCheck) -> Option<String> {
    let most = check.shares.iter().find(|share| share.share > MOST)?;
    let percent = 100.0 * most.share;
    Some(match most.cause {
        Cause::PhotoToPhoto => {
            text::setup::of_a_readings_scatter_comes(format_args!("{percent:.0}"))
        }
        Cause::Texture => {
            text::setup::of_a_readings_scatter_is_texture(format_args!("{percent:.0}"))
        }
        Cause::Laying => {
            text::setup::of_a_readings_scatter_comes_from_laying(format_args!("{percent:.0}"))
        }
        Cause::LayingAndTexture => {
            text::setup::of_a_readings_scatter_is_each_pieces(format_args!("{percent:.0}"))
        }
    })
}

fn vague(check: &SetupCheck) -> Option<String> {
    let [low, high] = check.within_interval;
    (high > VAGUE * low).then(|| {
        text::setup::the_scatter_within_a_photo_is_known(
            format_args!("{low:.2}"),
            format_args!("{high:.2}"),
        )
    })
}

fn left_out(check: &SetupCheck) -> Option<String> {
    (!check.seen_once.is_empty())
        .then(|| text::setup::only_one_photo_shows_so_nothing_follows(check.seen_once.join(", ")))
}
