//! Photos on their way: told as it changes, taken out of the queue, read again, drawn over.

use crate::batches::{multipart, photo, send, with_comment};
use crate::desk::{Desk, HOST};
use axum::body::{Body, BodyDataStream};
use axum::http::{Request, StatusCode, header};
use axum::response::Response;
use futures_util::StreamExt;
use std::time::Duration;
use tower::ServiceExt;
use trial::{PhotoArea, PhotoId, PhotoState, Trial};

const NOW: &str = "2030-01-02T00:00:00Z";

/// Sends a photo; gives its number.
async fn sent(desk: &Desk, trial: &Trial, number: u8) -> i64 {
    let picture = with_comment(&photo(), number);
    let files: [(&str, &[u8]); 1] = [("a.jpg", &picture)];
    let body = multipart(desk, &[("stage", "0")], &files);
    let answer = send(desk, trial, body.into(), "text/html").await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    let id = answer.location().rsplit('/').next().unwrap();
    id.parse().unwrap()
}

/// Marks a piece on a photo past the app, so that nothing begins to read it.
fn mark(desk: &Desk, trial: &Trial, photo: i64, polygon: Vec<[f64; 2]>) {
    let area = PhotoArea {
        piece: trial.pieces[0].id,
        polygon,
    };
    let mut bench = desk.bench.lock().unwrap();
    bench.mark_areas(PhotoId(photo), vec![area], NOW).unwrap();
}

fn state(desk: &Desk, photo: i64) -> PhotoState {
    let bench = desk.bench.lock().unwrap();
    bench.photo(PhotoId(photo)).unwrap().unwrap().state
}

async fn open(desk: &Desk, trial: &Trial) -> Response {
    let request = Request::get(format!("/trials/{}/photos/events", trial.slug))
        .header(header::HOST, HOST)
        .body(Body::empty())
        .unwrap();
    desk.app.clone().oneshot(request).await.unwrap()
}

/// The data of the next event.
async fn next(stream: &mut BodyDataStream) -> serde_json::Value {
    loop {
        let chunk = tokio::time::timeout(Duration::from_secs(60), stream.next()).await;
        let chunk = chunk.expect("an event in time").unwrap().unwrap();
        let text = String::from_utf8(chunk.to_vec()).unwrap();
        if let Some(data) = text.lines().find_map(|line| line.strip_prefix("data: ")) {
            return serde_json::from_str(data).unwrap();
        }
    }
}

fn square() -> Vec<[f64; 2]> {
    vec![
        [300.0, 480.0],
        [340.0, 480.0],
        [340.0, 520.0],
        [300.0, 520.0],
    ]
}

#[tokio::test]
async fn a_page_is_told_what_becomes_of_photos() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let id = sent(&desk, &trial, 0).await;
    let response = open(&desk, &trial).await;
    assert_eq!(
        response.headers()[header::CONTENT_TYPE],
        "text/event-stream"
    );
    let mut stream = response.into_body().into_data_stream();
    let news = next(&mut stream).await;
    assert_eq!((&news["done"], &news["total"]), (&0.into(), &1.into()));
    assert_eq!(news["photos"][0]["state"], "unmarked");
    assert_eq!(news["sentence"], "0 of 1 read, 1 to be marked.");

    mark(&desk, &trial, id, square());
    let path = format!("/trials/{}/photos/{id}/again", trial.slug);
    let again = desk.post_form(&path, &[("back", "list")]).await;
    assert_eq!(
        again.location(),
        format!("/trials/{}/photos#photo-{id}", trial.slug)
    );
    let mut states = Vec::new();
    while !["read", "refused"].contains(&states.last().map_or("", String::as_str)) {
        let news = next(&mut stream).await;
        states.push(news["photos"][0]["state"].as_str().unwrap().to_owned());
    }
    assert_eq!(states.last().unwrap(), "read", "{states:?}");
    assert!(matches!(state(&desk, id), PhotoState::Read { .. }));
}

#[tokio::test]
async fn pages_that_vanish_make_room_for_others() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let mut open_pages = Vec::new();
    loop {
        let response = open(&desk, &trial).await;
        if response.status() == StatusCode::SERVICE_UNAVAILABLE {
            break;
        }
        assert_eq!(response.status(), StatusCode::OK);
        let mut stream = response.into_body().into_data_stream();
        assert_eq!(next(&mut stream).await["total"], 0);
        open_pages.push(stream);
        assert!(open_pages.len() < 1000, "there is no limit");
    }
    open_pages.pop();
    assert_eq!(open(&desk, &trial).await.status(), StatusCode::OK);
    let unknown = desk.get("/trials/none/photos/events").await;
    assert_eq!(unknown.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn a_waiting_photo_is_taken_out_of_the_queue_and_kept() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let id = sent(&desk, &trial, 0).await;
    mark(&desk, &trial, id, square());
    let path = format!("/trials/{}/photos/{id}", trial.slug);
    let page = desk.get(&path).await;
    assert!(page.text.contains("Take it out of the queue"));
    assert!(page.text.contains("<noscript><meta http-equiv=\"refresh\""));
    let answer = desk.post_form(&format!("{path}/cancel"), &[]).await;
    assert_eq!(answer.location(), path);
    assert_eq!(state(&desk, id), PhotoState::TakenOut);
    let page = desk.get(&path).await;
    assert!(
        page.text
            .contains("taken out of the queue. The photo and its marks are kept.")
    );
    assert!(page.text.contains("Read it again as marked"));
    assert_eq!(desk.vault_files(), 1);
    // Once more changes nothing; what is not there is said.
    let twice = desk.post_form(&format!("{path}/cancel"), &[]).await;
    assert_eq!(twice.status, StatusCode::SEE_OTHER);
    for act in ["cancel", "again"] {
        let path = format!("/trials/{}/photos/99/{act}", trial.slug);
        assert_eq!(
            desk.post_form(&path, &[]).await.status,
            StatusCode::NOT_FOUND
        );
    }
}

#[tokio::test]
async fn a_photo_without_marks_cant_be_read_again() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let id = sent(&desk, &trial, 0).await;
    let path = format!("/trials/{}/photos/{id}/again", trial.slug);
    let answer = desk.post_form(&path, &[]).await;
    assert_eq!(answer.status, StatusCode::BAD_REQUEST);
    assert!(answer.text.contains("one piece at least"));
}

#[tokio::test]
async fn what_was_found_is_drawn_over_and_what_was_read_before_is_kept() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let id = sent(&desk, &trial, 0).await;
    mark(&desk, &trial, id, square());
    let read = || desk.bench.lock().unwrap().read_next(NOW).unwrap().unwrap();
    assert!(matches!(read().1, PhotoState::Read { .. }));
    let path = format!("/trials/{}/photos/{id}", trial.slug);
    let page = desk.get(&path).await.text;
    assert_eq!(page.matches("class=\"patch").count(), 24);
    for shown in ["areas", "chart", "patches", "light"] {
        assert!(page.contains(&format!("data-layer=\"{shown}\"")), "{shown}");
        assert!(page.contains(&format!("data-shows=\"{shown}\"")), "{shown}");
    }
    assert!(page.contains("The darkest place gets"));
    assert!(!page.contains("Earlier readings of this photo"));

    mark(&desk, &trial, id, square());
    read();
    let page = desk.get(&path).await.text;
    assert!(page.contains("Earlier readings of this photo"));
    assert!(page.contains("2030-01-02, 00:00 UTC: 1 piece read."));
}

#[tokio::test]
async fn a_refused_photo_says_how_to_take_it_again() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let id = sent(&desk, &trial, 0).await;
    mark(&desk, &trial, id, square());
    let refusal = photo::Refusal {
        code: photo::RefusalCode::OverExposed,
        message: "The chart is burnt out.".into(),
    };
    let reader = |_: &[u8], _: &photo::Request| Err(refusal.clone());
    let read = desk.bench.lock().unwrap().read_next_with(NOW, &reader);
    read.unwrap().unwrap();
    let page = desk
        .get(&format!("/trials/{}/photos/{id}", trial.slug))
        .await;
    for step in photo::RefusalCode::OverExposed.retake() {
        assert!(page.text.contains(step), "{step}");
    }
    let list = desk.get(&format!("/trials/{}/photos", trial.slug)).await;
    assert!(list.text.contains("The chart is burnt out."));
    assert!(list.text.contains("0 of 1 read, 1 could not be read."));
}

#[tokio::test]
async fn squares_of_a_photo_are_given_at_full_size_and_no_further() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let id = sent(&desk, &trial, 0).await;
    // 900 by 675 pixels: two by two squares of 512.
    for (place, status) in [
        ("0/0", StatusCode::OK),
        ("1/1", StatusCode::OK),
        ("2/0", StatusCode::NOT_FOUND),
        ("0/2", StatusCode::NOT_FOUND),
        ("4294967295/4294967295", StatusCode::NOT_FOUND),
        ("-1/0", StatusCode::BAD_REQUEST),
    ] {
        let answer = desk.get(&format!("/photos/{id}/tiles/{place}")).await;
        assert_eq!(answer.status, status, "{place}");
        if status == StatusCode::OK {
            assert_eq!(answer.headers[header::CONTENT_TYPE], "image/jpeg");
            let kept = answer.headers[header::CACHE_CONTROL].to_str().unwrap();
            assert!(kept.contains("immutable"));
        }
    }
    let nowhere = desk.get("/photos/99/tiles/0/0").await;
    assert_eq!(nowhere.status, StatusCode::NOT_FOUND);
}
