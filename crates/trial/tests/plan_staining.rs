//! From a plan that asks which arm stains more to the verdict on it. Grades are given as people would who
//! see two grades' difference; that a witness has to be washed with one specimen alone to tell of it is
//! how ISO 105-C06 lays its composite specimens out, each in a container of its own.

use trial::{
    NewTrial, Role,
    decide::Verdict,
    eyes::{EyeComparison, EyeRow, decide},
    plan::{Asks, Budget, EnquiredArm, Enquiry, FindingCode, Margin, Plan, Staining, critique},
};

fn enquiry(washes: usize) -> Enquiry {
    let arm = |name: &str, agent: &str| EnquiredArm {
        name: name.into(),
        agent: agent.into(),
        amount: String::new(),
        water: String::new(),
        minutes: None,
        temperature_c: None,
        depth_percent_owf: None,
    };
    Enquiry {
        question: "Does agent F keep this red from bleeding?".into(),
        asks: Asks::StepMatters,
        staining: true,
        fibre: "cotton".into(),
        dye_class: "direct".into(),
        margin: Margin::De00(2.7),
        rounds: 5,
        arms: vec![arm("plain", ""), arm("agent F", "agent F")],
        budget: Budget {
            pieces: 40,
            washes,
            days: 1,
        },
        scatter: None,
        seed: 4,
    }
}

/// What three people's grades of the trial's witness cloths say, those of the first arm stained by two
/// grades more; none where the arms can't be compared at all.
fn judged(trial: &NewTrial) -> Option<EyeComparison> {
    let of_arms = trial.arms.iter().enumerate();
    let pieces = of_arms.flat_map(|(arm, own)| own.pieces.iter().map(move |piece| (arm, piece)));
    let pieces: Vec<_> = pieces.collect();
    let mut rows = Vec::new();
    for (arm, piece) in pieces.iter().filter(|(_, p)| p.role != Role::Keeper) {
        let shared = |(other, with): &(usize, &trial::NewPiece)| {
            other != arm && with.load.is_some() && with.load == piece.load
        };
        let grade = if *arm == 0 { "2-3" } else { "4-5" };
        rows.extend(["Ines", "Tove", "Ruud"].map(|judge| EyeRow {
            arm: trial.arms[*arm].name.clone(),
            piece: piece.code.clone(),
            role: piece.role,
            load: piece.load.clone(),
            shares_load: pieces.iter().any(shared),
            stage: 5,
            judge: judge.into(),
            grade: grade.parse().expect("a grade"),
        }));
    }
    let found = decide(&rows, trial.margin_de00).expect("the rows are sound");
    found.comparisons.into_iter().find(|pair| pair.staining)
}

fn untold(plan: &Plan) -> Option<trial::plan::Finding> {
    let mut findings = critique(plan).into_iter();
    findings.find(|found| found.code == FindingCode::StainingUntold)
}

#[test]
fn a_plan_that_was_proposed_for_it_gets_its_verdict_on_staining() {
    let proposal = enquiry(8).propose().unwrap();
    let plan = &proposal.plan;
    assert!(plan.staining && critique(plan).is_empty());
    let Staining::Told { witnesses } = plan.staining_told() else {
        panic!("{:?}", plan.staining_told())
    };
    assert!(witnesses >= 3, "{witnesses}");
    assert!(proposal.shows_margin > 0.0);
    // The washes that the plan has, more than the verdict on change asks for.
    let washes = plan.steps.iter().filter(|step| !step.witnesses.is_empty());
    let washes: usize = washes.map(|step| step.loads.len()).sum();
    assert_eq!(washes, 2 * witnesses);
    let said = format!("{washes} washes a round");
    assert!(proposal.sentence.contains(&said), "{}", proposal.sentence);
    let trial = plan.new_trial(&plan.order());
    trial.validate().unwrap();
    for arm in &trial.arms {
        let own = arm.pieces.iter().filter(|p| p.role == Role::Witness);
        assert_eq!(own.count(), witnesses);
    }
    let found = judged(&trial).unwrap();
    assert_eq!(found.verdict, Verdict::Visible, "{}", found.reason);
    assert!(
        found.plain.contains("plain has clearly stained"),
        "{}",
        found.plain
    );
    assert_eq!(found.pieces, [witnesses; 2]);
    // Washed in turn of chance, not one arm after the other.
    let packing = plan.packing(&plan.order());
    let cloths: usize = packing.cloths.iter().map(|cloth| cloth.count).sum();
    assert_eq!(cloths, 2 * witnesses);
}

#[test]
fn where_it_cant_be_told_that_is_said_before_and_each_mend_gets_it_told() {
    let mut plan = Plan::from_toml(include_str!("../../../docs/plans/two-arms.toml")).unwrap();
    assert!(untold(&plan).is_none());
    assert!(
        plan.staining_told()
            .sentence(false)
            .contains("each piece in a jar")
    );
    plan.staining = true;
    let found = untold(&plan).unwrap();
    assert!(found.sentence.contains("\"wash 1\""), "{}", found.sentence);
    let told = judged(&plan.new_trial(&plan.order()));
    assert!(told.is_none_or(|pair| pair.verdict == Verdict::Open));
    assert_eq!(found.mends.len(), 2);
    for mend in &found.mends {
        let mended = mend.apply(&plan);
        assert!(untold(&mended).is_none());
        let trial = mended.new_trial(&mended.order());
        trial.validate().unwrap();
        let told = judged(&trial).unwrap();
        assert_eq!(told.verdict, Verdict::Visible, "{}", told.reason);
    }
}

#[test]
fn one_witness_of_an_arm_is_too_few_and_too_few_washes_are_refused() {
    let mut plan = enquiry(8).propose().unwrap().plan;
    let wash = plan
        .steps
        .iter_mut()
        .rfind(|step| !step.witnesses.is_empty());
    wash.unwrap().loads.truncate(1);
    let found = untold(&plan).unwrap();
    assert_eq!(found.arms, ["agent F"]);
    assert!(
        found.consequence.contains("stays open"),
        "{}",
        found.consequence
    );
    let error = enquiry(2).propose().unwrap_err();
    assert_eq!(error.field, "budget.washes");
    assert!(
        error.message.contains("leave staining out"),
        "{}",
        error.message
    );
}

/// Two arms of four pieces each, one after the other in the order of these steps.
fn of_steps(steps: &str) -> Plan {
    let head = "question = \"Which stains?\"\nasks = \"which_is_best\"\nstaining = true\nmargin = \"grade 4\"\nrounds = 2\n";
    let arm = |name: &str| format!("[[arms]]\nname = \"{name}\"\npieces = 4\n");
    Plan::from_toml(&[head, &arm("a"), &arm("b"), steps].concat()).expect("a sound plan")
}

fn witnesses(trial: &NewTrial) -> Vec<&str> {
    let pieces = trial.arms.iter().flat_map(|arm| &arm.pieces);
    let witnesses = pieces.filter(|piece| piece.role == Role::Witness);
    witnesses.map(|piece| piece.code.as_str()).collect()
}

/// Takes the first mend until nothing is found; a mend that doesn't help is a fault.
fn mended(mut plan: Plan, which: usize) -> Plan {
    for _ in 0..4 {
        let Some(found) = untold(&plan) else {
            return plan;
        };
        plan = found.mends[which].apply(&plan);
    }
    panic!("{:?}", plan.staining_told())
}

#[test]
fn every_wash_of_a_round_has_its_witnesses_and_they_are_counted_apart() {
    let wash = "[[steps]]\nkind = \"wash\"\nwitnesses = [\"plain\"]\n";
    let plan = of_steps(&wash.repeat(2));
    assert_eq!(plan.staining_told(), Staining::Told { witnesses: 4 });
    let trial = plan.new_trial(&plan.order());
    trial.validate().unwrap();
    let codes = witnesses(&trial);
    assert_eq!(codes.len(), 16);
    assert!(codes.contains(&"A1, wash 1, plain") && codes.contains(&"A1, wash 2, plain"));
    // As many as are packed.
    assert_eq!(plan.packing(&plan.order()).cloths[0].count, 16);

    let own = |arm: &str, load: &str, cloth: &str| {
        format!(
            "[[steps]]\nkind = \"wash\"\narms = [\"{arm}\"]\nloads = [\"{load}\"]\nwitnesses = [\"{cloth}\"]\n"
        )
    };
    let plan = of_steps(
        &[
            own("a", "a1", "plain"),
            own("b", "b1", "plain"),
            own("a", "a2", "multifibre"),
            own("b", "b2", "multifibre"),
        ]
        .concat(),
    );
    let trial = plan.new_trial(&plan.order());
    trial.validate().unwrap();
    assert_eq!(
        witnesses(&trial),
        ["a1, plain", "a2, multifibre", "b1, plain", "b2, multifibre"]
    );
    let Staining::Few { arms, .. } = plan.staining_told() else {
        panic!("{:?}", plan.staining_told())
    };
    assert_eq!(arms, ["a", "b"]);
    let found = untold(&plan).unwrap();
    assert!(
        found
            .sentence
            .contains("\"multifibre\" from wash 2 and \"plain\" from wash 1"),
        "{}",
        found.sentence
    );
    for which in [0, 1] {
        let plan = mended(plan.clone(), which);
        let Staining::Told { witnesses: told } = plan.staining_told() else {
            panic!("{:?}", plan.staining_told())
        };
        let trial = plan.new_trial(&plan.order());
        trial.validate().unwrap();
        assert_eq!(witnesses(&trial).len(), 2 * 2 * told);
    }
}

#[test]
fn the_wash_that_is_at_fault_is_mended() {
    let plan = of_steps(
        "[[steps]]\nkind = \"wash\"\n[[steps]]\nkind = \"wash\"\nloads = [\"tub 1\", \"tub 2\"]\nwitnesses = [\"plain\"]\n",
    );
    let found = untold(&plan).unwrap();
    for mend in &found.mends {
        let mended = mend.apply(&plan);
        assert!(untold(&mended).is_none(), "{mend:?}");
        assert_eq!(mended.steps[0], plan.steps[0]);
        let trial = mended.new_trial(&mended.order());
        trial.validate().unwrap();
        assert_eq!(judged(&trial).unwrap().verdict, Verdict::Visible);
    }
    assert_eq!(found.mends.len(), 2);
    // A cloth that was washed with both tells of neither in the trial, either.
    let trial = plan.new_trial(&plan.order());
    let told = judged(&trial);
    assert!(told.is_none_or(|pair| pair.verdict == Verdict::Open));
}

#[test]
fn what_the_trial_cannot_tell_of_a_shared_load_stays_out_of_it() {
    let plan = of_steps(
        "[[steps]]\nkind = \"wash\"\nloads = [\"one\"]\n[[steps]]\nkind = \"wash\"\nloads = [\"two\"]\nwitnesses = [\"plain\"]\n",
    );
    assert!(matches!(plan.staining_told(), Staining::Shared { .. }));
    assert!(witnesses(&plan.new_trial(&plan.order())).is_empty());
}

#[test]
fn loads_of_one_name_are_one_load_and_that_is_said() {
    let own = |arm: &str| {
        format!(
            "[[steps]]\nkind = \"wash\"\narms = [\"{arm}\"]\nloads = [\"tub\", \"tub {arm}\"]\nwitnesses = [\"plain\"]\n"
        )
    };
    let plan = of_steps(&(own("a") + &own("b")));
    let found = untold(&plan).unwrap();
    assert!(
        found
            .sentence
            .contains("Several steps name \"tub\", and a name stands for one load"),
        "{}",
        found.sentence
    );
    let trial = plan.new_trial(&plan.order());
    trial.validate().unwrap();
    assert_eq!(
        witnesses(&trial),
        ["tub, plain", "tub a, plain", "tub b, plain"]
    );
    for mend in found.mends {
        assert!(untold(&mend.apply(&plan)).is_none());
    }
}
