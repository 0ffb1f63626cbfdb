//! `woadstone grade-by-eye TRIAL PIECE GRADE --stage N --by WHO --light LIGHT`.

use crate::text;
use std::path::PathBuf;

use trial::{Judged, PieceId, Trial};

use crate::{
    cli::GradeByEyeArgs,
    command::{now, open, publish},
    home,
    outcome::{Outcome, Stop, print},
};

/// Adds a grade that someone judged by eye.
pub fn run(home: Option<PathBuf>, args: &GradeByEyeArgs) -> Outcome {
    let mut bench = open(&home::own(home)?)?;
    let trial = publish::results(&bench, &args.trial)?.trial;
    let judged = Judged {
        piece: piece(&trial, &args.piece)?,
        stage: args.stage,
        scale: args.scale,
        grade: args.grade.clone(),
        against: args
            .against
            .as_deref()
            .map(|code| piece(&trial, code))
            .transpose()?,
        by: args.by.clone(),
        light: args.light.clone(),
        on: args.on.clone(),
        remark: args.remark.clone(),
    };
    bench
        .add_eye_grade(&trial, judged, &now())
        .map_err(Stop::refused)?;
    print(&format!(
        "{}\n",
        text::command::added_of(args.scale, &args.grade, &args.piece)
    ))
}

fn piece(trial: &Trial, code: &str) -> Result<PieceId, Stop> {
    let found = trial.pieces.iter().find(|piece| piece.code == code);
    found.map(|piece| piece.id).ok_or_else(|| {
        let codes: Vec<&str> = trial.pieces.iter().map(|p| p.code.as_str()).collect();
        Stop::refused(text::command::there_is_no_piece_in_this_trial(
            code,
            codes.join(", "),
        ))
    })
}
