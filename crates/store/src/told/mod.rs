//! What the journal tells: each event as a sentence for a person, from the words that are kept of it.
//!
//! The journal keeps short words with numbers, addresses and checksums. They stay as they are; here
//! the things are called by their names: by those of now, where only a number or address is kept of
//! them, as of a plan that was changed. Words that aren't understood are told as they stand.

mod names;

use crate::event_words;
use crate::journal::Seen;
use crate::text::{self, told as say};
use locale::capital;
pub(crate) use names::Names;

/// An event as a person reads it.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Told {
    pub(crate) sentence: String,
    /// What it is about, where that has a page.
    pub(crate) see: Option<Seen>,
    /// Whether what is kept says more, such as a checksum or which of several readings it is about.
    pub(crate) keeps_more: bool,
}

impl Told {
    fn of(sentence: impl Into<String>) -> Self {
        Self {
            sentence: sentence.into(),
            see: None,
            keeps_more: false,
        }
    }

    fn see(self, see: Option<Seen>) -> Self {
        Self { see, ..self }
    }

    fn keeping_more(self) -> Self {
        Self {
            keeps_more: true,
            ..self
        }
    }
}

/// Tells an event of which those words are kept.
pub(crate) fn told(what: &str, detail: &str, names: &Names<'_>) -> Told {
    understood(what, detail, names).unwrap_or_else(|| {
        let name = capital(event_words::named(what).unwrap_or(what));
        Told::of(match detail {
            "" => ended(&name),
            detail => ended(&say::as_it_stands(name, detail)),
        })
    })
}

fn understood(what: &str, detail: &str, names: &Names<'_>) -> Option<Told> {
    of_photos(what, detail, names)
        .or_else(|| of_trials(what, detail, names))
        .or_else(|| of_files(what, detail, names))
        .or_else(|| of_studio(what, detail, names))
}

fn of_photos(what: &str, detail: &str, names: &Names<'_>) -> Option<Told> {
    Some(match what {
        "photo added" => {
            let (id, rest) = detail.strip_prefix("photo ")?.split_once(", \"")?;
            let (name, rest) = rest.rsplit_once("\", of trial ")?;
            let (_, rest) = rest.split_once(" after round ")?;
            let (stage, _) = rest.split_once(", ")?;
            let see = id.parse().ok().map(Seen::Photo);
            Told::of(say::photo_added(name, stage))
                .see(see)
                .keeping_more()
        }
        "areas marked" => {
            let (pieces, id) = detail.rsplit_once(" on photo ")?;
            let (name, see) = names.photo(id)?;
            Told::of(say::areas_marked(first(pieces), name)).see(see)
        }
        "photo read" => {
            let (pieces, id) = detail.rsplit_once(" on photo ")?;
            let (pieces, marked) = pieces.split_once(" of ")?;
            let (name, see) = names.photo(id)?;
            Told::of(say::photo_read(name, first(pieces), marked)).see(see)
        }
        "photo refused" => {
            let (id, rest) = detail.strip_prefix("photo ")?.split_once(", ")?;
            let (_, message) = rest.split_once(": ")?;
            let (name, see) = names.photo(id)?;
            Told::of(say::photo_refused(name, ended(message)))
                .see(see)
                .keeping_more()
        }
        "photo taken out of the queue" => {
            let (id, _) = detail.strip_prefix("photo ")?.split_once(';')?;
            let (name, see) = names.photo(id)?;
            Told::of(say::photo_taken_out(name)).see(see)
        }
        "photo's stage corrected" => {
            let (id, rest) = detail.strip_prefix("photo ")?.split_once(", \"")?;
            let (name, rest) = rest.rsplit_once("\", from round ")?;
            let (before, stage) = rest.split_once(" to round ")?;
            let see = id.parse().ok().map(Seen::Photo);
            Told::of(say::stage_corrected(name, before, stage)).see(see)
        }
        _ => return None,
    })
}

fn of_trials(what: &str, detail: &str, names: &Names<'_>) -> Option<Told> {
    Some(match what {
        "trial entered" => {
            let (title, rest) = detail.strip_prefix('"')?.rsplit_once("\" (")?;
            let (_, counts) = rest.split_once("), ")?;
            let (arms, pieces) = counts.split_once(", ")?;
            Told::of(say::trial_entered(title, first(arms), first(pieces)))
        }
        "readings added" => {
            let (count, rest) = detail.split_once(' ')?;
            let (_, from) = rest.split_once(' ')?;
            Told::of(say::readings_added(count, from))
        }
        "grade by eye added" => {
            let (grade, rest) = detail.split_once(" of piece number ")?;
            let (piece, by) = rest.split_once(", by ")?;
            Told::of(say::graded(by, names.piece(piece)?, grade))
        }
        "withdrawn" => {
            let (thing, reason) = detail.split_once(": ")?;
            let (thing, _) = thing.rsplit_once(' ')?;
            Told::of(say::withdrawn(thing, ended(reason))).keeping_more()
        }
        "judging by eye begun" => {
            let (_, rest) = detail.split_once(", stage ")?;
            let (stage, pairs) = rest.split_once(", ")?;
            Told::of(say::judging_begun(first(pairs), stage)).keeping_more()
        }
        "judging by eye closed" => Told::of(say::judging_closed()).keeping_more(),
        "person judges" => {
            let (name, _) = detail.rsplit_once(" in session ")?;
            Told::of(say::person_judges(name)).keeping_more()
        }
        "blind codes opened" => {
            Told::of(say::blind_codes_opened()).see(Some(Seen::Plan(detail.to_owned())))
        }
        _ => return None,
    })
}

fn of_files(what: &str, detail: &str, names: &Names<'_>) -> Option<Told> {
    let kept = || {
        let (name, slug) = detail.strip_prefix('"')?.rsplit_once("\" (")?;
        Some((name, slug.strip_suffix(')')?.to_owned()))
    };
    Some(match what {
        "plan kept" => {
            let (title, slug) = kept()?;
            Told::of(say::plan_kept(title)).see(Some(Seen::Plan(slug)))
        }
        "plan changed" => {
            let (slug, why) = detail.split_once(": ")?;
            let see = Some(Seen::Plan(slug.to_owned()));
            Told::of(say::plan_changed(names.plan(slug), ended(why))).see(see)
        }
        "recipe kept" => {
            let (name, slug) = kept()?;
            Told::of(say::recipe_kept(name)).see(Some(Seen::Recipe(slug)))
        }
        "recipe changed" => {
            let (slug, why) = detail.split_once(": ")?;
            let see = Some(Seen::Recipe(slug.to_owned()));
            Told::of(say::recipe_changed(names.recipe(slug), ended(why))).see(see)
        }
        "recipe is for" => {
            let (slug, aim) = detail.split_once(": ")?;
            let recipe = names.recipe(slug);
            let see = Some(Seen::Recipe(slug.to_owned()));
            Told::of(match names.trial_or_plan(aim) {
                Some(title) => say::recipe_is_for(recipe, title),
                None if aim == text::recipe_aims::nothing_in_particular() => {
                    say::recipe_is_for_nothing(recipe)
                }
                // A plan that can't be read any more is told by its address.
                None => say::recipe_is_for(recipe, aim),
            })
            .see(see)
            .keeping_more()
        }
        "run begun" => {
            let (title, by) = detail.strip_prefix('"')?.rsplit_once("\" by ")?;
            let (slug, number) = by.rsplit_once(", revision ")?;
            let see = Some(Seen::Recipe(slug.to_owned()));
            Told::of(say::run_begun(title, names.recipe(slug), number))
                .see(see)
                .keeping_more()
        }
        "put in the bin" | "taken out of the bin" => {
            let (kind, title) = detail.split_once(" \"")?;
            let title = title.strip_suffix('"')?;
            Told::of(match what {
                "put in the bin" => say::put_in_the_bin(kind, title),
                _ => say::taken_out_of_the_bin(kind, title),
            })
        }
        _ => return None,
    })
}

fn of_studio(what: &str, detail: &str, names: &Names<'_>) -> Option<Told> {
    Some(match what {
        "material added" => Told::of(say::material_added(detail)).see(names.material(detail)),
        "lot added" => {
            let (of, lot) = detail.rsplit_once(", lot ")?;
            let (amount, name) = of.split_once(" of ")?;
            Told::of(say::lot_added(name, amount))
                .see(names.lot(lot))
                .keeping_more()
        }
        "chart added" => {
            let (name, _) = detail.split_once(", \"")?.1.split_once("\", ")?;
            Told::of(say::chart_added(name)).keeping_more()
        }
        "set-up checked" => {
            let (name, counts) = detail.split_once(" of \"")?.1.rsplit_once("\", ")?;
            let (photos, pieces) = counts.split_once(", ")?;
            Told::of(say::set_up_checked(name, first(photos), first(pieces))).keeping_more()
        }
        "settings changed" => Told::of(say::settings_changed(detail)),
        "device paired" => {
            let (_, name) = detail.split_once(", ")?;
            Told::of(say::device_paired(name)).keeping_more()
        }
        "device revoked" => {
            let name = names.device(detail.rsplit_once(' ')?.1)?;
            Told::of(say::device_revoked(name)).keeping_more()
        }
        _ => return None,
    })
}

/// The number with which a count begins, as in `3 pieces`.
fn first(count: &str) -> &str {
    count.split(' ').next().unwrap_or_default()
}

/// With a full stop, where what a person wrote has none.
pub(crate) fn ended(words: &str) -> String {
    let words = words.trim();
    match words.chars().next_back() {
        Some('.' | '!' | '?' | '…') | None => words.to_owned(),
        Some(_) => format!("{words}."),
    }
}

#[cfg(test)]
mod tests;
