//! A chart of the person's own: kept, chosen for a photo, read by.

use crate::desk::{Answer, Desk, HOST};
use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use scene::{
    Background, Dye, Piece, Reflectance, Rendered, Scene, Texture, Viewpoint, cotton, render,
};

const COLUMNS: usize = 5;

/// The patches of a chart that nobody sells, 4 rows of 5: colours, and greys in the last row.
fn patches() -> Vec<Reflectance> {
    let colour = |k: usize| {
        // Steps of the golden ratio never come back to the same place.
        let [peak, height, base] = [0.618, 0.755, 0.57].map(|step| (step * k as f64).fract());
        Reflectance::from_fn(move |nm| {
            let off = (nm - 400.0 - 300.0 * peak) / 55.0;
            0.04 + 0.25 * base * base + (0.2 + 0.5 * height) * (-0.5 * off * off).exp()
        })
    };
    let grey = |k: usize| Reflectance::flat(0.9 * 0.03_f64.powf(k as f64 / 4.0));
    (0..15).map(colour).chain((0..5).map(grey)).collect()
}

/// Their values as a CSV of Lab.
fn table(patches: &[Reflectance]) -> String {
    let mut text = format!("# rows 4 columns {COLUMNS}\npatch,L,a,b,view\n");
    for (k, colour) in patches.iter().enumerate() {
        let [l, a, b] = colour.lab_d65_10();
        text += &format!("p{k},{l},{a},{b},D65/10\n");
    }
    text
}

/// A photo of the chart on black card, and a piece below it.
fn picture(patches: &[Reflectance], code: &str) -> Rendered {
    let patch = |(k, colour): (usize, &Reflectance)| {
        let at = [(k % COLUMNS, COLUMNS), (k / COLUMNS, 4)]
            .map(|(n, of)| 23.0 * (n as f64 - (of as f64 - 1.0) / 2.0));
        Piece::square(&k.to_string(), colour.clone(), at, 20.0).with_texture(Texture::FLAT)
    };
    let mut pieces: Vec<Piece> = patches.iter().enumerate().map(patch).collect();
    let cloth = Dye::madder().on(&cotton(), 0.7);
    pieces.push(Piece::square(code, cloth, [0.0, 90.0], 45.0));
    render(&Scene {
        pieces,
        chart: None,
        background: Background::plain(Reflectance::flat(0.04)),
        viewpoint: Viewpoint {
            fill: 0.7,
            ..Viewpoint::default()
        },
        ..Scene::default()
    })
}

/// Sends a form with a file as a browser does.
async fn send(
    desk: &Desk,
    path: &str,
    fields: &[(&str, &str)],
    file: (&str, &str, &[u8]),
) -> Answer {
    let mut body = Vec::new();
    let token = ("token", desk.token.as_str());
    for (name, value) in std::iter::once(&token).chain(fields) {
        body.extend_from_slice(
            format!("--cut\r\nContent-Disposition: form-data; name=\"{name}\"\r\n\r\n{value}\r\n")
                .as_bytes(),
        );
    }
    let (field, name, bytes) = file;
    body.extend_from_slice(
        format!(
            "--cut\r\nContent-Disposition: form-data; name=\"{field}\"; filename=\"{name}\"\r\n\r\n"
        )
        .as_bytes(),
    );
    body.extend_from_slice(bytes);
    body.extend_from_slice(b"\r\n--cut--\r\n");
    let request = Request::post(path)
        .header(header::HOST, HOST)
        .header(header::COOKIE, desk.cookie())
        .header(header::ACCEPT, "text/html")
        .header(header::CONTENT_TYPE, "multipart/form-data; boundary=cut")
        .body(Body::from(body))
        .unwrap();
    desk.send(request).await
}

#[tokio::test]
async fn a_chart_is_kept_and_a_photo_of_it_is_taken_and_read() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let patches = patches();
    let table = table(&patches);
    let file = ("chart", "mine.csv", table.as_bytes());
    let kept = send(&desk, "/charts", &[("name", "Mine <1>")], file).await;
    assert_eq!(kept.status, StatusCode::SEE_OTHER, "{}", kept.text);
    let list = desk.get("/charts").await.text;
    assert!(
        list.contains("Mine &#60;1&#62;") && list.contains("4 rows of 5 patches"),
        "{list}"
    );

    let picture = picture(&patches, &trial.pieces[0].code);
    let photos = format!("/trials/{}/photos", trial.slug);
    let photo = |chart: &'static str| {
        let fields = [("stage", "0"), ("chart", chart)];
        let file = ("photo", "a.jpg", &picture.jpeg[..]);
        let (desk, photos) = (&desk, &photos);
        async move { send(desk, photos, &fields, file).await }
    };
    let usual = photo("").await;
    assert_eq!(
        usual.status,
        StatusCode::UNPROCESSABLE_ENTITY,
        "another chart lies there"
    );
    let unknown = photo("77").await;
    assert_eq!(unknown.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(unknown.text.contains("Choose one of the charts"));
    let own = photo("1").await;
    assert_eq!(own.status, StatusCode::SEE_OTHER, "{}", own.text);

    let page = own.location().to_owned();
    let truth = picture.truth.pieces.last().unwrap();
    let corners: Vec<String> = truth
        .polygon
        .iter()
        .map(|[x, y]| format!("{x},{y}"))
        .collect();
    let area = format!("area-{}", trial.pieces[0].id);
    let marked = desk
        .post_form(
            &format!("{page}/areas"),
            &[(area.as_str(), corners.join(" ").as_str())],
        )
        .await;
    assert_eq!(marked.status, StatusCode::SEE_OTHER, "{}", marked.text);
    let read = {
        let bench = desk.bench.lock().unwrap();
        bench.current_readings(trial.id).unwrap()
    };
    assert_eq!(read.len(), 1);
    let miss = colour::difference::ciede2000(read[0].lab.into(), truth.lab_d65_10.into());
    assert!(miss < 4.0, "{miss:.2} from the truth");
    assert!(
        desk.get(&page)
            .await
            .text
            .contains("the chart “Mine &#60;1&#62;”")
    );
    let form = desk.get(&format!("{photos}/new")).await.text;
    assert!(
        form.contains("<option value=\"1\" selected>"),
        "the next photo starts from it"
    );
}

#[tokio::test]
async fn a_file_that_is_no_chart_is_refused_with_a_sentence() {
    let desk = Desk::new().await;
    for (bytes, says) in [
        (&b"a shopping list"[..], "list.csv gives no chart"),
        (b"", "gives no chart"),
    ] {
        let file = ("chart", "list.csv", bytes);
        let answer = send(&desk, "/charts", &[("name", "mine")], file).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
        assert!(answer.text.contains(says), "{}", answer.text);
        assert!(
            answer.text.contains("value=\"mine\""),
            "what was typed stays"
        );
    }
    let vast = vec![b'1'; 1024 * 1024 + 1];
    let answer = send(
        &desk,
        "/charts",
        &[("name", "mine")],
        ("chart", "v.csv", &vast),
    )
    .await;
    assert_eq!(answer.status, StatusCode::PAYLOAD_TOO_LARGE);
    assert!(answer.text.contains("larger than 1 MB"));
    assert!(desk.bench.lock().unwrap().charts().unwrap().is_empty());
}
