//! `GET /phone`, at the computer only: whether phones may come in, the code, the devices.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::phone::{self, USUAL_PORT};
use crate::text;
use crate::text::phone as say;
use askama::Template;
use axum::Json;
use axum::extract::State;
use axum::response::{Html, IntoResponse, Response};
use report::{qr, words};
use std::time::Instant;
use store::{Device, PhoneNetwork};

#[derive(Template)]
#[template(path = "phone/show.html")]
struct ShowPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    /// Where phones come in; none while it is off.
    address: Option<String>,
    code: Option<CodeShown>,
    devices: &'a [DeviceRow],
    typed: &'a Typed,
    problems: &'a Problems,
}

/// The code that is good at this moment.
struct CodeShown {
    /// Its signs with a break in the middle.
    signs: String,
    picture: String,
    minutes: u64,
}

struct DeviceRow {
    id: i64,
    name: String,
    paired: String,
    seen: String,
}

/// What a person typed for the network, or what it opens with.
pub(super) struct Typed {
    pub(super) address: String,
    pub(super) port: String,
    pub(super) at_start: bool,
}

impl Typed {
    fn of(chosen: Option<PhoneNetwork>) -> Self {
        // The address may have changed since: the one of today goes first.
        let own = phone::own_address().map(|address| address.to_string());
        let (address, port, at_start) = match chosen {
            Some(chosen) => (chosen.address, chosen.port, chosen.at_start),
            None => (String::new(), USUAL_PORT, false),
        };
        Self {
            address: own.unwrap_or(address),
            port: port.to_string(),
            at_start,
        }
    }
}

pub(crate) async fn page(State(app): State<App>) -> Result<Response, Error> {
    let chosen = app.at_bench(|bench| Ok(bench.phone_network()?)).await?;
    let page = render(&app, &Typed::of(chosen), &Problems::default()).await?;
    Ok(page.into_response())
}

pub(super) async fn render(
    app: &App,
    typed: &Typed,
    problems: &Problems,
) -> Result<Html<String>, Error> {
    let devices = app.at_bench(|bench| Ok(bench.devices()?)).await?;
    let devices: Vec<DeviceRow> = devices.into_iter().map(row).collect();
    let address = app.phones.network.address();
    let shown = app.phones.codes.shown(Instant::now());
    let code = address.zip(shown).map(|(address, code)| {
        let url = format!("http://{address}/pair?code={}", code.signs);
        let (first, second) = code.signs.split_at(code.signs.len() / 2);
        let name = text::phone::code_to_scan_with_the_phones_camera();
        CodeShown {
            signs: format!("{first}\u{2013}{second}"),
            picture: qr::svg(&url, name).unwrap_or_default(),
            minutes: code.left.as_secs().div_ceil(60),
        }
    });
    let page = ShowPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        address: address.map(|address| address.to_string()),
        code,
        devices: &devices,
        typed,
        problems,
    };
    Ok(Html(page.render()?))
}

fn row(device: Device) -> DeviceRow {
    DeviceRow {
        id: device.id,
        name: device.name,
        paired: words::moment(&device.paired_at),
        seen: device
            .seen_at
            .map_or(text::phone::not_yet().to_owned(), |at| words::moment(&at)),
    }
}

/// `GET /phone.json`: what the page looks at to see that a device was paired.
pub(crate) async fn data(State(app): State<App>) -> Result<Json<serde_json::Value>, Error> {
    let devices = app.at_bench(|bench| Ok(bench.devices()?)).await?;
    let ids: Vec<i64> = devices.iter().map(|device| device.id).collect();
    Ok(Json(serde_json::json!({
        "on": app.phones.network.address().is_some(),
        "code": app.phones.codes.shown(Instant::now()).is_some(),
        "devices": ids,
    })))
}
