//! A photo's way in a browser: taken in, marked, read, shown; or refused in words and not kept.

use crate::desk::Desk;
use axum::http::StatusCode;
use scene::{Dye, Piece, Rendered, Scene, cotton, render};
use trial::Trial;

/// A photo of the trial's pieces, in the trial's order, beside the chart.
fn photo(trial: &Trial) -> Rendered {
    let depths = [0.9, 0.9, 1.0, 0.5, 0.5, 1.0];
    render(&Scene {
        width_px: 1400,
        height_px: 1050,
        pieces: Piece::rows(
            trial
                .pieces
                .iter()
                .zip(depths)
                .map(|(p, depth)| (p.code.as_str(), Dye::madder().on(&cotton(), depth))),
        ),
        ..Scene::default()
    })
}

fn chartless() -> Vec<u8> {
    render(&Scene {
        width_px: 1200,
        height_px: 900,
        chart: None,
        ..Scene::default()
    })
    .jpeg
}

/// A PNG that claims to be 60,000 by 60,000 pixels (PNG specification, third edition: IHDR).
fn huge_png() -> Vec<u8> {
    let mut png = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR".to_vec();
    png.extend_from_slice(&60_000u32.to_be_bytes());
    png.extend_from_slice(&60_000u32.to_be_bytes());
    png.extend_from_slice(&[8, 2, 0, 0, 0]);
    let crc = crc32(&png[12..]);
    png.extend_from_slice(&crc.to_be_bytes());
    png
}

fn crc32(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(u32::MAX, |crc, byte| {
        (0..8).fold(crc ^ u32::from(*byte), |c, _| {
            if c & 1 == 1 {
                (c >> 1) ^ 0xedb8_8320
            } else {
                c >> 1
            }
        })
    })
}

/// Text as a template writes it.
fn escaped(text: &str) -> String {
    text.replace('&', "&#38;")
        .replace('<', "&#60;")
        .replace('>', "&#62;")
        .replace('"', "&#34;")
        .replace('\'', "&#39;")
}

#[tokio::test]
async fn what_is_not_a_photo_with_a_chart_is_refused_in_words_and_not_kept() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let whole = photo(&trial).jpeg;
    for (name, bytes) in [
        ("cut.jpg", whole[..whole.len() / 2].to_vec()),
        ("text.jpg", b"This is a letter, not a photo.".to_vec()),
        ("empty.jpg", Vec::new()),
        ("huge.png", huge_png()),
        ("chartless.jpg", chartless()),
    ] {
        let answer = desk
            .upload(&trial.slug, name, &bytes, "application/json")
            .await;
        assert!(
            [
                StatusCode::UNPROCESSABLE_ENTITY,
                StatusCode::PAYLOAD_TOO_LARGE
            ]
            .contains(&answer.status),
            "{name}: {}",
            answer.status
        );
        let told: serde_json::Value = serde_json::from_str(&answer.text).unwrap();
        let sentence = told["refused"]["message"].as_str().unwrap();
        assert!(
            sentence.ends_with('.') && sentence.contains(' '),
            "{name}: {sentence}"
        );

        let page = desk.upload(&trial.slug, name, &bytes, "text/html").await;
        assert_eq!(page.status, answer.status, "{name}");
        assert!(page.text.contains(&escaped(sentence)), "{name}: {sentence}");
        assert!(page.text.contains("id=\"photo-problem\""), "{name}");
        assert!(
            page.text.contains("value=\"3\""),
            "{name}: the stage is kept"
        );
    }
    assert_eq!(desk.vault_files(), 0);
    assert!(
        desk.bench
            .lock()
            .unwrap()
            .photos(trial.id)
            .unwrap()
            .is_empty()
    );
}

#[tokio::test]
async fn a_file_over_the_limit_is_refused_before_it_is_looked_at() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let bytes = vec![0u8; web::MOST_BYTES + 1];
    let answer = desk
        .upload(&trial.slug, "film.jpg", &bytes, "text/html")
        .await;
    assert_eq!(answer.status, StatusCode::PAYLOAD_TOO_LARGE);
    assert!(answer.text.contains("larger than 80 MB"));
    assert_eq!(desk.vault_files(), 0);
}

#[tokio::test]
async fn a_photo_is_taken_in_marked_and_read() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let rendered = photo(&trial);
    let added = desk
        .upload(&trial.slug, "day 3.jpg", &rendered.jpeg, "text/html")
        .await;
    assert_eq!(added.status, StatusCode::SEE_OTHER, "{}", added.text);
    let path = added.location().to_owned();
    let page = desk.get(&path).await;
    assert!(page.text.contains("<h1>Photo after 3 rounds</h1>"));
    assert!(page.text.contains("chart-outline"));
    assert_eq!(desk.vault_files(), 1);
    // The way's knot leads to the photo that is to be marked, not to a form for new ones.
    let knot = format!(
        "href=\"/trials/{}/photos\" aria-current=\"step\"",
        trial.slug
    );
    assert!(page.text.contains(&knot));

    let fields: Vec<(String, String)> = trial
        .pieces
        .iter()
        .map(|piece| {
            let truth = rendered
                .truth
                .pieces
                .iter()
                .find(|t| t.id == piece.code)
                .unwrap();
            let corners: Vec<String> = truth
                .polygon
                .iter()
                .map(|[x, y]| format!("{x:.1},{y:.1}"))
                .collect();
            (format!("area-{}", piece.id), corners.join(" "))
        })
        .collect();
    let fields: Vec<(&str, &str)> = fields
        .iter()
        .map(|(n, v)| (n.as_str(), v.as_str()))
        .collect();
    let marked = desk.post_form(&format!("{path}/areas"), &fields).await;
    assert_eq!(marked.status, StatusCode::SEE_OTHER, "{}", marked.text);
    let page = desk.get(marked.location()).await;
    assert!(
        page.text.contains("<h2 id=\"readings\">Readings</h2>"),
        "{}",
        page.text
    );

    let data = desk.get(&format!("/trials/{}.json", trial.slug)).await;
    let data: serde_json::Value = serde_json::from_str(&data.text).unwrap();
    assert_eq!(data["photos"][0]["state"]["state"], "read");
    assert_eq!(
        data["readings"].as_array().unwrap().len(),
        trial.pieces.len()
    );

    let trial_page = desk.get(&format!("/trials/{}", trial.slug)).await;
    for part in ["Verdict", "Colour by stage", "After 3 rounds", "lab("] {
        assert!(trial_page.text.contains(part), "{part}");
    }
    let id = path.rsplit('/').next().unwrap();
    let preview = desk.get(&format!("/photos/{id}/preview.jpg")).await;
    assert_eq!(preview.status, StatusCode::OK);
    let report = desk.get(&format!("/trials/{}/report", trial.slug)).await;
    assert!(report.text.contains("data:image/jpeg;base64,"));

    // It was taken two rounds later: all that was read goes along, and back again.
    let moved = desk
        .post_form(&format!("{path}/stage"), &[("stage", "5")])
        .await;
    assert_eq!(moved.status, StatusCode::SEE_OTHER, "{}", moved.text);
    let page = desk.get(moved.location()).await;
    for part in [
        "<h1>Photo after 5 rounds</h1>",
        "This is now a photo after 5 rounds, and so are its readings.",
        "sent as taken after 3 rounds.",
        "corrected as taken after 5 rounds.",
    ] {
        assert!(page.text.contains(part), "{part}");
    }
    let trial_page = desk.get(&format!("/trials/{}", trial.slug)).await;
    assert!(trial_page.text.contains("After 5 rounds"));
    assert!(!trial_page.text.contains("After 3 rounds"));
    let journal = desk.get(&format!("/trials/{}/journal", trial.slug)).await;
    assert!(journal.text.contains("from round 3 to round 5"));
    desk.post_form(&format!("{path}/stage"), &[("stage", "3")])
        .await;
    let trial_page = desk.get(&format!("/trials/{}", trial.slug)).await;
    assert!(trial_page.text.contains("After 3 rounds"));
    assert!(!trial_page.text.contains("After 5 rounds"));
}

#[tokio::test]
async fn a_stage_that_can_not_be_is_refused_where_it_was_typed() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let added = desk
        .upload(&trial.slug, "a.jpg", &photo(&trial).jpeg, "text/html")
        .await;
    let photo = added.location();
    for typed in ["", "-1", "2.5", "five", "10001", "999999999999", "<b>"] {
        let answer = desk
            .post_form(&format!("{photo}/stage"), &[("stage", typed)])
            .await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{typed}");
        assert!(answer.text.contains("id=\"stage-problem\""), "{typed}");
        assert!(
            answer
                .text
                .contains(&format!("value=\"{}\"", escaped(typed))),
            "{typed} is kept"
        );
        assert!(
            answer.text.contains("<h1>Photo after 3 rounds</h1>"),
            "{typed}"
        );
    }
    // What it is already changes nothing and says nothing.
    let same = desk
        .post_form(&format!("{photo}/stage"), &[("stage", "3")])
        .await;
    assert_eq!(same.location(), photo);
    let nowhere = format!("/trials/{}/photos/999/stage", trial.slug);
    let nowhere = desk.post_form(&nowhere, &[("stage", "3")]).await;
    assert_eq!(nowhere.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn areas_that_can_not_be_are_marked_at_their_piece_and_kept() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let added = desk
        .upload(&trial.slug, "a.jpg", &photo(&trial).jpeg, "text/html")
        .await;
    let path = format!("{}/areas", added.location());
    let first = format!("area-{}", trial.pieces[0].id);
    for (typed, told) in [
        ("10,10 20,20", "three corners"),
        ("10,10 20,20 9999,3", "outside the photo"),
        ("ten,ten", "is not a corner"),
    ] {
        let answer = desk.post_form(&path, &[(&first, typed)]).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{typed}");
        assert!(answer.text.contains(told), "{typed}");
        assert!(
            answer.text.contains(&format!("id=\"{first}-problem\"")),
            "{typed}"
        );
        assert!(answer.text.contains(typed), "{typed} is kept");
    }
    let none = desk.post_form(&path, &[]).await;
    assert_eq!(none.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(none.text.contains("one piece at least"));
}
