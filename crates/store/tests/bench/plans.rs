//! Plans, their revisions and the trials started from them.

use store::{Bench, StoreError};
use trial::plan::{Mend, Plan, RUNS};

const NOW: &str = "2030-01-01T00:00:00Z";
const TWO_ARMS: &str = include_str!("../../../../docs/plans/two-arms.toml");

#[test]
fn every_revision_stays_and_the_newest_counts() {
    let home = tempfile::tempdir().unwrap();
    let mut bench = Bench::open(home.path()).unwrap();
    let plan = Plan::from_toml(TWO_ARMS).unwrap();
    let slug = bench.keep_plan(&plan, "proposed", NOW).unwrap();
    assert_eq!(slug, "fixing-agent-on-a-direct-red");
    let mend = Mend::AddKeeper {
        arm: "agent F".into(),
    };
    let mended = mend.apply(&plan);
    let number = bench
        .revise_plan(&slug, 1, &mended, &mend.label(), NOW)
        .unwrap();
    assert_eq!(number, 2);
    assert_eq!(bench.plan(&slug, None).unwrap().unwrap().plan, mended);
    let first = bench.plan(&slug, Some(1)).unwrap().unwrap();
    assert_eq!(first.plan, plan);
    assert_eq!(first.revisions.len(), 2);
    // Somebody who still looks at the first may not overwrite the second.
    let error = bench.revise_plan(&slug, 1, &plan, "late", NOW).unwrap_err();
    assert!(matches!(
        error,
        StoreError::Input {
            field: "revision",
            ..
        }
    ));
    assert_eq!(bench.plans().unwrap()[0].revisions, 2);
    assert_eq!(bench.plan("nothing", None).unwrap(), None);
}

#[test]
fn a_started_trial_keeps_its_plan_and_what_limits_it() {
    let home = tempfile::tempdir().unwrap();
    let mut bench = Bench::open(home.path()).unwrap();
    let mut plan = Plan::from_toml(TWO_ARMS).unwrap();
    plan.arms[0].keepers = 0;
    let slug = bench.keep_plan(&plan, "proposed", NOW).unwrap();
    let id = bench.start_trial(&slug, 1, NOW).unwrap();
    plan.seed += 1;
    bench.revise_plan(&slug, 1, &plan, "later", NOW).unwrap();
    let from = bench.plan_of_trial(id).unwrap().unwrap();
    assert_eq!((from.number, from.plan.seed + 1), (1, plan.seed));
    assert_eq!(from.opened_at, None);

    let trial = bench.trial_by_id(id).unwrap().unwrap();
    for allotted in &from.plan.order().pieces {
        let code = &allotted.piece.code;
        assert!(trial.pieces.iter().any(|piece| piece.code == *code));
    }
    let planned = bench
        .results(&trial.slug)
        .unwrap()
        .unwrap()
        .planned
        .unwrap();
    assert_eq!(planned.revision, 1);
    assert!(
        planned
            .findings
            .iter()
            .any(|found| found.sentence.contains("no keeper"))
    );

    bench.open_blind_codes(id, NOW).unwrap();
    bench.open_blind_codes(id, "2031-01-01T00:00:00Z").unwrap();
    let from = bench.plan_of_trial(id).unwrap().unwrap();
    assert_eq!(from.opened_at.as_deref(), Some(NOW));
    assert_eq!(bench.plans().unwrap()[0].trials, 1);
}

#[test]
fn what_can_not_be_planned_is_not_kept() {
    let home = tempfile::tempdir().unwrap();
    let mut bench = Bench::open(home.path()).unwrap();
    let mut plan = Plan::from_toml(TWO_ARMS).unwrap();
    plan.arms[1].pieces = 0;
    let error = bench.keep_plan(&plan, "proposed", NOW).unwrap_err();
    assert!(error.to_string().contains("no test piece"), "{error}");
    assert!(bench.plans().unwrap().is_empty());
    assert_eq!(bench.studio_scatter().unwrap(), None);
}

#[test]
fn a_promise_is_kept_for_its_plan_alone_and_by_the_rules_of_now() {
    let home = tempfile::tempdir().unwrap();
    let mut bench = Bench::open(home.path()).unwrap();
    let plan = Plan::from_toml(TWO_ARMS).unwrap();
    assert_eq!(bench.kept_promise(&plan).unwrap(), None);
    let promise = plan.promise(RUNS).unwrap();
    bench.keep_promise(&plan, &promise).unwrap();
    bench.keep_promise(&plan, &promise).unwrap();
    let again = Bench::open(home.path()).unwrap();
    assert_eq!(again.kept_promise(&plan).unwrap(), Some(promise));
    // Whatever of a plan is changed: pieces, seed, rounds.
    let mut others = [plan.clone(), plan.clone(), plan.clone()];
    others[0].arms[0].pieces += 1;
    others[1].seed += 1;
    others[2].rounds += 1;
    for other in &others {
        assert_eq!(again.kept_promise(other).unwrap(), None);
    }
    let database = rusqlite::Connection::open(home.path().join("woadstone.sqlite")).unwrap();
    let held = "UPDATE plan_promise SET promise = substr(promise, 1, 9)";
    assert_eq!(database.execute(held, []).unwrap(), 1);
    assert_eq!(again.kept_promise(&plan).unwrap(), None);
    let promise = plan.promise(RUNS).unwrap();
    bench.keep_promise(&plan, &promise).unwrap();
    assert_eq!(again.kept_promise(&plan).unwrap(), Some(promise));
    let older = "UPDATE plan_promise SET edition = edition - 1";
    assert_eq!(database.execute(older, []).unwrap(), 1);
    assert_eq!(again.kept_promise(&plan).unwrap(), None);
}

#[test]
fn plans_without_a_promise_are_those_whose_newest_revision_has_none() {
    let home = tempfile::tempdir().unwrap();
    let mut bench = Bench::open(home.path()).unwrap();
    let first = Plan::from_toml(TWO_ARMS).unwrap();
    let second = Plan {
        seed: 2,
        ..first.clone()
    };
    let slug = bench.keep_plan(&first, "proposed", NOW).unwrap();
    let other = bench.keep_plan(&second, "proposed", NOW).unwrap();
    let newest_first = [second.clone(), first.clone()];
    assert_eq!(bench.unpromised_plans(9).unwrap().plans, newest_first);
    assert_eq!(bench.unpromised_plans(1).unwrap().plans, newest_first[..1]);
    bench
        .keep_promise(&first, &first.promise(10).unwrap())
        .unwrap();
    assert_eq!(bench.unpromised_plans(9).unwrap().plans, newest_first[..1]);
    let third = Plan {
        seed: 3,
        ..first.clone()
    };
    bench
        .revise_plan(&slug, 1, &third, "drawn again", NOW)
        .unwrap();
    bench.put_in_bin(store::Thing::Plan(&other), NOW).unwrap();
    assert_eq!(bench.unpromised_plans(9).unwrap().plans, [third]);
}

#[test]
fn plans_that_cannot_be_understood_or_are_written_otherwise_keep_no_other_from_its_promise() {
    let home = tempfile::tempdir().unwrap();
    let mut bench = Bench::open(home.path()).unwrap();
    let plans: Vec<Plan> = (1..=3)
        .map(|seed| Plan {
            seed,
            ..Plan::from_toml(TWO_ARMS).unwrap()
        })
        .collect();
    let slugs: Vec<String> = plans
        .iter()
        .map(|plan| bench.keep_plan(plan, "proposed", NOW).unwrap())
        .collect();
    let database = rusqlite::Connection::open(home.path().join("woadstone.sqlite")).unwrap();
    // Revisions as another program would have written them.
    let write = |content: &str, slug: &str| {
        let next = format!(
            "INSERT INTO plan_revision (plan_id, number, content, change, made_at)
             SELECT plan_id, number + 1, {content}, '', plan_revision.made_at
             FROM plan_revision JOIN plan ON plan.id = plan_id WHERE slug = ?1"
        );
        assert_eq!(database.execute(&next, [slug]).unwrap(), 1);
    };
    // The newest can't be read by this program; the one before was written with a remark.
    write("'colour = 3'", &slugs[2]);
    write("'# by hand' || char(10) || content", &slugs[1]);
    let found = bench.unpromised_plans(9).unwrap();
    assert_eq!(found.plans, [plans[1].clone(), plans[0].clone()]);
    let unread: Vec<&str> = found.unread.iter().map(|(slug, _)| slug.as_str()).collect();
    assert_eq!(unread, [slugs[2].as_str()]);
    let promise = plans[1].promise(10).unwrap();
    bench.keep_promise(&plans[1], &promise).unwrap();
    // Neither takes the place of one that has to be drawn.
    let found = bench.unpromised_plans(1).unwrap();
    assert_eq!(found.plans, plans[..1]);
}
