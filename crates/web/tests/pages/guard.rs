//! Who may ask: Host, Origin, token, and what browsers are told.

use crate::desk::{Desk, HOST};
use axum::body::Body;
use axum::http::{Method, Request, StatusCode, header};

/// Every address that changes something.
const CHANGES: [&str; 5] = [
    "/demo",
    "/setup",
    "/trials/new",
    "/trials/onion-alum/photos",
    "/trials/onion-alum/photos/1/areas",
];

#[tokio::test]
async fn a_foreign_host_is_refused_whatever_is_asked() {
    let desk = Desk::new().await;
    for host in [
        "example.test:4817",
        "127.0.0.1:80",
        "localhost",
        "127.0.0.1.example.test:4817",
    ] {
        let request = Request::get("/").header(header::HOST, host);
        let answer = desk.send(request.body(Body::empty()).unwrap()).await;
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{host}");
        assert!(answer.text.contains("address it printed"), "{host}");
        assert!(!answer.headers.contains_key(header::SET_COOKIE), "{host}");
    }
    let nameless = Request::get("/").body(Body::empty()).unwrap();
    assert_eq!(desk.send(nameless).await.status, StatusCode::FORBIDDEN);
}

#[tokio::test]
async fn a_change_from_another_site_is_refused() {
    let desk = Desk::new().await;
    for (name, value) in [
        ("origin", "http://example.test"),
        ("origin", "null"),
        ("origin", "https://127.0.0.1:4817"),
        ("origin", "http://localhost:4817"),
        ("sec-fetch-site", "cross-site"),
        ("sec-fetch-site", "same-site"),
    ] {
        for path in CHANGES {
            let request = Request::post(path)
                .header(header::HOST, HOST)
                .header(header::COOKIE, desk.cookie())
                .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
                .header(name, value)
                .body(Body::from(format!("token={}", desk.token)))
                .unwrap();
            let answer = desk.send(request).await;
            assert_eq!(
                answer.status,
                StatusCode::FORBIDDEN,
                "{path} {name}: {value}"
            );
        }
    }
    assert!(desk.bench.lock().unwrap().trials().unwrap().is_empty());
}

#[tokio::test]
async fn a_change_needs_the_token_in_the_cookie_and_in_the_form() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let wrong = "0".repeat(64);
    for (cookie, token) in [
        (String::new(), desk.token.clone()),
        (desk.cookie(), String::new()),
        (desk.cookie(), wrong.clone()),
        (format!("woadstone-4817={wrong}"), wrong),
        (desk.cookie().replace("4817", "80"), desk.token.clone()),
    ] {
        for path in ["/demo", "/trials/new"] {
            let request = Request::post(path)
                .header(header::HOST, HOST)
                .header(header::COOKIE, &cookie)
                .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
                .body(Body::from(format!("token={token}")))
                .unwrap();
            let answer = desk.send(request).await;
            assert_eq!(
                answer.status,
                StatusCode::FORBIDDEN,
                "{path} {cookie} {token}"
            );
        }
        let path = format!("/trials/{}/photos", trial.slug);
        let body = format!(
            "--cut\r\nContent-Disposition: form-data; name=\"token\"\r\n\r\n{token}\r\n--cut\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"a.jpg\"\r\n\r\nx\r\n--cut--\r\n"
        );
        let request = Request::post(path)
            .header(header::HOST, HOST)
            .header(header::COOKIE, &cookie)
            .header(header::CONTENT_TYPE, "multipart/form-data; boundary=cut")
            .body(Body::from(body))
            .unwrap();
        assert_eq!(desk.send(request).await.status, StatusCode::FORBIDDEN);
    }
    assert_eq!(desk.bench.lock().unwrap().trials().unwrap().len(), 1);
}

#[tokio::test]
async fn pages_carry_a_strict_policy() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    for path in [
        "/",
        "/trials/new",
        "/nowhere",
        &format!("/trials/{}", trial.slug),
    ] {
        let answer = desk.get(path).await;
        let policy = answer.headers[header::CONTENT_SECURITY_POLICY]
            .to_str()
            .unwrap();
        assert!(policy.starts_with("default-src 'none'"), "{path}");
        assert!(!policy.contains("unsafe"), "{path}");
        assert_eq!(answer.headers[header::X_CONTENT_TYPE_OPTIONS], "nosniff");
        assert!(answer.headers.contains_key(header::CACHE_CONTROL));
        assert!(!answer.text.contains(" style="), "{path}");
        assert!(!answer.text.contains("<style"), "{path}");
        assert!(!answer.text.contains("<script>"), "{path}");
    }
}

#[tokio::test]
async fn methods_and_addresses_that_are_not_there_get_a_page() {
    let desk = Desk::new().await;
    for path in [
        "/nowhere",
        "/trials/none",
        "/trials/none/photos/1",
        "/photos/9/preview.jpg",
        "/assets/0/app.css",
    ] {
        let answer = desk.get(path).await;
        assert_eq!(answer.status, StatusCode::NOT_FOUND, "{path}");
        assert!(answer.text.contains("To the list of trials"), "{path}");
    }
    assert!(
        desk.get("/photos/x/preview.jpg")
            .await
            .text
            .contains("To the list of trials")
    );
    let request = Request::builder()
        .method(Method::DELETE)
        .uri("/trials/new")
        .header(header::HOST, HOST)
        .header(header::COOKIE, desk.cookie())
        .body(Body::empty())
        .unwrap();
    assert!(desk.send(request).await.status.is_client_error());
}

/// Sheets to print name no icon, so a browser asks at the usual address.
#[tokio::test]
async fn the_icon_is_where_browsers_look_for_it() {
    let answer = Desk::new().await.get("/favicon.ico").await;
    assert_eq!(answer.status, StatusCode::OK);
    assert_eq!(answer.headers[header::CONTENT_TYPE], "image/svg+xml");
}

#[tokio::test]
async fn assets_are_kept_for_ever_under_their_checksum() {
    let desk = Desk::new().await;
    let page = desk.get("/").await.text;
    let start = page.find("/assets/").unwrap();
    let path = &page[start..start + page[start..].find('"').unwrap()];
    let folder = path.rsplit_once('/').unwrap().0.to_owned();
    for name in [
        "app.css",
        "upload.js",
        "mark.js",
        "polygon.js",
        "overlay.js",
        "icon.svg",
    ] {
        let answer = desk.get(&format!("{folder}/{name}")).await;
        assert_eq!(answer.status, StatusCode::OK, "{name}");
        let cache = answer.headers[header::CACHE_CONTROL].to_str().unwrap();
        assert!(cache.contains("immutable"), "{name}");
    }
}
