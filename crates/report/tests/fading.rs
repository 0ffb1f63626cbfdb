//! Fade curves and staining as a reader gets them. No source: the layout is this
//! project's own.

use colour::{Lab, View, strength};
use report::{Published, chart, fade, publish, staining};
use trial::{
    Arm, ArmId, Piece, PieceId, Reading, ReadingId, Results, Role, Source, Trial, TrialId,
};

const BARE: Lab = Lab::new(92.0, -0.3, 5.0);
const DYED: Lab = Lab::new(40.0, 42.0, 22.0);

/// One arm of three test pieces and a witness cloth, its name with markup in it.
fn trial() -> Trial {
    let piece = |id: i64, role| Piece {
        tag: photo::board::Code::from_number(id as u32),
        id: PieceId(id),
        arm: ArmId(1),
        code: format!("P{id}"),
        role,
        load: None,
    };
    Trial {
        id: TrialId(1),
        slug: "t".into(),
        title: "Fading".into(),
        question: "Does it last?".into(),
        margin_de00: 1.0,
        rounds: 5,
        invented: true,
        made_at: "2030-01-01T00:00:00Z".into(),
        method: String::new(),
        arms: vec![Arm {
            id: ArmId(1),
            name: "plain <b>".into(),
            treatment: String::new(),
        }],
        pieces: vec![
            piece(1, Role::Test),
            piece(2, Role::Test),
            piece(3, Role::Test),
            piece(4, Role::Witness),
        ],
    }
}

fn results(stages: &[(u32, f64)]) -> Results {
    let trial = trial();
    let mut readings = Vec::new();
    for &(stage, left) in stages {
        for piece in &trial.pieces {
            let wobble = 0.1 * (piece.id.0 as f64 - 2.0) * f64::from(stage % 3);
            let share = match piece.role {
                Role::Witness => 0.05 * (1.0 - left),
                _ => left,
            };
            let lab = strength::dyeing(BARE, DYED, share, View::D65_10);
            readings.push(Reading {
                id: ReadingId(readings.len() as i64),
                piece: piece.id,
                photo: None,
                stage,
                lab: [lab.l + wobble, lab.a, lab.b],
                cov: [[0.02, 0.0, 0.0], [0.0, 0.02, 0.0], [0.0, 0.0, 0.02]],
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
    Results::of(trial, Vec::new(), readings, Vec::new(), None)
}

const FADING: [(u32, f64); 4] = [(0, 1.0), (1, 0.85), (3, 0.74), (5, 0.71)];

#[test]
fn the_plot_marks_what_was_not_looked_at_and_says_its_figures() {
    let results = results(&FADING);
    let fades = results.fades.as_ref().expect("fades");
    let svg = chart::strength_by_round(&fades.arms[0], 0, chart::lowest_share(fades));
    assert!(svg.contains("stroke-dasharray=\"5 5\"") && svg.contains("by the curve alone"));
    assert_eq!(
        svg.matches("<circle").count(),
        3 + 2,
        "means, and grades passed"
    );
    assert!(svg.contains("71 % left") && svg.contains("below grade 4: after"));
    assert!(svg.contains("plain &lt;b&gt;") && !svg.contains("<b>") && !svg.contains("style="));
    assert!(
        svg.contains(">10</text>"),
        "twice the five rounds looked at"
    );
    assert!(!svg.contains("NaN") && !svg.contains("inf"));
}

#[test]
fn report_and_table_tell_the_fade_and_the_stain() {
    let results = results(&FADING);
    let section = fade::section(&results.trial, results.fades.as_ref()).expect("a section");
    assert_eq!(section.grades, ["4", "3-4"]);
    assert_eq!(section.cards[0].passes.len(), 2);
    let rows = staining::rows(&results.stains);
    assert_eq!(rows.len(), 3);
    assert!(
        rows[2].plain.contains("is stained to grade"),
        "{}",
        rows[2].plain
    );
    let html = publish(&Published {
        results: &results,
        photos: Vec::new(),
        made_at: "2030-01-03T00:00:00Z",
    })
    .expect("a report");
    for part in [
        "<h2>Fade curves</h2>",
        "<h2>Staining</h2>",
        "S(n) = 0.7",
        "AICc of the strength",
        "Below grade 3-4",
        "its hue is that of the dye of plain &#60;b&#62;",
    ] {
        assert!(html.contains(part), "{part}");
    }
    assert!(!html.contains("plain <b>"));
}

#[test]
fn too_little_for_a_curve_shows_no_section() {
    let results = results(&FADING[..2]);
    assert!(fade::section(&results.trial, results.fades.as_ref()).is_none());
    assert!(fade::section(&results.trial, None).is_none());
}
