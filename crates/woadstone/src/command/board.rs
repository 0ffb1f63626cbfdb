//! `woadstone board`.

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
            "a board's corner codes carry a trial's short name of a-z, 0-9 and hyphens, 60 characters at most; give that, or leave --trial out",
        ));
    }
    let text = if args.svg {
        report::board::board_svg(&printed)
    } else {
        report::board::board(&printed)
    };
    write_out(&text, args.out.as_deref())
}
