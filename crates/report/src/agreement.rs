//! How far eyes agree, laid out in cards.

use crate::text::agreement as say;
use crate::words;
use askama::Template;
use trial::eyes::{Agreement, CatchPairs, Coefficient, Repeats, WithInstrument};

/// How agreement is to be read.
pub fn about() -> &'static str {
    say::agreement_is_1_where_people_always_give()
}

/// How far the eyes of one session agree.
pub struct AgreementCard {
    /// Which session, in words.
    pub title: String,
    /// What it shows, each a sentence.
    pub sentences: Vec<String>,
    /// All figures, as a table in HTML.
    pub table: String,
}

/// What, who, pairs, figure with interval, meaning.
type Row = [String; 5];

#[derive(Template)]
#[template(path = "_agreement.html")]
struct Table {
    label: String,
    rows: Vec<Row>,
}

/// A card for each closed session.
pub(crate) fn cards(sessions: &[Agreement]) -> Vec<AgreementCard> {
    sessions.iter().zip(1..).map(card).collect()
}

fn card((session, number): (&Agreement, usize)) -> AgreementCard {
    let rows = [people(session)]
        .into_iter()
        .chain(session.repeats.iter().map(repeats))
        .chain(session.catch_pairs.iter().map(catch_pairs))
        .chain(session.with_instrument.iter().map(with_instrument));
    let who = match session.people.judges {
        0 => say::nobody_graded_a_pair().to_owned(),
        1 => say::one_person_judged().to_owned(),
        count => say::people_judged(count, session.way.in_words()),
    };
    let way = session.way.in_words();
    let title = format!("{}, {way}", words::stage_heading(session.stage));
    let table = Table {
        label: say::agreement_session(title.to_lowercase(), number),
        rows: rows.collect(),
    };
    AgreementCard {
        title,
        sentences: vec![who, session.people.plain.clone()],
        // A string takes everything that is written to it.
        table: table.render().unwrap_or_default(),
    }
}

fn people(session: &Agreement) -> Row {
    [
        say::people_with_each_other().to_owned(),
        match session.people.judges {
            1 => say::n_1_person().to_owned(),
            count => say::people(count),
        },
        session.people.pairs.to_string(),
        figure(&session.people),
        session.people.plain.clone(),
    ]
}

fn repeats(own: &Repeats) -> Row {
    let [low, high] = own.same_interval.map(words::percent);
    [
        say::with_themself().to_owned(),
        own.judge.clone(),
        own.pairs.to_string(),
        say::same_grade_of_to_same_interval2(own.same, own.pairs, low, high),
        say::of_within_a_half_step_one_look(own.near, own.pairs, words::number(own.sd)),
    ]
}

fn catch_pairs(own: &CatchPairs) -> Row {
    let [low, high] = own.interval.map(words::percent);
    [
        say::pairs_without_a_difference().to_owned(),
        own.judge.clone(),
        own.pairs.to_string(),
        say::seen_in_of_to_interval2(own.seen, own.pairs, low, high),
        match (own.seen, own.fails) {
            (0, _) => say::saw_none_where_there_was_none().to_owned(),
            (_, false) => say::lowest_grade_near_what_an_eye_does(&own.lowest),
            (_, true) => say::lowest_grade_sees_differences_where(&own.lowest),
        },
    ]
}

fn with_instrument(own: &WithInstrument) -> Row {
    let interval = own.mean_interval.map_or(String::new(), |[low, high]| {
        format!(" ({} to {})", words::number(low), words::number(high))
    });
    [
        match own.staining {
            true => say::with_readings_staining().to_owned(),
            false => say::with_readings_change().to_owned(),
        },
        own.judge.clone(),
        own.pairs.to_string(),
        say::eye_less_readings_grades(figure(&own.kappa), words::number(own.mean), &interval),
        match own.mean {
            mean if mean <= -0.25 => say::stricter_than_the_formula(&own.kappa.plain),
            mean if mean >= 0.25 => say::milder_than_the_formula(&own.kappa.plain),
            _ => own.kappa.plain.clone(),
        },
    ]
}

fn figure(found: &Coefficient) -> String {
    match (found.value, found.interval) {
        (Some(value), Some([low, high])) => format!(
            "{} ({} to {})",
            words::number(value),
            words::number(low),
            words::number(high)
        ),
        (Some(value), None) => words::number(value),
        (None, _) => say::no_figure().to_owned(),
    }
}
