//! Readings from elsewhere and grades by eye through the pages.

use crate::desk::{Desk, HOST};
use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use trial::Source;

/// Sends the form for measured colours; `file` is a name and a content.
async fn preview(
    desk: &Desk,
    slug: &str,
    fields: &[(&str, &str)],
    file: Option<(&str, &[u8])>,
) -> crate::desk::Answer {
    let token = desk.token.clone();
    let mut body = Vec::new();
    for (name, value) in [("token", token.as_str())].iter().chain(fields) {
        let part =
            format!("--cut\r\nContent-Disposition: form-data; name=\"{name}\"\r\n\r\n{value}\r\n");
        body.extend_from_slice(part.as_bytes());
    }
    let (name, content) = file.unwrap_or(("", b""));
    let head = format!(
        "--cut\r\nContent-Disposition: form-data; name=\"table\"; filename=\"{name}\"\r\nContent-Type: text/csv\r\n\r\n"
    );
    body.extend_from_slice(head.as_bytes());
    body.extend_from_slice(content);
    body.extend_from_slice(b"\r\n--cut--\r\n");
    let request = Request::post(format!("/trials/{slug}/elsewhere/preview"))
        .header(header::HOST, HOST)
        .header(header::COOKIE, desk.cookie())
        .header(header::ORIGIN, format!("http://{HOST}"))
        .header(header::CONTENT_TYPE, "multipart/form-data; boundary=cut")
        .body(Body::from(body))
        .unwrap();
    desk.send(request).await
}

const FIELDS: [(&str, &str); 6] = [
    ("stage", "5"),
    ("view", "D65/10"),
    ("repeatability", "0,3"),
    ("by", "a <friend>"),
    ("on", "Friday"),
    ("instrument", "sphere"),
];

/// The hidden fields of the preview, as a browser would send them back.
fn hidden(html: &str) -> Vec<(String, String)> {
    html.split("<input type=\"hidden\" name=\"")
        .skip(1)
        .filter_map(|part| {
            let (name, rest) = part.split_once("\" value=\"")?;
            let (value, _) = rest.split_once('"')?;
            let plain = value
                .replace("&#60;", "<")
                .replace("&#62;", ">")
                .replace("&#38;", "&")
                .replace("&#34;", "\"");
            Some((name.to_owned(), plain))
        })
        .filter(|(name, _)| name != "token")
        .collect()
}

#[tokio::test]
async fn a_file_is_previewed_and_then_added_with_its_source() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let page = desk.get(&format!("/trials/{}/elsewhere", trial.slug)).await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(page.text.contains("Nothing from elsewhere yet"));
    let csv = "\u{feff}piece;L;a;b\r\na1;41,2;20;5\r\nAK;41;20;5\r\nZ9;1;2;3\r\n".as_bytes();
    let shown = preview(&desk, &trial.slug, &FIELDS, Some(("fri<day>.csv", csv))).await;
    assert_eq!(shown.status, StatusCode::OK, "{}", shown.text);
    for part in [
        "2 readings after 5 rounds",
        "Nothing is added yet",
        "has the code Z9",
        "L* 41.2 a* 20.0 b* 5.0",
        "The light or observer of 3 samples is not said",
    ] {
        assert!(shown.text.contains(part), "{part}: {}", shown.text);
    }
    assert!(
        desk.bench
            .lock()
            .unwrap()
            .current_readings(trial.id)
            .unwrap()
            .is_empty()
    );
    let fields = hidden(&shown.text);
    let fields: Vec<(&str, &str)> = fields
        .iter()
        .map(|(n, v)| (n.as_str(), v.as_str()))
        .collect();
    let path = format!("/trials/{}/elsewhere/readings", trial.slug);
    let added = desk.post_form(&path, &fields).await;
    assert_eq!(added.status, StatusCode::SEE_OTHER, "{}", added.text);
    let readings = desk
        .bench
        .lock()
        .unwrap()
        .current_readings(trial.id)
        .unwrap();
    assert_eq!(
        (readings.len(), readings[0].stage, readings[0].source),
        (2, 5, Source::Lab)
    );
    let page = desk.get(&format!("/trials/{}", trial.slug)).await;
    assert!(
        page.text.contains(
            "Lab values by a &#60;friend&#62;, Friday, sphere, file fri&#60;day&#62;.csv"
        ),
        "{}",
        page.text
    );
    let again = desk.post_form(&path, &fields).await;
    assert_eq!(again.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(again.text.contains("added at this stage before"));
    // Withdrawing wants a reason, and then the reading no longer counts.
    let path = format!("/trials/{}/elsewhere/withdraw", trial.slug);
    let id = readings[0].id.to_string();
    let silent = desk
        .post_form(&path, &[("reading", &id), ("reason", "")])
        .await;
    assert_eq!(silent.status, StatusCode::UNPROCESSABLE_ENTITY);
    let done = desk
        .post_form(&path, &[("reading", &id), ("reason", "wrong piece")])
        .await;
    assert_eq!(done.status, StatusCode::SEE_OTHER);
    assert_eq!(
        desk.bench
            .lock()
            .unwrap()
            .current_readings(trial.id)
            .unwrap()
            .len(),
        1
    );
    let report = desk.get(&format!("/trials/{}/report", trial.slug)).await;
    assert!(report.text.contains("<td>Lab values by"));
}

#[tokio::test]
async fn typed_values_and_faults_come_back_with_what_to_do() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let mut fields = FIELDS.to_vec();
    fields.push(("typed", "piece; L; a; b\nA1; 41,2; 20; 5"));
    let shown = preview(&desk, &trial.slug, &fields, None).await;
    assert_eq!(shown.status, StatusCode::OK, "{}", shown.text);
    assert!(shown.text.contains("1 reading after 5 rounds"));
    for (typed, file, parts) in [
        (
            "piece; L; a; b\nA1; 41,2; red; 5",
            None,
            vec![
                "id=\"typed-problem\"",
                "Line 2, column",
                "red",
                "A1; 41,2; red; 5",
            ],
        ),
        ("", None, vec!["Choose a file, or type the values"]),
        (
            "piece; L; a; b\nQ1; 41,2; 2; 5",
            None,
            vec![
                "No sample has the code of a piece",
                "names Q1",
                "A1, A2, AK",
            ],
        ),
        (
            "",
            Some(("x.csv", &b"\x89PNG\0\0"[..])),
            vec!["id=\"table-problem\"", "not a text file"],
        ),
        (
            "",
            Some(("x.csv", &b"name,u,v\nA1,1,2\n"[..])),
            vec!["No column of the table holds a colour"],
        ),
    ] {
        let mut fields = FIELDS.to_vec();
        fields.push(("typed", typed));
        let shown = preview(&desk, &trial.slug, &fields, file).await;
        assert_eq!(shown.status, StatusCode::UNPROCESSABLE_ENTITY, "{typed}");
        for part in parts {
            assert!(shown.text.contains(part), "{part}: {}", shown.text);
        }
    }
    for (field, value, part) in [
        ("stage", "many", "whole number"),
        ("repeatability", "x", "as a number"),
        ("repeatability", "-1", "from 0 to 10"),
        ("view", "D75/10", "no view that is known"),
    ] {
        let mut fields: Vec<(&str, &str)> = FIELDS
            .iter()
            .map(|(n, v)| if *n == field { (*n, value) } else { (*n, *v) })
            .collect();
        fields.push(("typed", "piece; L; a; b\nA1; 41,2; 2; 5"));
        let shown = preview(&desk, &trial.slug, &fields, None).await;
        assert!(
            shown.status == StatusCode::UNPROCESSABLE_ENTITY && shown.text.contains(part),
            "{part}: {}",
            shown.text
        );
    }
    let large = vec![b'1'; 1024 * 1024 + 10];
    let shown = preview(&desk, &trial.slug, &FIELDS, Some(("x.csv", &large))).await;
    assert!(shown.text.contains("larger than 1 MB"), "{}", shown.text);
    let path = format!("/trials/{}/elsewhere/readings", trial.slug);
    let broken = desk
        .post_form(&path, &[("stage", "1"), ("content", "%%%")])
        .await;
    assert_eq!(broken.status, StatusCode::BAD_REQUEST);
}

#[tokio::test]
async fn a_grade_by_eye_is_added_shown_and_withdrawn() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let path = format!("/trials/{}/elsewhere/grades", trial.slug);
    let (piece, keeper) = (
        trial.pieces[0].id.to_string(),
        trial.pieces[2].id.to_string(),
    );
    let good = [
        ("piece", piece.as_str()),
        ("against", keeper.as_str()),
        ("grade-stage", "5"),
        ("scale", "change"),
        ("grade", "4-5"),
        ("grade-by", "A. N."),
        ("light", "north window"),
        ("grade-on", ""),
        ("remark", ""),
    ];
    let added = desk.post_form(&path, &good).await;
    assert_eq!(added.status, StatusCode::SEE_OTHER, "{}", added.text);
    let page = desk.get(&format!("/trials/{}", trial.slug)).await;
    assert!(
        page.text.contains("Grades judged by eye")
            && page.text.contains("<td>4-5</td><td>keeper AK</td>"),
        "{}",
        page.text
    );
    for (field, value, part) in [
        ("grade", "9", "no grade of a grey scale"),
        ("grade-by", "", "Say who judged"),
        ("light", "", "under which light"),
        ("piece", "", "Choose the piece"),
        ("grade-stage", "-1", "whole number"),
        ("scale", "blue", "no grey scale"),
        ("against", piece.as_str(), "against itself"),
    ] {
        let bad = good.map(|(n, v)| if n == field { (n, value) } else { (n, v) });
        let answer = desk.post_form(&path, &bad).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
        assert!(answer.text.contains(part), "{part}");
        assert!(
            answer.text.contains(&format!("id=\"{field}-problem\"")),
            "{field}"
        );
    }
    let json = desk.get(&format!("/trials/{}.json", trial.slug)).await;
    assert!(json.text.contains("\"grade\":\"4-5\""), "{}", json.text);
    let withdraw = format!("/trials/{}/elsewhere/withdraw", trial.slug);
    let done = desk
        .post_form(&withdraw, &[("eye-grade", "1"), ("reason", "wrong lamp")])
        .await;
    assert_eq!(done.status, StatusCode::SEE_OTHER);
    assert!(
        desk.bench
            .lock()
            .unwrap()
            .eye_grades(trial.id)
            .unwrap()
            .is_empty()
    );
}
