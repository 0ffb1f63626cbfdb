//! Every address of the app.

use crate::app::{App, Demo, SharedBench};
use crate::error::Error;
use crate::text;
use crate::{assets, error, guard, pages, rewritten, upload, way};
use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::middleware::{from_fn, from_fn_with_state};
use axum::routing::{get, post};
use std::net::SocketAddr;

/// The app over a bench, as if it were served on `port` of loopback.
pub fn router(bench: SharedBench, demo: Demo, port: u16) -> Router {
    of(App::new(bench, demo, port))
}

/// The pages as the computer itself gets them.
pub(crate) fn of(app: App) -> Router {
    let router = pages()
        .route(
            "/phone",
            get(pages::phone::show::page).post(pages::phone::switch::act),
        )
        .route("/phone.json", get(pages::phone::show::data))
        .route("/phone/code", post(pages::phone::code::act))
        .route("/phone/revoke", post(pages::phone::revoke::act));
    dressed(router, &app)
        .layer(from_fn_with_state(app.clone(), guard::watch))
        .layer(from_fn(error::dress))
        .with_state(app)
}

/// The pages as phones get them that come in at an address of the local network.
pub(crate) fn for_phones(app: App, address: SocketAddr) -> Router {
    let router = pages().route(
        "/pair",
        get(pages::phone::pair::page).post(pages::phone::pair::act),
    );
    dressed(router, &app)
        .layer(from_fn_with_state(
            (app.clone(), address),
            guard::watch_phones,
        ))
        .layer(from_fn(error::dress))
        .with_state(app)
}

fn pages() -> Router<App> {
    Router::new()
        .route("/", get(pages::trial::list::page))
        .route(
            "/trials/new",
            get(pages::trial::new::page).post(pages::trial::create::act),
        )
        .route(
            "/ask",
            get(pages::plan::ask::page).post(pages::plan::propose::act),
        )
        .route(
            "/plans/{slug}",
            get(pages::plan::show::page).post(pages::plan::revise::act),
        )
        .route("/plans/{slug}/power", get(pages::plan::power::part))
        .route("/plans/{slug}/start", post(pages::plan::start::act))
        .route("/recipes", get(pages::recipe::list::page))
        .route(
            "/recipes/new",
            get(pages::recipe::new::page).post(pages::recipe::create::act),
        )
        .route(
            "/recipes/{slug}",
            get(pages::recipe::show::page).post(pages::recipe::revise::act),
        )
        .route(
            "/recipes/{slug}/edit",
            get(pages::recipe::edit::page).post(pages::recipe::edit::act),
        )
        .route("/recipes/{slug}/aim", post(pages::recipe::aim::act))
        .route("/recipes/{slug}/sheet", get(pages::recipe::print::page))
        .route("/recipes/{slug}/runs", post(pages::recipe::begin::act))
        .route(
            "/runs/{id}",
            get(pages::run::show::page).post(pages::run::note::act),
        )
        .route("/runs/{id}/sheet", get(pages::run::print::page))
        .route(
            "/runs/{id}/rinse",
            get(pages::rinse::show::page).post(pages::rinse::note::act),
        )
        .route("/runs/{id}/rinse.json", get(pages::rinse::show::data))
        .route(
            "/materials",
            get(pages::material::list::page).post(pages::material::add::act),
        )
        .route(
            "/materials/{id}",
            get(pages::material::show::page).post(pages::material::act::act),
        )
        .route("/search", get(pages::search::show::page))
        .route("/search.json", get(pages::search::show::data))
        .route("/trials/{slug}", get(pages::trial::show::page))
        .route("/board", get(pages::board::print::page))
        .route("/trials/{slug}/board", get(pages::board::choose::page))
        .route("/trials/{slug}/tags", get(pages::board::tags::page))
        .route("/trials/{slug}/boards", get(pages::board::places::page))
        .route("/trials/{slug}/packing", get(pages::board::packing::page))
        .route(
            "/trials/{slug}/blind",
            get(pages::board::blind::page).post(pages::board::blind::open),
        )
        .route(
            "/trials/{slug}/blind/labels",
            get(pages::board::blind::labels),
        )
        .route(
            "/trials/{slug}/eyes",
            get(pages::eyes::show::page).post(pages::eyes::begin::act),
        )
        .route(
            "/trials/{slug}/eyes/{session}/judges",
            post(pages::eyes::sit::act),
        )
        .route(
            "/trials/{slug}/eyes/{session}/close",
            post(pages::eyes::close::act),
        )
        .route(
            "/trials/{slug}/eyes/{session}/labels",
            get(pages::eyes::labels::page),
        )
        .route(
            "/judging/{sitting}",
            get(pages::eyes::turn::page).post(pages::eyes::turn::give),
        )
        .route("/trials/{slug}/compare", get(pages::trial::compare::page))
        .route("/trials/{slug}/report", get(pages::report::show::page))
        .route("/trials/{slug}/photos/new", get(pages::photo::new::page))
        .route(
            "/trials/{slug}/photos",
            get(pages::photo::list::page)
                .post(pages::photo::add::act)
                .layer(DefaultBodyLimit::max(
                    upload::PHOTO.together_bytes + upload::FORM_BYTES,
                )),
        )
        .route(
            "/trials/{slug}/photos/events",
            get(pages::photo::events::stream),
        )
        .route("/trials/{slug}/photos/{id}", get(pages::photo::show::page))
        .route(
            "/trials/{slug}/photos/{id}/areas",
            post(pages::photo::mark::act),
        )
        .route(
            "/trials/{slug}/photos/{id}/stage",
            post(pages::photo::stage::act),
        )
        .route(
            "/trials/{slug}/photos/{id}/again",
            post(pages::photo::queue::again),
        )
        .route(
            "/trials/{slug}/photos/{id}/cancel",
            post(pages::photo::queue::cancel),
        )
        .route("/trials/{slug}/elsewhere", get(pages::elsewhere::new::page))
        .route(
            "/trials/{slug}/elsewhere/preview",
            post(pages::elsewhere::preview::page).layer(DefaultBodyLimit::max(
                upload::MOST_TABLE_BYTES + upload::FORM_BYTES,
            )),
        )
        .route(
            "/trials/{slug}/elsewhere/readings",
            // The table comes back as base64, three bytes by four letters, of which some are escaped.
            post(pages::elsewhere::add::act)
                .layer(DefaultBodyLimit::max(2 * upload::MOST_TABLE_BYTES)),
        )
        .route(
            "/trials/{slug}/elsewhere/grades",
            post(pages::elsewhere::grade::act),
        )
        .route(
            "/trials/{slug}/elsewhere/withdraw",
            post(pages::elsewhere::withdraw::act),
        )
        .route(
            "/photos/{id}/preview.jpg",
            get(pages::photo::preview::picture),
        )
        .route(
            "/photos/{id}/tiles/{column}/{row}",
            get(pages::photo::tile::picture),
        )
        .route(
            "/setup",
            get(pages::setup::show::page)
                .post(pages::setup::check::act)
                .layer(DefaultBodyLimit::max(
                    pages::setup::MOST_BYTES + upload::FORM_BYTES,
                )),
        )
        .route("/studio", get(pages::studio::show::page))
        .route(
            "/settings",
            get(pages::settings::show::page).post(pages::settings::keep::act),
        )
        .route(
            "/bin",
            get(pages::bin::show::page).post(pages::bin::act::act),
        )
        .route("/journal", get(pages::journal::show::page))
        .route(
            "/trials/{slug}/journal",
            get(pages::journal::show::of_trial),
        )
        .route("/setup.json", get(pages::setup::show::data))
        .route(
            "/charts",
            get(pages::chart::list::page)
                .post(pages::chart::add::act)
                .layer(DefaultBodyLimit::max(
                    upload::MOST_CHART_BYTES + upload::FORM_BYTES,
                )),
        )
        .route("/demo", post(pages::demo::open::act))
        .route("/assets/{version}/{name}", get(assets::serve))
        .route("/favicon.ico", get(assets::icon))
}

/// Routes with what is said where there is nothing, and the way through a trial.
fn dressed(router: Router<App>, app: &App) -> Router<App> {
    router
        .fallback(|| async { Error::NotFound(text::routes::there_is_no_page_at_this_address()) })
        .method_not_allowed_fallback(|| async {
            Error::NotFound(text::routes::this_address_takes_no_such_request_start())
        })
        .layer(from_fn_with_state(app.clone(), way::show))
        .layer(from_fn(rewritten::typeset))
}
