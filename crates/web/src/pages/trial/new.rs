//! `GET /trials/new`: the form for a question, and what was typed into it.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::{Problems, Signed};
use crate::text;
use crate::text::trial as say;
use askama::Template;
use axum::extract::State;
use axum::response::Html;
use trial::{NewArm, NewPiece, NewTrial, Role};

/// Rows for arms that the form starts with.
const FIRST_ROWS: usize = 3;
/// Rows it may grow to.
const MOST_ROWS: usize = 24;

/// The form as typed.
pub(crate) struct Draft {
    pub(crate) title: String,
    pub(crate) question: String,
    pub(crate) margin: String,
    pub(crate) rounds: String,
    pub(crate) pieces: String,
    pub(crate) keeper: bool,
    pub(crate) method: String,
    pub(crate) arms: Vec<DraftArm>,
}

/// One row of arms as typed.
pub(crate) struct DraftArm {
    /// Its place in the form, from 1.
    pub(crate) row: usize,
    pub(crate) name: String,
    pub(crate) treatment: String,
}

#[derive(Template)]
#[template(path = "trial/new.html")]
pub(crate) struct NewPage<'a> {
    pub(crate) assets: &'static Assets,
    pub(crate) token: &'a str,
    pub(crate) draft: &'a Draft,
    pub(crate) problems: &'a Problems,
}

pub(crate) async fn page(State(app): State<App>) -> Result<Html<String>, Error> {
    let page = NewPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        draft: &Draft::blank(),
        problems: &Problems::default(),
    };
    Ok(Html(page.render()?))
}

impl Draft {
    fn blank() -> Self {
        Self {
            title: String::new(),
            question: String::new(),
            margin: "1.0".to_owned(),
            rounds: "5".to_owned(),
            pieces: "4".to_owned(),
            keeper: true,
            method: String::new(),
            arms: (1..=FIRST_ROWS).map(DraftArm::blank).collect(),
        }
    }

    /// What came from the form.
    pub(crate) fn typed(form: &Signed) -> Self {
        let mut arms: Vec<DraftArm> = (1..=MOST_ROWS)
            .take_while(|row| form.has(&format!("arm-{row}-name")))
            .map(|row| DraftArm {
                row,
                name: form.text(&format!("arm-{row}-name")),
                treatment: form.text(&format!("arm-{row}-treatment")),
            })
            .collect();
        for row in arms.len() + 1..=FIRST_ROWS {
            arms.push(DraftArm::blank(row));
        }
        Self {
            title: form.text("title"),
            question: form.text("question"),
            margin: form.text("margin"),
            rounds: form.text("rounds"),
            pieces: form.text("pieces"),
            keeper: form.has("keeper"),
            method: form.text("method"),
            arms,
        }
    }

    /// One more row of arms, up to the most there may be.
    pub(crate) fn grow(&mut self) {
        if self.arms.len() < MOST_ROWS {
            self.arms.push(DraftArm::blank(self.arms.len() + 1));
        }
    }

    /// The trial that the form describes, or what is wrong with it.
    pub(crate) fn trial(&self) -> Result<NewTrial, Problems> {
        let mut problems = Problems::default();
        let margin_de00 = self.margin.replace(',', ".").parse().unwrap_or(f64::NAN);
        if margin_de00.is_nan() {
            problems.add("margin", text::trial::give_the_margin_as_a_number_such());
        }
        let rounds = self.rounds.parse().unwrap_or(0);
        if rounds == 0 {
            problems.add("rounds", text::trial::give_the_number_of_rounds());
        }
        let pieces = self.pieces.parse().unwrap_or(0);
        if !(1..=100).contains(&pieces) {
            problems.add("pieces", text::trial::give_the_number_of_test_pieces_per());
        }
        let used: Vec<&DraftArm> = self.arms.iter().filter(|a| !a.is_blank()).collect();
        let trial = NewTrial {
            title: self.title.clone(),
            question: self.question.clone(),
            margin_de00,
            rounds,
            invented: false,
            method: self.method.clone(),
            arms: used
                .iter()
                .enumerate()
                .map(|(i, arm)| NewArm {
                    name: arm.name.clone(),
                    treatment: arm.treatment.clone(),
                    pieces: pieces_of(i, pieces.min(100), self.keeper),
                })
                .collect(),
        };
        if let Err(error) = trial.validate() {
            let field = field_of(&error.field, &used);
            if problems.at(&field).is_none() {
                problems.add(field, error.message);
            }
        }
        if problems.is_empty() {
            Ok(trial)
        } else {
            Err(problems)
        }
    }
}

impl DraftArm {
    fn blank(row: usize) -> Self {
        Self {
            row,
            name: String::new(),
            treatment: String::new(),
        }
    }

    fn is_blank(&self) -> bool {
        self.name.is_empty() && self.treatment.is_empty()
    }
}

/// Codes A1, A2, ... for the first arm, B1, ... for the second; the keepers are AK, BK.
fn pieces_of(arm: usize, count: u32, keeper: bool) -> Vec<NewPiece> {
    let letter = char::from(b'A' + (arm % 26) as u8);
    let piece = |code: String, role| NewPiece {
        code,
        role,
        load: None,
    };
    (1..=count)
        .map(|n| piece(format!("{letter}{n}"), Role::Test))
        .chain(keeper.then(|| piece(format!("{letter}K"), Role::Keeper)))
        .collect()
}

/// The form's field for a field of the trial: `arms[1].name` is the second row that was filled in.
fn field_of(path: &str, used: &[&DraftArm]) -> String {
    let Some(rest) = path.strip_prefix("arms[") else {
        return if path == "margin_de00" {
            "margin"
        } else {
            path
        }
        .to_owned();
    };
    let row = rest
        .split_once(']')
        .and_then(|(i, _)| i.parse::<usize>().ok())
        .and_then(|i| used.get(i))
        .map_or(1, |arm| arm.row);
    match rest.rsplit_once('.').map(|(_, last)| last) {
        Some("treatment") => format!("arm-{row}-treatment"),
        Some("name") => format!("arm-{row}-name"),
        _ => "pieces".to_owned(),
    }
}
