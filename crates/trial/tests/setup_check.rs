//! A set-up whose scatter is known is told rightly, and what it is said to prove
//! is proved as often as said. Simulated from fixed seeds; limits allow for chance.

use colour::{
    Lab,
    difference::{ciede2000, ciede2000_metric},
};
use inference::quantile;
use nalgebra::{Matrix3, Vector3};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use trial::{
    Role,
    decide::{Row, decide},
    setup::{Plan, SetupCheck, Shown, check},
};

/// Standard deviations of L*, a*, b*. From memory of phone photos, no source.
const WITHIN: [f64; 3] = [0.25, 0.15, 0.2];
const BETWEEN: [f64; 3] = [0.6, 0.2, 0.4];
const PIECES: [[f64; 3]; 6] = [
    [45.0, 32.0, 11.0],
    [62.0, 20.0, 8.0],
    [38.0, -5.0, -28.0],
    [70.0, 3.0, 40.0],
    [52.0, -20.0, 10.0],
    [30.0, 10.0, -6.0],
];

fn noise(sd: [f64; 3], chance: &mut ChaCha8Rng) -> Vector3<f64> {
    Vector3::from(sd.map(|sd| sd * quantile::normal(chance.random_range(1e-12..1.0))))
}

fn photos(count: usize, between: [f64; 3], chance: &mut ChaCha8Rng) -> Vec<Vec<Shown>> {
    (0..count)
        .map(|photo| {
            let shift = noise(between, chance);
            PIECES
                .iter()
                .enumerate()
                // Some pieces are missing on some photos.
                .filter(|(i, _)| (photo + 3 * i) % 8 != 5)
                .map(|(i, lab)| {
                    let seen = Vector3::from(*lab) + shift + noise(WITHIN, chance);
                    Shown {
                        piece: format!("P{i}"),
                        lab: Lab::new(seen.x, seen.y, seen.z),
                        texture: None,
                    }
                })
                .collect()
        })
        .collect()
}

/// The root mean squared CIEDE2000 of such scatter over the pieces' colours.
fn length(sd: [f64; 3]) -> f64 {
    let mean: f64 = PIECES
        .iter()
        .map(|lab| {
            let metric = Matrix3::from(ciede2000_metric(Lab::from(*lab)));
            (0..3).map(|k| metric[(k, k)] * sd[k] * sd[k]).sum::<f64>()
        })
        .sum();
    (mean / PIECES.len() as f64).sqrt()
}

#[test]
fn intervals_hold_the_scatter_they_are_of() {
    const RUNS: usize = 400;
    let mut chance = ChaCha8Rng::seed_from_u64(3);
    for (count, between) in [(3, BETWEEN), (4, BETWEEN), (6, BETWEEN), (5, [0.05; 3])] {
        let truth = [length(WITHIN), length(between)];
        let (mut held, mut mean) = ([0; 2], [0.0; 2]);
        for _ in 0..RUNS {
            let found = check(&photos(count, between, &mut chance)).unwrap();
            for (k, [low, high]) in [found.within_interval, found.between_interval]
                .into_iter()
                .enumerate()
            {
                held[k] += usize::from(low <= truth[k] && truth[k] <= high);
            }
            mean[0] += found.within_sd_de00.powi(2) / RUNS as f64;
            mean[1] += found.between_sd_de00.powi(2) / RUNS as f64;
        }
        let share = held.map(|held| held as f64 / RUNS as f64);
        // 95 % and three standard deviations of a count of 400.
        for share in share {
            assert!((0.915..=0.99).contains(&share), "{count} photos: {share}");
        }
        assert!((mean[0].sqrt() / truth[0] - 1.0).abs() < 0.05);
        if between == BETWEEN {
            assert!((mean[1].sqrt() / truth[1] - 1.0).abs() < 0.1);
        }
    }
}

/// A check with exactly the scatter of the simulated readings.
fn known() -> SetupCheck {
    let mut chance = ChaCha8Rng::seed_from_u64(11);
    let mut found = check(&photos(5, BETWEEN, &mut chance)).expect("five sound photos");
    let metric = Matrix3::from(ciede2000_metric(Lab::from(PIECES[0])));
    let root = metric
        .cholesky()
        .expect("a measure is positive")
        .l()
        .transpose();
    let widest = |sd: [f64; 3]| {
        (root * Matrix3::from_diagonal(&sd.into()))
            .singular_values()
            .max()
    };
    let length = |sd: [f64; 3]| (root * Matrix3::from_diagonal(&sd.into())).norm();
    found.within_sd_de00 = length(WITHIN);
    found.within_widest_sd_de00 = widest(WITHIN);
    found.between_sd_de00 = length(BETWEEN);
    found.between_widest_sd_de00 = widest(BETWEEN);
    found
}

/// How often the verdict on two arms that differ by so much shows a difference.
fn shown_by_verdict(difference_de00: f64, pieces: usize, photos: usize) -> f64 {
    const RUNS: usize = 400;
    let mut chance = ChaCha8Rng::seed_from_u64(5 + pieces as u64);
    let start = Vector3::from(PIECES[0]);
    let mut count = 0;
    for _ in 0..RUNS {
        let direction = noise([1.0; 3], &mut chance);
        let metric = Matrix3::from(ciede2000_metric(Lab::from(PIECES[0])));
        let unit = direction / direction.dot(&(metric * direction)).sqrt();
        let mut rows = Vec::new();
        for stage in [0, 5] {
            for _ in 0..photos {
                let shift = noise(BETWEEN, &mut chance);
                for (arm, by) in [("one", 0.0), ("two", difference_de00)] {
                    for piece in 0..pieces {
                        let change = unit * if stage == 0 { 0.0 } else { by };
                        let seen = start + change + shift + noise(WITHIN, &mut chance);
                        rows.push(Row {
                            arm: arm.into(),
                            piece: format!("{arm} {piece}"),
                            role: Role::Test,
                            load: None,
                            photo: None,
                            stated: None,
                            stage,
                            lab: Lab::new(seen.x, seen.y, seen.z),
                        });
                    }
                }
            }
        }
        let found = decide(&rows, 1.0).expect("two sound arms");
        count += usize::from(found.comparisons[0].low > 0.0);
    }
    count as f64 / RUNS as f64
}

#[test]
fn what_is_said_to_be_proved_is_proved_by_the_verdict() {
    let known = known();
    for (pieces, photos) in [(2, 1), (3, 1), (4, 1), (5, 1), (5, 2), (9, 1)] {
        let plan = Plan {
            photos,
            ..Plan::of(pieces)
        };
        let smallest = known.provable(&plan).changes_de00;
        let share = shown_by_verdict(smallest, pieces, photos);

        // Four in five, for chance of 400 and for directions that scatter less.
        assert!((0.74..0.95).contains(&share), "{pieces} pieces: {share}");
    }
}

#[test]
fn a_keeper_pays_where_photos_shift() {
    let mut known = known();
    let row = known.provable(&Plan::of(5));
    assert!(row.change_with_keeper_de00 < 0.5 * row.change_without_keeper_de00);
    known.between_sd_de00 = 0.0;
    known.between_widest_sd_de00 = 0.0;
    let row = known.provable(&Plan::of(5));
    assert!(row.change_with_keeper_de00 > row.change_without_keeper_de00);
}

#[test]
fn scatter_is_the_difference_a_person_would_measure() {
    // Two shots whose one piece moves by v: the SD about the mean is v / sqrt(2).
    let shots = |shift: f64| {
        (0..3)
            .map(|photo| {
                let moved = shift * f64::from(photo - 1);
                PIECES
                    .iter()
                    .enumerate()
                    .map(|(i, lab)| Shown {
                        piece: i.to_string(),
                        lab: Lab::new(lab[0] + moved, lab[1], lab[2]),
                        texture: None,
                    })
                    .collect()
            })
            .collect::<Vec<Vec<Shown>>>()
    };
    let found = check(&shots(0.3)).unwrap();
    let each = PIECES.map(|lab| {
        let here = Lab::from(lab);
        ciede2000(here, Lab::new(here.l + 0.3, here.a, here.b)).powi(2)
    });
    let expected = (each.iter().sum::<f64>() / 6.0).sqrt();
    assert!((found.between_sd_de00 / expected - 1.0).abs() < 0.01);
}
