//! `GET /ask`: the form for a question, and what was typed into it.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::{Problems, Signed};
use crate::text;
use crate::text::plan as say;
use askama::Template;
use axum::extract::State;
use axum::response::Html;
use dyeing::Celsius;
use trial::plan::{Asks, Budget, EnquiredArm, Enquiry, Margin, PlanError, Scatter};

/// Rows for arms that the form starts with.
const FIRST_ROWS: usize = 3;
/// Rows it may grow to.
const MOST_ROWS: usize = 24;
/// Grades that are offered as margins.
const GRADES: [&str; 4] = ["4-5", "4", "3-4", "3"];
/// The choice by which a number is typed instead.
const OWN: &str = "own";

/// The form as typed.
pub(crate) struct Draft {
    pub(crate) title: String,
    pub(crate) question: String,
    pub(crate) asks: String,
    pub(crate) staining: bool,
    pub(crate) fibre: String,
    pub(crate) dye_class: String,
    pub(crate) margin: String,
    pub(crate) margin_own: String,
    pub(crate) rounds: String,
    pub(crate) pieces: String,
    pub(crate) washes: String,
    pub(crate) days: String,
    pub(crate) arms: Vec<DraftArm>,
}

/// One arm as typed.
pub(crate) struct DraftArm {
    /// Its place in the form, from 1.
    pub(crate) row: usize,
    pub(crate) name: String,
    pub(crate) agent: String,
    pub(crate) amount: String,
    pub(crate) water: String,
    pub(crate) minutes: String,
    pub(crate) temperature: String,
    pub(crate) depth: String,
}

/// A margin to choose, with its picture.
pub(crate) struct Choice {
    value: &'static str,
    words: String,
    picture: String,
}

#[derive(Template)]
#[template(path = "plan/ask.html")]
pub(crate) struct AskPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    draft: &'a Draft,
    problems: &'a Problems,
    kinds: [Asks; 4],
    choices: Vec<Choice>,
    scatter: &'a str,
}

pub(crate) async fn page(State(app): State<App>) -> Result<Html<String>, Error> {
    let scatter = app.at_bench(|bench| Ok(bench.studio_scatter()?)).await?;
    render(&app, &Draft::blank(), &Problems::default(), scatter)
}

/// The page with what was typed and what is wrong with it.
pub(crate) fn render(
    app: &App,
    draft: &Draft,
    problems: &Problems,
    scatter: Option<Scatter>,
) -> Result<Html<String>, Error> {
    let scatter = scatter.unwrap_or_default();
    let page = AskPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        draft,
        problems,
        kinds: Asks::ALL,
        choices: GRADES
            .iter()
            .filter_map(|grade| Choice::of(grade))
            .collect(),
        scatter: &scatter.origin,
    };
    Ok(Html(page.render()?))
}

impl Choice {
    fn of(grade: &'static str) -> Option<Self> {
        let margin = Margin::Grade(grade.parse().ok()?);
        Some(Self {
            value: grade,
            words: text::plan::grade(grade, margin.de00()),
            picture: report::margin_pair::svg(margin.de00()),
        })
    }
}

impl Draft {
    fn blank() -> Self {
        Self {
            title: String::new(),
            question: String::new(),
            asks: Asks::default().as_str().to_owned(),
            staining: false,
            fibre: String::new(),
            dye_class: String::new(),
            margin: "4".to_owned(),
            margin_own: String::new(),
            rounds: "5".to_owned(),
            pieces: "24".to_owned(),
            washes: "2".to_owned(),
            days: "1".to_owned(),
            arms: (1..=FIRST_ROWS).map(DraftArm::blank).collect(),
        }
    }

    /// What came from the form.
    pub(crate) fn typed(form: &Signed) -> Self {
        let mut arms: Vec<DraftArm> = (1..=MOST_ROWS)
            .take_while(|row| form.has(&format!("arm-{row}-name")))
            .map(|row| DraftArm::typed(form, row))
            .collect();
        for row in arms.len() + 1..=FIRST_ROWS {
            arms.push(DraftArm::blank(row));
        }
        Self {
            title: form.text("title"),
            question: form.text("question"),
            asks: form.text("asks"),
            staining: form.has("staining"),
            fibre: form.text("fibre"),
            dye_class: form.text("dye_class"),
            margin: form.text("margin"),
            margin_own: form.text("margin-own"),
            rounds: form.text("rounds"),
            pieces: form.text("pieces"),
            washes: form.text("washes"),
            days: form.text("days"),
            arms,
        }
    }

    /// One more arm, up to the most there may be.
    pub(crate) fn grow(&mut self) {
        if self.arms.len() < MOST_ROWS {
            self.arms.push(DraftArm::blank(self.arms.len() + 1));
        }
    }

    /// The enquiry that the form describes, or what in it is no number.
    pub(crate) fn enquiry(&self, scatter: Option<Scatter>, seed: u32) -> Result<Enquiry, Problems> {
        let mut problems = Problems::default();
        let mut whole = |field: &str, text: &str| {
            text.parse().unwrap_or_else(|_| {
                problems.add(field, text::plan::give_a_whole_number_such_as_5());
                1
            })
        };
        let rounds = whole("rounds", &self.rounds) as u32;
        let budget = Budget {
            pieces: whole("pieces", &self.pieces),
            washes: whole("washes", &self.washes),
            days: whole("days", &self.days),
        };
        let margin = self.margin(&mut problems);
        let used: Vec<&DraftArm> = self.arms.iter().filter(|arm| !arm.is_blank()).collect();
        let arms = used.iter().map(|arm| arm.enquired(&mut problems)).collect();
        let asks = Asks::ALL
            .into_iter()
            .find(|asks| asks.as_str() == self.asks);
        if !problems.is_empty() {
            return Err(problems);
        }
        Ok(Enquiry {
            question: self.question.clone(),
            asks: asks.unwrap_or_default(),
            staining: self.staining,
            fibre: self.fibre.clone(),
            dye_class: self.dye_class.clone(),
            margin,
            rounds,
            arms,
            budget,
            scatter,
            seed,
        })
    }

    fn margin(&self, problems: &mut Problems) -> Margin {
        if self.margin != OWN {
            let grade = GRADES.iter().find(|grade| **grade == self.margin);
            if let Some(grade) = grade.and_then(|grade| grade.parse().ok()) {
                return Margin::Grade(grade);
            }
        }
        Margin::De00(number(&self.margin_own).unwrap_or_else(|| {
            problems.add("margin", text::plan::choose_a_difference_or_give_your_own());
            1.0
        }))
    }

    /// The form's field for a field of the enquiry, and the message that stands there.
    pub(crate) fn problem(&self, error: PlanError) -> Problems {
        let mut problems = Problems::default();
        problems.add(self.field_of(&error.field), error.message);
        problems
    }

    fn field_of(&self, path: &str) -> String {
        let in_arm = path
            .strip_prefix("arms[")
            .and_then(|rest| rest.split_once("]."));
        let Some((place, last)) = in_arm else {
            let field = path.strip_prefix("budget.").unwrap_or(path);
            return match field {
                "question" | "margin" | "rounds" | "pieces" | "washes" | "days" | "fibre"
                | "dye_class" => field,
                "budget" => "pieces",
                _ => "arms",
            }
            .to_owned();
        };
        let mut used = self.arms.iter().filter(|arm| !arm.is_blank());
        let row = place.parse().ok().and_then(|place| used.nth(place));
        let row = row.map_or(1, |arm| arm.row);
        let last = match last {
            "temperature_c" => "temperature",
            "depth_percent_owf" => "depth",
            other => other,
        };
        format!("arm-{row}-{last}")
    }
}

impl DraftArm {
    fn blank(row: usize) -> Self {
        Self {
            row,
            name: String::new(),
            agent: String::new(),
            amount: String::new(),
            water: String::new(),
            minutes: String::new(),
            temperature: String::new(),
            depth: String::new(),
        }
    }

    fn typed(form: &Signed, row: usize) -> Self {
        let text = |field: &str| form.text(&format!("arm-{row}-{field}"));
        Self {
            row,
            name: text("name"),
            agent: text("agent"),
            amount: text("amount"),
            water: text("water"),
            minutes: text("minutes"),
            temperature: text("temperature"),
            depth: text("depth"),
        }
    }

    fn is_blank(&self) -> bool {
        [
            &self.name,
            &self.agent,
            &self.amount,
            &self.water,
            &self.minutes,
            &self.temperature,
            &self.depth,
        ]
        .iter()
        .all(|text| text.is_empty())
    }

    fn enquired(&self, problems: &mut Problems) -> EnquiredArm {
        let mut figure = |field: &str, text: &str, example: &str| {
            let read = number(text);
            if read.is_none() && !text.is_empty() {
                problems.add(
                    format!("arm-{}-{field}", self.row),
                    text::plan::give_a_number_such_as_or_leave(example),
                );
            }
            read
        };
        EnquiredArm {
            minutes: figure("minutes", &self.minutes, "20"),
            temperature_c: figure("temperature", &self.temperature, "40")
                .map(Celsius::local_to_celsius),
            depth_percent_owf: figure("depth", &self.depth, "2"),
            name: self.name.clone(),
            agent: self.agent.clone(),
            amount: self.amount.clone(),
            water: self.water.clone(),
        }
    }
}

/// A number with a point or a comma; none if it is no finite number.
fn number(text: &str) -> Option<f64> {
    let number: f64 = text.replace(',', ".").parse().ok()?;
    number.is_finite().then_some(number)
}
