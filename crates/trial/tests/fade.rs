//! Fade curves of trials whose truth is made by Kubelka and Munk's mixing of one dye.
//! No outside source: the truth is a formula; `inference` is checked against SciPy.

#![allow(clippy::unwrap_used, reason = "a test may panic")]

use colour::{Lab, Spectrum, View, grade, strength};
use inference::{chance::Chance, decay::Curve};
use trial::{
    Arm, ArmId, Origin, Piece, PieceId, Reading, ReadingId, Reflectance, Role, Source, Trial,
    TrialId,
    decide::Row,
    fade::{Against, FoundShape, Mark, StrengthBy, of_rows, of_trial},
};

const BARE: Lab = Lab::new(92.0, -0.3, 5.0);
const DYED: Lab = Lab::new(40.0, 42.0, 22.0);
const TRUTH: Curve = Curve {
    floor: 0.7,
    rate: 0.4,
};
const STAGES: [u32; 4] = [1, 3, 6, 10];

fn at(left: f64) -> Lab {
    strength::dyeing(BARE, DYED, left, View::D65_10)
}

fn row(arm: &str, piece: &str, role: Role, stage: u32, lab: Lab) -> Row {
    Row {
        arm: arm.into(),
        piece: piece.into(),
        role,
        load: None,
        photo: None,
        stated: None,
        stage,
        lab,
    }
}

/// Four test pieces, with a keeper and an undyed witness cloth or without; every photo
/// shifts its pieces alike by up to `shift` of L*.
fn rows(truth: Curve, keeper: bool, shift: f64, noise: f64) -> Vec<Row> {
    let mut chance = Chance::new(11);
    let mut found = Vec::new();
    for stage in [0].into_iter().chain(STAGES) {
        let own = if keeper { shift * chance.normal() } else { 0.0 };
        let mut seen = |lab: Lab| {
            Lab::new(
                lab.l + own + noise * chance.normal(),
                lab.a + noise * chance.normal(),
                lab.b + noise * chance.normal(),
            )
        };
        for piece in ["P1", "P2", "P3", "P4"] {
            let lab = seen(at(truth.left(f64::from(stage))));
            found.push(row("plain", piece, Role::Test, stage, lab));
        }
        if keeper {
            found.push(row("plain", "K", Role::Keeper, stage, seen(at(1.0))));
        }
    }
    found.push(row("plain", "W", Role::Witness, 0, BARE));
    found
}

#[test]
fn the_truth_comes_back_without_noise() {
    for keeper in [true, false] {
        let fades = of_rows(&rows(TRUTH, keeper, 0.0, 0.0)).unwrap();
        assert!(fades.cloth_taken_off && fades.strength_by == StrengthBy::Channels);
        let arm = &fades.arms[0];
        let way = if keeper {
            Against::KeeperAndStart
        } else {
            Against::Start
        };
        assert_eq!((arm.against, arm.pieces, arm.left_out), (way, 4, 0));
        let curve = arm.strength.as_ref().unwrap();
        assert_eq!(curve.shape, FoundShape::LevelsOff);
        assert!((curve.floor - 0.7).abs() < 1e-6 && (curve.rate - 0.4).abs() < 1e-5);
        assert_eq!(curve.last_round, 10);
        assert!(
            arm.technical
                .contains("S(n) = 0.700 + 0.300 exp(\u{2212}0.400 n)")
        );
    }
}

#[test]
fn a_follower_hears_where_it_levels_off() {
    let fades = of_rows(&rows(TRUTH, true, 0.5, 0.05)).unwrap();
    let arm = &fades.arms[0];
    assert!(arm.plain.contains("levels off near 7"), "{}", arm.plain);
    assert!(arm.plain.contains("falls below grade 4"), "{}", arm.plain);
    assert!(
        arm.technical.contains("the curve is best"),
        "{}",
        arm.technical
    );
}

/// The grade by its own formula along the true way must be passed where the curve says.
#[test]
fn grades_are_passed_where_the_formula_says() {
    let truth = Curve {
        floor: 0.6,
        rate: 0.25,
    };
    let fades = of_rows(&rows(truth, true, 0.0, 0.05)).unwrap();
    let d_ef = |rounds: f64| grade::fade(DYED, at(truth.left(rounds))).d_ef;
    for (passed, limit) in fades.arms[0].passes.iter().zip([2.10, 2.95]) {
        let true_round = (0..2000)
            .map(|i| f64::from(i) * 0.01)
            .find(|n| d_ef(*n) >= limit)
            .unwrap();
        let found = passed.estimate.rounds.unwrap();
        assert!(
            (found - true_round).abs() < 0.12 * true_round,
            "{found} {true_round}"
        );
        assert_eq!(passed.from_de, limit);
        assert_eq!(passed.estimate.mark, Mark::Seen);
    }
    assert_eq!(fades.arms[0].passes[1].grade, "3-4");
}

#[test]
fn a_keeper_takes_out_what_a_photo_does_to_all() {
    let width = |rows: &[Row]| {
        let fades = of_rows(rows).unwrap();
        let curve = fades.arms[0].strength.clone().unwrap();
        let [low, high] = curve.at_last.interval.unwrap();
        assert!(low < TRUTH.left(10.0) && TRUTH.left(10.0) < high);
        high - low
    };
    assert!(width(&rows(TRUTH, true, 1.5, 0.1)) < 0.06);
}

#[test]
fn beyond_the_last_look_is_marked_and_goes_to_twice_as_far() {
    let slow = Curve {
        floor: 0.5,
        rate: 0.025,
    };
    let fades = of_rows(&rows(slow, true, 0.0, 0.1)).unwrap();
    let arm = &fades.arms[0];
    let line = &arm.change.as_ref().unwrap().line;
    assert_eq!(line.last().unwrap().rounds, 20.0);
    assert!(
        line.iter()
            .all(|point| point.extrapolated == (point.rounds > 10.0))
    );
    let later = &arm.passes[1];
    assert!(later.estimate.mark != Mark::Seen, "{later:?}");
    assert!(arm.technical.contains("AICc"));
}

#[test]
fn no_fade_is_flat_and_a_gain_is_doubted() {
    let fades = of_rows(&rows(Curve::FLAT, true, 0.3, 0.2)).unwrap();
    let curve = fades.arms[0].strength.clone().unwrap();
    let [low, high] = curve.at_last.interval.unwrap();
    assert!(low > 0.9 && high >= 0.995, "{low} {high}");
    let deeper: Vec<Row> = rows(TRUTH, true, 0.0, 0.02)
        .into_iter()
        .map(|mut row| {
            if row.role == Role::Test && row.stage > 0 {
                row.lab = at(1.1 + 0.01 * f64::from(row.stage));
            }
            row
        })
        .collect();
    let fades = of_rows(&deeper).unwrap();
    let arm = &fades.arms[0];
    assert_eq!(arm.strength.as_ref().unwrap().shape, FoundShape::Rising);
    assert!(arm.plain.contains("reads stronger"), "{}", arm.plain);
}

#[test]
fn what_allows_no_curve_is_said() {
    let one_stage: Vec<Row> = rows(TRUTH, true, 0.0, 0.1)
        .into_iter()
        .filter(|row| row.stage <= 1)
        .collect();
    let fades = of_rows(&one_stage).unwrap();
    let arm = &fades.arms[0];
    assert!(arm.strength.is_none() && arm.passes.is_empty());
    assert!(
        arm.why_not.as_ref().unwrap().contains("another round"),
        "{arm:?}"
    );
    let unbegun: Vec<Row> = rows(TRUTH, false, 0.0, 0.1)
        .into_iter()
        .filter(|row| row.stage > 0)
        .collect();
    let arm = of_rows(&unbegun).unwrap().arms.remove(0);
    assert_eq!((arm.pieces, arm.left_out), (0, 4));
    assert!(arm.why_not.unwrap().contains("nothing to compare with"));
    let only_start: Vec<Row> = rows(TRUTH, true, 0.0, 0.1)
        .into_iter()
        .filter(|row| row.stage == 0)
        .collect();
    assert!(of_rows(&only_start).is_none() && of_rows(&[]).is_none());
    let pale: Vec<Row> = rows(TRUTH, true, 0.0, 0.0)
        .into_iter()
        .map(|mut row| {
            row.lab = BARE;
            row
        })
        .collect();
    let arm = of_rows(&pale).unwrap().arms.remove(0);
    assert!(arm.why_not.unwrap().contains("hardly deeper"));
    let single: Vec<Row> = rows(TRUTH, true, 0.0, 0.1)
        .into_iter()
        .filter(|row| row.role != Role::Test || row.piece == "P1")
        .collect();
    let arm = of_rows(&single).unwrap().arms.remove(0);
    assert!(arm.strength.unwrap().at_last.interval.is_none());
    assert!(arm.plain.contains("one piece"), "{}", arm.plain);
}

#[test]
fn a_keeper_alone_is_compared_with_and_doubted() {
    let unbegun: Vec<Row> = rows(TRUTH, true, 0.5, 0.1)
        .into_iter()
        .filter(|row| row.stage > 0 || row.role != Role::Test)
        .collect();
    let arm = of_rows(&unbegun).unwrap().arms.remove(0);
    assert_eq!(arm.against, Against::Keeper);
    assert!((arm.strength.unwrap().floor - 0.7).abs() < 0.05);
}

#[test]
fn spectra_are_summed_where_there_are_any() {
    let piece = |id: i64, role| Piece {
        tag: photo::board::Code::from_number(id as u32),
        id: PieceId(id),
        arm: ArmId(1),
        code: format!("P{id}"),
        role,
        load: None,
    };
    let trial = Trial {
        id: TrialId(1),
        slug: "t".into(),
        title: "t".into(),
        question: "?".into(),
        margin_de00: 1.0,
        rounds: 5,
        invented: true,
        made_at: "2030-01-01T00:00:00Z".into(),
        method: String::new(),
        arms: vec![Arm {
            id: ArmId(1),
            name: "plain".into(),
            treatment: String::new(),
        }],
        pieces: vec![
            piece(1, Role::Test),
            piece(2, Role::Test),
            piece(3, Role::Witness),
        ],
    };
    let bare = 0.8;
    let reading = |piece: i64, stage: u32, left: f64, spectrum: bool| {
        let k_s = |i: usize| strength::k_over_s(bare) + left * if i < 15 { 4.0 } else { 0.5 };
        let values: Vec<f64> = (0..31).map(|i| strength::reflectance(k_s(i))).collect();
        let seen = Spectrum::new(400.0, 10.0, values).unwrap();
        Reading {
            id: ReadingId(i64::from(stage) * 10 + piece),
            piece: PieceId(piece),
            photo: None,
            stage,
            lab: seen.lab(View::D65_10).to_array(),
            cov: [[0.0; 3]; 3],
            pixels: 0,
            split: None,
            view: "D65/10".into(),
            source: if spectrum {
                Source::Spectrum
            } else {
                Source::Photo
            },
            origin: spectrum.then(|| Origin {
                by: String::new(),
                on: String::new(),
                instrument: String::new(),
                file: String::new(),
                spectrum: Some(Reflectance::from(&seen)),
            }),
            notes: Vec::new(),
            made_at: "2030-01-01T00:00:00Z".into(),
        }
    };
    let mut readings = vec![reading(3, 0, 0.0, true)];
    for stage in [0, 1, 3, 6, 10] {
        for piece in [1, 2] {
            let left = TRUTH.left(f64::from(stage));
            readings.push(reading(piece, stage, left, true));
            if stage < 3 {
                readings.push(reading(piece, stage, 0.5, false));
            }
        }
    }
    let fades = of_trial(&trial, &readings).unwrap();
    assert_eq!(
        (fades.strength_by, fades.source),
        (StrengthBy::Spectrum, Some(Source::Spectrum))
    );
    let curve = fades.arms[0].strength.as_ref().unwrap();
    assert!((curve.floor - 0.7).abs() < 1e-6 && (curve.rate - 0.4).abs() < 1e-5);
}
