//! What happened in runs stands in the journal, told from the rows that the runs keep.

use crate::desk::Desk;
use dyeing::balance::{WaterNote, WrittenReading};
use dyeing::{Celsius, run::What};
use store::{Entry, NewEvent, Place, RevisedThing, Seen};
use trial::{TrialId, plan::Plan};

const SHIRTS: &str = include_str!("../../../../docs/recipes/shirts.toml");
/// 2030-04-01T10:00:00Z, an hour after [`NOW`], s since 1970.
const RUN_S: i64 = 1_901_268_000;

fn told(desk: &Desk, trial: Option<TrialId>) -> Vec<Entry> {
    desk.bench.journal(trial, Place::NEWEST, 99).unwrap()
}

fn is_of_run(entry: &Entry) -> bool {
    matches!(entry.see, Some(Seen::Run(_)))
}

/// A run with a note of every kind, in turn a minute apart.
fn run(desk: &mut Desk, trial: Option<&str>) -> i64 {
    let (_, run) = desk.run_of(SHIRTS, trial, "Monday");
    let notes = [
        (Some(1), What::Started, None),
        (
            Some(1),
            What::Temperature(Celsius::new(40.0).unwrap()),
            None,
        ),
        (
            Some(1),
            What::Temperature(Celsius::new(38.0).unwrap()),
            Some(2),
        ),
        (Some(1), What::Stopped, None),
        (Some(3), What::Departed("some was <spilled>".into()), None),
        (None, What::Remarked("smells odd".into()), None),
        (None, What::Withdrawn("it was the drain".into()), Some(6)),
        (None, What::Finished, None),
    ];
    for (minute, (step, what, of)) in (0i64..).zip(notes) {
        let noted_s = RUN_S + 60 * minute;
        let event = NewEvent {
            step,
            at_s: noted_s,
            what,
            of,
        };
        assert!(desk.bench.note_run(run, &event, noted_s).unwrap());
    }
    let rinse = WrittenReading {
        volume: "5 L".into(),
        looks_like: Some("1:20".into()),
        ..WrittenReading::default()
    };
    let rinse = WaterNote::Rinse(rinse);
    desk.bench
        .note_water(run, &rinse, None, RUN_S + 600)
        .unwrap();
    run
}

#[test]
fn every_tap_of_a_trials_run_is_told_in_words_at_its_time() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let run = run(&mut desk, Some(&trial.slug));
    let entries = told(&desk, Some(trial.id));
    let of_run: Vec<&Entry> = entries.iter().filter(|entry| is_of_run(entry)).collect();
    let words: Vec<(&str, &str)> = of_run
        .iter()
        .map(|entry| (entry.what.as_str(), entry.sentence.as_str()))
        .collect();
    let first = desk.bench.run(run).unwrap().unwrap().run.sheet.steps[0]
        .title
        .clone();
    let at_first = format!("at step 1, {first}, of the run “Monday”");
    assert_eq!(
        words,
        [
            ("rinse read", "A rinse was read in the run “Monday”."),
            ("run finished", "The run “Monday” was finished."),
            (
                "note taken back",
                "A note was taken back in the run “Monday”: it was the drain."
            ),
            ("remark", "Noted in the run “Monday”: smells odd."),
            (
                "done otherwise",
                "Something was done otherwise at step 3, Add turquoise, of the run “Monday”: some was <spilled>."
            ),
            (
                "clock stopped",
                &format!("The clock was stopped {at_first}.")
            ),
            (
                "temperature noted",
                &format!(
                    "38 °C (100 °F) was noted {at_first}. It stands in place of an earlier one."
                )
            ),
            (
                "temperature noted",
                &format!("40 °C (104 °F) was noted {at_first}.")
            ),
            (
                "clock started",
                &format!("The clock was started {at_first}.")
            ),
        ]
    );
    assert!(of_run.iter().all(|entry| {
        entry.see == Some(Seen::Run(run))
            && entry
                .trial
                .as_ref()
                .is_some_and(|(slug, _)| *slug == trial.slug)
    }));
    assert_eq!(of_run[8].at, "2030-04-01T10:00:00Z");
    // Newest first, whatever keeps an entry.
    assert!(entries.is_sorted_by(|a, b| a.at >= b.at));
    assert_eq!(entries.last().unwrap().what, "trial entered");
}

#[test]
fn what_happened_at_another_time_than_it_was_noted_says_when() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let (_, run) = desk.run_of(SHIRTS, Some(&trial.slug), "");
    let late = NewEvent {
        step: None,
        at_s: RUN_S - 1800,
        what: What::Remarked("foam".into()),
        of: None,
    };
    desk.bench.note_run(run, &late, RUN_S).unwrap();
    let newest = &told(&desk, Some(trial.id))[0];
    assert_eq!(newest.at, "2030-04-01T10:00:00Z");
    assert!(
        newest
            .sentence
            .ends_with(" It happened on 2030-04-01 at 09:30, UTC."),
        "{}",
        newest.sentence
    );
}

#[test]
fn a_run_of_no_trial_is_told_in_the_journal_of_the_bench_only() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    run(&mut desk, None);
    assert!(
        told(&desk, Some(trial.id))
            .iter()
            .all(|entry| !is_of_run(entry))
    );
    let all = told(&desk, None);
    assert_eq!(all.iter().filter(|entry| is_of_run(entry)).count(), 9);
}

#[test]
fn pages_of_any_length_tell_each_entry_once() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    run(&mut desk, Some(&trial.slug));
    desk.marked_photo(&trial, 0, "a");
    for about in [None, Some(trial.id)] {
        let all = told(&desk, about);
        assert!(all.len() > 10);
        for most in [1, 2, 5] {
            let (mut paged, mut before) = (Vec::new(), Place::NEWEST);
            loop {
                // As an address carries it.
                let place = before.to_string().parse().unwrap();
                let page = desk.bench.journal(about, place, most).unwrap();
                let Some(last) = page.last() else { break };
                before = last.place;
                paged.extend(page);
            }
            assert_eq!(paged, all, "{most} a page");
        }
    }
    for nonsense in [
        "",
        "1",
        "1.2",
        "1.2.3.4",
        "a.b.c",
        "1.2.",
        "1.2.99999999999999999999",
    ] {
        assert!(nonsense.parse::<Place>().is_err(), "{nonsense}");
    }
}

#[test]
fn revisions_of_its_plan_and_recipes_stand_in_a_trials_journal() {
    const TWO_ARMS: &str = include_str!("../../../../docs/plans/two-arms.toml");
    let mut desk = Desk::new();
    let plan = Plan::from_toml(TWO_ARMS).unwrap();
    let bench = &mut desk.bench;
    let at = |hour: u32| format!("2030-04-02T{hour:02}:00:00Z");
    let slug = bench.keep_plan(&plan, "asked", &at(1)).unwrap();
    let mut more = plan.clone();
    more.arms[0].pieces += 1;
    let revised = bench.revise_plan(&slug, 1, &more, "a piece more", &at(2));
    assert_eq!(revised.unwrap(), 2);
    let trial = bench.start_trial(&slug, 2, &at(3)).unwrap();
    let another = bench.start_trial(&slug, 2, &at(3)).unwrap();
    bench
        .revise_plan(&slug, 2, &plan, "a piece less", &at(4))
        .unwrap();
    // For the plan; for the trial once, no longer; dyed by; and one that is none of its own.
    let planned = bench.keep_recipe(SHIRTS, "written", &at(5)).unwrap();
    bench
        .aim_recipe(&planned, Some(&slug), None, &at(6))
        .unwrap();
    let name = bench.trial_by_id(trial).unwrap().unwrap().slug;
    let left = bench.keep_recipe(SHIRTS, "written", &at(7)).unwrap();
    for aim in [Some(name.as_str()), None] {
        bench.aim_recipe(&left, None, aim, &at(8)).unwrap();
    }
    let dyed = bench.keep_recipe(SHIRTS, "typed in", &at(9)).unwrap();
    bench.begin_run(&dyed, 1, Some(&name), "", &at(10)).unwrap();
    let hotter = SHIRTS.replace("[water]", "# hotter\n[water]");
    bench
        .revise_recipe(&dyed, 1, &hotter, "said <why>", &at(11))
        .unwrap();
    let entries = told(&desk, Some(trial));
    let seen: Vec<_> = entries
        .iter()
        .filter_map(|entry| {
            let Some(Seen::Revision(revision)) = &entry.see else {
                return None;
            };
            let of = (revision.of, revision.slug.as_str(), revision.number);
            Some((entry.what.as_str(), entry.sentence.as_str(), of))
        })
        .collect();
    let shirts = dyeing::recipe::Written::from_toml(SHIRTS).unwrap().name;
    let title = match plan.title.as_str() {
        "" => &plan.question,
        title => title,
    };
    let (by_plan, by_recipe) = (RevisedThing::Plan, RevisedThing::Recipe);
    assert_eq!(
        seen,
        [
            (
                "recipe changed",
                &*format!("The recipe “{shirts}” was changed, revision 2: said <why>."),
                (by_recipe, dyed.as_str(), 2)
            ),
            (
                "recipe kept",
                &*format!("The recipe “{shirts}” was kept: typed in."),
                (by_recipe, dyed.as_str(), 1)
            ),
            (
                "recipe kept",
                &*format!("The recipe “{shirts}” was kept: written."),
                (by_recipe, planned.as_str(), 1)
            ),
            (
                "plan changed",
                &*format!("The plan “{title}” was changed, revision 3: a piece less."),
                (by_plan, slug.as_str(), 3)
            ),
            (
                "plan changed",
                &*format!(
                    "The plan “{title}” was changed, revision 2: a piece more. The trial follows this one."
                ),
                (by_plan, slug.as_str(), 2)
            ),
            (
                "plan kept",
                &*format!("The plan “{title}” was kept: asked."),
                (by_plan, slug.as_str(), 1)
            ),
        ]
    );
    assert!(entries.is_sorted_by(|a, b| a.at >= b.at));
    // The other trial of the plan shares the plan and its recipe, and no run.
    let others = told(&desk, Some(another));
    let count = |entries: &[Entry]| {
        entries
            .iter()
            .filter(|e| matches!(e.see, Some(Seen::Revision(_))))
            .count()
    };
    assert_eq!(count(&others), 4);
    // The journal of the bench tells each change once, as it always did.
    let all = told(&desk, None);
    assert_eq!(count(&all), 0);
    assert_eq!(all.iter().filter(|e| e.what == "plan changed").count(), 2);
    // Pages of the trial's journal tell each once.
    let first = desk.bench.journal(Some(trial), Place::NEWEST, 3).unwrap();
    let rest = desk.bench.journal(Some(trial), first[2].place, 99).unwrap();
    assert_eq!([first, rest].concat(), entries);
}
