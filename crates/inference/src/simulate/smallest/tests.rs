use super::*;
use crate::{
    sample_size,
    simulate::{Contrasts, ScatterOf},
};

fn wish() -> Wish {
    Wish {
        arms: 2,
        contrasts: Contrasts::Against(0),
        strictness: Strictness::Each,
        scatter: ScatterOf::AllArms,
        sharing: Sharing::AllArms,
        piece_sd: 1.0,
        load_sd: 0.5,
        reading_sd: 0.0,
        photos: 1,
        keepers: 0,
        power: 0.8,
        difference: Some(1.2),
        alike: None,
        tail: 0.05,
        equivalence_tail: 0.05,
    }
}

fn limits(pieces: usize, loads: usize, pieces_per_load: usize) -> Limits {
    Limits {
        pieces,
        loads,
        pieces_per_load,
        load_as_pieces: 2.0,
    }
}

fn reached(wish: &Wish, limits: &Limits) -> Size {
    match smallest(wish, limits, 1).unwrap() {
        Answer::Reached(size) => size,
        Answer::OutOfReach(size) => panic!("out of reach: {size:?}"),
    }
}

fn simulated(power: Option<Power>) -> f64 {
    power.unwrap().simulated.unwrap().share
}

#[test]
fn in_one_load_it_is_the_exact_sample_size() {
    for (difference, wanted) in [(1.2, 0.8), (2.0, 0.9), (0.8, 0.8)] {
        let wish = Wish {
            difference: Some(difference),
            power: wanted,
            ..wish()
        };
        let size = reached(&wish, &limits(200, 1, 200));
        let exact = sample_size::for_difference(difference, wanted, 0.05).unwrap();
        assert_eq!((size.per_arm, size.loads), (exact.whole as usize, 1));
        assert!((simulated(size.difference) - size.difference.unwrap().formula).abs() < 0.03);
    }
    let wish = Wish {
        difference: None,
        alike: Some(Alike {
            margin: 1.5,
            truly: 0.0,
            parts: 1,
        }),
        ..wish()
    };
    let size = reached(&wish, &limits(200, 1, 200));
    assert_eq!(size.per_arm, 9);
    assert!((simulated(size.alike) - 0.838).abs() < 0.03);
}

#[test]
fn what_is_promised_is_what_happens() {
    let several = Wish {
        arms: 4,
        difference: Some(1.6),
        ..wish()
    };
    for strictness in [Strictness::Each, Strictness::Holm, Strictness::Dunnett] {
        for scatter in [ScatterOf::AllArms, ScatterOf::EachPair] {
            for (sharing, keepers) in [
                (Sharing::AllArms, 0),
                (Sharing::AllArms, 12),
                (Sharing::OneArm, 0),
            ] {
                let wish = Wish {
                    strictness,
                    scatter,
                    sharing,
                    keepers,
                    ..several
                };
                let size = reached(&wish, &limits(2000, 200, 12));
                let share = simulated(size.difference);
                let promised = size.difference.unwrap().formula;
                assert!(share > 0.77, "{wish:?} {size:?}");
                assert!(
                    (share - promised).abs() < 0.03 || share > promised,
                    "{wish:?} {size:?}"
                );
            }
        }
    }
}

#[test]
fn both_wishes_hold_and_loads_hold_no_more_than_they_can() {
    let wish = Wish {
        arms: 3,
        strictness: Strictness::Dunnett,
        alike: Some(Alike {
            margin: 1.3,
            truly: 0.2,
            parts: 1,
        }),
        ..wish()
    };
    let size = reached(&wish, &limits(200, 20, 10));
    assert!(size.alike.unwrap().formula >= 0.8 && size.difference.unwrap().formula >= 0.8);
    // Nine of ten places in each load are used: three of each arm.
    assert_eq!(size.loads, size.per_arm.div_ceil(3));
    assert_eq!(size.pieces, 3 * size.per_arm);
}

#[test]
fn loads_of_their_own_need_several_for_each_arm() {
    let wish = Wish {
        sharing: Sharing::OneArm,
        difference: Some(2.5),
        ..wish()
    };
    let size = reached(&wish, &limits(100, 40, 6));
    assert!(size.loads >= 4 && size.loads.is_multiple_of(2), "{size:?}");
    let costly = Limits {
        load_as_pieces: 20.0,
        ..limits(100, 40, 6)
    };
    assert!(reached(&wish, &costly).loads <= size.loads);
    let one_each = smallest(&wish, &limits(100, 2, 50), 1)
        .unwrap_err()
        .to_string();
    assert!(
        one_each.starts_with("100 pieces and 2 loads of 50 leave no room"),
        "{one_each}"
    );
}

#[test]
fn what_is_out_of_reach_comes_with_the_best_there_is() {
    let Answer::OutOfReach(size) = smallest(&wish(), &limits(12, 2, 12), 1).unwrap() else {
        panic!("out of reach");
    };
    assert_eq!((size.per_arm, size.loads), (6, 1));
    let exact = sample_size::power(1.2, 6.0, 0.05).unwrap();
    assert!((size.difference.unwrap().formula - exact).abs() < 1e-9);
    assert!((simulated(size.difference) - exact).abs() < 0.03);
}

#[test]
fn too_few_keepers_are_out_of_reach_however_many_pieces_there_are() {
    let wish = Wish {
        keepers: 1,
        ..wish()
    };
    let answer = smallest(&wish, &limits(2000, 200, 100), 1).unwrap();
    assert!(matches!(answer, Answer::OutOfReach(_)), "{answer:?}");
}

#[test]
fn a_vast_budget_gets_an_answer() {
    let tiny = Wish {
        difference: Some(0.06),
        ..wish()
    };
    let vast = limits(10_000, 10_000, 10_000);
    assert!(matches!(smallest(&tiny, &vast, 1), Ok(Answer::Reached(_))));
    let tinier = Wish {
        difference: Some(1e-4),
        sharing: Sharing::OneArm,
        ..wish()
    };
    assert!(matches!(
        smallest(&tinier, &vast, 1),
        Ok(Answer::OutOfReach(_))
    ));
}

#[test]
fn what_makes_no_sense_is_refused_in_words() {
    let words = |change: fn(&mut Wish), limits: Limits| {
        let mut wish = wish();
        change(&mut wish);
        smallest(&wish, &limits, 1).unwrap_err().to_string()
    };
    let plenty = limits(100, 10, 20);
    assert_eq!(
        words(|wish| wish.arms = 1, plenty),
        "the number of arms is 1; it has to be 2 to 50"
    );
    assert_eq!(
        words(|wish| wish.difference = None, plenty),
        "nothing is wished for; name a difference to be shown or a margin to be kept"
    );
    assert_eq!(
        words(
            |wish| (wish.strictness, wish.contrasts) = (Strictness::Dunnett, Contrasts::AllPairs),
            plenty
        ),
        "Dunnett's limit is for comparisons with one control; compare with one, or take Holm's rule"
    );
    let cramped = words(|_| (), limits(0, 10, 20));
    assert!(
        cramped.starts_with("0 pieces and 10 loads of 20 leave no room for 2 arms"),
        "{cramped}"
    );
    words(|_| (), limits(100, 0, 20));
    words(|_| (), limits(100, 10, 1));
    words(|wish| wish.piece_sd = 0.0, plenty);
    words(|wish| wish.piece_sd = f64::NAN, plenty);
    words(|wish| wish.load_sd = -1.0, plenty);
    words(|wish| wish.photos = 0, plenty);
    words(|wish| wish.power = 1.0, plenty);
    words(|wish| wish.tail = 0.0, plenty);
    words(|wish| wish.difference = Some(f64::NAN), plenty);
    words(
        |wish| {
            wish.alike = Some(Alike {
                margin: 1.0,
                truly: 1.0,
                parts: 1,
            })
        },
        plenty,
    );
    words(|wish| wish.contrasts = Contrasts::Against(2), plenty);
    words(
        |_| (),
        Limits {
            load_as_pieces: f64::NAN,
            ..plenty
        },
    );
}
