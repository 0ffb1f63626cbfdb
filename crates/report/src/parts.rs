//! The pale and the deep part of resist-dyed pieces, laid out in rows.

use crate::text;
use crate::{swatch, words};
use colour::Lab;
use std::collections::BTreeSet;
use trial::{PartAtStage, PartChange, Trial};

/// What the pale part is good for, in a sentence.
pub fn pale_shows() -> &'static str {
    text::parts::the_pale_part_is_where_another_pieces()
}

/// The parts of a trial's resist-dyed pieces, stage by stage.
pub struct PartTable {
    /// The stages in words, with a capital.
    pub stages: Vec<String>,
    /// A row for each part of each piece, in the order of the trial.
    pub rows: Vec<PartRow>,
}

/// One part of one piece.
pub struct PartRow {
    /// Code of the piece.
    pub code: String,
    /// Name of its arm.
    pub arm: String,
    /// What the piece is for.
    pub role: &'static str,
    /// `pale` or `deep`.
    pub part: &'static str,
    /// One cell for each stage; none where the piece was not seen in two parts.
    pub cells: Vec<Option<PartCell>>,
}

/// One part of one piece at one stage.
pub struct PartCell {
    /// Its swatch, SVG.
    pub svg: String,
    /// Its colour as numbers.
    pub numbers: String,
    /// Its share of the area, such as "38 % of the piece".
    pub share: String,
    /// Its change since its own start with the interval, or why there is none.
    pub change: String,
}

/// The parts of every resist-dyed piece; none where no piece was seen in two parts.
pub fn by_stage(trial: &Trial, parts: &[PartAtStage]) -> Option<PartTable> {
    let stages: BTreeSet<u32> = parts.iter().map(|at| at.stage).collect();
    if stages.is_empty() {
        return None;
    }
    let mut keys: Vec<_> = parts
        .iter()
        .filter_map(|at| {
            let place = trial.pieces.iter().position(|p| p.id == at.piece)?;
            Some((place, at.part, at.view.as_str()))
        })
        .collect();
    keys.sort_unstable();
    keys.dedup();
    let rows = keys
        .into_iter()
        .map(|(place, part, view)| {
            let piece = &trial.pieces[place];
            let at_stage = |stage: &u32| {
                parts.iter().find(|at| {
                    at.piece == piece.id && at.part == part && at.view == view && at.stage == *stage
                })
            };
            let name = format!("{} {part}", piece.code);
            PartRow {
                code: piece.code.clone(),
                arm: trial
                    .arm(piece.arm)
                    .map_or_else(String::new, |arm| arm.name.clone()),
                role: words::role(piece.role),
                part: part.as_str(),
                cells: stages
                    .iter()
                    .map(|stage| at_stage(stage).map(|at| cell(at, &name)))
                    .collect(),
            }
        })
        .collect();
    Some(PartTable {
        stages: stages.into_iter().map(words::stage_heading).collect(),
        rows,
    })
}

fn cell(at: &PartAtStage, name: &str) -> PartCell {
    let lab = Lab::from(at.lab);
    PartCell {
        svg: swatch::svg(lab, &format!("{name}, {}", words::stage(at.stage))),
        numbers: swatch::numbers(lab),
        share: text::parts::of_the_piece(format_args!("{:.0}", 100.0 * at.share)),
        change: match &at.change {
            Some(change) => changed(change),
            None if at.stage == 0 => text::parts::its_start().to_owned(),
            None => text::parts::no_start_to_compare().to_owned(),
        },
    }
}

fn changed(change: &PartChange) -> String {
    let range = words::with_range(change.de00, change.low, change.high);
    text::parts::change(&range)
}
