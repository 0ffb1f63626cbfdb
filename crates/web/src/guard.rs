//! Who may ask, and what a browser may do with the answer.

use crate::app::{App, now};
use crate::error::Error;
use crate::pages;
use crate::phone::{self, FromPhone};
use crate::text;
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use std::net::SocketAddr;

const POLICY: &str = "default-src 'none'; img-src 'self' data: blob:; style-src 'self'; script-src 'self'; \
     connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

/// Lets through what a page of ours asks of this very address, and nothing else.
///
/// A web site elsewhere can make a browser send requests here. It can't choose their Host
/// (so a name of its own that points to loopback is refused), and it can't hide their Origin.
pub(crate) async fn watch(State(app): State<App>, request: Request, next: Next) -> Response {
    let method = request.method().clone();
    let headers = request.headers().clone();
    let is_ours = |host: &str| is_loopback(host, app.port);
    let checked = check_host(&headers, is_ours).and_then(|()| match method.is_safe() {
        true => Ok(()),
        false => check_change(&app, app.port, &headers),
    });
    let welcome = checked.is_ok();
    let mut response = match checked {
        Ok(()) => next.run(request).await,
        Err(error) => error.into_response(),
    };
    seal(&mut response);
    if welcome {
        give_token(&app, app.port, &method, &headers, &mut response);
    }
    response
}

/// Lets paired devices through to what phones may do, and strangers to the pairing page alone.
pub(crate) async fn watch_phones(
    State((app, address)): State<(App, SocketAddr)>,
    mut request: Request,
    next: Next,
) -> Response {
    let method = request.method().clone();
    let headers = request.headers().clone();
    let path = request.uri().path().to_owned();
    let admitted = admit(&app, address, &method, &path, &headers).await;
    let mut response = match admitted {
        Ok(Admitted::Device) => {
            request.extensions_mut().insert(FromPhone);
            let mut response = next.run(request).await;
            give_token(&app, address.port(), &method, &headers, &mut response);
            response
        }
        Ok(Admitted::ToPair) => next.run(request).await,
        Ok(Admitted::Nobody) => pages::phone::pair::stranger(&headers),
        Err(error) => error.into_response(),
    };
    seal(&mut response);
    response
}

/// Whom a request from the local network comes from.
enum Admitted {
    /// A paired device that asks what it may.
    Device,
    /// Someone on the way to the pairing page, or its style sheet.
    ToPair,
    Nobody,
}

async fn admit(
    app: &App,
    address: SocketAddr,
    method: &Method,
    path: &str,
    headers: &HeaderMap,
) -> Result<Admitted, Error> {
    check_host(headers, |host| is_address(host, address))?;
    if !method.is_safe() {
        check_origin(headers)?;
    }
    if path == "/pair"
        || ((path.starts_with("/assets/") || path == "/favicon.ico") && method.is_safe())
    {
        return Ok(Admitted::ToPair);
    }
    let Some(token) = cookie(headers, phone::DEVICE_COOKIE) else {
        return Ok(Admitted::Nobody);
    };
    let device = app
        .at_bench(move |bench| {
            let device = bench.device_by_token(&token)?;
            if let Some(device) = &device {
                let now = now();
                // To the minute is enough, and spares writing for every picture.
                let minute = |time: &str| time.get(..16).map(str::to_owned);
                if device.seen_at.as_deref().and_then(minute) != minute(&now) {
                    bench.see_device(device.id, &now)?;
                }
            }
            Ok(device)
        })
        .await?;
    if device.is_none() {
        return Ok(Admitted::Nobody);
    }
    if !phone::may(method, path) {
        return Err(Error::Forbidden(text::guard::this_is_done_at_the_computer()));
    }
    if !method.is_safe() && !app.token.in_cookie(headers, address.port()) {
        return Err(Error::Stale);
    }
    Ok(Admitted::Device)
}

/// Says what a browser may do with an answer.
fn seal(response: &mut Response) {
    let out = response.headers_mut();
    for (name, value) in [
        (header::CONTENT_SECURITY_POLICY, POLICY),
        (header::CACHE_CONTROL, "private, no-cache"),
    ] {
        out.entry(name).or_insert(HeaderValue::from_static(value));
    }
    for (name, value) in [
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::REFERRER_POLICY, "same-origin"),
        (
            HeaderName::from_static("cross-origin-opener-policy"),
            "same-origin",
        ),
        (
            HeaderName::from_static("cross-origin-resource-policy"),
            "same-origin",
        ),
    ] {
        out.insert(name, HeaderValue::from_static(value));
    }
}

/// Gives a browser that looks the cookie with which it may make changes.
fn give_token(app: &App, port: u16, method: &Method, headers: &HeaderMap, response: &mut Response) {
    if method == Method::GET
        && !app.token.in_cookie(headers, port)
        && let Ok(cookie) = HeaderValue::from_str(&app.token.cookie(port))
    {
        response.headers_mut().append(header::SET_COOKIE, cookie);
    }
}

fn text(headers: &HeaderMap, name: HeaderName) -> Option<&str> {
    headers.get(name).map(|v| v.to_str().unwrap_or(""))
}

/// The value of a cookie; none where there is none of that name.
pub(crate) fn cookie(headers: &HeaderMap, name: &str) -> Option<String> {
    headers
        .get_all(header::COOKIE)
        .iter()
        .filter_map(|value| value.to_str().ok())
        .flat_map(|value| value.split(';'))
        .filter_map(|pair| pair.trim().split_once('='))
        .find(|(key, _)| *key == name)
        .map(|(_, value)| value.to_owned())
}

fn check_host(headers: &HeaderMap, is_ours: impl Fn(&str) -> bool) -> Result<(), Error> {
    match is_ours(text(headers, header::HOST).unwrap_or("")) {
        true => Ok(()),
        false => Err(Error::Forbidden(
            text::guard::woadstone_answers_only_under_the_address(),
        )),
    }
}

fn check_origin(headers: &HeaderMap) -> Result<(), Error> {
    let host = text(headers, header::HOST);
    let foreign_origin =
        text(headers, header::ORIGIN).is_some_and(|origin| origin.strip_prefix("http://") != host);
    let foreign_site = text(headers, HeaderName::from_static("sec-fetch-site"))
        .is_some_and(|site| site != "same-origin");
    if foreign_origin || foreign_site {
        return Err(Error::Forbidden(
            text::guard::this_change_was_sent_from_another_web(),
        ));
    }
    Ok(())
}

fn check_change(app: &App, port: u16, headers: &HeaderMap) -> Result<(), Error> {
    check_origin(headers)?;
    match app.token.in_cookie(headers, port) {
        true => Ok(()),
        false => Err(Error::Stale),
    }
}

fn is_loopback(host: &str, port: u16) -> bool {
    host.rsplit_once(':').is_some_and(|(name, own)| {
        ["127.0.0.1", "localhost", "[::1]"].contains(&name) && own == port.to_string()
    })
}

/// Whether a Host names an address by its numbers, as a scanned code does; no name will do.
fn is_address(host: &str, address: SocketAddr) -> bool {
    host == address.to_string() || (address.port() == 80 && host == address.ip().to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_loopback_names_with_our_port_are_ours() {
        for host in ["127.0.0.1:4817", "localhost:4817", "[::1]:4817"] {
            assert!(is_loopback(host, 4817), "{host}");
        }
        for host in [
            "",
            "localhost",
            "127.0.0.1:80",
            "example.test:4817",
            "127.0.0.1.example.test:4817",
            "localhost:04817",
        ] {
            assert!(!is_loopback(host, 4817), "{host}");
        }
    }

    #[test]
    fn phones_name_the_address_by_its_numbers() {
        let address = SocketAddr::from(([192, 168, 1, 20], 4818));
        assert!(is_address("192.168.1.20:4818", address));
        for host in [
            "",
            "192.168.1.20",
            "192.168.1.20:4817",
            "192.168.1.2:4818",
            "127.0.0.1:4818",
            "localhost:4818",
            "192.168.1.20.example.test:4818",
        ] {
            assert!(!is_address(host, address), "{host}");
        }
        let usual = SocketAddr::from(([10, 0, 0, 7], 80));
        assert!(is_address("10.0.0.7", usual) && is_address("10.0.0.7:80", usual));
    }
}
