//! What a plan promises is what trials by that plan would show.

use trial::plan::{Basis, PROMISE_EDITION, Plan, RUNS, Scatter};

fn plan(text: &str) -> Plan {
    Plan::from_toml(text).expect("the example is sound")
}

#[test]
fn sound_examples_err_at_the_nominal_level_and_show_their_margin() {
    for text in [
        include_str!("../../../docs/plans/two-arms.toml"),
        include_str!("../../../docs/plans/after-treatments-by-temperature.toml"),
        include_str!("../../../docs/plans/shade-ladder.toml"),
    ] {
        let plan = plan(text);
        let promise = plan.promise(RUNS).unwrap();
        assert!(!promise.comparisons.is_empty());
        for promised in &promise.comparisons {
            assert!((0.03..=0.07).contains(&promised.errs), "{promised:?}");
        }
    }
}

/// Reference library (SciPy 1.x): power of the two-sided t test of two arms at 0.04, the
/// part of the 0.05 that the verdict spends on the way of the fade, by the noncentral t
/// (`nct.sf`): d = 1.2, n = 8 0.56522, n = 12 0.77119, n = 16 0.88861. The verdict takes each
/// arm's own scatter (Welch), which costs little at such numbers.
#[test]
fn two_arms_without_loads_have_the_noncentral_t_s_power() {
    let text = r#"
        question = "Is there a difference?"
        margin = 1.2
        rounds = 1
        scatter = { piece_sd_de00 = 1.0, load_sd_de00 = 0.0, reading_sd_de00 = 0.0 }
        arms = [{ name = "a", pieces = 8 }, { name = "b", pieces = 8 }]
    "#;
    let plan = plan(text);
    let promise = plan.promise(RUNS).unwrap();
    assert_eq!(promise.comparisons[0].basis, Basis::Pieces);
    // Each piece against its own start: reading adds nothing here. Three points.
    for (pieces, power) in [(8, 0.565_22), (12, 0.771_19), (16, 0.888_61)] {
        let found = promise
            .by_pieces
            .iter()
            .find(|size| size.pieces == pieces)
            .unwrap();
        assert!((found.shows_margin - power).abs() < 0.03, "{found:?}");
    }
    let own = promise.comparisons[0].shows_margin;
    assert!((own - 0.565_22).abs() < 0.03, "{own}");
}

#[test]
fn what_can_show_nothing_promises_nothing() {
    let base = include_str!("../../../docs/plans/two-arms.toml");
    let mut own_loads = plan(base);
    let wash = own_loads
        .steps
        .iter()
        .position(|step| step.kind == trial::plan::StepKind::Wash)
        .unwrap();
    let mut second = own_loads.steps[wash].clone();
    own_loads.steps[wash].arms = vec!["plain soak".into()];
    own_loads.steps[wash].loads.truncate(1);
    second.arms = vec!["agent F".into()];
    second.loads.remove(0);
    own_loads.steps.push(second);
    let promise = own_loads.promise(200).unwrap();
    assert_eq!(promise.comparisons[0].basis, Basis::Confounded);
    assert_eq!(promise.comparisons[0].shows_margin, 0.0);

    let mut one = plan(base);
    for arm in &mut one.arms {
        arm.pieces = 1;
        arm.codes.clear();
    }
    assert_eq!(
        one.promise(200).unwrap().comparisons[0].basis,
        Basis::NoScatter
    );
}

#[test]
fn more_scatter_promises_less() {
    let base = plan(include_str!("../../../docs/plans/two-arms.toml"));
    let mut last = 1.1;
    for sd in [0.2, 1.0, 3.0] {
        let scatter = Scatter {
            piece_sd_de00: sd,
            ..Scatter::default()
        };
        let plan = Plan {
            scatter: Some(scatter),
            ..base.clone()
        };
        let shown = plan.promise(RUNS).unwrap().comparisons[0].shows_margin;
        assert!(shown < last, "{sd}: {shown}");
        last = shown;
    }
}

/// Arms of so many pieces and keepers in washes that all of them share, or in two of each arm's own.
fn laid_out(asks: &str, margin: &str, [arms, pieces, keepers]: [usize; 3], washes: usize) -> Plan {
    let arm =
        |arm| format!("[[arms]]\nname = \"arm {arm}\"\npieces = {pieces}\nkeepers = {keepers}\n");
    let own = |arm| {
        format!(
            "[[steps]]\nkind = \"wash\"\narms = [\"arm {arm}\"]\nloads = [\"{arm}, 1\", \"{arm}, 2\"]\n"
        )
    };
    let shared: Vec<String> = (0..washes).map(|wash| format!("\"wash {wash}\"")).collect();
    let steps = match washes {
        0 => (0..arms).map(own).collect(),
        _ => format!(
            "[[steps]]\nkind = \"wash\"\nloads = [{}]\n",
            shared.join(", ")
        ),
    };
    let arms: String = (0..arms).map(arm).collect();
    plan(&format!(
        "question = \"Which?\"\nasks = \"{asks}\"\nmargin = {margin}\nrounds = 3\nseed = 11\n{arms}{steps}"
    ))
}

/// Promises are kept from one edition of the rules to the next. Where this fails on purpose, write
/// down the new figures and raise the edition.
#[test]
fn figures_belong_to_an_edition() {
    // Drawn by the program itself; what they ought to be is checked above.
    assert_eq!(PROMISE_EDITION, 1);
    let two_arms = plan(include_str!("../../../docs/plans/two-arms.toml"));
    let ladder = plan(include_str!("../../../docs/plans/shade-ladder.toml"));
    let scattered = Plan {
        scatter: Some(Scatter {
            piece_sd_de00: 0.9,
            load_sd_de00: 0.1,
            reading_sd_de00: 0.2,
            origin: String::new(),
        }),
        ..two_arms.clone()
    };
    for (name, plan, basis, known) in [
        (
            "two arms, blocks, keepers",
            two_arms,
            Basis::WithinLoads,
            [0.6515, 0.6515, 0.6515, 0.1485, 0.0485, 0.344, 0.671],
        ),
        (
            "a studio's own scatter",
            scattered,
            Basis::WithinLoads,
            [0.3135, 0.3135, 0.3135, 0.002, 0.0355, 0.191, 0.3195],
        ),
        (
            "doses in bowls of their own",
            ladder,
            Basis::Loads,
            [0.0745, 0.012, 0.261, 0.0, 0.0375, 0.0475, 0.0805],
        ),
        (
            "each piece against its own start, one wash",
            laid_out("lasts", "1.2", [2, 5, 0], 1),
            Basis::Pieces,
            [0.659, 0.659, 0.925, 0.2335, 0.0395, 0.0805, 0.9],
        ),
        (
            "several against a control, blocks",
            laid_out("step_matters", "\"grade 4-5\"", [4, 6, 1], 3),
            Basis::WithinLoads,
            [0.1105, 0.0445, 0.3985, 0.0, 0.04, 0.064, 0.1085],
        ),
        (
            "every pair, blocks, no keepers",
            laid_out("which_is_best", "\"grade 4\"", [3, 4, 0], 2),
            Basis::WithinLoads,
            [0.7845, 0.5815, 0.7845, 0.585, 0.0555, 0.1185, 0.9935],
        ),
        (
            "washes of each arm's own",
            laid_out("step_matters", "2.5", [3, 6, 2], 0),
            Basis::Loads,
            [0.7585, 0.6745, 0.4775, 0.4745, 0.0445, 0.4805, 0.8],
        ),
    ] {
        let promise = plan.promise(RUNS).unwrap();
        let last = promise.comparisons.last().unwrap();
        assert_eq!(last.basis, basis, "{name}");
        let figures = [
            last.shows_margin,
            last.shows_margin_together,
            last.shows_grade_4,
            last.shows_alike,
            last.errs,
            promise.by_pieces[0].shows_margin,
            promise.by_pieces[4].shows_margin,
        ];
        let off = figures
            .iter()
            .zip(known)
            .map(|(a, b): (&f64, f64)| (a - b).abs());
        assert!(off.fold(0.0, f64::max) < 1e-3, "{name}: {figures:?}");
    }
}
