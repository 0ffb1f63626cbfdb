//! Materials, their lots, and what is taken from them by hand and by runs.

use crate::desk::{Desk, NOW};
use dyeing::{Kitchen, stock::Stock};
use store::{Bench, Material, MaterialKind, NewLot, NewMaterial};

const NAPKINS: &str = include_str!("../../../../docs/recipes/napkins.toml");

fn stock(text: &str) -> Stock {
    Stock::read(text, Kitchen::Us).unwrap()
}

fn add(bench: &mut Bench, kind: MaterialKind, name: &str, lots: &[(&str, &str)]) -> i64 {
    let new = NewMaterial {
        kind,
        name: name.to_owned(),
        notes: String::new(),
    };
    let id = bench.add_material(&new, NOW).unwrap();
    for (day, amount) in lots {
        let lot = NewLot {
            received_on: (*day).to_owned(),
            amount: stock(amount),
            price: "9.50 per 100 g".to_owned(),
            currency: String::new(),
            supplier: "a friend".to_owned(),
            notes: String::new(),
        };
        bench.add_lot(id, &lot, NOW).unwrap();
    }
    id
}

fn left(material: &Material) -> Vec<String> {
    material.lots.iter().map(|l| l.left.to_string()).collect()
}

#[test]
fn stock_falls_by_hand_and_comes_back() {
    let mut desk = Desk::new();
    let bench = &mut desk.bench;
    let id = add(
        bench,
        MaterialKind::Dye,
        "Madder",
        &[("2030-02-01", "100 g"), ("2030-01-01", "30 g")],
    );
    let lots = bench.material(id).unwrap().unwrap().lots;
    assert_eq!(
        lots[0].came.received_on, "2030-01-01",
        "as they came, not as typed"
    );
    let (old, new) = (lots[0].id, lots[1].id);
    bench
        .use_lot(new, stock("12.5 g"), "a sample", NOW)
        .unwrap();
    bench.use_up(old, "spilt", NOW).unwrap();
    let material = bench.material(id).unwrap().unwrap();
    assert_eq!(left(&material), ["0 g", "87.5 g"]);
    assert!(material.lots[0].is_used_up);
    assert_eq!(material.left()[0].to_string(), "87.5 g");
    let spilt = material.lots[0].taken[0].id;
    bench.return_to_lot(spilt, NOW).unwrap();
    bench.return_to_lot(spilt, NOW).unwrap();
    let material = bench.material(id).unwrap().unwrap();
    assert_eq!(left(&material), ["30 g", "87.5 g"]);
    assert!(material.lots[0].taken[0].is_taken_back);
    let volume = bench.use_lot(new, stock("12 ml"), "", NOW).unwrap_err();
    assert!(volume.to_string().contains("as 30 g"), "{volume}");
    for refused in [
        bench.use_lot(99, stock("1 g"), "", NOW),
        bench.use_up(99, "", NOW),
        bench.return_to_lot(99, NOW),
    ] {
        assert_eq!(refused.unwrap_err().code(), "unknown");
    }
    let again = NewMaterial {
        kind: MaterialKind::Auxiliary,
        name: " madder ".to_owned(),
        notes: String::new(),
    };
    let twice = bench.add_material(&again, NOW).unwrap_err();
    assert!(twice.to_string().contains("already"), "{twice}");
    let nameless = NewMaterial {
        name: " ".to_owned(),
        ..again
    };
    assert!(bench.add_material(&nameless, NOW).is_err());
}

#[test]
fn a_run_takes_what_its_recipe_needs_from_the_oldest_lots() {
    let mut desk = Desk::new();
    let bench = &mut desk.bench;
    // The napkins take 2 g of yellow (0.8 % owf of 250 g, as 200 ml of a 1 % stock), 1.25 g of blue,
    // 250 g of fine salt and 60 g of soda ash.
    let yellow = add(
        bench,
        MaterialKind::Dye,
        "Yellow",
        &[("2030-01-01", "1.5 g"), ("2030-02-01", "50 g")],
    );
    let salt = add(
        bench,
        MaterialKind::Auxiliary,
        "fine salt",
        &[("2030-01-01", "200 g")],
    );
    let soda = add(
        bench,
        MaterialKind::Auxiliary,
        "soda ash",
        &[("2030-01-01", "2 bottles")],
    );
    let slug = bench.keep_recipe(NAPKINS, "written", NOW).unwrap();
    let run = bench.begin_run(&slug, 1, None, "green lot", NOW).unwrap();
    let of = |bench: &Bench, id: i64| bench.material(id).unwrap().unwrap();
    assert_eq!(left(&of(bench, yellow)), ["0 g", "49.5 g"]);
    assert_eq!(left(&of(bench, salt)), ["−50 g"], "it wants counting");
    assert_eq!(
        left(&of(bench, soda)),
        ["2 bottles"],
        "grams can't be taken from bottles of unknown size"
    );
    let taken = &of(bench, yellow).lots[1].taken[0];
    assert_eq!(taken.run, Some((run, "green lot".to_owned())));
    // A lot that is used up is left alone; the next one is there.
    let first = of(bench, salt).lots[0].id;
    bench.use_up(first, "", NOW).unwrap();
    bench.begin_run(&slug, 1, None, "second lot", NOW).unwrap();
    assert_eq!(left(&of(bench, salt)), ["0 g"]);
    assert_eq!(left(&of(bench, yellow)), ["0 g", "47.5 g"]);
    assert_eq!(bench.materials().unwrap().len(), 3);
}
