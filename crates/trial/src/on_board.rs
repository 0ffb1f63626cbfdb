//! Which piece of a trial lies in which window of a board.

use crate::text;
use crate::{PhotoArea, Trial};
use photo::board::{BoardSeen, WindowSeen};

/// What a board in a photo says about a trial's pieces.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct OnBoard {
    /// The pieces that were told by their tags, where they lie.
    pub areas: Vec<PhotoArea>,
    /// What the person should know: tags of no piece here, tags that couldn't be
    /// read, a board that was printed for something else. A sentence each.
    pub notices: Vec<String>,
}

/// Assigns the windows of a board to the pieces of a trial by their tags.
///
/// `stage` is what the photo is said to be of, rounds gone through.
pub fn on_board(trial: &Trial, stage: u32, board: &BoardSeen) -> OnBoard {
    let mut told = OnBoard::default();
    if let Some(other) = board.trial.as_ref().filter(|name| **name != trial.slug) {
        told.notices
            .push(text::on_board::the_board_was_printed_for_the_trial(other));
    }
    if let Some(printed) = board.stage.filter(|printed| *printed != stage) {
        told.notices
            .push(text::on_board::the_board_was_printed_for_photos_after(
                rounds(printed),
                rounds(stage),
            ));
    }
    for window in &board.windows {
        if let Err(notice) = told.take(trial, board, window) {
            told.notices.extend(notice);
        }
    }
    told
}

impl OnBoard {
    /// Takes a window's piece, or says why not; an empty window needs no words.
    fn take(
        &mut self,
        trial: &Trial,
        board: &BoardSeen,
        window: &WindowSeen,
    ) -> Result<(), Option<String>> {
        let number = window.number;
        let Some(tag) = window.tag else {
            return Err(window
                .polygon
                .as_ref()
                .map(|_| text::on_board::no_tag_could_be_read_in_window(number)));
        };
        let Some(piece) = trial.pieces.iter().find(|piece| piece.tag == tag) else {
            return Err(Some(text::on_board::the_tag_in_window_belongs(tag, number)));
        };
        let twice = board
            .windows
            .iter()
            .any(|other| other.number != number && other.tag == Some(tag));
        if twice {
            return Err(Some(text::on_board::the_tag_of_lies_in_window(
                &piece.code,
                number,
            )));
        }
        let Some(polygon) = window.polygon.clone() else {
            return Err(Some(text::on_board::window_has_the_tag_of_but_nothing(
                number,
                &piece.code,
            )));
        };
        self.areas.push(PhotoArea {
            piece: piece.id,
            polygon,
        });
        Ok(())
    }
}

fn rounds(stage: u32) -> String {
    match stage {
        1 => text::on_board::n_1_round().to_owned(),
        n => text::on_board::rounds(n),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Arm, ArmId, Piece, PieceId, Role, TrialId};
    use photo::board::{Code, Kind, Paper};

    fn trial() -> Trial {
        let piece = |n: i64| Piece {
            id: PieceId(n),
            arm: ArmId(1),
            code: format!("P{n}"),
            tag: Code::from_number(n as u32),
            role: Role::Test,
            load: None,
        };
        Trial {
            id: TrialId(1),
            slug: "rinse".into(),
            title: "Rinse".into(),
            question: "Does it help?".into(),
            margin_de00: 1.0,
            rounds: 3,
            invented: true,
            made_at: "2020-01-01T00:00:00Z".into(),
            method: String::new(),
            arms: vec![Arm {
                id: ArmId(1),
                name: "plain".into(),
                treatment: String::new(),
            }],
            pieces: (1..=4).map(piece).collect(),
        }
    }

    fn board(windows: &[(Option<u32>, bool)]) -> BoardSeen {
        let square = vec![[0.0, 0.0], [9.0, 0.0], [9.0, 9.0]];
        BoardSeen {
            kind: Kind::Six,
            paper: Paper::A4,
            version: 1,
            codes: 4,
            corners: [[0.0, 0.0], [10.0, 0.0], [10.0, 10.0], [0.0, 10.0]],
            windows: windows
                .iter()
                .enumerate()
                .map(|(i, (tag, piece))| WindowSeen {
                    number: i + 1,
                    tag: tag.map(Code::from_number),
                    polygon: piece.then(|| square.clone()),
                })
                .collect(),
            trial: None,
            stage: None,
        }
    }

    #[test]
    fn tagged_pieces_are_taken_and_empty_windows_pass_without_words() {
        let told = on_board(
            &trial(),
            0,
            &board(&[(Some(3), true), (None, false), (Some(1), true)]),
        );
        let pieces: Vec<i64> = told.areas.iter().map(|area| area.piece.0).collect();
        assert_eq!((pieces, told.notices), (vec![3, 1], Vec::new()));
    }

    #[test]
    fn whatever_cannot_be_taken_is_said() {
        let windows = [
            (Some(900), true),
            (None, true),
            (Some(2), false),
            (Some(4), true),
            (Some(4), true),
        ];
        let mut board = board(&windows);
        board.trial = Some("other".into());
        board.stage = Some(2);
        let told = on_board(&trial(), 1, &board);
        assert!(told.areas.is_empty());
        let words = [
            "the trial \u{201c}other\u{201d}",
            "after 2 rounds, this photo was added as after 1 round",
            "no piece of this trial",
            "No tag could be read in window 2",
            "differs from the paper",
            "window 4 and in another",
            "window 5 and in another",
        ];
        assert_eq!(told.notices.len(), words.len());
        for (notice, word) in told.notices.iter().zip(words) {
            assert!(notice.contains(word), "{notice}");
        }
    }
}
