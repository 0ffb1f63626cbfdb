//! Phones on the local network: off until a person switches it on, and open to paired devices only.

mod attempts;
mod codes;
mod network;

pub(crate) use attempts::{Attempts, Refused};
pub(crate) use codes::Codes;
pub(crate) use network::{Network, chosen_address, own_address};

use crate::app::App;
use std::net::{Ipv4Addr, SocketAddr};

/// What is kept for phones while the program runs.
#[derive(Default)]
pub(crate) struct Phones {
    pub(crate) codes: Codes,
    pub(crate) attempts: Attempts,
    pub(crate) network: Network,
}

/// The port that is proposed for phones.
pub(crate) const USUAL_PORT: u16 = 4818;

/// The cookie by which a paired device shows itself.
pub(crate) const DEVICE_COOKIE: &str = "woadstone-device";

/// How long a browser keeps it, seconds: half a year.
const COOKIE_AGE_S: u32 = 182 * 24 * 3600;

/// The `Set-Cookie` value for a device's token.
pub(crate) fn device_cookie(token: &str) -> String {
    format!("{DEVICE_COOKIE}={token}; Path=/; HttpOnly; SameSite=Strict; Max-Age={COOKIE_AGE_S}")
}

/// Marks a request of a paired device.
#[derive(Debug, Clone, Copy)]
pub(crate) struct FromPhone;

/// Switches the local network on where the person wants it on at every start.
pub(crate) async fn start(app: &App) {
    let chosen = app.at_bench(|bench| Ok(bench.phone_network()?)).await;
    let chosen = match chosen {
        Ok(chosen) => chosen.filter(|chosen| chosen.at_start),
        Err(error) => {
            tracing::error!(?error, "what was chosen for phones could not be read");
            None
        }
    };
    let Some(chosen) = chosen else { return };
    let Ok(address) = chosen.address.parse::<Ipv4Addr>() else {
        return;
    };
    let wanted = SocketAddr::from((address, chosen.port));
    // The computer may be on another network today: the page Phone then says that it is off.
    if let Err(sentence) = app.phones.network.switch_on(app, wanted).await {
        tracing::warn!(sentence, "phones can't come in");
    }
}

/// Whether a paired phone may ask this: look at all there is, note what happens in a
/// run and what its waters show, take and mark photos, judge pairs by eye in a session that was
/// begun. All else is done at the computer.
pub(crate) fn may(method: &axum::http::Method, path: &str) -> bool {
    let parts: Vec<&str> = path.trim_matches('/').split('/').collect();
    match parts.as_slice() {
        ["phone" | "phone.json", ..] => false,
        _ if method.is_safe() => true,
        ["runs", _, ..] | ["trials", _, "photos"] => true,
        ["judging", _] | ["trials", _, "eyes", _, "judges"] => true,
        [
            "trials",
            _,
            "photos",
            _,
            "areas" | "stage" | "again" | "cancel",
        ] => true,
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use axum::http::Method;

    #[test]
    fn phones_look_run_photograph_and_judge_and_nothing_else() {
        for path in [
            "/runs/3",
            "/runs/3/waters",
            "/trials/red/photos",
            "/trials/red/photos/7/areas",
            "/trials/red/photos/7/stage",
            "/trials/red/photos/7/again",
            "/trials/red/photos/7/cancel",
            "/trials/red/eyes/4/judges",
            "/judging/9",
        ] {
            assert!(may(&Method::POST, path), "{path}");
        }
        for path in ["/", "/trials/red", "/recipes/x", "/runs/3/sheet", "/pair"] {
            assert!(may(&Method::GET, path), "{path}");
        }
        for path in ["/phone", "/phone/", "//phone", "/phone.json", "/phone/code"] {
            assert!(!may(&Method::GET, path), "{path}");
            assert!(!may(&Method::POST, path), "{path}");
        }
        for path in [
            "/",
            "/demo",
            "/trials/new",
            "/charts",
            "/setup",
            "/recipes/new",
            "/trials/red/photos/7",
            "/trials/red/photos/7/other",
            "/trials/red/elsewhere/readings",
            "/trials/red/elsewhere/grades",
            "/trials/red/eyes",
            "/trials/red/eyes/4/close",
            "/trials/red/blind",
            "/judging",
            "/judging/9/other",
        ] {
            assert!(!may(&Method::POST, path), "{path}");
        }
    }
}
