//! Who may ask, and what a browser may do with the answer.

use crate::app::App;
use crate::error::Error;
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

const POLICY: &str = "default-src 'none'; img-src 'self' data: blob:; style-src 'self'; script-src 'self'; \
     connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

/// Lets through what a page of ours asks of this very address, and nothing else.
///
/// A web site elsewhere can make a browser send requests here. It can't choose their Host
/// (so a name of its own that points to loopback is refused), and it can't hide their Origin.
pub(crate) async fn watch(State(app): State<App>, request: Request, next: Next) -> Response {
    let method = request.method().clone();
    let headers = request.headers().clone();
    let checked = check(&app, &method, &headers);
    let welcome = checked.is_ok();
    let mut response = match checked {
        Ok(()) => next.run(request).await,
        Err(error) => error.into_response(),
    };
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
    if welcome
        && method == Method::GET
        && !app.token.in_cookie(&headers, app.port)
        && let Ok(cookie) = HeaderValue::from_str(&app.token.cookie(app.port))
    {
        out.append(header::SET_COOKIE, cookie);
    }
    response
}

fn check(app: &App, method: &Method, headers: &HeaderMap) -> Result<(), Error> {
    let text = |name: HeaderName| headers.get(name).map(|v| v.to_str().unwrap_or(""));
    let host = text(header::HOST).unwrap_or("");
    if !is_ours(host, app.port) {
        return Err(Error::Forbidden(
            "Woadstone answers only under the address it printed when it started. Open that address.",
        ));
    }
    if method.is_safe() {
        return Ok(());
    }
    let foreign_origin =
        text(header::ORIGIN).is_some_and(|origin| origin.strip_prefix("http://") != Some(host));
    let foreign_site =
        text(HeaderName::from_static("sec-fetch-site")).is_some_and(|site| site != "same-origin");
    if foreign_origin || foreign_site {
        return Err(Error::Forbidden(
            "This change was sent from another web site, so nothing was changed. Make it on Woadstone's own page.",
        ));
    }
    if !app.token.in_cookie(headers, app.port) {
        return Err(Error::Stale);
    }
    Ok(())
}

fn is_ours(host: &str, port: u16) -> bool {
    host.rsplit_once(':').is_some_and(|(name, own)| {
        ["127.0.0.1", "localhost", "[::1]"].contains(&name) && own == port.to_string()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_loopback_names_with_our_port_are_ours() {
        for host in ["127.0.0.1:4817", "localhost:4817", "[::1]:4817"] {
            assert!(is_ours(host, 4817), "{host}");
        }
        for host in [
            "",
            "localhost",
            "127.0.0.1:80",
            "example.test:4817",
            "127.0.0.1.example.test:4817",
            "localhost:04817",
        ] {
            assert!(!is_ours(host, 4817), "{host}");
        }
    }
}
