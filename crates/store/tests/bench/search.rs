//! The notebook searched by words and by colour.

use crate::desk::{Desk, NOW, sees};
use dyeing::{Kitchen, run::What, stock::Stock};
use store::{Added, FoundIn, MaterialKind, NewEvent, NewLot, NewMaterial, Thing};
use trial::{ReadingId, near::distance_de00, plan::Plan};

const NAPKINS: &str = include_str!("../../../../docs/recipes/napkins.toml");
const TWO_ARMS: &str = include_str!("../../../../docs/plans/two-arms.toml");

#[test]
fn words_are_found_wherever_they_were_written() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let bench = &mut desk.bench;
    let recipe = bench.keep_recipe(NAPKINS, "written", NOW).unwrap();
    let plan = bench
        .keep_plan(&Plan::from_toml(TWO_ARMS).unwrap(), "written", NOW)
        .unwrap();
    let run = bench
        .begin_run(&recipe, 1, None, "Ünusual lot", NOW)
        .unwrap();
    let noted = NewEvent {
        step: None,
        at_s: 1_900_000_000,
        what: What::Remarked("the kettle whistled".into()),
        of: None,
    };
    bench.note_run(run, &noted, 1_900_000_000).unwrap();
    let material = NewMaterial {
        kind: MaterialKind::Yarn,
        name: "Undyed sock yarn".into(),
        notes: "superwash".into(),
    };
    let material = bench.add_material(&material, NOW).unwrap();
    let lot = NewLot {
        received_on: "2030-01-01".into(),
        amount: Stock::read("10 skeins", Kitchen::Us).unwrap(),
        price: String::new(),
        currency: String::new(),
        supplier: "the mill by the weir".into(),
        notes: String::new(),
    };
    bench.add_lot(material, &lot, NOW).unwrap();

    let first = |text: &str| desk.bench.search(text).unwrap().into_iter().next();
    for (text, place) in [
        ("second rinse", FoundIn::Trial(trial.slug.clone())),
        ("RINSED", FoundIn::Trial(trial.slug.clone())),
        ("wool", FoundIn::Trial(trial.slug.clone())),
        ("soda ash", FoundIn::Recipe(recipe.clone())),
        ("fixing agent brighter", FoundIn::Plan(plan.clone())),
        ("unusu", FoundIn::Run(run)),
        ("kettle", FoundIn::Run(run)),
        ("superwash", FoundIn::Material(material)),
        ("weir", FoundIn::Material(material)),
    ] {
        assert_eq!(first(text).map(|found| found.place), Some(place), "{text}");
    }
    let found = first("soda").unwrap();
    assert_eq!(found.title, "green napkins");
    assert!(
        found.around.contains("soda ash: 12 g/L"),
        "{}",
        found.around
    );
    assert_eq!(
        first("brighter").unwrap().title,
        "Fixing agent on a direct red"
    );
    // Each thing once, however often it has the word; signs of the index's own language are only signs.
    assert_eq!(desk.bench.search("green").unwrap().len(), 1);
    for text in [
        "",
        "  ",
        "\"",
        "NOT",
        "a* OR b",
        "soda -ash",
        "(((",
        "no such words",
    ] {
        assert!(desk.bench.search(text).is_ok(), "{text}");
    }
    assert!(first("soda zebra").is_none());
    desk.bench.put_in_bin(Thing::Recipe(&recipe), NOW).unwrap();
    assert!(desk.bench.search("soda ash").unwrap().is_empty());
}

#[test]
fn the_nearest_readings_are_the_nearest_of_all() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let database = desk.database();
    // Colours all over, by a plain congruential sequence; the blues and greys, where CIEDE2000 is
    // least like a box, closely.
    let mut state = 7u64;
    let mut next = |from: f64, to: f64| {
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1);
        from + (to - from) * (state >> 33) as f64 / f64::from(u32::MAX >> 1)
    };
    let mut all = Vec::new();
    database.execute_batch("BEGIN").unwrap();
    for k in 0..4000 {
        let lab = match k % 3 {
            0 => [next(5.0, 95.0), next(-90.0, 90.0), next(-90.0, 90.0)],
            1 => [next(20.0, 50.0), next(0.0, 40.0), next(-80.0, -30.0)],
            _ => [next(20.0, 80.0), next(-8.0, 8.0), next(-8.0, 8.0)],
        };
        let view = if k % 10 == 9 { "D50/2" } else { "D65/10" };
        database
            .execute(
                "INSERT INTO reading VALUES (NULL, ?1, NULL, 0, ?2, ?3, ?4, '[]', 0, ?5, 'lab', '[]', 'now')",
                (trial.pieces[k % 5].id.0, lab[0], lab[1], lab[2], view),
            )
            .unwrap();
        if view == "D65/10" {
            all.push(lab);
        }
    }
    database.execute_batch("COMMIT").unwrap();
    for asked in [
        [50.0, 0.0, 0.0],
        [35.0, 20.0, -55.0],
        [60.0, -50.0, 40.0],
        [90.0, 0.0, 85.0],
        [30.0, 60.0, 30.0],
        [45.0, -5.0, -45.0],
    ] {
        let found = desk.bench.readings_near(asked, "D65/10", 12).unwrap();
        let mut wanted: Vec<f64> = all.iter().map(|lab| distance_de00(asked, *lab)).collect();
        wanted.sort_by(f64::total_cmp);
        let wanted: Vec<f64> = wanted.into_iter().filter(|d| *d <= 8.0).take(12).collect();
        let distances: Vec<f64> = found.iter().map(|near| near.de00).collect();
        assert_eq!(distances, wanted, "{asked:?}");
        assert_eq!(found[0].trial.0, trial.slug);
    }
    let far = desk.bench.readings_near([5.0, 120.0, -120.0], "D65/10", 12);
    assert!(far.unwrap().is_empty());
    let other = desk.bench.readings_near([50.0, 0.0, 0.0], "A/10", 12);
    assert!(other.unwrap().is_empty(), "no reading for that light");
}

#[test]
fn readings_that_no_longer_count_are_not_found() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let photo = desk.photo(&trial, 1, "a");
    let piece = trial.pieces[0].id;
    for l in [40.0, 70.0] {
        desk.mark(photo, [piece]);
        desk.bench.read_next_with(NOW, &sees(l)).unwrap();
    }
    let near = |desk: &Desk, l: f64| {
        let near = desk.bench.readings_near([l, 1.0 / 3.0, -0.7], "D65/10", 5);
        near.unwrap().len()
    };
    assert_eq!((near(&desk, 40.0), near(&desk, 70.0)), (0, 1));
    for thing in [Thing::Photo(photo), Thing::Trial(&trial.slug)] {
        desk.bench.put_in_bin(thing, NOW).unwrap();
        assert_eq!(near(&desk, 70.0), 0);
        desk.bench.restore(thing, NOW).unwrap();
        assert_eq!(near(&desk, 70.0), 1);
    }
    let database = desk.database();
    database
        .execute_batch(&format!(
            "INSERT INTO reading VALUES (900, {}, NULL, 0, 20, 0, 0, '[]', 0, 'D65/10', 'lab', '[]', 'now');
             INSERT INTO delivery VALUES (1, {}, '', x'00', '', '', '', 'now');
             INSERT INTO delivered VALUES (900, 1, NULL);",
            piece.0, trial.id.0
        ))
        .unwrap();
    assert_eq!(near(&desk, 20.0), 1);
    desk.bench
        .withdraw(trial.id, Added::Reading(ReadingId(900)), "mixed up", NOW)
        .unwrap();
    assert_eq!(near(&desk, 20.0), 0);
}
