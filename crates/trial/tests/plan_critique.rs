//! Sound plans draw no finding; each known flaw draws its own, and its mends mend.

use trial::plan::{Circumstance, CircumstanceKind};
use trial::plan::{Finding, FindingCode, Mend, Plan, Step, StepKind, Vessel, critique};

const TWO_ARMS: &str = include_str!("../../../docs/plans/two-arms.toml");
const BY_TEMPERATURE: &str =
    include_str!("../../../docs/plans/after-treatments-by-temperature.toml");
const LADDER: &str = include_str!("../../../docs/plans/shade-ladder.toml");

fn sound() -> Plan {
    Plan::from_toml(TWO_ARMS).expect("the example is sound")
}

fn codes(plan: &Plan) -> Vec<FindingCode> {
    critique(plan).iter().map(|found| found.code).collect()
}

#[test]
fn three_sound_plans_draw_no_finding() {
    for text in [TWO_ARMS, BY_TEMPERATURE, LADDER] {
        let plan = Plan::from_toml(text).unwrap();
        assert_eq!(critique(&plan), Vec::new(), "{}", plan.title);
    }
}

fn step(plan: &mut Plan, kind: StepKind) -> &mut Step {
    plan.steps
        .iter_mut()
        .find(|step| step.kind == kind)
        .expect("the example has this step")
}

fn own(plan: &mut Plan, kind: StepKind) {
    let whole = step(plan, kind).clone();
    plan.steps.retain(|step| step.kind != kind);
    for arm in &plan.arms {
        plan.steps.push(Step {
            arms: vec![arm.name.clone()],
            loads: vec![format!("{} of {}", kind.words(), arm.name)],
            ..whole.clone()
        });
    }
}

fn circumstance(plan: &mut Plan, kind: CircumstanceKind, values: [&[&str]; 2]) {
    plan.circumstances.retain(|c| c.kind != kind);
    for (arm, values) in plan.arms.iter().zip(values) {
        plan.circumstances.push(Circumstance {
            kind,
            arms: vec![arm.name.clone()],
            values: values.iter().map(|v| (*v).to_owned()).collect(),
        });
    }
}

type Flaw = (&'static str, FindingCode, fn(&mut Plan));

const FLAWS: [Flaw; 15] = [
    ("same load per arm", FindingCode::LoadIsArm, |plan| {
        own(plan, StepKind::Wash);
    }),
    (
        "one bath for the treatment",
        FindingCode::LoadIsArm,
        |plan| {
            step(plan, StepKind::AfterTreat).loads = vec!["basin".into()];
        },
    ),
    ("missing soak", FindingCode::SoakMissing, |plan| {
        plan.steps.retain(|step| step.kind != StepKind::Soak);
    }),
    ("soak too short", FindingCode::SoakMissing, |plan| {
        step(plan, StepKind::Soak).minutes = Some(5.0);
    }),
    ("one piece", FindingCode::OnePiece, |plan| {
        plan.arms[1].pieces = 1
    }),
    ("keeper missing", FindingCode::KeeperMissing, |plan| {
        plan.arms[0].keepers = 0
    }),
    (
        "deep and pale in one wash",
        FindingCode::DeepWithPale,
        |plan| {
            plan.arms[1].depth_percent_owf = Some(0.3);
            // Rinsed apart, washed together.
            plan.steps.retain(|step| step.kind != StepKind::Rinse);
        },
    ),
    ("two dyes in one wash", FindingCode::DeepWithPale, |plan| {
        plan.steps.retain(|step| step.kind != StepKind::Rinse);
        plan.arms[0].dye = "red".into();
        plan.arms[1].dye = "blue".into();
    }),
    ("arm by day", FindingCode::DayIsArm, |plan| {
        circumstance(plan, CircumstanceKind::Day, [&["Saturday"], &["Sunday"]]);
    }),
    ("arm by person", FindingCode::PersonIsArm, |plan| {
        circumstance(plan, CircumstanceKind::Person, [&["Ilo", "Mab"], &["Tarn"]]);
    }),
    ("arm by board corner", FindingCode::PlaceIsArm, |plan| {
        let places: [&[&str]; 2] = [&["window 1", "window 2"], &["window 5", "window 6"]];
        circumstance(plan, CircumstanceKind::Place, places);
    }),
    ("order of rinse", FindingCode::OrderOfUse, |plan| {
        plan.steps.retain(|step| step.kind != StepKind::Rinse);
        for (arm, loads) in [
            ("plain soak", ["rinse 1", "rinse 2"]),
            ("agent F", ["rinse 3", "rinse 4"]),
        ] {
            plan.steps.insert(
                1,
                Step {
                    arms: vec![arm.into()],
                    loads: loads.map(str::to_owned).to_vec(),
                    ..Step::of(StepKind::Rinse)
                },
            );
        }
        plan.vessels.push(Vessel {
            name: "the sink".into(),
            order: ["rinse 3", "rinse 4", "rinse 1", "rinse 2"]
                .map(str::to_owned)
                .to_vec(),
            cleaned: false,
        });
    }),
    ("dose departure", FindingCode::DoseDeparture, |plan| {
        step(plan, StepKind::AfterTreat).amount = "4 tbsp".into();
        step(plan, StepKind::AfterTreat).water = "3 gal".into();
    }),
    ("no witness", FindingCode::WitnessMissing, |plan| {
        step(plan, StepKind::Wash).witnesses.clear();
    }),
    (
        "nothing before the first round",
        FindingCode::StartMissing,
        |plan| {
            plan.stages = vec![5, 10];
        },
    ),
];

#[test]
fn each_known_flaw_is_named_alone() {
    for (name, code, spoil) in FLAWS {
        let mut plan = sound();
        spoil(&mut plan);
        plan.check().unwrap();
        assert_eq!(codes(&plan), [code], "{name}");
    }
}

#[test]
fn every_mend_takes_its_finding_away() {
    for (name, code, spoil) in FLAWS {
        let mut plan = sound();
        spoil(&mut plan);
        let found: Vec<Finding> = critique(&plan);
        assert!(!found[0].mends.is_empty(), "{name}");
        for mend in &found[0].mends {
            let mended = mend.apply(&plan);
            mended.check().unwrap();
            assert!(
                !codes(&mended).contains(&code),
                "{name}: {mend:?}\n{mended:#?}"
            );
        }
    }
}

#[test]
fn a_plan_with_many_flaws_names_them_all() {
    // Those that leave each other's steps in place.
    let together = [
        "same load per arm",
        "missing soak",
        "keeper missing",
        "arm by day",
        "arm by person",
        "arm by board corner",
        "nothing before the first round",
    ];
    let mut plan = sound();
    let mut expected = Vec::new();
    for (_, code, spoil) in FLAWS.iter().filter(|(name, ..)| together.contains(name)) {
        spoil(&mut plan);
        expected.push(*code);
    }
    let found = codes(&plan);
    assert_eq!(found.len(), together.len(), "{found:?}");
    assert!(
        expected.iter().all(|code| found.contains(code)),
        "{found:?}"
    );
}

#[test]
fn mends_of_a_plan_that_has_changed_leave_it_alone() {
    let plan = sound();
    for mend in [
        Mend::AddKeeper { arm: "gone".into() },
        Mend::AddSoak {
            arms: vec![],
            like_step: 99,
        },
        Mend::AddWitness { steps: vec![99] },
        Mend::FollowInstruction { step: 99 },
        Mend::Clean {
            vessel: "gone".into(),
        },
    ] {
        assert_eq!(mend.apply(&plan), plan);
    }
}

#[test]
fn a_plan_survives_being_written_and_read() {
    for text in [TWO_ARMS, BY_TEMPERATURE, LADDER] {
        let plan = Plan::from_toml(text).unwrap();
        assert_eq!(Plan::from_toml(&plan.to_toml().unwrap()).unwrap(), plan);
    }
}

#[test]
fn what_cannot_be_planned_is_said_in_a_sentence() {
    type Fault = (&'static str, fn(&mut Plan));
    let faults: [Fault; 12] = [
        ("question", |p| p.question.clear()),
        ("rounds", |p| p.rounds = 0),
        ("stages", |p| p.stages = vec![11]),
        ("arms", |p| p.arms.truncate(1)),
        ("arms[1].pieces", |p| p.arms[1].pieces = 0),
        ("arms[0].pieces", |p| p.arms[0].pieces = 10_000),
        ("arms[1].name", |p| p.arms[1].name = "plain soak".into()),
        ("arms[1].control", |p| p.arms[1].control = true),
        ("arms[0].codes", |p| p.arms[0].codes = vec!["P1".into(); 8]),
        ("arms[0].depth_percent_owf", |p| {
            p.arms[0].depth_percent_owf = Some(f64::NAN)
        }),
        ("steps[0].arms", |p| {
            p.steps[0].arms = vec!["agent Q".into()]
        }),
        ("steps[0].loads", |p| {
            p.steps[0].loads = vec!["pot".into(), "pot".into()]
        }),
    ];
    for (field, spoil) in faults {
        let mut plan = sound();
        spoil(&mut plan);
        let error = plan.check().unwrap_err();
        assert_eq!(error.field, field);
        assert!(error.message.ends_with('.'), "{}", error.message);
    }
    for text in [
        "",
        "question = 3",
        "question = \"x\"\nmargin = 0\nrounds = 1\narms = []",
        "\u{0}",
    ] {
        assert!(Plan::from_toml(text).is_err());
    }
}
