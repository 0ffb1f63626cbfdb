//! Several photos in one form: each stands for itself, and none is kept twice.

use crate::desk::{Answer, Desk, HOST};
use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use scene::{Dye, Piece, Scene, cotton, render};
use trial::Trial;

/// A small photo of two cloths beside the chart.
pub fn photo() -> Vec<u8> {
    render(&Scene {
        width_px: 900,
        height_px: 675,
        pieces: Piece::rows(["A1", "B1"].map(|id| (id, Dye::madder().on(&cotton(), 0.8)))),
        ..Scene::default()
    })
    .jpeg
}

/// The same picture as another file: a comment after the start of the image (ISO/IEC 10918-1, COM).
pub fn with_comment(jpeg: &[u8], number: u8) -> Vec<u8> {
    [&jpeg[..2], &[0xff, 0xfe, 0, 3, number], &jpeg[2..]].concat()
}

pub fn multipart(desk: &Desk, fields: &[(&str, &str)], files: &[(&str, &[u8])]) -> Vec<u8> {
    let mut body = Vec::new();
    let token = [("token", desk.token.as_str())];
    for (name, value) in token.iter().chain(fields) {
        body.extend_from_slice(
            format!("--cut\r\nContent-Disposition: form-data; name=\"{name}\"\r\n\r\n{value}\r\n")
                .as_bytes(),
        );
    }
    for (name, bytes) in files {
        body.extend_from_slice(
            format!("--cut\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"{name}\"\r\nContent-Type: image/jpeg\r\n\r\n")
                .as_bytes(),
        );
        body.extend_from_slice(bytes);
        body.extend_from_slice(b"\r\n");
    }
    body.extend_from_slice(b"--cut--\r\n");
    body
}

pub async fn send(desk: &Desk, trial: &Trial, body: Body, accept: &str) -> Answer {
    let request = Request::post(format!("/trials/{}/photos", trial.slug))
        .header(header::HOST, HOST)
        .header(header::COOKIE, desk.cookie())
        .header(header::ACCEPT, accept)
        .header(header::CONTENT_TYPE, "multipart/form-data; boundary=cut")
        .body(body)
        .unwrap();
    desk.send(request).await
}

fn photos(desk: &Desk, trial: &Trial) -> Vec<trial::Photo> {
    desk.bench.lock().unwrap().photos(trial.id).unwrap()
}

#[tokio::test]
async fn of_thirty_files_the_bad_ones_spoil_none_of_the_others() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let picture = photo();
    let mut files: Vec<(String, Vec<u8>)> = (0..27)
        .map(|n| (format!("day {n}.jpg"), with_comment(&picture, n)))
        .collect();
    // One of them twice, a letter, and half a photo.
    files.insert(3, ("copy.jpg".into(), with_comment(&picture, 0)));
    files.insert(9, ("letter.jpg".into(), b"Dear dyer, ...".to_vec()));
    files.push(("half.jpg".into(), picture[..picture.len() / 2].to_vec()));
    assert_eq!(files.len(), 30);
    let files: Vec<(&str, &[u8])> = files
        .iter()
        .map(|(name, bytes)| (name.as_str(), bytes.as_slice()))
        .collect();
    let body = multipart(&desk, &[("stage", "2"), ("by-board", "yes")], &files);
    let answer = send(&desk, &trial, body.into(), "text/html").await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    for said in [
        "letter.jpg: ",
        "half.jpg: ",
        "The other 28 photos were taken in",
    ] {
        assert!(answer.text.contains(said), "{said}");
    }
    assert!(answer.text.contains("To take it again:"));
    assert!(answer.text.contains("value=\"2\""), "the stage is kept");
    let kept = photos(&desk, &trial);
    assert_eq!(kept.len(), 27, "the copy is kept once");
    assert!(kept.iter().all(|photo| photo.stage == 2));
    assert_eq!(desk.vault_files(), 27);

    let list = desk.get(&format!("/trials/{}/photos", trial.slug)).await;
    assert_eq!(list.status, StatusCode::OK);
    assert!(list.text.contains("0 of 27 read, 27 to be marked."));
    assert_eq!(list.text.matches("data-state=\"unmarked\"").count(), 27);
}

#[tokio::test]
async fn good_files_lead_to_the_list_of_photos() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let picture = photo();
    let other = with_comment(&picture, 1);
    let files: [(&str, &[u8]); 2] = [("a.jpg", &picture), ("b.jpg", &other)];
    let body = multipart(&desk, &[("stage", "0")], &files);
    let answer = send(&desk, &trial, body.into(), "text/html").await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    assert_eq!(answer.location(), format!("/trials/{}/photos", trial.slug));
}

#[tokio::test]
async fn a_file_that_is_here_already_is_said_and_kept_once() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let picture = photo();
    let files: [(&str, &[u8]); 1] = [("a.jpg", &picture)];
    let body = multipart(&desk, &[("stage", "0")], &files);
    let json = "application/json";
    let first = send(&desk, &trial, body.clone().into(), json).await;
    assert_eq!(first.status, StatusCode::CREATED);
    let again = send(&desk, &trial, body.clone().into(), json).await;
    assert_eq!(again.status, StatusCode::OK);
    let told: serde_json::Value = serde_json::from_str(&again.text).unwrap();
    assert_eq!(told["already"], true);
    let page = send(&desk, &trial, body.into(), "text/html").await;
    let page = desk.get(page.location()).await;
    assert!(page.text.contains("was here already, so it was kept once"));
    assert_eq!(photos(&desk, &trial).len(), 1);
    // At another stage it is another photo.
    let body = multipart(&desk, &[("stage", "1")], &files);
    assert_eq!(
        send(&desk, &trial, body.into(), json).await.status,
        StatusCode::CREATED
    );
    assert_eq!(photos(&desk, &trial).len(), 2);
}

#[tokio::test]
async fn a_file_that_is_too_large_spoils_no_other() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let picture = photo();
    let vast = vec![0u8; web::MOST_BYTES + 1];
    let files: [(&str, &[u8]); 2] = [("film.jpg", &vast), ("a.jpg", &picture)];
    let body = multipart(&desk, &[("stage", "0")], &files);
    let answer = send(&desk, &trial, body.into(), "text/html").await;
    assert_eq!(answer.status, StatusCode::PAYLOAD_TOO_LARGE);
    assert!(
        answer
            .text
            .contains("film.jpg: This file is larger than 80 MB")
    );
    assert!(answer.text.contains("The other photo was taken in"));
    assert_eq!(photos(&desk, &trial).len(), 1);
}

#[tokio::test]
async fn more_than_is_taken_together_is_said() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let request = Request::post(format!("/trials/{}/photos", trial.slug))
        .header(header::HOST, HOST)
        .header(header::COOKIE, desk.cookie())
        .header(header::CONTENT_LENGTH, 5 * web::MOST_BYTES)
        .header(header::CONTENT_TYPE, "multipart/form-data; boundary=cut")
        .body(Body::from("--cut--\r\n"))
        .unwrap();
    let answer = desk.send(request).await;
    assert_eq!(answer.status, StatusCode::PAYLOAD_TOO_LARGE);
    assert!(answer.text.contains("More than 320 MB came at once"));
}

#[tokio::test]
async fn an_upload_that_stops_in_the_middle_leaves_nothing() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let picture = photo();
    let files: [(&str, &[u8]); 1] = [("a.jpg", &picture)];
    let body = multipart(&desk, &[("stage", "0")], &files);
    let part = body[..body.len() - 2000].to_vec();
    let answer = send(&desk, &trial, part.into(), "application/json").await;
    assert_eq!(answer.status, StatusCode::BAD_REQUEST);
    assert!(answer.text.contains("broke off"));
    assert!(photos(&desk, &trial).is_empty());
    assert_eq!(desk.vault_files(), 0);
}

#[tokio::test]
async fn corners_with_several_files_are_refused_at_their_field() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let files: [(&str, &[u8]); 2] = [("a.jpg", b"a"), ("b.jpg", b"b")];
    let fields = [("stage", "0"), ("corners", "1,1 9,1 9,9 1,9")];
    let body = multipart(&desk, &fields, &files);
    let answer = send(&desk, &trial, body.into(), "text/html").await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(answer.text.contains("id=\"corners-problem\""));
    assert!(answer.text.contains("1,1 9,1 9,9 1,9"));
}
