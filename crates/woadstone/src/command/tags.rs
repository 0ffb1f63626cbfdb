//! `woadstone tags TRIAL`.

use std::path::PathBuf;

use report::label::{Tag, TagSize};

use crate::{
    cli::TagsArgs,
    command::{open, publish::unknown, write_out},
    home,
    outcome::{Outcome, Stop},
};

/// Writes the tags of a trial's pieces.
pub fn run(home: Option<PathBuf>, args: &TagsArgs) -> Outcome {
    let bench = open(&home::own(home)?)?;
    let trial = bench
        .trial(&args.trial)
        .map_err(Stop::refused)?
        .ok_or_else(|| unknown(&bench, &args.trial))?;
    let page = report::label::tags(args.paper.into(), TagSize::Card, &Tag::of(&trial));
    write_out(&page, args.out.as_deref())
}
