//! A resist-dyed piece on the pages: pale and deep, each against its own start.

use crate::desk::Desk;
use colour::{Lab, difference::ciede2000};
use scene::{Dye, Piece, Rendered, Resist, ResistDyed, Scene, cotton, render};
use trial::{Part, PhotoArea, PhotoId, Trial};

/// Two pieces, the first folded; its pale part has taken up `stain` of another dye.
fn picture(trial: &Trial, stain: f64) -> Rendered {
    let codes = [&trial.pieces[0].code, &trial.pieces[1].code];
    let deep = Dye::madder().on(&cotton(), 0.9);
    let rows = Piece::rows(codes.map(|code| (code.as_str(), deep.clone())));
    let folded = ResistDyed {
        pattern: Resist::Folds,
        pale: Dye::weld().on(&cotton(), stain),
        deep,
        deep_share: 0.6,
        border_mm: 1.0,
        pitch_mm: 13.0,
        seed: 4,
    };
    let lay = |(i, piece): (usize, Piece)| {
        if i == 0 {
            piece.resisted(folded.clone())
        } else {
            piece
        }
    };
    render(&Scene {
        width_px: 1600,
        height_px: 1200,
        pieces: rows.into_iter().enumerate().map(lay).collect(),
        ..Scene::default()
    })
}

fn read(desk: &Desk, trial: &Trial, stage: u32, picture: &Rendered) -> PhotoId {
    let mut bench = desk.bench.lock().unwrap();
    let survey = photo::survey(&picture.jpeg, None).unwrap();
    let name = format!("round-{stage}.jpg");
    let new = store::NewPhoto {
        trial: trial.id,
        stage,
        name: &name,
        bytes: &picture.jpeg,
        width: survey.width,
        height: survey.height,
        corners: Some(survey.corners),
        chart: None,
        notices: &[],
    };
    let now = "2030-01-02T00:00:00Z";
    let id = bench.add_photo(new, now).unwrap();
    let areas = picture.truth.pieces.iter().map(|piece| PhotoArea {
        piece: trial.pieces.iter().find(|p| p.code == piece.id).unwrap().id,
        polygon: piece.polygon.clone(),
    });
    bench.mark_areas(id, areas.collect(), now).unwrap();
    bench.read_next(now).unwrap().unwrap();
    id
}

#[tokio::test]
async fn pale_and_deep_stand_on_the_photo_the_trial_the_report_and_in_the_data() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let pictures = [(0, 0.0), (3, 0.25)].map(|(stage, stain)| (stage, picture(&trial, stain)));
    let photos = pictures
        .each_ref()
        .map(|(stage, picture)| read(&desk, &trial, *stage, picture));

    // The truth is the scene's, which shares no code with the reader.
    let truth = pictures
        .each_ref()
        .map(|(_, picture)| Lab::from(picture.truth.pieces[0].parts.unwrap().pale_lab));
    let stained = ciede2000(truth[0], truth[1]);
    let results = {
        let bench = desk.bench.lock().unwrap();
        bench.results(&trial.slug).unwrap().unwrap()
    };
    let change = |part| {
        let mut all = results.parts.iter();
        let at = all.find(|at| at.part == part && at.stage == 3).unwrap();
        at.change.clone().unwrap()
    };
    let (pale, deep) = (change(Part::Pale), change(Part::Deep));
    assert!(stained > 8.0, "{stained}");
    assert!(
        pale.low < stained && stained < pale.high,
        "{pale:?}, truly {stained}"
    );
    assert!(deep.low < 0.5 && deep.de00 < 1.5, "{deep:?}");

    let address = format!("/trials/{}", trial.slug);
    let code = &trial.pieces[0].code;
    for page in [
        address.clone(),
        format!("{address}/report"),
        format!("{address}/photos/{}", photos[1]),
    ] {
        let page = desk.get(&page).await.text;
        assert!(page.contains("Pale and deep parts"));
        assert!(page.contains(&format!("{code}, pale")) && page.contains(&format!("{code}, deep")));
        assert!(page.contains("another piece\u{2019}s dye shows"), "{page}");
        let told = format!(
            "change {}",
            report::words::with_range(pale.de00, pale.low, pale.high)
        );
        assert!(page.contains(&told), "{told}");
    }
    let other = &trial.pieces[1].code;
    let show = desk.get(&address).await.text;
    assert!(!show.contains(&format!("{other}, pale")), "evenly dyed");

    let table = desk.get(&format!("{address}.csv")).await;
    assert!(
        table.headers["content-type"]
            .to_str()
            .unwrap()
            .starts_with("text/csv")
    );
    assert_eq!(
        table
            .text
            .lines()
            .filter(|line| line.contains(",pale,"))
            .count(),
        2
    );
    let data = desk.get(&format!("{address}.json")).await.text;
    let data: serde_json::Value = serde_json::from_str(&data).unwrap();
    assert_eq!(data["parts"].as_array().unwrap().len(), 4);
    assert!(data["readings"][0]["split"]["pale"]["lab"].is_array());
}
