//! Phones on the local network: off until switched on, open to paired devices only.
//!
//! The network is the loopback here: the same listener at another address.

use crate::batches::{multipart, photo};
use crate::desk::Desk;
use crate::eyes::{begun, sessions};
use axum::http::{StatusCode, header};
use std::io::{ErrorKind, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::time::Duration;

/// A browser elsewhere on the network.
#[derive(Clone)]
struct Phone {
    at: SocketAddr,
    cookies: Vec<String>,
}

struct Answer {
    status: u16,
    head: String,
    body: String,
}

impl Phone {
    fn new(at: SocketAddr) -> Self {
        Self {
            at,
            cookies: Vec::new(),
        }
    }

    /// Sends a request as it is and gives the whole answer.
    async fn raw(&self, request: Vec<u8>) -> std::io::Result<Answer> {
        let at = self.at;
        tokio::task::spawn_blocking(move || {
            let mut stream = TcpStream::connect(at)?;
            stream.set_read_timeout(Some(Duration::from_secs(60)))?;
            stream.write_all(&request)?;
            let mut bytes = Vec::new();
            stream.read_to_end(&mut bytes)?;
            let text = String::from_utf8_lossy(&bytes).into_owned();
            let (head, body) = text.split_once("\r\n\r\n").unwrap_or((&text, ""));
            Ok(Answer {
                status: head.split(' ').nth(1).unwrap().parse().unwrap(),
                head: head.to_owned(),
                body: body.to_owned(),
            })
        })
        .await
        .unwrap()
    }

    async fn ask(&self, method: &str, path: &str, more: &str, body: &[u8]) -> Answer {
        let (host, cookies) = (self.at, self.cookies.join("; "));
        let host = if more.contains("Host:") {
            String::new()
        } else {
            format!("Host: {host}\r\n")
        };
        let head = format!(
            "{method} {path} HTTP/1.1\r\n{host}Connection: close\r\nCookie: {cookies}\r\nContent-Length: {}\r\n{more}\r\n",
            body.len()
        );
        let request = [head.as_bytes(), body].concat();
        self.raw(request).await.unwrap()
    }

    async fn get(&self, path: &str) -> Answer {
        self.ask("GET", path, "", b"").await
    }

    async fn form(&self, path: &str, body: &str) -> Answer {
        let kind = "Content-Type: application/x-www-form-urlencoded\r\n";
        let origin = format!("Origin: http://{}\r\n", self.at);
        self.ask("POST", path, &format!("{kind}{origin}"), body.as_bytes())
            .await
    }

    /// Keeps the cookies of an answer.
    fn keep(&mut self, answer: &Answer) {
        for line in answer.head.lines() {
            if let Some(cookie) = line.strip_prefix("set-cookie: ") {
                assert!(cookie.contains("HttpOnly") && cookie.contains("SameSite=Strict"));
                let pair = cookie.split(';').next().unwrap();
                self.cookies.push(pair.to_owned());
            }
        }
    }
}

async fn switch_on(desk: &Desk, at_start: bool) -> Phone {
    let mut fields = vec![("switch", "on"), ("address", "127.0.0.1"), ("port", "0")];
    if at_start {
        fields.push(("at-start", "yes"));
    }
    let answer = desk.post_form("/phone", &fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    let page = desk.get("/phone").await.text;
    let address = page.split("http://").nth(1).unwrap();
    let address = address.split('<').next().unwrap();
    Phone::new(address.parse().unwrap())
}

/// Makes a code and reads it off the page.
async fn code(desk: &Desk) -> String {
    let answer = desk.post_form("/phone/code", &[]).await;
    assert_eq!(answer.location(), "/phone#code");
    let page = desk.get("/phone").await.text;
    assert!(page.contains("class=\"qr\""));
    let shown = page.split("pairing-code\">").nth(1).unwrap();
    shown.split('<').next().unwrap().to_owned()
}

async fn pair(desk: &Desk, phone: &mut Phone, name: &str) {
    let code = code(desk).await.replace('\u{2013}', "");
    let answer = phone
        .form("/pair", &format!("code={code}&name={name}"))
        .await;
    assert_eq!(answer.status, 303, "{}", answer.body);
    phone.keep(&answer);
    let page = phone.get("/").await;
    assert_eq!(page.status, 200);
    phone.keep(&page);
}

fn is_closed(at: SocketAddr) -> bool {
    TcpStream::connect(at).is_err_and(|error| error.kind() == ErrorKind::ConnectionRefused)
}

#[tokio::test(flavor = "multi_thread")]
async fn it_is_off_at_first_and_off_means_closed() {
    let desk = Desk::new().await;
    let page = desk.get("/phone").await;
    assert!(page.text.contains("<strong>Off.</strong>"));
    for said in [
        "not encrypted",
        "in a café",
        "Switch it off when you are done",
    ] {
        assert!(page.text.contains(said), "{said}");
    }
    let early = desk.post_form("/phone/code", &[]).await;
    assert_eq!(early.status, StatusCode::BAD_REQUEST);

    let mut phone = switch_on(&desk, true).await;
    pair(&desk, &mut phone, "Kitchen").await;
    let off = desk.post_form("/phone", &[("switch", "off")]).await;
    assert_eq!(off.status, StatusCode::SEE_OTHER);
    assert!(is_closed(phone.at));
    let kept = desk.bench.lock().unwrap().phone_network().unwrap();
    assert!(!kept.unwrap().at_start, "off stays off");
}

#[tokio::test(flavor = "multi_thread")]
async fn addresses_and_ports_that_cant_be_are_said_at_their_field() {
    let desk = Desk::new().await;
    for (address, port, field) in [
        ("8.8.8.8", "4818", "address"),
        ("0.0.0.0", "4818", "address"),
        ("home", "4818", "address"),
        ("", "4818", "address"),
        // No address of this machine (RFC 3927, a link without anyone on it).
        ("169.254.77.77", "4818", "address"),
        ("127.0.0.1", "70000", "port"),
        ("127.0.0.1", "-1", "port"),
    ] {
        let fields = [("switch", "on"), ("address", address), ("port", port)];
        let answer = desk.post_form("/phone", &fields).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{address}");
        assert!(
            answer.text.contains(&format!("id=\"{field}-problem\"")),
            "{address}:{port}"
        );
        assert!(
            answer.text.contains(&format!("value=\"{port}\"")),
            "what was typed is kept"
        );
        assert!(answer.text.contains("<strong>Off.</strong>"));
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn a_device_that_is_not_paired_gets_the_pairing_page_and_nothing_else() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let mut phone = switch_on(&desk, false).await;
    let data = format!("/trials/{}.json", trial.slug);
    for cookies in [
        vec![],
        vec!["woadstone-device=0123".to_owned()],
        vec![desk.cookie()],
    ] {
        phone.cookies = cookies;
        for path in [
            "/",
            "/phone",
            "/phone.json",
            &data,
            "/photos/1/preview.jpg",
            "/nowhere",
        ] {
            let answer = phone.get(path).await;
            assert_eq!(answer.status, 401, "{path}");
            assert!(answer.body.contains("<h1>Pair this device</h1>"), "{path}");
            assert!(!answer.body.contains("Onion"), "{path}");
            assert!(!answer.body.contains(&desk.token), "{path}");
            assert!(!answer.head.contains("set-cookie"), "{path}");
            assert!(answer.head.contains("content-security-policy"), "{path}");
        }
        let answer = phone
            .ask("GET", &data, "Accept: application/json\r\n", b"")
            .await;
        assert_eq!(answer.status, 401);
        assert!(answer.body.contains("not_paired"));
        let token = &desk.token;
        for path in ["/demo", "/phone", "/phone/code", "/trials/new"] {
            assert_eq!(
                phone.form(path, &format!("token={token}")).await.status,
                401,
                "{path}"
            );
        }
    }
    assert_eq!(phone.get("/pair?code=%3Cb%3E").await.status, 200);
    assert!(!phone.get("/pair?code=%3Cb%3E").await.body.contains("<b>"));
}

#[tokio::test(flavor = "multi_thread")]
async fn another_host_or_another_site_is_refused_even_from_a_paired_device() {
    let desk = Desk::new().await;
    let mut phone = switch_on(&desk, false).await;
    pair(&desk, &mut phone, "Kitchen").await;
    let port = phone.at.port();
    for host in [
        "example.test".to_owned(),
        format!("localhost:{port}"),
        "127.0.0.1:4817".into(),
    ] {
        let answer = phone
            .ask("GET", "/", &format!("Host: {host}\r\n"), b"")
            .await;
        assert_eq!(answer.status, 403, "{host}");
    }
    // The other listener does not answer under this one's address either.
    let request = axum::http::Request::get("/")
        .header(header::HOST, phone.at.to_string())
        .body(axum::body::Body::empty())
        .unwrap();
    assert_eq!(desk.send(request).await.status, StatusCode::FORBIDDEN);
    let code = code(&desk).await;
    for origin in ["http://example.test", "null", "http://127.0.0.1:4817"] {
        let kind = "Content-Type: application/x-www-form-urlencoded\r\n";
        let more = format!("{kind}Origin: {origin}\r\n");
        let body = format!("code={code}&token={}", desk.token);
        for path in ["/pair", "/runs/1"] {
            let answer = phone.ask("POST", path, &more, body.as_bytes()).await;
            assert_eq!(answer.status, 403, "{origin} {path}");
        }
    }
    assert_eq!(desk.bench.lock().unwrap().devices().unwrap().len(), 1);
}

#[tokio::test(flavor = "multi_thread")]
async fn a_code_is_good_once_and_guesses_are_counted() {
    let desk = Desk::new().await;
    let phone = switch_on(&desk, false).await;
    assert_eq!(phone.form("/pair", "code=&name=x").await.status, 422);
    let first = code(&desk).await.replace('\u{2013}', "-").to_lowercase();
    let second = code(&desk).await.replace('\u{2013}', "");
    let reused = phone.form("/pair", &format!("code={first}&name=Ada")).await;
    assert_eq!(reused.status, 422, "a new code ends the one before");
    assert!(reused.body.contains("each is good once"));
    assert!(
        reused.body.contains("value=\"Ada\""),
        "what was typed is kept"
    );
    assert_eq!(
        phone.form("/pair", &format!("code={second}")).await.status,
        303
    );
    assert_eq!(
        phone.form("/pair", &format!("code={second}")).await.status,
        422
    );
    assert_eq!(phone.form("/pair", "code=AAAAAAAA").await.status, 422);
    // Five tries of one address are looked at; then a good code is no use either.
    let good = code(&desk).await.replace('\u{2013}', "");
    let late = phone.form("/pair", &format!("code={good}")).await;
    assert_eq!(late.status, 429);
    assert!(late.body.contains("Too many codes were tried"));
    let names: Vec<String> = desk
        .bench
        .lock()
        .unwrap()
        .devices()
        .unwrap()
        .into_iter()
        .map(|d| d.name)
        .collect();
    assert_eq!(names, ["Phone"]);
}

#[tokio::test(flavor = "multi_thread")]
async fn a_paired_phone_takes_photos_and_switches_nothing() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let mut phone = switch_on(&desk, false).await;
    pair(&desk, &mut phone, "Kitchen").await;
    let picture = photo();
    let files: [(&str, &[u8]); 1] = [("a.jpg", &picture)];
    let body = multipart(&desk, &[("stage", "0")], &files);
    let kind = "Content-Type: multipart/form-data; boundary=cut\r\n";
    let path = format!("/trials/{}/photos", trial.slug);
    let sent = phone.ask("POST", &path, kind, &body).await;
    assert_eq!(sent.status, 303, "{}", sent.body);
    assert_eq!(
        desk.bench.lock().unwrap().photos(trial.id).unwrap().len(),
        1
    );
    let token = &desk.token;
    for path in [
        "/phone",
        "/phone/code",
        "/phone/revoke",
        "/demo",
        "/trials/new",
        "/charts",
    ] {
        let answer = phone.form(path, &format!("token={token}&switch=off")).await;
        assert_eq!(answer.status, 403, "{path}");
    }
    for path in ["/phone", "/phone.json"] {
        assert_eq!(phone.get(path).await.status, 403, "{path}");
    }
    // Without the token of the forms, as another page of the same device would send it.
    let answer = phone.form(&format!("{path}/1/again"), "").await;
    assert_eq!(answer.status, 403);
    assert!(!is_closed(phone.at));
    let page = desk.get("/phone").await.text;
    assert!(
        page.contains("Kitchen") && !page.contains("not yet"),
        "it was seen"
    );
}

#[tokio::test(flavor = "multi_thread")]
async fn a_paired_phone_judges_by_eye_and_neither_begins_nor_closes_a_session() {
    let desk = Desk::new().await;
    let (trial, session) = begun(&desk, "0").await;
    let mut phone = switch_on(&desk, false).await;
    pair(&desk, &mut phone, "Window seat").await;
    let eyes = format!("/trials/{}/eyes", trial.slug);
    assert_eq!(phone.get(&eyes).await.status, 200);
    let token = &desk.token;
    let sits = format!("token={token}&name=A.+N.&light=north+window&vision=normal&distance=50+cm");
    let sits = phone.form(&format!("{eyes}/{session}/judges"), &sits).await;
    assert_eq!(sits.status, 303, "{}", sits.body);
    let place = |line: &str| line.strip_prefix("location: ").map(str::to_owned);
    let judging = sits.head.lines().find_map(place).unwrap();
    assert!(phone.get(&judging).await.body.contains("pair 1 of"));
    let grade = format!("token={token}&turn=1&grade=4-5&remark=");
    assert_eq!(phone.form(&judging, &grade).await.status, 303);
    assert!(phone.get(&judging).await.body.contains("pair 2 of"));
    let given = &sessions(&desk, &trial)[0].sittings[0].given;
    assert_eq!(given.iter().flatten().count(), 1);

    for (path, body) in [
        (eyes.clone(), "stage=5&way=cloth&repeats=0"),
        (format!("{eyes}/{session}/close"), ""),
        (format!("/trials/{}/blind", trial.slug), "open=yes"),
        (
            format!("/trials/{}/elsewhere/grades", trial.slug),
            "grade=4",
        ),
    ] {
        let answer = phone.form(&path, &format!("token={token}&{body}")).await;
        assert_eq!(answer.status, 403, "{path}");
    }
    let sessions = sessions(&desk, &trial);
    assert_eq!((sessions.len(), sessions[0].closed_at.is_none()), (1, true));
    // Without the token of the forms, as another page of the same device would send it.
    let answer = phone.form(&judging, "turn=2&grade=4").await;
    assert_eq!(answer.status, 403);
}

#[tokio::test(flavor = "multi_thread")]
async fn a_revoked_device_is_out_at_once() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let mut phone = switch_on(&desk, false).await;
    let mut other = phone.clone();
    pair(&desk, &mut phone, "Kitchen").await;
    pair(&desk, &mut other, "Tablet").await;
    // It watches photos as it is revoked: what it is told ends, too.
    let events = format!("/trials/{}/photos/events", trial.slug);
    let watching = phone.clone();
    let watch = tokio::spawn(async move { watching.get(&events).await });
    tokio::time::sleep(Duration::from_millis(500)).await;
    assert!(!watch.is_finished());
    let id = desk.bench.lock().unwrap().devices().unwrap()[0]
        .id
        .to_string();
    let revoked = desk.post_form("/phone/revoke", &[("device", &id)]).await;
    assert_eq!(revoked.location(), "/phone#devices");
    let told = tokio::time::timeout(Duration::from_secs(10), watch).await;
    assert!(told.unwrap().unwrap().body.contains("event: photos"));
    assert_eq!(phone.get("/").await.status, 401);
    assert_eq!(other.get("/").await.status, 200);
    let page = desk.get("/phone").await.text;
    assert!(!page.contains("Kitchen") && page.contains("Tablet"));
    let faulty = desk.post_form("/phone/revoke", &[("device", "x")]).await;
    assert_eq!(faulty.status, StatusCode::BAD_REQUEST);
}
