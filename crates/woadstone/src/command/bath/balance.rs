//! Where the dye went, from a file of readings.

use std::{fmt::Write, path::Path};

use dyeing::balance::{DyeBalance, Estimate, Start, WrittenWaters};

use super::{refused, text, told};
use crate::outcome::Stop;

/// The balance of the readings in a file; a rinse below that many percent of the dye is clear.
pub fn of(path: &Path, start: &Start, clear_below: f64) -> Result<DyeBalance, Stop> {
    WrittenWaters::from_toml(&text(path)?)
        .and_then(|waters| DyeBalance::of(start, &waters, clear_below / 100.0))
        .map_err(|error| refused(path, error))
}

/// The balance as text for a terminal.
pub fn table(balance: &DyeBalance) -> String {
    let mut out = String::from(&format!(
        "\n{}\n",
        text::command::where_the_dye_went_share()
    ));
    let put_in = balance
        .start
        .dye
        .map_or(crate::text::command::of_unknown_weight().into(), |d| {
            d.metric()
        });
    let _ = writeln!(out, "  {:<14} {put_in}", text::command::put_in());
    for water in &balance.waters {
        let grams = water
            .grams
            .map_or(String::new(), |g| format!(", {:.3} g", g.middle));
        let _ = writeln!(
            out,
            "  {:<14} {}{grams}   [{}, {}]",
            water.name,
            water.share.percent(),
            water.reading.volume,
            water.reading.how
        );
    }
    let mut row = |name: &str, share: Option<Estimate>| {
        if let Some(share) = share {
            let _ = writeln!(out, "  {name:<14} {}", share.percent());
        }
    };
    row(crate::text::command::washed_out(), Some(balance.washed_out));
    row(crate::text::command::on_the_goods(), balance.fixed);
    told(&mut out, &balance.checks);
    for sentence in &balance.sentences {
        let _ = writeln!(out, "  {sentence}");
    }
    out
}
