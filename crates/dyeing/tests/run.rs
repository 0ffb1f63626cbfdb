//! Runs: clocks from instants, corrections that append, departures in words.

#![allow(clippy::unwrap_used, reason = "functions that only tests call")]

use dyeing::{
    Celsius, Plan, Recipe,
    run::{Event, Run, RunSheet, What, usual_departures},
    run_sheet::StepKind,
};
use proptest::prelude::*;

const SHIRTS: &str = include_str!("../../../docs/recipes/shirts.toml");
const BEGIN: i64 = 1_900_000_000;

fn sheet() -> RunSheet {
    RunSheet::of(&Plan::of(&Recipe::read(SHIRTS).unwrap()).unwrap())
}

/// Adds events as a store does: only those that the run takes.
struct Book {
    events: Vec<Event>,
}

impl Book {
    fn new() -> Self {
        Self { events: Vec::new() }
    }

    fn run(&self) -> Run {
        Run::new(sheet(), self.events.clone())
    }

    fn add(
        &mut self,
        step: Option<u32>,
        what: What,
        of: Option<u32>,
        at_s: i64,
    ) -> Result<bool, String> {
        let now_s = BEGIN + 100_000;
        let new = self
            .run()
            .takes(step, &what, of, at_s, now_s)
            .map_err(|e| e.to_string())?;
        if new {
            let number = self.events.len() as u32 + 1;
            self.events.push(Event {
                number,
                step,
                at_s,
                noted_s: now_s,
                what,
                of,
            });
        }
        Ok(new)
    }

    fn ran(&mut self, step: u32, from_min: i64, to_min: i64) {
        self.add(Some(step), What::Started, None, BEGIN + 60 * from_min)
            .unwrap();
        self.add(Some(step), What::Stopped, None, BEGIN + 60 * to_min)
            .unwrap();
    }

    fn departures(&self) -> String {
        let all = self.run().departures();
        all.iter()
            .map(|d| d.sentence.as_str())
            .collect::<Vec<_>>()
            .join("\n")
    }
}

fn step(kind: StepKind) -> u32 {
    sheet()
        .steps
        .iter()
        .find(|s| s.kind == kind)
        .unwrap()
        .number
}

fn warm(celsius: f64) -> What {
    What::Temperature(Celsius::new(celsius).unwrap())
}

#[test]
fn clocks_run_side_by_side_and_go_on_while_nobody_looks() {
    let mut book = Book::new();
    book.add(Some(1), What::Started, None, BEGIN).unwrap();
    book.add(Some(2), What::Started, None, BEGIN + 900).unwrap();
    let run = book.run();
    assert_eq!(run.running().len(), 2);
    assert_eq!(run.clock(1).elapsed_s(BEGIN + 1_800), 1_800);
    assert_eq!(run.clock(2).elapsed_s(BEGIN + 1_800), 900);
    // Thirty minutes were planned: none left, and then over.
    assert_eq!(run.clock(1).left_s(30.0, BEGIN + 1_800), 0);
    assert_eq!(run.clock(1).left_s(30.0, BEGIN + 1_860), -60);
    // A phone whose clock is behind shows no time below nothing.
    assert_eq!(run.clock(2).elapsed_s(BEGIN), 0);
    assert_eq!(run.next().unwrap().number, 3);
}

#[test]
fn a_clock_stopped_and_started_again_counts_both_spans() {
    let mut book = Book::new();
    book.ran(4, 0, 10);
    book.add(Some(4), What::Started, None, BEGIN + 60 * 30)
        .unwrap();
    let clock = book.run().clock(4);
    assert_eq!(clock.elapsed_s(BEGIN + 60 * 35), 15 * 60);
    assert_eq!(clock.began_s, Some(BEGIN));
}

#[test]
fn a_button_pressed_twice_adds_nothing() {
    let mut book = Book::new();
    assert!(book.add(Some(1), What::Started, None, BEGIN).unwrap());
    assert!(!book.add(Some(1), What::Started, None, BEGIN + 1).unwrap());
    assert!(book.add(Some(1), What::Stopped, None, BEGIN + 60).unwrap());
    assert!(!book.add(Some(1), What::Stopped, None, BEGIN + 61).unwrap());
    assert_eq!(book.events.len(), 2);
}

#[test]
fn corrections_append_and_only_the_last_counts() {
    let mut book = Book::new();
    book.add(Some(1), What::Started, None, BEGIN).unwrap();
    book.add(Some(1), What::Started, Some(1), BEGIN - 600)
        .unwrap();
    book.add(Some(1), What::Started, Some(1), BEGIN - 300)
        .unwrap();
    book.add(Some(7), warm(70.0), None, BEGIN).unwrap();
    book.add(Some(7), warm(90.0), Some(4), BEGIN).unwrap();
    book.add(Some(7), What::Departed("spilled".into()), None, BEGIN)
        .unwrap();
    book.add(
        Some(7),
        What::Withdrawn("wrong step".into()),
        Some(6),
        BEGIN,
    )
    .unwrap();
    let run = book.run();
    assert_eq!(run.events().len(), 7, "all that was noted stays");
    assert_eq!(run.clock(1).elapsed_s(BEGIN), 300);
    let counts: Vec<_> = run
        .noted()
        .iter()
        .map(|n| (n.number, n.corrected))
        .collect();
    assert_eq!(counts, [(1, true), (4, true)]);
    assert_eq!(run.noted()[1].what, warm(90.0));
}

#[test]
fn what_makes_no_sense_is_refused_in_words() {
    let mut book = Book::new();
    book.ran(1, 0, 30);
    book.add(Some(2), What::Started, None, BEGIN).unwrap();
    let ahead = BEGIN + 200_000;
    for (step, what, of, at_s, part) in [
        (Some(99), What::Started, None, BEGIN, "no step 99"),
        (Some(3), What::Stopped, None, BEGIN, "never started"),
        (Some(2), What::Stopped, None, BEGIN - 60, "before it began"),
        (Some(3), What::Started, None, ahead, "time to come"),
        (
            Some(3),
            What::Started,
            None,
            BEGIN - 10_000_000,
            "more than a week ago",
        ),
        (Some(3), What::Departed("  ".into()), None, BEGIN, "empty"),
        (
            Some(3),
            What::Remarked("x".repeat(501)),
            None,
            BEGIN,
            "501 characters",
        ),
        (None, What::Finished, None, BEGIN, "still runs"),
        (None, warm(60.0), None, BEGIN, "which step"),
        (Some(3), What::Finished, None, BEGIN, "as a whole"),
        (
            Some(1),
            What::Withdrawn(String::new()),
            None,
            BEGIN,
            "which note",
        ),
        (
            Some(1),
            What::Withdrawn(String::new()),
            Some(9),
            BEGIN,
            "no note 9",
        ),
        (Some(2), What::Started, Some(1), BEGIN, "another step"),
        (Some(1), warm(60.0), Some(1), BEGIN, "of its kind"),
        (
            Some(1),
            What::Started,
            Some(1),
            BEGIN + 3_600,
            "out of order",
        ),
    ] {
        let told = book.add(step, what.clone(), of, at_s).unwrap_err();
        assert!(told.contains(part), "{what:?}: {told}");
    }
    book.add(Some(2), What::Stopped, None, BEGIN + 60).unwrap();
    book.add(None, What::Finished, None, BEGIN + 60).unwrap();
    let told = book
        .add(Some(3), What::Started, None, BEGIN + 70)
        .unwrap_err();
    assert!(told.contains("is over"), "{told}");
    // A slip that is noticed later can still be written down, and the end be taken back.
    book.add(Some(3), What::Departed("left out".into()), None, BEGIN + 80)
        .unwrap();
    let end = book
        .events
        .iter()
        .find(|e| e.what == What::Finished)
        .unwrap()
        .number;
    book.add(
        None,
        What::Withdrawn("not yet".into()),
        Some(end),
        BEGIN + 90,
    )
    .unwrap();
    assert!(book.add(Some(3), What::Started, None, BEGIN + 95).unwrap());
}

#[test]
fn departures_are_said_with_their_step_and_arms() {
    let mut book = Book::new();
    let (hold, treat, soak) = (7, step(StepKind::AfterTreat), step(StepKind::MatchingSoak));
    assert_eq!(soak, treat + 1);
    book.ran(1, 0, 10);
    book.ran(hold, 40, 75);
    book.add(Some(hold), warm(80.0), None, BEGIN).unwrap();
    book.add(Some(hold), warm(87.0), None, BEGIN).unwrap();
    book.add(
        Some(hold),
        What::Departed("not stirred all the time".into()),
        None,
        BEGIN,
    )
    .unwrap();
    book.ran(treat, 80, 100);
    book.ran(soak, 80, 92);
    book.add(
        None,
        What::Departed("Another pot was used.".into()),
        None,
        BEGIN,
    )
    .unwrap();
    let open = book.departures();
    for part in [
        "by a factor of 1.5",
        "Step 1, Soak the goods: it took 10 min instead of 30 min.",
        "it took 35 min instead of 20 min.",
        "it was at 80 °C instead of 90 °C.",
        "not stirred all the time.",
        "In the run as a whole: Another pot was used.",
        "Matching soak (plain): it took 12 min instead of 20 min.",
        "took 12 min and the after-treatment 20 min",
    ] {
        assert!(open.contains(part), "{part} is not in {open}");
    }
    assert!(!open.contains("87") && !open.contains("left out"));
    book.add(None, What::Finished, None, BEGIN + 9_000).unwrap();
    let over = book.departures();
    assert!(
        over.contains("Step 3, Add turquoise: no start was noted, so it may have been left out."),
        "{over}"
    );
}

#[test]
fn a_run_by_the_sheet_departs_from_labels_alone() {
    let mut book = Book::new();
    let mut minute = 0;
    for step in sheet().steps {
        let planned = step.minutes.map_or(600, |m| m as i64);
        book.ran(step.number, minute, minute + planned);
        if let Some(at) = step.to_c {
            book.add(
                Some(step.number),
                warm(at.celsius()),
                None,
                BEGIN + 60 * minute,
            )
            .unwrap();
        }
        if step.kind != StepKind::AfterTreat {
            minute += planned;
        }
    }
    book.add(None, What::Finished, None, BEGIN + 90_000)
        .unwrap();
    let departures = book.run().departures();
    assert_eq!(departures.len(), 1, "{departures:?}");
}

#[test]
fn every_kind_of_step_offers_departures_that_fit_on_a_button() {
    for step in sheet().steps {
        let offered = usual_departures(step.kind);
        assert!(offered.len() >= 3 && offered.iter().all(|t| t.len() <= 34));
    }
}

#[test]
fn a_kept_sheet_reads_back_as_it_was() {
    let sheet = sheet();
    let text = serde_json::to_string(&sheet).unwrap();
    assert_eq!(serde_json::from_str::<RunSheet>(&text).unwrap(), sheet);
}

proptest! {
    /// However taps fall, a clock never runs backwards, and every event stays.
    #[test]
    fn clocks_never_run_backwards(taps in prop::collection::vec((1u32..4, 0u8..5, 0i64..5_000), 1..40)) {
        let mut book = Book::new();
        let mut kept = 0;
        for (step, kind, at) in taps {
            let (what, of) = match kind {
                0 => (What::Started, None),
                1 => (What::Stopped, None),
                2 => (warm(50.0), None),
                3 => (What::Started, Some(step)),
                _ => (What::Withdrawn("slip".into()), Some(step)),
            };
            kept += usize::from(book.add(Some(step), what, of, BEGIN + at).unwrap_or(false));
            let run = book.run();
            prop_assert_eq!(run.events().len(), kept);
            for step in 1..4 {
                let clock = run.clock(step);
                let (early, late) = (clock.elapsed_s(BEGIN + 5_000), clock.elapsed_s(BEGIN + 6_000));
                prop_assert!(0 <= early && early <= late && late - early <= 1_000);
            }
        }
    }
}
