//! Readings from several sources in one trial. No source: the rule is this project's own.

#![allow(clippy::unwrap_used, reason = "a test may panic")]

use trial::decide::{Verdict, of_trial};
use trial::{
    Arm, ArmId, EyeGrade, GreyScale, Judged, Piece, PieceId, Reading, ReadingId, Results, Role,
    Source, Trial, TrialId,
};

/// Two arms of three test pieces and a keeper each.
fn trial() -> Trial {
    let arm = |id, name: &str| Arm {
        id: ArmId(id),
        name: name.into(),
        treatment: String::new(),
    };
    let pieces = (0..8).map(|i| Piece {
        tag: photo::board::Code::from_number(i as u32),
        id: PieceId(i),
        arm: ArmId(i / 4),
        code: format!("{}{}", if i < 4 { "S" } else { "P" }, i % 4),
        role: if i % 4 == 3 { Role::Keeper } else { Role::Test },
        load: None,
    });
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
        arms: vec![arm(0, "soak"), arm(1, "plain")],
        pieces: pieces.collect(),
    }
}

/// Readings of every piece but the keepers of `without`, `off` being what the source adds to L*.
fn readings(source: Source, view: &str, off: f64, plain_fades: f64, keepers: bool) -> Vec<Reading> {
    let mut found = Vec::new();
    for piece in &trial().pieces {
        if piece.role == Role::Keeper && !keepers {
            continue;
        }
        let faded = piece.arm == ArmId(1) && piece.role == Role::Test;
        let wobble = 0.1 * (piece.id.0 % 4) as f64;
        let l = 40.0 + off + wobble + if faded { plain_fades } else { 0.0 };
        found.push(Reading {
            id: ReadingId(found.len() as i64),
            piece: piece.id,
            photo: None,
            stage: 5,
            lab: [l, 20.0, 5.0],
            cov: [[0.0; 3]; 3],
            pixels: 0,
            split: None,
            view: view.into(),
            source,
            origin: None,
            notes: Vec::new(),
            made_at: "2030-01-01T00:00:00Z".into(),
        });
    }
    found
}

#[test]
fn a_photos_keeper_is_never_held_against_a_spectrum() {
    // Photos of keepers alone and spectra of test pieces alone: nothing can be compared.
    let mut mixed = readings(Source::Spectrum, "D65/10", 0.0, 8.0, false);
    let photos = readings(Source::Photo, "D65/10", 6.0, 0.0, true);
    let is_keeper = |r: &Reading| r.piece.0 % 4 == 3;
    mixed.extend(photos.into_iter().filter(is_keeper));
    assert!(of_trial(&trial(), &mixed, None).is_err());
    assert!(
        Results::of(trial(), Vec::new(), mixed, Vec::new(), None)
            .undecided
            .is_some()
    );
}

#[test]
fn a_stage_rests_on_the_kind_that_reaches_furthest() {
    let photos = readings(Source::Photo, "D65/10", 6.0, 8.0, true);
    let spectra = readings(Source::Spectrum, "D65/10", 0.0, 8.0, true);
    let lab = readings(Source::Lab, "D50/2", 1.0, 0.0, true);
    // All three reach as far: the spectra count.
    let all = [photos.clone(), lab.clone(), spectra.clone()].concat();
    let decision = of_trial(&trial(), &all, None).unwrap();
    assert_eq!(decision.rests_on.len(), 1);
    assert_eq!(decision.rests_on[0].source, Source::Spectrum);
    assert_eq!(decision.comparisons.len(), 1);
    assert_eq!(decision.comparisons[0].verdict, Verdict::Visible);
    let reason = &decision.comparisons[0].reason;
    assert!(
        reason.contains("spectra from elsewhere (D65/10)") && reason.contains("not mixed in"),
        "{reason}"
    );
    // One spectrum fewer, and photos reach further.
    let fewer = [photos.clone(), spectra[1..].to_vec()].concat();
    assert_eq!(
        of_trial(&trial(), &fewer, None).unwrap().rests_on[0].source,
        Source::Photo
    );
    // Colours for another light are another kind.
    let lab_two = readings(Source::Lab, "D65/10", 1.0, 8.0, false);
    let decision = of_trial(&trial(), &[lab, lab_two].concat(), None).unwrap();
    assert_eq!(decision.rests_on[0].view, "D50/2");
    // Photos alone are decided on as before, without a word on sources.
    let alone = of_trial(&trial(), &photos, None).unwrap();
    assert!(!alone.comparisons[0].reason.contains("rests on"));
}

#[test]
fn grades_by_eye_are_checked_against_their_trial() {
    let good = Judged {
        piece: PieceId(0),
        stage: 5,
        scale: GreyScale::Change,
        grade: "4/5".into(),
        against: Some(PieceId(3)),
        by: "A. N.".into(),
        light: "north window".into(),
        on: String::new(),
        remark: String::new(),
    };
    let checked = good.clone().checked(&trial()).unwrap();
    assert_eq!(checked.grade, "4-5");
    let grade = EyeGrade {
        id: trial::EyeGradeId(1),
        judged: checked,
        made_at: String::new(),
    };
    let text = serde_json::to_string(&grade).unwrap();
    assert_eq!(serde_json::from_str::<EyeGrade>(&text).unwrap(), grade);
    for (field, bad) in [
        (
            "piece",
            Judged {
                piece: PieceId(77),
                ..good.clone()
            },
        ),
        (
            "against",
            Judged {
                against: Some(PieceId(77)),
                ..good.clone()
            },
        ),
        (
            "against",
            Judged {
                against: Some(PieceId(0)),
                ..good.clone()
            },
        ),
        (
            "grade",
            Judged {
                grade: "4-6".into(),
                ..good.clone()
            },
        ),
        (
            "by",
            Judged {
                by: " ".into(),
                ..good.clone()
            },
        ),
        (
            "light",
            Judged {
                light: String::new(),
                ..good.clone()
            },
        ),
        (
            "remark",
            Judged {
                remark: "x".repeat(500),
                ..good
            },
        ),
    ] {
        assert_eq!(bad.checked(&trial()).unwrap_err().field, field);
    }
}
