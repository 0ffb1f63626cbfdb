use super::*;

fn shown(piece: &str, lab: [f64; 3]) -> Shown {
    Shown {
        piece: piece.into(),
        lab: lab.into(),
        texture: None,
    }
}

/// Photos whose shifts and rests are small whole steps.
fn photos() -> Vec<Vec<Shown>> {
    (0..4)
        .map(|photo: i32| {
            (0..5)
                .map(|piece: i32| {
                    let step = |by: i32| f64::from((photo * 7 + piece * 5 + by) % 4) * 0.1;
                    let shift = f64::from(photo % 3) * 0.5;
                    let own = f64::from(piece) * 9.0;
                    shown(
                        &format!("P{piece}"),
                        [30.0 + own + shift + step(0), 20.0 + step(1), 5.0 + step(2)],
                    )
                })
                .collect()
        })
        .collect()
}

#[test]
fn shares_add_up_and_more_pieces_prove_less() {
    let found = check(&photos()).unwrap();
    assert_eq!((found.photos, found.pieces, found.readings), (4, 5, 20));
    let sum: f64 = found.shares.iter().map(|share| share.share).sum();
    assert!((sum - 1.0).abs() < 1e-12);
    let table = &found.smallest_provable;
    assert_eq!((table[0].pieces, table[10].pieces), (2, 12));
    assert!(
        table
            .windows(2)
            .all(|two| two[1].changes_de00 < two[0].changes_de00
                && two[1].side_by_side_along_de00 < two[0].side_by_side_along_de00
                && two[1].change_without_keeper_de00 <= two[0].change_without_keeper_de00)
    );
    for row in table {
        assert!(row.side_by_side_along_de00 < row.side_by_side_de00);
        assert!(row.side_by_side_de00 < row.changes_de00);
        let [low, high] = found.within_interval;
        assert!(low < found.within_sd_de00 && found.within_sd_de00 < high);
    }
    let needed = found.pieces_for(1.0, &Plan::of(2)).unwrap();
    assert!(found.provable(&Plan::of(needed)).changes_de00 <= 1.0);
    assert!(needed == 2 || found.provable(&Plan::of(needed - 1)).changes_de00 > 1.0);
    assert_eq!(found.pieces_for(0.0, &Plan::of(2)), None);
}

#[test]
fn texture_as_foretold_is_set_apart_and_never_more_than_there_is() {
    let with = |variance: f64| {
        let mut photos = photos();
        for shown in photos.iter_mut().flatten() {
            shown.texture = Some([[variance, 0.0, 0.0], [0.0; 3], [0.0; 3]]);
        }
        check(&photos).unwrap().shares
    };
    let causes: Vec<_> = with(1e-4).iter().map(|share| share.cause).collect();
    assert_eq!(causes, [Cause::PhotoToPhoto, Cause::Texture, Cause::Laying]);
    assert!(with(1e-4)[1].share > 0.0 && with(1e-4)[2].share > 0.0);
    assert_eq!(with(100.0)[2].share, 0.0);
}

#[test]
fn a_piece_may_be_missing_and_one_seen_once_is_named() {
    let mut photos = photos();
    photos[1].remove(2);
    photos[3].push(shown("extra", [50.0, 0.0, 0.0]));
    let found = check(&photos).unwrap();
    assert_eq!(found.seen_once, ["extra"]);
    assert_eq!((found.pieces, found.readings), (5, 19));
    assert!(
        found
            .advice
            .iter()
            .any(|sentence| sentence.contains("extra"))
    );
}

#[test]
fn names_that_changed_places_are_suspected() {
    let suspects =
        |photos: &[Vec<Shown>]| check(photos).unwrap().advice[0].contains("changed names");
    let mut photos = photos();
    assert!(!suspects(&photos));
    photos[2][0].piece = "P4".into();
    photos[2][4].piece = "P0".into();
    assert!(suspects(&photos));
}

#[test]
fn what_is_no_check_is_refused() {
    let good = photos();
    assert_eq!(check(&good[..2]), Err(SetupError::TooFewPhotos(2)));
    let one: Vec<_> = good.iter().map(|photo| photo[..1].to_vec()).collect();
    assert_eq!(check(&one), Err(SetupError::TooFewPieces(1)));
    let mut twice = good.clone();
    twice.push(good[1].clone());
    assert_eq!(check(&twice), Err(SetupError::SamePhoto(2, 5)));
    let mut odd = good.clone();
    odd[0][0].lab.l = f64::NAN;
    assert_eq!(check(&odd), Err(SetupError::NotFinite));
    let mut named = good.clone();
    named[2][1].piece = "P0".into();
    assert!(matches!(
        check(&named),
        Err(SetupError::TwicePiece { photo: 3, .. })
    ));
    let mut stranger = good.clone();
    stranger[3] = vec![shown("other", [1.0; 3])];
    assert_eq!(check(&stranger), Err(SetupError::NothingShared(4)));
    let mut apart = good.clone();
    for shown in apart[2..].iter_mut().flatten() {
        shown.piece.push('x');
    }
    // Two groups of photos still tell the scatter inside each.
    assert!(check(&apart).is_ok());
    let empty = vec![Vec::new(); 3];
    assert_eq!(check(&empty), Err(SetupError::TooFewPieces(0)));
}

#[test]
fn no_scatter_at_all_is_no_fault() {
    let still: Vec<_> = (0..3)
        .map(|photo| {
            (0..3)
                .map(|piece| shown(&piece.to_string(), [50.0 + f64::from(photo), 0.0, 0.0]))
                .collect()
        })
        .collect();
    let found = check(&still).unwrap();
    assert!(found.within_sd_de00 < 1e-6 && found.between_sd_de00 > 0.5);
    assert!(
        found
            .smallest_provable
            .iter()
            .all(|row| row.changes_de00.is_finite())
    );
}
