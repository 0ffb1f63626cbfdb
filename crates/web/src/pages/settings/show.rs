//! `GET /settings`: what is chosen, each choice with an example.

use super::{DAY, examples};
use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::text::settings as say;
use askama::Template;
use axum::extract::{Query, State};
use axum::response::Html;
use locale::{Clock, Currency, DateFormat, Locale, Measures, SumOrder};
use serde::Deserialize;

/// What the page was asked for with.
#[derive(Deserialize)]
pub(crate) struct Wanted {
    /// Whether something was just kept.
    kept: Option<u8>,
}

/// The form as it stands: a choice's key each, and the currency as typed.
pub(crate) struct Draft {
    pub(crate) measures: String,
    pub(crate) currency: String,
    pub(crate) sums: String,
    pub(crate) dates: String,
    pub(crate) clock: String,
}

/// One of several choices: what is sent, what it is called, an example.
struct Choice {
    key: &'static str,
    words: &'static str,
    example: String,
    chosen: bool,
}

/// Choices for one thing.
struct Group {
    name: &'static str,
    legend: &'static str,
    hint: &'static str,
    choices: Vec<Choice>,
}

#[derive(Template)]
#[template(path = "settings/show.html")]
struct SettingsPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    problems: &'a Problems,
    draft: &'a Draft,
    kept: bool,
    now: [String; 4],
    measures: Group,
    sums: Group,
    rest: [Group; 2],
    currencies: Vec<Currency>,
}

pub(crate) async fn page(
    State(app): State<App>,
    Query(wanted): Query<Wanted>,
) -> Result<Html<String>, Error> {
    let draft = Draft::of(&locale::current());
    render(&app, &draft, &Problems::default(), wanted.kept.is_some())
}

/// The page with what was typed and what is wrong with it.
pub(crate) fn render(
    app: &App,
    draft: &Draft,
    problems: &Problems,
    kept: bool,
) -> Result<Html<String>, Error> {
    let now = locale::current();
    let page = SettingsPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        problems,
        draft,
        kept,
        now: examples(now),
        measures: measures(draft),
        sums: sums(draft, now),
        rest: [dates(draft), clock(draft)],
        currencies: Currency::all().collect(),
    };
    Ok(Html(page.render()?))
}

impl Draft {
    /// The form of a locale.
    fn of(locale: &Locale) -> Self {
        Self {
            measures: locale.measures.key().to_owned(),
            currency: locale.currency.map_or("", Currency::code).to_owned(),
            sums: locale.sums.key().to_owned(),
            dates: locale.dates.key().to_owned(),
            clock: locale.clock.key().to_owned(),
        }
    }
}

fn measures(draft: &Draft) -> Group {
    let choices = Measures::ALL.map(|measures| {
        let locale = Locale {
            measures,
            ..Locale::DATA
        };
        let [weight, heat, ..] = examples(locale);
        Choice {
            key: measures.key(),
            words: match measures {
                Measures::Metric => say::metric(),
                Measures::UsCustomary => say::us_customary(),
            },
            example: format!("{weight}, {heat}"),
            chosen: draft.measures == measures.key(),
        }
    });
    Group {
        name: "measures",
        legend: say::measures(),
        hint: say::these_come_first(),
        choices: choices.into(),
    }
}

fn sums(draft: &Draft, now: Locale) -> Group {
    let choices = SumOrder::ALL.map(|sums| {
        let currency = now.currency.map_or("EUR", Currency::code);
        let locale = Locale { sums, ..now };
        Choice {
            key: sums.key(),
            words: match sums {
                SumOrder::CodeLast => say::behind_the_sum(),
                SumOrder::CodeFirst => say::before_the_sum(),
            },
            example: locale::sum_in(&locale, "8.50", currency),
            chosen: draft.sums == sums.key(),
        }
    });
    Group {
        name: "sums",
        legend: say::where_the_currency_stands(),
        hint: "",
        choices: choices.into(),
    }
}

fn dates(draft: &Draft) -> Group {
    let choices = DateFormat::ALL.map(|dates| {
        let locale = Locale {
            dates,
            ..Locale::DATA
        };
        Choice {
            key: dates.key(),
            words: match dates {
                DateFormat::Iso => say::year_month_day(),
                DateFormat::Dotted => say::day_month_year_with_dots(),
                DateFormat::DayFirst => say::day_month_year(),
                DateFormat::MonthFirst => say::month_day_year(),
                DateFormat::DayNamed => say::day_then_the_months_name(),
                DateFormat::MonthNamed => say::the_months_name_then_the_day(),
            },
            example: locale::day_in(&locale, DAY),
            chosen: draft.dates == dates.key(),
        }
    });
    Group {
        name: "dates",
        legend: say::days(),
        hint: say::with_the_months_name(),
        choices: choices.into(),
    }
}

fn clock(draft: &Draft) -> Group {
    let choices = Clock::ALL.map(|clock| {
        let locale = Locale {
            clock,
            ..Locale::DATA
        };
        Choice {
            key: clock.key(),
            words: match clock {
                Clock::Hours24 => say::hours_24(),
                Clock::Hours12 => say::hours_12(),
            },
            example: locale::time_of_day_in(&locale, 18, 5),
            chosen: draft.clock == clock.key(),
        }
    });
    Group {
        name: "clock",
        legend: say::times_of_day(),
        hint: "",
        choices: choices.into(),
    }
}
