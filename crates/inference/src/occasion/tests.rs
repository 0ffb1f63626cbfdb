use super::*;
use proptest::prelude::*;

fn looks(values: &[(usize, usize, [f64; 3])]) -> Vec<Look> {
    values
        .iter()
        .map(|&(occasion, subject, value)| Look {
            occasion,
            subject,
            value: value.into(),
        })
        .collect()
}

#[test]
fn what_is_additive_leaves_no_rest() {
    let shift = [0.0, 2.0, -1.0, 0.5];
    let own = [10.0, 20.0, 35.0];
    let values: Vec<_> = (0..4)
        .flat_map(|o| (0..3).map(move |s| (o, s, [own[s] + shift[o], 3.0 * shift[o], 1.0])))
        // A hole, and a subject seen once.
        .filter(|&(o, s, _)| (o, s) != (2, 1))
        .chain([(3, 9, [99.0, 0.0, 0.0])])
        .collect();
    let found = Occasions::of(&looks(&values)).unwrap();
    assert!(found.within().norm() < 1e-12, "{}", found.within());
    let variance = shift.iter().map(|v| (v - 0.375) * (v - 0.375)).sum::<f64>() / 3.0;
    assert_eq!((found.within_df(), found.between_df()), (5, 3));
    // With a hole the mean square is weighted, so only the ratio is exact.
    let between = found.between();
    assert!((between[(1, 1)] / between[(0, 0)] - 9.0).abs() < 1e-9);
    assert!((between[(0, 0)] / variance - 1.0).abs() < 0.25);
}

#[test]
fn too_little_is_said_to_be_too_little() {
    let one = looks(&[(0, 0, [1.0; 3]), (1, 0, [2.0; 3])]);
    assert!(matches!(
        Occasions::of(&one),
        Err(InferenceError::TooFew { .. })
    ));
    let apart = looks(&[
        (0, 0, [1.0; 3]),
        (1, 0, [2.0; 3]),
        (2, 1, [1.0; 3]),
        (3, 1, [2.0; 3]),
    ]);
    assert!(Occasions::of(&apart).is_err());
    let odd = looks(&[(0, 0, [f64::NAN; 3]), (1, 0, [2.0; 3])]);
    assert_eq!(Occasions::of(&odd), Err(InferenceError::NotFinite));
    assert!(Occasions::of(&[]).is_err());
}

proptest! {
    #[test]
    fn order_and_colour_of_subjects_change_nothing(
        noise in prop::collection::vec(-1.0..1.0f64, 60),
        own in prop::collection::vec(-50.0..50.0f64, 5),
    ) {
        let at = |o: usize, s: usize| {
            let i = 3 * (o * 5 + s);
            [noise[i], noise[i + 1], noise[i + 2]]
        };
        let plain: Vec<_> = (0..4)
            .flat_map(|o| (0..5).map(move |s| (o, s)))
            .filter(|&(o, s)| (o + 2 * s) % 7 != 3)
            .map(|(o, s)| (o, s, at(o, s)))
            .collect();
        let moved: Vec<_> = plain
            .iter()
            .rev()
            .map(|&(o, s, v)| (o + 10, s, v.map(|x| x + own[s])))
            .collect();
        let (a, b) = (Occasions::of(&looks(&plain)).unwrap(), Occasions::of(&looks(&moved)).unwrap());
        prop_assert!((a.within() - b.within()).norm() < 1e-9);
        prop_assert!((a.between() - b.between()).norm() < 1e-9);
        let values = SymmetricEigen::new(b.between()).eigenvalues;
        prop_assert!(values.min() > -1e-12);
        for part in [a.within_part(&Matrix3::identity()), a.between_part(&Matrix3::identity())] {
            let interval = part.interval(0.95);
            prop_assert!(interval.low <= part.sd() + 1e-9 && part.sd() <= interval.high + 1e-9);
        }
    }
}
