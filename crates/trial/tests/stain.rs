//! Staining of witness cloths and of pale parts. The grades are checked in `colour`;
//! here stains are made by Kubelka and Munk's mixing, so that their maker is known.

#![allow(clippy::unwrap_used, reason = "a test may panic")]

use colour::{Lab, View, grade, strength};
use inference::chance::Chance;
use photo::Parts;
use trial::{
    Arm, ArmId, PartReading, PhotoId, Piece, PieceId, Reading, ReadingId, Role, Source,
    SplitReading, Trial, TrialId,
    stain::{StainedCloth, Whose, stains},
};

const BARE: Lab = Lab::new(93.0, -0.2, 4.0);
const BLUE: Lab = Lab::new(32.0, 2.0, -34.0);
const RED: Lab = Lab::new(38.0, 52.0, 24.0);
const BLACK: Lab = Lab::new(18.0, -0.3, 2.0);

/// Arms with two test pieces each, and a witness cloth in the first.
fn trial(names: &[&str]) -> Trial {
    let arms: Vec<Arm> = names
        .iter()
        .enumerate()
        .map(|(i, name)| Arm {
            id: ArmId(i as i64),
            name: (*name).into(),
            treatment: String::new(),
        })
        .collect();
    let piece = |id: i64, arm: i64, code: String, role| Piece {
        tag: photo::board::Code::from_number(id as u32),
        id: PieceId(id),
        arm: ArmId(arm),
        code,
        role,
        load: None,
    };
    let mut pieces = vec![piece(100, 0, "W".into(), Role::Witness)];
    for i in 0..2 * names.len() as i64 {
        pieces.push(piece(i, i / 2, format!("P{i}"), Role::Test));
    }
    Trial {
        id: TrialId(1),
        slug: "t".into(),
        title: "t".into(),
        question: "?".into(),
        margin_de00: 1.0,
        rounds: 5,
        invented: true,
        made_at: "2030-01-01T00:00:00Z".into(),
        method: String::new(),
        arms,
        pieces,
    }
}

fn diagonal(sd: f64) -> [[f64; 3]; 3] {
    let v = sd * sd;
    [[v, 0.0, 0.0], [0.0, v, 0.0], [0.0, 0.0, v]]
}

fn reading(piece: i64, stage: u32, lab: Lab, sd: f64) -> Reading {
    Reading {
        id: ReadingId(1000 * i64::from(stage) + piece),
        piece: PieceId(piece),
        photo: Some(PhotoId(i64::from(stage))),
        stage,
        lab: lab.to_array(),
        cov: diagonal(sd),
        pixels: 100,
        split: None,
        view: "D65/10".into(),
        source: Source::Photo,
        origin: None,
        notes: Vec::new(),
        made_at: "2030-01-01T00:00:00Z".into(),
    }
}

/// The witness cloth before and after five rounds, beside the dyed pieces.
fn readings(dyes: &[Lab], stained: Lab, sd: f64) -> Vec<Reading> {
    let mut found = vec![reading(100, 0, BARE, sd), reading(100, 5, stained, sd)];
    for (arm, dye) in dyes.iter().enumerate() {
        for piece in 0..2 {
            found.push(reading(2 * arm as i64 + piece, 0, *dye, sd));
        }
    }
    found
}

fn by(dye: Lab, share: f64) -> Lab {
    strength::dyeing(BARE, dye, share, View::D65_10)
}

#[test]
fn a_stain_is_graded_and_its_dye_found() {
    let trial = trial(&["blue arm", "red arm"]);
    for (dye, name) in [(BLUE, "blue arm"), (RED, "red arm")] {
        let found = stains(&trial, &readings(&[BLUE, RED], by(dye, 0.02), 0.2));
        let [stain] = &found[..] else {
            panic!("{found:?}")
        };
        assert_eq!((stain.cloth, stain.stage), (StainedCloth::WitnessCloth, 5));
        let expected = grade::stain(BARE, by(dye, 0.02));
        assert!((stain.de_gs - expected.d_e_gs).abs() < 1e-9 && stain.seen);
        assert_eq!(stain.grade, expected.grade.to_string());
        assert_eq!(stain.whose, Whose::Of(vec![name.into()]));
        assert!(stain.plain.contains(name), "{}", stain.plain);
        assert!(
            stain.technical.contains("cosine in a*b*"),
            "{}",
            stain.technical
        );
    }
}

#[test]
fn dyes_of_one_hue_count_as_one_and_near_ones_are_not_told_apart() {
    let trial = trial(&["soaped", "rinsed", "blue arm"]);
    let found = stains(&trial, &readings(&[RED, RED, BLUE], by(RED, 0.02), 0.2));
    assert_eq!(
        found[0].whose,
        Whose::Of(vec!["soaped".into(), "rinsed".into()])
    );
    assert_eq!(found[0].likenesses.len(), 2);
    // Two reds some 30 degrees apart as pale dyeings, and a stain read badly.
    let orange = Lab::new(42.0, 50.0, 36.0);
    let found = stains(
        &trial,
        &readings(&[RED, orange, BLUE], by(orange, 0.001), 0.7),
    );
    let Whose::CantTell(arms) = &found[0].whose else {
        panic!("{:?}", found[0])
    };
    assert!(arms.len() == 2 && !arms.contains(&"blue arm".to_owned()));
    assert!(found[0].plain.contains("can't be told between"));
}

#[test]
fn noise_is_no_stain_and_most_of_it_is_called_so() {
    let trial = trial(&["blue arm", "red arm"]);
    let mut chance = Chance::new(5);
    let (sd, trials) = (0.3, 400);
    let mut seen = 0;
    for _ in 0..trials {
        let mut noisy = |lab: Lab| {
            let [l, a, b] = lab.to_array().map(|v| v + sd * chance.normal());
            Lab::new(l, a, b)
        };
        let (before, after) = (noisy(BARE), noisy(BARE));
        let mut rows = readings(&[BLUE, RED], after, sd);
        rows[0].lab = before.to_array();
        let stain = &stains(&trial, &rows)[0];
        seen += usize::from(stain.seen);
        if !stain.seen {
            assert_eq!(
                (&stain.whose, &stain.grade_interval[1][..]),
                (&Whose::NoStain, "5")
            );
        }
    }
    // 5 % and three standard deviations of the count.
    assert!(seen as f64 <= trials as f64 * (0.05 + 0.033), "{seen}");
}

#[test]
fn other_soil_and_dyes_without_hue_are_said() {
    let trial = trial(&["blue arm", "black arm"]);
    let yellowed = Lab::new(90.0, 0.5, 12.0);
    let found = stains(&trial, &readings(&[BLUE, BLACK], yellowed, 0.2));
    assert_eq!(found[0].whose, Whose::NoneFits);
    assert_eq!(found[0].likenesses.len(), 1, "black has no hue");
    let found = stains(&trial, &readings(&[BLACK, BLACK], yellowed, 0.2));
    assert_eq!(found[0].whose, Whose::NoHue);
    let darker = Lab::new(88.0, -0.2, 4.0);
    let found = stains(&trial, &readings(&[BLUE, BLACK], darker, 0.2));
    assert!(
        matches!(found[0].whose, Whose::CantTell(_)),
        "{:?}",
        found[0].whose
    );
}

#[test]
fn what_has_no_start_is_left_out() {
    let trial = trial(&["blue arm"]);
    let mut rows = readings(&[BLUE], by(BLUE, 0.02), 0.2);
    rows.remove(0);
    assert!(stains(&trial, &rows).is_empty() && stains(&trial, &[]).is_empty());
    // A start of another source is none.
    rows.push(Reading {
        source: Source::Lab,
        photo: None,
        ..reading(100, 0, BARE, 0.2)
    });
    assert!(stains(&trial, &rows).is_empty());
}

#[test]
fn pale_parts_are_graded_by_the_dyes_beside_them() {
    let trial = trial(&["blue arm", "red arm"]);
    let split = |pale: Lab, deep: Lab| {
        let part = |lab: Lab| PartReading {
            lab: lab.to_array(),
            causes: Parts {
                pixels: diagonal(0.2),
                ..Parts::default()
            },
            share: 0.5,
            pixels: 50,
        };
        Some(SplitReading {
            pale: part(pale),
            deep: part(deep),
            misses: Vec::new(),
        })
    };
    let mut rows = Vec::new();
    for (stage, pale) in [(0, BARE), (5, by(RED, 0.02))] {
        rows.push(Reading {
            split: split(pale, BLUE),
            ..reading(0, stage, Lab::new(60.0, 1.0, -18.0), 0.2)
        });
        rows.push(reading(2, stage, RED, 0.2));
    }
    let found = stains(&trial, &rows);
    assert_eq!((found.len(), found[0].cloth), (1, StainedCloth::PalePart));
    assert_eq!(found[0].whose, Whose::Of(vec!["red arm".into()]));
    assert!(
        found[0]
            .plain
            .starts_with("The pale part of P0 is stained to grade")
    );
}
