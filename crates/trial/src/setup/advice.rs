//! What a check means and what to do next.

use super::{Cause, Plan, SetupCheck};

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
    (check.within_sd_de00 > MIXED_UP_DE00).then(|| {
        "Pieces differ so much from photo to photo that two of them have probably changed names or places: see that each has the same name on every photo, and check again.".to_owned()
    })
}

fn pieces(check: &SetupCheck) -> String {
    let usual = check.provable(&Plan::of(USUAL_PIECES)).changes_de00;
    let needed = match check.pieces_for(USUAL_MARGIN, &Plan::of(2)) {
        Some(pieces) => format!("a margin of {USUAL_MARGIN:.1} needs {pieces}"),
        None => format!("a margin of {USUAL_MARGIN:.1} is out of reach"),
    };
    format!(
        "With this set-up, {USUAL_PIECES} pieces an arm prove a difference of {usual:.1} between two arms\u{2019} changes four times in five; {needed}. That counts the set-up alone: dyeing and washing scatter too."
    )
}

fn two_photos(check: &SetupCheck) -> String {
    let plan = Plan {
        photos: 2,
        ..Plan::of(USUAL_PIECES)
    };
    format!(
        "Two photos at each stage, with the pieces laid anew in between, bring the {USUAL_PIECES} pieces to {:.1}.",
        check.provable(&plan).changes_de00
    )
}

fn keeper(check: &SetupCheck) -> String {
    let usual = check.provable(&Plan::of(USUAL_PIECES));
    let (with, without) = (
        usual.change_with_keeper_de00,
        usual.change_without_keeper_de00,
    );
    let found = format!(
        "One arm\u{2019}s change from photo to photo is proved from {with:.1} on with an unwashed keeper beside it, and from {without:.1} on without"
    );
    if with < without {
        format!("{found}: keep a keeper on every photo.")
    } else {
        format!(
            "{found}: photos agree so well here that one keeper adds more than it takes away; two or more would help."
        )
    }
}

fn cause(check: &SetupCheck) -> Option<String> {
    let most = check.shares.iter().find(|share| share.share > MOST)?;
    let percent = 100.0 * most.share;
    Some(match most.cause {
        Cause::PhotoToPhoto => format!(
            "{percent:.0} % of a reading\u{2019}s scatter comes with the photo: keep the light and the exposure the same, and set side by side only what lies on one photo."
        ),
        Cause::Texture => format!(
            "{percent:.0} % of a reading\u{2019}s scatter is texture and noise: go nearer, mark more of each piece, or take more light."
        ),
        Cause::Laying => format!(
            "{percent:.0} % of a reading\u{2019}s scatter comes from laying the pieces anew: lay them flat, with the grain one way, in light that is even over all of them."
        ),
        Cause::LayingAndTexture => format!(
            "{percent:.0} % of a reading\u{2019}s scatter is each piece\u{2019}s own: lay pieces flat, with the grain one way, mark more of each, and see that the light is even over all of them."
        ),
    })
}

fn vague(check: &SetupCheck) -> Option<String> {
    let [low, high] = check.within_interval;
    (high > VAGUE * low).then(|| {
        format!(
            "The scatter within a photo is known only to lie between {low:.2} and {high:.2}, and all these figures with it: more photos or more pieces make them firmer."
        )
    })
}

fn left_out(check: &SetupCheck) -> Option<String> {
    (!check.seen_once.is_empty()).then(|| {
        format!(
            "Only one photo shows {}, so nothing follows from it there.",
            check.seen_once.join(", ")
        )
    })
}
