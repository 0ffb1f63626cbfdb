//! The published report as a reader gets it.

use report::{Published, PublishedPhoto, publish};
use trial::decide::{ArmChange, Comparison, Decision, OverRounds, UNBOUNDED_DE00, Verdict};
use trial::{
    Arm, ArmId, EyeGrade, EyeGradeId, GreyScale, Judged, Origin, Piece, PieceId, Reading,
    ReadingId, Results, Role, Source, Trial, TrialId,
};

fn trial(invented: bool) -> Trial {
    let arm = |id, name: &str| Arm {
        id: ArmId(id),
        name: name.into(),
        treatment: "dip <twice>".into(),
    };
    let mut pieces = Vec::new();
    for arm in 1..=2 {
        for n in 1..=4 {
            pieces.push(Piece {
                tag: photo::board::Code::from_number(pieces.len() as u32),
                id: PieceId(arm * 10 + n),
                arm: ArmId(arm),
                code: format!("{}{n}", if arm == 1 { "A" } else { "B" }),
                role: Role::Test,
                load: Some(if arm == 1 { "pot 1" } else { "pot 2" }.into()),
            });
        }
    }
    Trial {
        id: TrialId(1),
        slug: "t".into(),
        title: "Alum & <script>alert(1)</script>".into(),
        question: "Does it \"last\"?".into(),
        margin_de00: 1.0,
        rounds: 4,
        invented,
        made_at: "2030-01-01T00:00:00Z".into(),
        method: "line one\nline two <b>".into(),
        arms: vec![arm(1, "plain & simple"), arm(2, "alum <i>")],
        pieces,
    }
}

fn readings(trial: &Trial) -> Vec<Reading> {
    let mut out = Vec::new();
    for stage in [0u32, 4] {
        for (i, piece) in trial.pieces.iter().enumerate() {
            let wobble = (i % 4) as f64 * 0.1;
            let fade = if stage == 0 {
                0.0
            } else if piece.arm == ArmId(1) {
                9.0
            } else {
                1.0
            };
            out.push(Reading {
                id: ReadingId(out.len() as i64 + 1),
                piece: piece.id,
                photo: None,
                stage,
                lab: [40.0 + fade + wobble, 20.0 - fade / 2.0, 5.0 + wobble],
                cov: [[0.04, 0.0, 0.0], [0.0, 0.04, 0.0], [0.0, 0.0, 0.04]],
                pixels: 900,
                split: None,
                view: "D65/10".into(),
                source: Source::Photo,
                origin: None,
                notes: Vec::new(),
                made_at: "2030-01-02T00:00:00Z".into(),
            });
        }
    }
    out
}

fn decision(trial: &Trial) -> Decision {
    let (a, b) = (trial.arms[0].name.clone(), trial.arms[1].name.clone());
    let change = |arm: &str, de00: f64, high: f64| ArmChange {
        arm: arm.into(),
        stage: 4,
        pieces: 4,
        change: [9.0, -4.5, 0.0],
        de00,
        low: de00 - 0.5,
        high,
        fade_grade: "2-3".into(),
    };
    Decision {
        comparisons: vec![Comparison {
            stage: 4,
            a: a.clone(),
            b: b.clone(),
            de00: 6.2,
            low: 5.4,
            high: 7.0,
            along: None,
            p: 0.01,
            dealt_anew: None,
            verdict: Verdict::Visible,
            reason: "4 pieces against 4 <pieces>".into(),
        }],
        arms: vec![change(&a, 7.5, 8.0), change(&b, 1.0, UNBOUNDED_DE00)],
        over_rounds: vec![OverRounds {
            stage: 4,
            a: a.clone(),
            b: b.clone(),
            de00: -1.25,
            low: -1.81,
            high: -0.69,
            df: 21.0,
            p: 0.01,
            p_together: 0.02,
        }],
        rests_on: Vec::new(),
    }
}

fn results(invented: bool) -> Results {
    let trial = trial(invented);
    let readings = readings(&trial);
    Results {
        photos: Vec::new(),
        fades: trial::fade::of_trial(&trial, &readings),
        stains: trial::stain::stains(&trial, &readings),
        readings,
        parts: Vec::new(),
        eye_grades: Vec::new(),
        eyes: None,
        decision: Some(decision(&trial)),
        undecided: None,
        planned: None,
        baths: Vec::new(),
        departures: Vec::new(),
        trial,
    }
}

fn html(invented: bool) -> String {
    html_of(&results(invented))
}

/// The report, with plain spaces where it has no-break ones.
fn html_of(results: &Results) -> String {
    publish(&Published {
        results,
        photos: vec![PublishedPhoto {
            stage: 4,
            name: "day <4>.jpg".into(),
            jpeg: vec![0xff, 0xd8, 0xff],
        }],
        made_at: "2030-01-03T00:00:00Z",
    })
    .expect("a report")
    .replace('\u{a0}', " ")
}

#[test]
fn it_asks_nobody_for_anything() {
    let html = html(false);
    for outside in [
        "http:", "https:", "//cdn", "<script", "<link", "@import", "url(",
    ] {
        assert!(!html.contains(outside), "{outside}");
    }
    assert!(html.contains("src=\"data:image/jpeg;base64,/9j/\""));
    assert!(html.contains("default-src 'none'"));
}

#[test]
fn what_people_typed_is_text() {
    let html = html(false);
    for raw in [
        "<twice>",
        "<b>",
        "<i>",
        "alert(1)</script>",
        "<4>",
        "<pieces>",
    ] {
        assert!(!html.contains(raw), "{raw}");
    }
    assert!(html.contains("plain &#38; simple") || html.contains("plain &amp; simple"));
}

#[test]
fn it_prints() {
    let html = html(false);
    for rule in [
        "@media print",
        "@page",
        "break-inside: avoid",
        "table-header-group",
    ] {
        assert!(html.contains(rule), "{rule}");
    }
}

#[test]
fn an_invented_trial_says_so_in_the_header_and_the_limits() {
    let invented = html(true);
    let header = &invented[invented.find("<header>").unwrap()..invented.find("</header>").unwrap()];
    assert!(header.contains("Invented trial."));
    assert!(invented.contains("This trial is invented"));
    let real = html(false);
    assert!(!real.contains("Invented trial") && !real.contains("invented trial"));
    assert!(!real.contains("class=\"invented\""));
}

#[test]
fn it_holds_verdict_margin_method_limits_and_numbers() {
    let html = html(false);
    for part in [
        "<h2>Verdict</h2>",
        "Visible difference",
        "95 % interval",
        "From its start, plain &#38; simple has changed by 7.50",
        "<h2>Method</h2>",
        "<h2>Limits</h2>",
        "Grade of fade",
        "<h2>Readings</h2>",
        "L* 40.0 a* 20.0 b* 5.0",
        "Every test piece of plain",
        "<title id=\"change-title\">Change of colour by round</title>",
    ] {
        assert!(html.contains(part), "{part}");
    }
}

/// Counted from the arm that faded further, whichever comes first.
#[test]
fn all_rounds_together_are_told_from_the_arm_that_faded_further() {
    let said = "After 4 rounds, plain &#38; simple has faded 1.25 further than alum &#60;i&#62; \
                (95 % interval 0.69 to 1.81).";
    assert!(html(false).contains(said));
}

#[test]
fn a_trial_without_readings_still_makes_a_report() {
    let results = Results::of(trial(false), Vec::new(), Vec::new(), Vec::new(), None);
    let html = html_of(&results);
    assert!(html.contains("No verdict yet"));
}

#[test]
fn sources_and_grades_by_eye_are_told() {
    let mut results = results(false);
    results.readings[0].source = Source::Spectrum;
    results.readings[0].view = "D50/2".into();
    results.readings[0].origin = Some(Origin {
        by: "a friend <x>".into(),
        on: "Friday".into(),
        instrument: "sphere".into(),
        file: "f.csv".into(),
        spectrum: None,
    });
    let piece = results.trial.pieces[0].id;
    results.eye_grades.push(EyeGrade {
        id: EyeGradeId(1),
        judged: Judged {
            piece,
            stage: 4,
            scale: GreyScale::Change,
            grade: "3-4".into(),
            against: None,
            by: "A. N.".into(),
            light: "north window".into(),
            on: String::new(),
            remark: "streaky <b>".into(),
        },
        made_at: "2030-02-03T00:00:00Z".into(),
    });
    let html = html_of(&results);
    for part in [
        "spectrum by a friend &#60;x&#62;, Friday, sphere, file f.csv",
        "(D50/2)",
        "<td>photo</td>",
        "Readings from elsewhere are given as they were handed in",
        "<h2>Grades judged by eye</h2>",
        "<td>change in colour</td><td>3-4</td><td>its own original</td><td>A. N., 2030-02-03, under north window</td>",
        "streaky &#60;b&#62;",
    ] {
        assert!(html.contains(part), "{part}");
    }
}
