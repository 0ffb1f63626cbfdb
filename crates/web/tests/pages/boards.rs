//! Boards and tags to print, and photos of a board that need no marking.

use crate::desk::Desk;
use axum::http::StatusCode;
use photo::board::{Board, Code, Kind, Paper, Printed, Rect, tag_code};
use scene::{Chart, Dye, Piece, Rendered, Scene, Sheet, Viewpoint, cotton, render};
use trial::{PhotoState, Trial};

const SIX: Board = Board {
    kind: Kind::Six,
    paper: Paper::A4,
};

/// The trial's pieces on a board of six windows, each with a tag.
fn on_board(trial: &Trial, tag: impl Fn(usize) -> Code) -> Rendered {
    let layout = SIX.layout();
    let plain = |r: Rect| [r.x, r.y, r.width, r.height];
    let printed = Printed::plain(SIX);
    let mut dark: Vec<[f64; 4]> = printed.corner_codes().into_iter().map(plain).collect();
    for (i, window) in layout.windows.iter().enumerate() {
        for module in tag_code(tag(i)).into_iter().map(plain) {
            let [x, y, w, h] = module;
            dark.push([window.tag.x + x, window.tag.y + y, w, h]);
        }
    }
    let sheet = Sheet::printed(layout.size_mm, dark);
    let pieces = trial.pieces.iter().zip(&layout.windows).enumerate();
    let pieces = pieces.map(|(i, (piece, window))| {
        let depth = 0.5 + 0.08 * i as f64;
        let middle = sheet.on_table(window.place.middle());
        Piece::square(
            &piece.code,
            Dye::madder().on(&cotton(), depth),
            middle,
            48.0,
        )
    });
    render(&Scene {
        width_px: 1500,
        height_px: 2100,
        pieces: pieces.collect(),
        chart: Some(Chart {
            middle_mm: sheet.on_table(layout.dock.middle()),
            patch_mm: 12.5,
            gap_mm: 3.0,
            margin_mm: 6.0,
            ..Chart::default()
        }),
        viewpoint: Viewpoint {
            fill: 0.95,
            ..Viewpoint::default()
        },
        sheet: Some(sheet),
        ..Scene::default()
    })
}

#[tokio::test]
async fn a_photo_of_a_board_is_read_with_no_marking() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let foreign = Code::from_number(1_234_567);
    let tag = |i: usize| if i == 5 { foreign } else { trial.pieces[i].tag };
    let photo = on_board(&trial, tag);
    let answer = desk
        .upload(&trial.slug, "board.jpg", &photo.jpeg, "text/html")
        .await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);

    let (photo, read) = {
        let bench = desk.bench.lock().unwrap();
        let photo = bench.photos(trial.id).unwrap().remove(0);
        (photo, bench.current_readings(trial.id).unwrap())
    };
    assert!(
        matches!(photo.state, PhotoState::Read { .. }),
        "{:?}",
        photo.state
    );
    let pieces: Vec<_> = read.iter().map(|r| r.piece).collect();
    let expected: Vec<_> = trial.pieces[..5].iter().map(|p| p.id).collect();
    assert_eq!(pieces, expected);

    let page = desk
        .get(&format!("/trials/{}/photos/{}", trial.slug, photo.id))
        .await;
    assert!(
        page.text
            .contains(&format!("The tag {foreign} in window 6"))
    );
}

#[tokio::test]
async fn boards_and_tags_are_pages_to_print() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let show = desk.get(&format!("/trials/{}", trial.slug)).await;
    assert!(show.text.contains(&format!("/trials/{}/board", trial.slug)));
    let choose = desk.get(&format!("/trials/{}/board", trial.slug)).await;
    assert_eq!(choose.status, StatusCode::OK);
    let board = desk
        .get(&format!(
            "/board?windows=12&paper=letter&stage=&trial={}",
            trial.slug
        ))
        .await;
    assert!(board.text.contains("size: 215.9mm 279.4mm"));
    assert!(board.text.contains(&format!("Trial {}.", trial.slug)));
    let tags = desk.get(&format!("/trials/{}/tags", trial.slug)).await;
    for piece in &trial.pieces {
        assert!(tags.text.contains(&piece.tag.to_string()));
    }
    let none = desk.get("/trials/nowhere/tags").await;
    assert_eq!(none.status, StatusCode::NOT_FOUND);
}
