//! `woadstone setup-check PHOTO...`.

use crate::text;
use std::{fmt::Write, path::PathBuf};

use photo::Request;
use store::{NewSetupCheck, check_setup};
use trial::setup::SetupCheck;

use crate::{
    cli::SetupCheckArgs,
    command::{file, now, open, read},
    home,
    outcome::{Outcome, Stop, print, print_json},
};

/// Finds what a set-up scatters by and what it can prove; keeps it where it has a name.
pub fn run(home: Option<PathBuf>, args: &SetupCheckArgs) -> Outcome {
    let requests = requests(&args.areas)?;
    let photos = args
        .photos
        .iter()
        .map(|path| Ok((path.display().to_string(), file(path)?)))
        .collect::<Result<Vec<_>, Stop>>()?;
    let check = check_setup(&photos, &requests, &photo::read).map_err(Stop::refused)?;
    if let Some(name) = &args.name {
        let mut bench = open(&home::own(home)?)?;
        let new = NewSetupCheck {
            name,
            view: &Request::default().view.to_string(),
            check: &check,
            photos: &photos,
        };
        bench.keep_setup_check(new, &now()).map_err(Stop::refused)?;
    }
    if args.json {
        print_json(&check)
    } else {
        print(&as_text(&check, args.name.as_deref()))
    }
}

fn requests(areas: &[PathBuf]) -> Result<Vec<Request>, Stop> {
    if areas.is_empty() {
        return Ok(vec![Request::default()]);
    }
    areas
        .iter()
        .map(|path| {
            Ok(Request {
                areas: read::areas(path)?,
                ..Request::default()
            })
        })
        .collect()
}

fn as_text(check: &SetupCheck, name: Option<&str>) -> String {
    let mut text = format!(
        "{}\n",
        text::command::photos_pieces_readings_scatter_of_a(
            check.photos,
            check.pieces,
            check.readings
        )
    );
    for (what, sd, [low, high]) in [
        (
            text::command::within_a_photo(),
            check.within_sd_de00,
            check.within_interval,
        ),
        (
            text::command::from_photo_to_photo(),
            check.between_sd_de00,
            check.between_interval,
        ),
    ] {
        let _ = writeln!(
            text,
            "  {}",
            text::command::to_2(
                format_args!("{what:<20}"),
                format_args!("{sd:.2}"),
                format_args!("{low:.2}"),
                format_args!("{high:.2}")
            )
        );
    }
    text.push_str(&format!("{}\n", text::command::where_it_comes()));
    for share in &check.shares {
        let cause = share.cause.to_string();
        let _ = writeln!(text, "  {cause:<32} {:>3.0} %", 100.0 * share.share);
    }
    text.push_str(&format!(
        "{}\n  {}\n  {}\n",
        text::command::smallest_difference_shown(),
        text::command::smallest_columns(),
        text::command::smallest_columns_below()
    ));
    for row in &check.smallest_provable {
        let _ = writeln!(
            text,
            "  {:>6}   {:>7.2}     {:>9.2}     {:>13.2}       {:>7.2}",
            row.pieces,
            row.changes_de00,
            row.side_by_side_de00,
            row.change_with_keeper_de00,
            row.change_without_keeper_de00
        );
    }
    text.push('\n');
    for sentence in &check.advice {
        let _ = writeln!(text, "{sentence}");
    }
    let _ = match name {
        Some(name) => writeln!(text, "{}", text::command::kept_on_the_bench(name)),
        None => writeln!(text, "{}", text::command::not_kept_name_name_keeps()),
    };
    text
}
