//! Photos of a board are read with no clicking.

mod board_scenes;

use board_scenes::Laid;
use colour::{Lab, difference::ciede2000};
use photo::{
    PhotoReading, RefusalCode, Request,
    board::{Board, Kind, Paper, Printed},
};
use scene::Rendered;

fn read(rendered: &Rendered) -> PhotoReading {
    photo::read(&rendered.jpeg, &Request::default()).expect("a board that can be read")
}

/// Every window read, each tag where it lies, colours near the truth.
fn assert_whole(laid: &Laid, rendered: &Rendered, what: &str) {
    let reading = read(rendered);
    let board = reading.board.as_ref().expect("a board");
    for (window, tag) in board.windows.iter().zip(&laid.tags) {
        assert_eq!(window.tag, *tag, "{what}: window {}", window.number);
        let polygon = window.polygon.as_ref();
        assert!(polygon.is_some(), "{what}: window {}", window.number);
    }
    let mut misses = Vec::new();
    for (read, window) in reading.readings.iter().zip(&board.windows) {
        assert_eq!(read.id, window.name());
        // Paper within a window's outline would look like a pale part.
        assert!(read.split.is_none(), "{what}: {}", read.id);
        let number = window.number.to_string();
        let truth = rendered.truth.pieces.iter().find(|p| p.id == number);
        let truth = Lab::from(truth.expect("a piece in the window").lab_d65_10);
        misses.push(ciede2000(read.lab.expect("a colour"), truth));
    }
    misses.sort_by(f64::total_cmp);
    let (median, most) = (misses[misses.len() / 2], misses[misses.len() - 1]);
    println!("{what}: median {median:.2}, most {most:.2}");
    assert!(median < 1.2 && most < 2.5, "{what}: {misses:?}");
}

#[test]
fn every_board_is_read_from_above() {
    for board in Board::ALL {
        let laid = Laid::full(board);
        assert_whole(&laid, &laid.photograph(), &format!("{board:?}"));
    }
}

#[test]
fn a_board_is_read_at_any_turn_and_tilt() {
    for (i, turn) in [-170.0, -95.0, -40.0, 25.0, 88.0, 140.0]
        .into_iter()
        .enumerate()
    {
        let board = Board::ALL[i % 4];
        let mut laid = Laid::full(board);
        laid.scene.seed = 30 + i as u64;
        laid.scene.viewpoint.turn_deg = turn;
        laid.scene.viewpoint.tilt_deg = 25.0;
        laid.scene.viewpoint.tilt_towards_deg = 70.0 * i as f64;
        assert_whole(
            &laid,
            &laid.photograph(),
            &format!("{board:?} turned {turn}"),
        );
    }
}

#[test]
fn one_covered_corner_does_not_matter() {
    for corner in 0..4 {
        let mut laid = Laid::full(Board::ALL[corner]);
        laid.cover(corner);
        let rendered = laid.photograph();
        assert_eq!(read(&rendered).board.map(|b| b.codes), Some(3));
        assert_whole(&laid, &rendered, &format!("corner {corner} covered"));
    }
}

const SIX: Board = Board {
    kind: Kind::Six,
    paper: Paper::A4,
};

fn refusal(rendered: &Rendered) -> RefusalCode {
    let refusal = photo::read(&rendered.jpeg, &Request::default()).expect_err("no board to use");
    assert!(refusal.message.ends_with('.'), "{refusal}");
    refusal.code
}

#[test]
fn two_covered_corners_are_refused_in_words() {
    let mut laid = Laid::full(SIX);
    laid.cover(0);
    laid.cover(2);
    assert_eq!(refusal(&laid.photograph()), RefusalCode::BoardUnread);
}

#[test]
fn a_board_that_runs_out_of_the_photo_is_refused_in_words() {
    let mut laid = Laid::full(SIX);
    laid.scene.viewpoint.shift = [0.0, 0.16];
    assert_eq!(refusal(&laid.photograph()), RefusalCode::BoardUnread);
}

#[test]
fn a_mirrored_board_is_refused() {
    let mut laid = Laid::full(SIX);
    laid.scene.flaws.mirrored = true;
    assert_eq!(refusal(&laid.photograph()), RefusalCode::Mirrored);
}

#[test]
fn corners_of_different_boards_are_refused() {
    let laid = Laid::of_two_boards(SIX);
    assert_eq!(refusal(&laid.photograph()), RefusalCode::BoardMixed);
}

#[test]
fn a_board_of_another_version_is_refused() {
    let laid = Laid::of_another_version(SIX);
    assert_eq!(refusal(&laid.photograph()), RefusalCode::BoardVersion);
}

#[test]
fn empty_windows_are_reported_empty_and_untagged_ones_by_number() {
    let twelve = Board {
        kind: Kind::Twelve,
        paper: Paper::A4,
    };
    let mut laid = Laid::full(twelve);
    laid.scene.pieces.retain(|p| p.id != "2" && p.id != "7");
    let mut untagged = Laid::empty(Printed::new(twelve, Some("madder-on-wool"), Some(3)));
    untagged.lay(4, scene::Dye::madder().on(&scene::wool(), 0.8));

    let board = read(&laid.photograph()).board.expect("a board");
    let empty = board.windows.iter().filter(|w| w.polygon.is_none());
    assert_eq!(empty.map(|w| w.number).collect::<Vec<_>>(), [2, 7]);

    let reading = read(&untagged.photograph());
    let names: Vec<&str> = reading.readings.iter().map(|r| r.id.as_str()).collect();
    assert_eq!(names, ["window 5"]);
    let board = reading.board.expect("a board");
    assert_eq!(board.trial.as_deref(), Some("madder-on-wool"));
    assert_eq!(board.stage, Some(3));
}

#[test]
fn undyed_and_grey_cloth_is_told_from_paper_and_a_loose_thread_is_not_cloth() {
    let mut laid = Laid::empty(Printed::plain(SIX));
    let cloths = [
        scene::wool(),
        scene::linen(),
        scene::cotton(),
        scene::Reflectance::flat(0.5),
        scene::Reflectance::flat(0.2),
    ];
    for (i, cloth) in cloths.into_iter().enumerate() {
        laid.lay(i, cloth);
    }
    let window = SIX.layout().windows[5].place;
    let [x, y] = laid.sheet().on_table(window.middle());
    let mut thread = scene::Piece::square("thread", scene::Reflectance::flat(0.05), [x, y], 1.0);
    thread.outline_mm = vec![
        [x - 25.0, y - 4.0],
        [x + 25.0, y + 3.0],
        [x + 25.0, y + 3.6],
        [x - 25.0, y - 3.4],
    ];
    laid.scene.pieces.push(thread);
    let rendered = laid.photograph();
    let reading = read(&rendered);
    assert_eq!(reading.readings.len(), 5);
    for (read, truth) in reading.readings.iter().zip(&rendered.truth.pieces) {
        let miss = ciede2000(read.lab.expect("a colour"), Lab::from(truth.lab_d65_10));
        assert!(miss < 1.5, "{}: {miss:.2}", read.id);
    }
}

/// White stripes in deep blue cloth, on white paper.
#[test]
fn a_resist_dyed_piece_on_a_board_is_read_in_parts() {
    let mut laid = Laid::empty(Printed::plain(SIX));
    let (cloth, dye) = (scene::cotton(), scene::Dye::indigo());
    for window in [0, 4] {
        laid.lay(window, dye.on(&cloth, 0.9));
    }
    for (piece, pattern) in laid
        .scene
        .pieces
        .iter_mut()
        .zip([scene::Resist::Stripes, scene::Resist::Rings])
    {
        *piece = piece.clone().resisted(scene::ResistDyed {
            pattern,
            pale: cloth.clone(),
            deep: dye.on(&cloth, 0.9),
            deep_share: 0.6,
            border_mm: 1.0,
            pitch_mm: 16.0,
            seed: 5,
        });
    }
    let rendered = laid.photograph();
    let reading = read(&rendered);
    for (read, truth) in reading.readings.iter().zip(&rendered.truth.pieces) {
        let split = read.split.as_ref().expect("two colours");
        let parts = truth.parts.expect("two parts");
        for (part, truth) in [(&split.pale, parts.pale_lab), (&split.deep, parts.deep_lab)] {
            let miss = ciede2000(part.lab, Lab::from(truth));
            assert!(miss < 4.0, "{}: {miss:.2}", read.id);
        }
        assert!(read.flags.is_empty(), "{}: {:?}", read.id, read.flags);
        let whole = read.lab.expect("a colour").l;
        assert!(split.deep.lab.l + 10.0 < whole && whole < split.pale.lab.l);
    }
}

#[test]
fn a_photo_without_a_board_has_none() {
    let rendered = scene::render(&scene::Scene::default());
    assert_eq!(read(&rendered).board, None);
    assert_eq!(
        photo::survey(&rendered.jpeg, None).map(|s| s.board),
        Ok(None)
    );
}

#[test]
fn paper_places_are_white_paper() {
    let laid = Laid::full(SIX);
    let rendered = laid.photograph();
    let board = read(&rendered).board.expect("a board");
    let picture = image::load_from_memory(&rendered.jpeg)
        .expect("a picture")
        .into_rgb8();
    let places = board.paper_places(picture.width(), picture.height());
    assert!(places.len() > 200, "{}", places.len());
    let white = places.iter().filter(|place| {
        let x = place.iter().map(|p| p[0]).sum::<f64>() / 4.0;
        let y = place.iter().map(|p| p[1]).sum::<f64>() / 4.0;
        picture
            .get_pixel(x as u32, y as u32)
            .0
            .iter()
            .all(|&v| v > 190)
    });
    let share = white.count() as f64 / places.len() as f64;
    assert!(share > 0.97, "{share}");
}
