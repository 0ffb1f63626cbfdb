//! Recipes, what they are for, and runs with their clocks and departures.

use crate::desk::{Desk, NOW};
use dyeing::{Celsius, run::What};
use store::{Bench, NewEvent, RecipeAim, StoreError};
use trial::{TrialId, plan::Plan};

const NAPKINS: &str = include_str!("../../../../docs/recipes/napkins.toml");
const SHIRTS: &str = include_str!("../../../../docs/recipes/shirts.toml");
const TWO_ARMS: &str = include_str!("../../../../docs/plans/two-arms.toml");
const NOW_S: i64 = 1_900_000_000;

fn started(step: u32, at_s: i64) -> NewEvent {
    NewEvent {
        step: Some(step),
        at_s,
        what: What::Started,
        of: None,
    }
}

/// Recipes that a trial's results show.
fn meant_for(bench: &Bench, trial: TrialId) -> Vec<String> {
    let slug = bench.trial_by_id(trial).unwrap().unwrap().slug;
    let baths = bench.results(&slug).unwrap().unwrap().baths;
    baths.into_iter().map(|bath| bath.recipe).collect()
}

#[test]
fn every_revision_stays_as_it_was_written() {
    let mut desk = Desk::new();
    let bench = &mut desk.bench;
    let slug = bench.keep_recipe(NAPKINS, "written", NOW).unwrap();
    assert_eq!(slug, "green-napkins");
    assert_eq!(
        bench.keep_recipe(NAPKINS, "again", NOW).unwrap(),
        "green-napkins-2"
    );
    let paler = NAPKINS.replace("0.8 % owf", "0.4 % owf");
    assert_eq!(
        bench.revise_recipe(&slug, 1, &paler, "paler", NOW).unwrap(),
        2
    );
    let newest = bench.recipe(&slug, None).unwrap().unwrap();
    assert_eq!((newest.number, newest.text.as_str()), (2, paler.as_str()));
    let first = bench.recipe(&slug, Some(1)).unwrap().unwrap();
    assert_eq!(first.text, NAPKINS, "comments too");
    let late = bench
        .revise_recipe(&slug, 1, NAPKINS, "late", NOW)
        .unwrap_err();
    assert!(late.to_string().contains("changed in the meantime"));
    assert_eq!(bench.recipes().unwrap()[1].revisions, 2);
    assert_eq!(bench.recipe("nothing", None).unwrap(), None);
}

#[test]
fn what_can_not_be_worked_out_is_not_kept() {
    let mut desk = Desk::new();
    for (text, part) in [
        ("no recipe".to_owned(), "line 1"),
        (NAPKINS.replace("250 g", "0 g"), "usually 130 to 200 g"),
        (NAPKINS.replace("20:1", "1//3"), "character 3"),
        (format!("{NAPKINS}#{}", " ".repeat(100_001)), "shorter"),
    ] {
        let error = desk.bench.keep_recipe(&text, "w", NOW).unwrap_err();
        assert!(matches!(error, StoreError::Input { .. }));
        assert!(error.to_string().contains(part), "{error}");
    }
    assert!(desk.bench.recipes().unwrap().is_empty());
}

#[test]
fn a_recipe_for_a_plan_is_for_its_trials_too() {
    let mut desk = Desk::new();
    let other = desk.trial();
    let bench = &mut desk.bench;
    let plan = bench
        .keep_plan(&Plan::from_toml(TWO_ARMS).unwrap(), "p", NOW)
        .unwrap();
    let trial = bench.start_trial(&plan, 1, NOW).unwrap();
    let slug = bench.keep_recipe(NAPKINS, "written", NOW).unwrap();
    assert_eq!(
        bench.recipe(&slug, None).unwrap().unwrap().aim,
        RecipeAim::Nothing
    );
    bench.aim_recipe(&slug, Some(&plan), None, NOW).unwrap();
    assert_eq!(
        bench.plan(&plan, None).unwrap().unwrap().recipes,
        [slug.as_str()]
    );
    assert_eq!(meant_for(bench, trial), [slug.as_str()]);
    bench
        .aim_recipe(&slug, None, Some(&other.slug), NOW)
        .unwrap();
    assert!(meant_for(bench, trial).is_empty());
    assert_eq!(meant_for(bench, other.id), [slug.as_str()]);
    bench.aim_recipe(&slug, None, None, NOW).unwrap();
    assert!(meant_for(bench, other.id).is_empty());
    for (recipe, plan, trial) in [
        ("no", None, None),
        (&slug, Some("no"), None),
        (&slug, None, Some("no")),
    ] {
        let error = bench.aim_recipe(recipe, plan, trial, NOW).unwrap_err();
        assert!(error.to_string().starts_with("There is no"), "{error}");
    }
}

#[test]
fn clocks_and_notes_outlive_the_program() {
    let mut desk = Desk::new();
    let slug = desk.bench.keep_recipe(SHIRTS, "written", NOW).unwrap();
    let first = desk.bench.begin_run(&slug, 1, None, "", NOW).unwrap();
    let second = desk
        .bench
        .begin_run(&slug, 1, None, "second pot", NOW)
        .unwrap();
    assert!(
        desk.bench
            .note_run(first, &started(1, NOW_S), NOW_S)
            .unwrap()
    );
    assert!(
        desk.bench
            .note_run(second, &started(2, NOW_S + 60), NOW_S + 60)
            .unwrap()
    );
    assert!(
        !desk
            .bench
            .note_run(first, &started(1, NOW_S + 1), NOW_S + 1)
            .unwrap()
    );
    let warm = NewEvent {
        step: Some(1),
        at_s: NOW_S + 30,
        what: What::Temperature(Celsius::new(38.5).unwrap()),
        of: None,
    };
    desk.bench.note_run(first, &warm, NOW_S + 30).unwrap();
    let before = desk.bench.run(first).unwrap().unwrap();
    let mut desk = desk.restart();
    assert_eq!(desk.bench.run(first).unwrap().unwrap(), before);
    assert_eq!(before.run.clock(1).elapsed_s(NOW_S + 600), 600);
    let runs = desk.bench.runs().unwrap();
    assert_eq!(
        runs.iter()
            .map(|r| (r.title.as_str(), r.clocks))
            .collect::<Vec<_>>(),
        [
            ("second pot", 1),
            ("turquoise shirts, with and without fixative", 1)
        ]
    );
    // A newer recipe leaves a run's sheet as it was.
    let other = SHIRTS.replace("presoak = \"30 min\"", "presoak = \"60 min\"");
    desk.bench
        .revise_recipe(&slug, 1, &other, "longer", NOW)
        .unwrap();
    assert_eq!(
        desk.bench.run(first).unwrap().unwrap().run.sheet.steps[0].minutes,
        Some(30.0)
    );
    assert_eq!(
        desk.bench.recipe(&slug, None).unwrap().unwrap().runs.len(),
        2
    );
    assert_eq!(desk.bench.run(99).unwrap(), None);
    let unknown = desk.bench.note_run(99, &warm, NOW_S).unwrap_err();
    assert!(unknown.to_string().contains("no run"), "{unknown}");
    let refused = desk
        .bench
        .note_run(first, &started(99, NOW_S), NOW_S)
        .unwrap_err();
    assert!(refused.to_string().contains("no step 99"), "{refused}");
}

/// Two handles, as of two programs, never give one number twice.
#[test]
fn two_phones_note_at_once() {
    let mut desk = Desk::new();
    let (_, run) = desk.run_of(SHIRTS, None, "");
    std::thread::scope(|scope| {
        for phone in 0..4 {
            let home = desk.home.path();
            scope.spawn(move || {
                let mut bench = Bench::open(home).unwrap();
                for k in 0..5 {
                    let event = NewEvent {
                        step: Some(1),
                        at_s: NOW_S,
                        what: What::Remarked(format!("{phone} {k}")),
                        of: None,
                    };
                    assert!(bench.note_run(run, &event, NOW_S).unwrap());
                }
            });
        }
    });
    let kept = desk.bench.run(run).unwrap().unwrap();
    let numbers: Vec<u32> = kept.run.events().iter().map(|e| e.number).collect();
    assert_eq!(numbers, (1..=20).collect::<Vec<_>>());
}

#[test]
fn departures_come_with_the_trials_results() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let (slug, run) = desk.run_of(SHIRTS, Some(&trial.slug), "Monday");
    desk.bench
        .begin_run(&slug, 1, None, "not of the trial", NOW)
        .unwrap();
    let spilled = NewEvent {
        step: Some(3),
        at_s: NOW_S,
        what: What::Departed("some was spilled".into()),
        of: None,
    };
    desk.bench.note_run(run, &spilled, NOW_S).unwrap();
    let departures = desk.bench.results(&trial.slug).unwrap().unwrap().departures;
    let said: Vec<&str> = departures.iter().map(|d| d.sentence.as_str()).collect();
    assert_eq!(said.len(), 2);
    assert!(said[0].contains("by a factor of 1.5"), "{said:?}");
    let baths = desk.bench.results(&trial.slug).unwrap().unwrap().baths;
    assert_eq!((baths.len(), baths[0].runs, baths[0].revision), (1, 1, 1));
    assert_eq!(said[1], "Step 3, Add turquoise: some was spilled.");
    assert_eq!(
        (departures[1].run, departures[1].title.as_str()),
        (run, "Monday")
    );
    let back = NewEvent {
        what: What::Withdrawn("it was not".into()),
        of: Some(1),
        ..spilled
    };
    desk.bench.note_run(run, &back, NOW_S).unwrap();
    assert_eq!(desk.bench.departures_of_trial(trial.id).unwrap().len(), 1);
    assert_eq!(desk.bench.runs_of_trial(trial.id).unwrap().len(), 1);
    let error = desk
        .bench
        .begin_run(&slug, 1, Some("no"), "", NOW)
        .unwrap_err();
    assert!(error.to_string().contains("no trial"), "{error}");
}

/// A revision that no program would have kept, put beside the others.
fn keep_unreadable(desk: &Desk, slug: &str, number: u32, text: &str) {
    let database = rusqlite::Connection::open(desk.home.path().join("woadstone.sqlite")).unwrap();
    let rows = database.execute(
        "INSERT INTO recipe_revision (recipe_id, number, content, change, made_at)
         SELECT id, ?2, ?3, 'by hand', ?4 FROM recipe WHERE slug = ?1",
        rusqlite::params![slug, number, text, NOW],
    );
    assert_eq!(rows.unwrap(), 1);
}

#[test]
fn one_recipe_that_cant_be_understood_leaves_the_others_in_the_list() {
    let mut desk = Desk::new();
    let slug = desk.bench.keep_recipe(NAPKINS, "written", NOW).unwrap();
    let other = desk.bench.keep_recipe(SHIRTS, "written", NOW).unwrap();
    keep_unreadable(&desk, &slug, 2, &NAPKINS.replace("0.8 % owf", "some"));
    let list = desk.bench.recipes().unwrap();
    assert_eq!((list[0].slug.as_str(), list.len()), (other.as_str(), 2));
    assert!(list[0].bath.is_ok());
    assert_eq!(
        (list[1].name.as_str(), list[1].revisions),
        ("green-napkins", 2)
    );
    let why = list[1].bath.as_ref().unwrap_err();
    assert!(why.contains("some") && why.contains("recipe"), "{why}");
}

#[test]
fn departures_are_told_without_a_recipe_that_cant_be_understood() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let (slug, run) = desk.run_of(SHIRTS, Some(&trial.slug), "Monday");
    keep_unreadable(&desk, &slug, 2, "no recipe");
    let database = rusqlite::Connection::open(desk.home.path().join("woadstone.sqlite")).unwrap();
    database
        .execute_batch(
            "DROP TRIGGER run_stays_as_it_is;
             UPDATE run SET revision_id = (SELECT id FROM recipe_revision WHERE number = 2);",
        )
        .unwrap();
    let american = locale::Locale {
        measures: locale::Measures::UsCustomary,
        ..locale::Locale::DATA
    };
    locale::within(american, || {
        assert_eq!(desk.bench.departures_of_trial(trial.id).unwrap().len(), 1);
        let shown = desk.bench.run_as_shown(run).unwrap().unwrap();
        let texts: String = shown.run.sheet.steps.into_iter().map(|s| s.text).collect();
        assert!(texts.contains(" lb ") || texts.contains(" oz "), "{texts}");
    });
}
