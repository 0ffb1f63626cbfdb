//! The page of the set-up: what was found, and a check that is refused in words.

use crate::desk::{Desk, HOST};
use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use store::NewSetupCheck;
use trial::setup::{Shown, check};

fn keep(desk: &Desk, name: &str) {
    let photos: Vec<Vec<Shown>> = (0..4)
        .map(|photo| {
            (0..5)
                .map(|piece| Shown {
                    piece: format!("P{piece}"),
                    lab: [
                        40.0 + f64::from(piece) + 0.1 * f64::from((photo * 3 + piece * 2) % 5),
                        f64::from(photo) * 0.4,
                        0.05 * f64::from((photo + piece) % 3),
                    ]
                    .into(),
                    texture: None,
                })
                .collect()
        })
        .collect();
    let check = check(&photos).unwrap();
    let new = NewSetupCheck {
        name,
        view: "D65/10",
        check: &check,
        photos: &[("a.jpg".to_owned(), b"a".to_vec())],
    };
    let mut bench = desk.bench.lock().unwrap();
    bench.keep_setup_check(new, "2030-01-01T00:00:00Z").unwrap();
}

async fn send(desk: &Desk, name: &str, photos: &[&[u8]], accept: &str) -> crate::desk::Answer {
    let mut body = Vec::new();
    for (field, value) in [("token", desk.token.as_str()), ("name", name)] {
        body.extend_from_slice(
            format!("--cut\r\nContent-Disposition: form-data; name=\"{field}\"\r\n\r\n{value}\r\n")
                .as_bytes(),
        );
    }
    for (i, bytes) in photos.iter().enumerate() {
        body.extend_from_slice(
            format!("--cut\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"{i}.jpg\"\r\n\r\n")
                .as_bytes(),
        );
        body.extend_from_slice(bytes);
        body.extend_from_slice(b"\r\n");
    }
    body.extend_from_slice(b"--cut--\r\n");
    let request = Request::post("/setup")
        .header(header::HOST, HOST)
        .header(header::COOKIE, desk.cookie())
        .header(header::ACCEPT, accept)
        .header(header::CONTENT_TYPE, "multipart/form-data; boundary=cut")
        .body(Body::from(body))
        .unwrap();
    desk.send(request).await
}

#[tokio::test]
async fn the_page_shows_the_newest_check_and_lists_earlier_ones() {
    let desk = Desk::new().await;
    assert!(desk.get("/").await.text.contains("href=\"/setup\""));
    let empty = desk.get("/setup").await;
    assert_eq!(empty.status, StatusCode::OK);
    assert!(!empty.text.contains("Earlier checks"));
    keep(&desk, "window <b>");
    keep(&desk, "lamp");
    let page = desk.get("/setup").await.text;
    assert!(page.contains("lamp, 2030-01-01") && page.contains("window &#60;b&#62;"));
    assert!(page.contains("With this set-up, 5 pieces an arm prove"));
    assert!(page.contains("from photo to photo") && page.contains("Earlier checks"));
    let data: serde_json::Value =
        serde_json::from_str(&desk.get("/setup.json").await.text).unwrap();
    let newest = &data["setup_checks"][0];
    assert_eq!(
        (&newest["name"], &newest["check"]["photos"]),
        (&"lamp".into(), &4.into())
    );
    assert_eq!(
        newest["check"]["smallest_provable"]
            .as_array()
            .unwrap()
            .len(),
        11
    );
}

#[tokio::test]
async fn a_check_that_cannot_be_made_says_why_and_keeps_nothing() {
    let desk = Desk::new().await;
    let nameless = send(&desk, "", &[b"x"], "text/html").await;
    assert_eq!(nameless.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(nameless.text.contains("Give the set-up a name"));
    let list = send(&desk, "my <window>", &[b"a shopping list"], "text/html").await;
    assert_eq!(list.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(list.text.contains("0.jpg: "), "{}", list.text);
    assert!(list.text.contains("value=\"my &#60;window&#62;\""));
    assert!(list.text.contains("aria-invalid=\"true\""));
    let none = send(&desk, "window", &[], "application/json").await;
    assert_eq!(none.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(none.text.contains("at least 3 photos"), "{}", none.text);
    assert_eq!(desk.vault_files(), 0);
}
