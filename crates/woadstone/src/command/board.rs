//! `woadstone board`.

use crate::text;
use photo::board::{Board, Kind, Printed};

use crate::{
    cli::BoardArgs,
    command::write_out,
    outcome::{Outcome, Stop},
};

/// Writes a board to be printed.
pub fn run(args: &BoardArgs) -> Outcome {
    let board = Board {
        kind: if args.windows == "12" {
            Kind::Twelve
        } else {
            Kind::Six
        },
        paper: args.paper.into(),
    };
    let printed = Printed::new(board, args.trial.as_deref(), args.stage);
    if args.trial.is_some() && printed.trial().is_none() {
        return Err(Stop::refused(
            text::command::a_boards_corner_codes_carry_a_trials(),
        ));
    }
    let text = if args.svg {
        report::board::board_svg(&printed)
    } else {
        report::board::board(&printed)
    };
    write_out(&text, args.out.as_deref())
}
