//! Two colours of a trial side by side, in pictures, figures and words.

use crate::text;
use crate::{swatch, words};
use colour::{
    Lab,
    grade::{Grade, along},
};
use trial::{
    Source, Trial,
    side_by_side::{SideBySide, Sight, Together},
};

/// The way on which grades are shown where the two colours hardly differ: lighter, as
/// most cloth fades.
const LIGHTER: [f64; 3] = [1.0, 0.0, 0.0];
/// Below this difference its own direction is chance, CIEDE2000.
const NO_DIRECTION_DE00: f64 = 0.3;
/// Below this a part of a difference is not worth a word, CIELAB units.
const NO_WORD: f64 = 0.3;
/// The gap of a pair that doesn't touch, hundredths of the picture's width.
const GAP: f64 = 4.0;

/// What a page shows of two colours.
pub struct Comparison {
    /// The two, SVG.
    pub pair: String,
    /// Each with its numbers.
    pub numbers: [String; 2],
    /// Which of them no sRGB screen can show.
    pub beyond: Vec<String>,
    /// CIEDE2000 with its interval.
    pub difference: String,
    /// Differences of L*, a*, b*.
    pub parts: String,
    /// The same in words.
    pub words: String,
    /// What the interval rests on.
    pub rests_on: String,
    /// The grade of the change, where the colours are for the scale's light.
    pub grade: Option<String>,
    /// Where to and how grades are shown.
    pub about_ladder: String,
    /// What each half-step looks like around the first colour.
    pub ladder: Vec<Step>,
}

/// One half-step of the grey scale, around the first colour.
pub struct Step {
    /// The grade, such as `4-5`.
    pub grade: String,
    /// The first colour beside one that has changed so much, SVG; none where the way
    /// leads out of all surface colours before.
    pub pair: Option<String>,
    /// The colour's numbers, or why there is none.
    pub about: String,
    /// Whether it is the grade of the two colours.
    pub here: bool,
}

/// What a sight is called: "P1, after 5 rounds".
pub fn name(trial: &Trial, sight: Sight) -> String {
    let code = trial
        .piece(sight.piece)
        .map_or("", |piece| piece.code.as_str());
    format!("{code}, {}", words::stage(sight.stage))
}

/// Lays two colours out; `touching` edges, or a small gap between them.
pub fn compare(found: &SideBySide, names: [&str; 2], touching: bool) -> Comparison {
    let gap = if touching { 0.0 } else { GAP };
    let [first, second] = found.labs;
    let [low, high] = found.interval;
    let change = [0, 1, 2].map(|k| second.to_array()[k] - first.to_array()[k]);
    let of_its_own = found.de00 >= NO_DIRECTION_DE00;
    let direction = if of_its_own { change } else { LIGHTER };
    let title = text::compare::beside_names2(names[0], names[1]);
    Comparison {
        pair: swatch::side_by_side(found.labs, &title, gap),
        numbers: found.labs.map(swatch::numbers),
        beyond: [0, 1]
            .into_iter()
            .filter(|k| !swatch::in_srgb(found.labs[*k]))
            .map(|k| names[k].to_owned())
            .collect(),
        difference: words::with_interval(found.de00, low, high),
        parts: format!(
            "\u{394}L* {:+.1} \u{394}a* {:+.1} \u{394}b* {:+.1}",
            change[0], change[1], change[2]
        )
        .replace('-', "\u{2212}"),
        words: in_words(first, second),
        rests_on: rests_on(found),
        grade: found
            .grade
            .map(|(value, grade)| format!("{grade} ({})", words::number(value.max(1.0)))),
        about_ladder: match (found.grade.is_some(), of_its_own) {
            (false, _) => text::compare::grades_are_made_for_d65_and_10(&found.view),
            (true, true) => text::compare::beside_colours_that_have_changed_along(
                locale::capital(names[0]),
                names[1],
            ),
            (true, false) => {
                text::compare::the_two_hardly_differ_so_the_way(locale::capital(names[0]))
            }
        },
        ladder: match found.grade {
            None => Vec::new(),
            Some((_, here)) => (2..=10)
                .rev()
                .map(|half_steps| step(first, direction, half_steps, here, gap))
                .collect(),
        },
    }
}

fn step(first: Lab, direction: [f64; 3], half_steps: u8, here: Grade, gap: f64) -> Step {
    let grade = Grade::from_half_steps(half_steps);
    let after = along(first, direction, grade.value());
    let about = match after {
        None => text::compare::out_of_reach_no_surface().to_owned(),
        Some(after) if swatch::in_srgb(after) => swatch::numbers(after),
        Some(after) => text::compare::beyond_what_an_srgb_screen_shows(swatch::numbers(after)),
    };
    Step {
        pair: after.map(|after| {
            let name = text::compare::a_change_of_grade(grade);
            swatch::side_by_side([first, after], &name, gap)
        }),
        about,
        here: grade == here,
        grade: grade.to_string(),
    }
}

/// How the second colour differs from the first: "lighter by 3.2, less red by 1.0".
fn in_words(first: Lab, second: Lab) -> String {
    let mut parts = Vec::new();
    let mut say = |by: f64, more: &str, less: &str| {
        if by.abs() >= NO_WORD {
            let word = if by > 0.0 { more } else { less };
            parts.push(text::compare::by(word, format_args!("{:.1}", by.abs())));
        }
    };
    say(
        second.l - first.l,
        text::compare::lighter(),
        text::compare::darker(),
    );
    say(
        second.a - first.a,
        text::compare::redder(),
        text::compare::greener(),
    );
    say(
        second.b - first.b,
        text::compare::yellower(),
        text::compare::bluer(),
    );
    say(
        second.chroma() - first.chroma(),
        text::compare::stronger_in_colour(),
        text::compare::duller(),
    );
    match parts.as_slice() {
        [] => text::compare::the_second_looks_like_the_first().to_owned(),
        parts => text::compare::the_second(parts.join(", ")),
    }
}

fn rests_on(found: &SideBySide) -> String {
    let what = match found.source {
        Source::Photo => text::compare::photos(),
        Source::Spectrum => text::compare::spectra_from_elsewhere(),
        Source::Lab => text::compare::lab_values_from_elsewhere(),
    };
    match found.together {
        Together::OnePhoto => text::compare::both_lie_on_one_photo().to_owned(),
        Together::Photos => text::compare::they_lie_on_different_photos().to_owned(),
        Together::Elsewhere => text::compare::both_are(what),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use colour::difference::ciede2000;

    fn found(first: Lab, second: Lab) -> SideBySide {
        let faded = colour::grade::fade(first, second);
        SideBySide {
            source: Source::Photo,
            view: "D65/10".into(),
            labs: [first, second],
            de00: ciede2000(first, second),
            interval: [0.0, 9.0],
            together: Together::OnePhoto,
            grade: Some((faded.value, faded.grade)),
        }
    }

    #[test]
    fn words_say_what_the_numbers_do() {
        let text = in_words(Lab::new(40.0, 30.0, 10.0), Lab::new(43.0, 28.0, 10.1));
        assert_eq!(
            text,
            "The second is lighter by 3.0, greener by 2.0, duller by 1.9."
        );
        let same = Lab::new(40.0, 30.0, 10.0);
        assert!(in_words(same, same).contains("like the first"));
    }

    #[test]
    fn the_ladder_has_nine_steps_and_marks_its_own() {
        let shown = compare(
            &found(Lab::new(41.0, 20.0, 5.0), Lab::new(44.4, 20.0, 5.0)),
            ["A", "B"],
            true,
        );
        assert_eq!(shown.ladder.len(), 9);
        let here: Vec<&str> = shown
            .ladder
            .iter()
            .filter(|s| s.here)
            .map(|s| s.grade.as_str())
            .collect();
        assert_eq!(here, ["3"]);
        assert!(shown.ladder.iter().all(|step| step.pair.is_some()));
        assert!(shown.beyond.is_empty() && !shown.pair.contains("style="));
    }

    #[test]
    fn colours_that_no_screen_shows_and_ways_that_end_are_said() {
        let shown = compare(
            &found(Lab::new(97.0, -5.0, 100.0), Lab::new(98.0, -5.0, 100.0)),
            ["pale", "paler"],
            false,
        );
        assert_eq!(shown.beyond, ["pale", "paler"]);
        let last = shown.ladder.last().expect("nine steps");
        assert!(last.pair.is_none() && last.about.contains("Out of reach"));
        let near = compare(
            &found(Lab::new(40.0, 2.0, 0.0), Lab::new(40.01, 2.0, 0.0)),
            ["a", "b"],
            true,
        );
        assert!(near.about_ladder.contains("getting lighter"));
    }
}
