use super::*;
use crate::sample_size;

/// Each arm has that many pieces; a piece's loads follow from its arm and number.
fn layout(
    arms: usize,
    per_arm: usize,
    kinds: usize,
    load: impl Fn(usize, usize, usize) -> Option<usize>,
) -> Layout {
    let pieces = (0..arms * per_arm).map(|at| {
        let (arm, number) = (at / per_arm, at % per_arm);
        let loads = (0..kinds).map(|kind| load(kind, arm, number)).collect();
        Piece { arm, loads }
    });
    Layout {
        arms,
        pieces: pieces.collect(),
        keepers: vec![0; arms],
        kinds,
        contrasts: Contrasts::Against(0),
        scatter: ScatterOf::AllArms,
    }
}

fn truth(effects: &[f64], load_sds: &[f64]) -> Truth {
    Truth {
        effects: effects.to_vec(),
        piece_sd: 0.8,
        load_sds: load_sds.to_vec(),
        reading_sd: 0.0,
        photos: 1,
        margin: None,
        parts: 1,
    }
}

fn run(layout: &Layout, truth: &Truth, runs: u32, seed: u64) -> Vec<Outcome> {
    Design::of(layout)
        .unwrap()
        .simulate(truth, &Runs::new(runs, seed))
        .unwrap()
}

/// A nominal 5 % over 2,000 trials: 3 to 7 %.
fn errs_seldom(layout: &Layout, truth: &Truth, analysis: Analysis) {
    for (seed, outcome) in [1, 2].into_iter().flat_map(|seed| {
        run(layout, truth, 2000, seed)
            .into_iter()
            .map(move |outcome| (seed, outcome))
    }) {
        assert_eq!(outcome.contrast.analysis, analysis);
        let share = outcome.difference.share;
        assert!(
            (0.03..=0.07).contains(&share),
            "{analysis:?} {seed}: {share}"
        );
        assert!(outcome.difference_holm.unwrap().share <= share);
    }
}

fn in_pairs(layout: &Layout) -> Layout {
    Layout {
        scatter: ScatterOf::EachPair,
        ..layout.clone()
    }
}

fn with_keepers(layout: &Layout, kept: u32) -> Layout {
    Layout {
        keepers: vec![kept; layout.arms],
        ..layout.clone()
    }
}

#[test]
fn pieces_err_as_seldom_as_they_should() {
    let one_wash = layout(3, 5, 1, |_, _, _| Some(9));
    let still = truth(&[0.0; 3], &[2.0]);
    errs_seldom(&one_wash, &still, Analysis::Pieces);
    errs_seldom(&in_pairs(&one_wash), &still, Analysis::Pieces);
    errs_seldom(&with_keepers(&one_wash, 2), &still, Analysis::Pieces);
    let not_noted = layout(2, 4, 1, |_, _, _| None);
    errs_seldom(&not_noted, &truth(&[0.0; 2], &[2.0]), Analysis::Pieces);
}

/// A single keeper's own error is part of the scatter that it is judged by, which
/// errs on the safe side.
#[test]
fn a_single_keeper_errs_no_more_often_than_it_should() {
    let layout = with_keepers(&in_pairs(&layout(2, 5, 0, |_, _, _| None)), 1);
    let share = run(&layout, &truth(&[0.0; 2], &[]), 4000, 14)[0]
        .difference
        .share;
    assert!((0.01..=0.05).contains(&share), "{share}");
}

#[test]
fn pieces_within_loads_err_as_seldom_as_they_should() {
    let three_washes = layout(3, 6, 1, |_, _, number| Some(number / 2));
    let still = truth(&[0.0; 3], &[2.0]);
    errs_seldom(&three_washes, &still, Analysis::WithinLoads);
    errs_seldom(&in_pairs(&three_washes), &still, Analysis::WithinLoads);
    errs_seldom(
        &with_keepers(&three_washes, 1),
        &still,
        Analysis::WithinLoads,
    );
    let baths_and_washes = layout(2, 6, 2, |kind, arm, number| {
        Some(if kind == 0 {
            number / 3
        } else {
            (number + arm) % 3
        })
    });
    let still = truth(&[0.0; 2], &[2.0, 1.0]);
    errs_seldom(&baths_and_washes, &still, Analysis::WithinLoads);
    errs_seldom(&in_pairs(&baths_and_washes), &still, Analysis::WithinLoads);
}

#[test]
fn means_of_loads_err_as_seldom_as_they_should() {
    let four_each = layout(2, 8, 1, |_, arm, number| Some(arm * 10 + number / 2));
    let still = truth(&[0.0; 2], &[2.0]);
    errs_seldom(&four_each, &still, Analysis::LoadMeans);
    errs_seldom(
        &with_keepers(&in_pairs(&four_each), 2),
        &still,
        Analysis::LoadMeans,
    );
}

#[test]
fn power_is_that_of_the_noncentral_t() {
    for (n, difference) in [(3, 2.0), (5, 2.0), (8, 1.2), (20, 0.8)] {
        let layout = layout(2, n, 0, |_, _, _| None);
        let found = run(&layout, &truth(&[0.0, difference * 0.8], &[]), 4000, 3);
        let exact = sample_size::power(difference, n as f64, 0.05).unwrap();
        let share = found[0].difference.share;
        assert!(
            (share - exact).abs() < 0.03,
            "{n} {difference}: {share} {exact}"
        );
        assert_eq!(found[0].difference_dunnett.unwrap().share, share);
    }
}

#[test]
fn equivalence_is_that_of_exact_integration() {
    for (n, truly) in [(6, 0.0), (9, 0.5), (20, 1.0)] {
        let layout = layout(2, n, 0, |_, _, _| None);
        let truth = Truth {
            margin: Some(1.5 * 0.8),
            parts: 1,
            ..truth(&[0.0, truly * 0.8], &[])
        };
        let share = run(&layout, &truth, 4000, 4)[0].equivalence.unwrap().share;
        let exact = sample_size::equivalence_power(1.5, truly, n as f64, 0.05).unwrap();
        assert!((share - exact).abs() < 0.03, "{n} {truly}: {share} {exact}");
    }
}

#[test]
fn loads_that_both_arms_share_cost_next_to_nothing() {
    let layout = layout(2, 8, 1, |_, _, number| Some(number / 2));
    let power = |sd| {
        run(&layout, &truth(&[0.0, 1.2], &[sd]), 2000, 5)[0]
            .difference
            .share
    };
    assert_eq!(power(0.0), power(9.0));
}

#[test]
fn a_load_for_each_arm_shows_nothing() {
    let own = layout(3, 4, 1, |_, arm, _| Some(arm.min(1)));
    let found = run(&own, &truth(&[0.0, 50.0, 50.0], &[0.1]), 50, 6);
    for outcome in &found {
        assert_eq!(outcome.contrast.analysis, Analysis::Confounded);
        assert_eq!(outcome.difference.share, 0.0);
    }
    // Two baths for each arm, but one wash for each: the wash decides.
    let washes = layout(2, 4, 2, |kind, arm, number| {
        Some(if kind == 0 { arm * 2 + number / 2 } else { arm })
    });
    let found = run(&washes, &truth(&[0.0, 50.0], &[0.1, 0.1]), 50, 6);
    assert_eq!(found[0].contrast.analysis, Analysis::Confounded);
}

#[test]
fn loads_that_only_together_hide_the_arm_show_nothing() {
    // Each kind is shared, yet both sums of loads run with the arm.
    let layout = layout(2, 2, 2, |kind, arm, number| match (kind, arm, number) {
        (0, 0, 0) | (0, 1, 0) => Some(0),
        (0, 0, 1) => Some(1),
        (0, 1, 1) => Some(2),
        (1, 0, 1) | (1, 1, 1) => Some(0),
        (1, 0, 0) => Some(1),
        _ => Some(2),
    });
    let found = run(&layout, &truth(&[0.0, 50.0], &[0.1, 0.1]), 50, 7);
    assert_eq!(found[0].contrast.analysis, Analysis::Confounded);
    assert_eq!(found[0].difference.share, 0.0);
}

#[test]
fn one_piece_per_arm_shows_nothing() {
    let single = layout(2, 1, 0, |_, _, _| None);
    for layout in [single.clone(), in_pairs(&single)] {
        let found = run(&layout, &truth(&[0.0, 50.0], &[]), 50, 8);
        assert_eq!(found[0].contrast.analysis, Analysis::NoScatter);
        assert_eq!(found[0].difference.share, 0.0);
    }
}

#[test]
fn several_arms_are_held_to_account_together() {
    let four = layout(4, 6, 0, |_, _, _| None);
    let found = run(&four, &truth(&[0.0; 4], &[]), 20_000, 9);
    // Dunnett's limit of three arms at 20 degrees of freedom is 2.5403.
    let expected = 2.0 * crate::quantile::student_above(2.540_35, 20.0);
    for outcome in &found {
        let share = outcome.difference_dunnett.unwrap().share;
        assert!((share - expected).abs() < 0.004, "{share} {expected}");
        assert!(outcome.difference_holm.unwrap().share < outcome.difference.share);
    }
    let pairs = Layout {
        contrasts: Contrasts::AllPairs,
        ..four
    };
    let found = run(&pairs, &truth(&[0.0; 4], &[]), 100, 9);
    assert_eq!(found.len(), 6);
    assert!(
        found
            .iter()
            .all(|outcome| outcome.difference_dunnett.is_none())
    );
}

#[test]
fn more_photos_and_fewer_keepers_do_what_they_should() {
    let base = layout(2, 5, 0, |_, _, _| None);
    let power = |layout: &Layout, photos| {
        let truth = Truth {
            reading_sd: 1.0,
            photos,
            ..truth(&[0.0, 1.8], &[])
        };
        run(layout, &truth, 4000, 10)[0].difference.share
    };
    assert!(power(&base, 8) > power(&base, 1) + 0.1);
    assert!(power(&with_keepers(&base, 5), 1) > power(&with_keepers(&base, 1), 1) + 0.1);
}

#[test]
fn the_same_seed_gives_the_same_outcome() {
    let layout = layout(3, 4, 1, |_, _, number| Some(number % 2));
    let truth = truth(&[0.0, 0.5, 1.0], &[1.0]);
    assert_eq!(run(&layout, &truth, 300, 11), run(&layout, &truth, 300, 11));
    assert_ne!(run(&layout, &truth, 300, 11), run(&layout, &truth, 300, 12));
}

#[test]
fn what_makes_no_sense_is_refused_in_words() {
    let fine = layout(2, 3, 1, |_, _, _| Some(0));
    let refused = |change: fn(&mut Layout)| {
        let mut layout = fine.clone();
        change(&mut layout);
        Design::of(&layout).err().expect("a refusal").to_string()
    };
    let one_arm = refused(|layout| layout.arms = 1);
    assert_eq!(one_arm, "the number of arms is 1; it has to be 2 to 50");
    let none = refused(|layout| layout.pieces.clear());
    assert_eq!(
        none,
        "arm 1 has no piece; give it one at least, or leave it out"
    );
    refused(|layout| layout.keepers.clear());
    refused(|layout| layout.pieces[0].loads.clear());
    refused(|layout| layout.pieces[0].arm = 2);
    refused(|layout| layout.contrasts = Contrasts::Against(2));

    let design = Design::of(&fine).unwrap();
    let fails = |change: fn(&mut Truth), runs: Runs| {
        let mut truth = truth(&[0.0, 1.0], &[1.0]);
        change(&mut truth);
        design.simulate(&truth, &runs).unwrap_err().to_string()
    };
    let runs = Runs::new(10, 1);
    let zero = fails(|truth| truth.piece_sd = 0.0, runs);
    assert_eq!(
        zero,
        "the scatter of pieces and readings is 0; it has to be above 0"
    );
    let negative = fails(|truth| truth.piece_sd = -1.0, runs);
    assert_eq!(
        negative,
        "the scatter from piece to piece is -1; it has to be a finite number, 0 at least"
    );
    fails(|truth| truth.load_sds = vec![f64::NAN], runs);
    fails(|truth| truth.reading_sd = f64::INFINITY, runs);
    fails(|truth| truth.effects[1] = f64::NAN, runs);
    fails(|truth| truth.effects.clear(), runs);
    fails(|truth| truth.photos = 0, runs);
    fails(|truth| truth.margin = Some(0.0), runs);
    fails(|_| (), Runs::new(0, 1));
    fails(|_| (), Runs { tail: 1.0, ..runs });
    fails(|_| (), Runs::new(4_000_000_000, 1));
}

#[test]
fn ten_thousand_pieces_get_an_answer() {
    let many = layout(2, 5000, 1, |_, _, number| Some(number / 50));
    let found = run(&many, &truth(&[0.0, 0.1], &[1.0]), 20, 13);
    assert!(found[0].difference.share > 0.9);
    let scattered = layout(2, 5000, 1, |_, _, number| Some(number));
    let refusal = Design::of(&scattered).err().expect("a refusal").to_string();
    assert_eq!(
        refusal,
        "the number of loads and arms in one comparison is 5002; it has to be at most 400"
    );
    let pairs = Layout {
        contrasts: Contrasts::AllPairs,
        ..in_pairs(&layout(12, 300, 1, |_, _, number| Some(number)))
    };
    let refusal = Design::of(&pairs).err().expect("a refusal").to_string();
    assert!(
        refusal.ends_with("take the scatter of all arms"),
        "{refusal}"
    );
}
