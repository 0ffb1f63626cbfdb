//! A bench of its own for each test, and a browser's manners.

use axum::Router;
use axum::body::Body;
use axum::http::{HeaderMap, Request, StatusCode, header};
use http_body_util::BodyExt;
use std::sync::{Arc, Mutex};
use store::Bench;
use tower::ServiceExt;
use trial::{NewArm, NewPiece, NewTrial, Role, Trial};

pub const PORT: u16 = 4817;
pub const HOST: &str = "127.0.0.1:4817";

pub struct Desk {
    pub app: Router,
    pub bench: Arc<Mutex<Bench>>,
    pub home: tempfile::TempDir,
    pub token: String,
}

pub struct Answer {
    pub status: StatusCode,
    pub headers: HeaderMap,
    /// What is said, with plain spaces where a page has no-break ones.
    pub text: String,
    /// The same to the letter.
    pub set: String,
}

impl Answer {
    pub fn location(&self) -> &str {
        self.headers[header::LOCATION].to_str().unwrap()
    }

    /// What a form says is wrong at a field.
    pub fn problem(&self, field: &str) -> &str {
        let marked = format!("id=\"{field}-problem\"");
        let said = self.text.split_once(&marked).map(|(_, said)| said);
        let said = said.unwrap_or_else(|| panic!("nothing is marked at {field}: {}", self.text));
        said.split("</p>").next().unwrap_or_default()
    }

    /// The fields at which a form says that something is wrong.
    pub fn marked(&self) -> Vec<&str> {
        let ids = self.text.split("id=\"").skip(1);
        let ids = ids.filter_map(|rest| rest.split('"').next());
        ids.filter_map(|id| id.strip_suffix("-problem")).collect()
    }
}

impl Desk {
    pub async fn new() -> Self {
        Self::at(tempfile::tempdir().unwrap()).await
    }

    /// At the bench that lies in a folder.
    pub async fn at(home: tempfile::TempDir) -> Self {
        let bench = Arc::new(Mutex::new(Bench::open(home.path()).unwrap()));
        let demo: web::Demo = Arc::new(|bench| {
            let id = bench
                .create_trial(&question("The demo", true), "2030-01-01T00:00:00Z")
                .map_err(|e| e.to_string())?;
            let trial = bench.trial_by_id(id).map_err(|e| e.to_string())?;
            Ok(trial.unwrap().slug)
        });
        let app = web::router(Arc::clone(&bench), demo, PORT);
        let mut desk = Self {
            app,
            bench,
            home,
            token: String::new(),
        };
        let cookie = desk.get("/").await.headers[header::SET_COOKIE].clone();
        let cookie = cookie.to_str().unwrap();
        assert!(cookie.contains("HttpOnly") && cookie.contains("SameSite=Strict"));
        desk.token = cookie
            .split(['=', ';'])
            .nth(1)
            .expect("name=value")
            .to_owned();
        desk
    }

    pub fn trial(&self) -> Trial {
        let mut bench = self.bench.lock().unwrap();
        let id = bench
            .create_trial(&question("Onion & alum", false), "2030-01-01T00:00:00Z")
            .unwrap();
        bench.trial_by_id(id).unwrap().unwrap()
    }

    pub async fn send(&self, request: Request<Body>) -> Answer {
        let response = self.app.clone().oneshot(request).await.unwrap();
        let (parts, body) = response.into_parts();
        let bytes = body.collect().await.unwrap().to_bytes();
        let set = String::from_utf8_lossy(&bytes).into_owned();
        Answer {
            status: parts.status,
            headers: parts.headers,
            text: set.replace('\u{a0}', " "),
            set,
        }
    }

    pub async fn get(&self, path: &str) -> Answer {
        let request = Request::get(path).header(header::HOST, HOST);
        self.send(request.body(Body::empty()).unwrap()).await
    }

    pub fn cookie(&self) -> String {
        format!("woadstone-{PORT}={}", self.token)
    }

    pub async fn post_form(&self, path: &str, fields: &[(&str, &str)]) -> Answer {
        let mut body = format!("token={}", self.token);
        for (name, value) in fields {
            body.push_str(&format!("&{}={}", encode(name), encode(value)));
        }
        let request = Request::post(path)
            .header(header::HOST, HOST)
            .header(header::COOKIE, self.cookie())
            .header(header::ORIGIN, format!("http://{HOST}"))
            .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
            .body(Body::from(body))
            .unwrap();
        self.send(request).await
    }

    /// Sends a photo as the upload form does.
    pub async fn upload(&self, slug: &str, name: &str, bytes: &[u8], accept: &str) -> Answer {
        let mut body = Vec::new();
        for (field, value) in [("token", self.token.as_str()), ("stage", "3")] {
            body.extend_from_slice(
                format!(
                    "--cut\r\nContent-Disposition: form-data; name=\"{field}\"\r\n\r\n{value}\r\n"
                )
                .as_bytes(),
            );
        }
        body.extend_from_slice(
            format!("--cut\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"{name}\"\r\nContent-Type: image/jpeg\r\n\r\n")
                .as_bytes(),
        );
        body.extend_from_slice(bytes);
        body.extend_from_slice(b"\r\n--cut--\r\n");
        let request = Request::post(format!("/trials/{slug}/photos"))
            .header(header::HOST, HOST)
            .header(header::COOKIE, self.cookie())
            .header(header::ACCEPT, accept)
            .header(header::CONTENT_TYPE, "multipart/form-data; boundary=cut")
            .body(Body::from(body))
            .unwrap();
        self.send(request).await
    }

    /// Files in the vault, half-written ones too.
    pub fn vault_files(&self) -> usize {
        fn count(folder: &std::path::Path) -> usize {
            std::fs::read_dir(folder).map_or(0, |entries| {
                entries
                    .map(|entry| entry.unwrap().path())
                    .map(|path| if path.is_dir() { count(&path) } else { 1 })
                    .sum()
            })
        }
        count(&self.home.path().join("vault"))
    }
}

pub fn question(title: &str, invented: bool) -> NewTrial {
    let arm = |name: &str, letter: &str| NewArm {
        name: name.into(),
        treatment: "stir <gently>".into(),
        pieces: [("1", Role::Test), ("2", Role::Test), ("K", Role::Keeper)]
            .into_iter()
            .map(|(n, role)| NewPiece {
                code: format!("{letter}{n}"),
                role,
                load: None,
            })
            .collect(),
    };
    NewTrial {
        title: title.into(),
        question: "Does alum <b>hold</b> it?".into(),
        margin_de00: 1.0,
        rounds: 5,
        invented,
        method: String::new(),
        arms: vec![arm("plain", "A"), arm("alum", "B")],
    }
}

fn encode(text: &str) -> String {
    text.bytes()
        .map(|b| match b {
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'-' | b'.' | b'_' => {
                char::from(b).to_string()
            }
            _ => format!("%{b:02X}"),
        })
        .collect()
}
