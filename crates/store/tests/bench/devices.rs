//! Paired devices and what was chosen for the local network.

use crate::desk::{Desk, LATER, NOW};
use store::PhoneNetwork;

#[test]
fn a_device_is_known_by_its_token_until_it_is_revoked() {
    let mut desk = Desk::new();
    let id = desk
        .bench
        .pair_device(" Ada’s phone ", "secret", NOW)
        .unwrap();
    let other = desk.bench.pair_device("tablet", "other", NOW).unwrap();
    desk.bench.see_device(id, NOW).unwrap();
    desk.bench.see_device(id, LATER).unwrap();
    let mut desk = desk.restart();
    let known = desk.bench.device_by_token("secret").unwrap().unwrap();
    assert_eq!((known.id, known.name.as_str()), (id, "Ada’s phone"));
    assert_eq!(known.seen_at.as_deref(), Some(LATER));
    for wrong in ["", "Secret", "secret ", "other2"] {
        assert_eq!(desk.bench.device_by_token(wrong).unwrap(), None, "{wrong}");
    }
    assert!(desk.bench.revoke_device(id, LATER).unwrap());
    assert!(!desk.bench.revoke_device(id, LATER).unwrap());
    assert!(!desk.bench.revoke_device(99, LATER).unwrap());
    assert_eq!(desk.bench.device_by_token("secret").unwrap(), None);
    let left: Vec<i64> = desk.bench.devices().unwrap().iter().map(|d| d.id).collect();
    assert_eq!(left, [other]);
}

#[test]
fn the_token_itself_is_not_kept() {
    let mut desk = Desk::new();
    desk.bench.pair_device("phone", "abc", NOW).unwrap();
    let kept: String = desk
        .database()
        .query_row("SELECT token_sha256 FROM device", [], |row| row.get(0))
        .unwrap();
    // Published: FIPS 180-4 example, the message "abc".
    assert_eq!(
        kept,
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    );
}

#[test]
fn names_that_are_none_are_refused() {
    let mut desk = Desk::new();
    for name in ["", "   ", &"x".repeat(61)] {
        let error = desk.bench.pair_device(name, "t", NOW).unwrap_err();
        assert!(error.to_string().contains("1 to 60 characters"), "{error}");
    }
    assert!(desk.bench.devices().unwrap().is_empty());
}

#[test]
fn the_newest_choice_of_network_counts() {
    let mut desk = Desk::new();
    assert_eq!(desk.bench.phone_network().unwrap(), None);
    let mut chosen = PhoneNetwork {
        address: "192.168.1.20".into(),
        port: 4818,
        at_start: true,
    };
    desk.bench.choose_phone_network(&chosen, NOW).unwrap();
    chosen.at_start = false;
    desk.bench.choose_phone_network(&chosen, LATER).unwrap();
    assert_eq!(desk.restart().bench.phone_network().unwrap(), Some(chosen));
}
