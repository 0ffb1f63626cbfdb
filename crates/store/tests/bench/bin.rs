//! The bin: out of the lists, not deleted, and back again.

use crate::desk::{Desk, LATER, NOW, sees};
use store::{Place, Thing};
use trial::PhotoId;

#[test]
fn a_binned_trial_leaves_the_list_and_comes_back_whole() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let thing = Thing::Trial(&trial.slug);
    desk.bench.put_in_bin(thing, NOW).unwrap();
    assert!(desk.bench.trials().unwrap().is_empty());
    assert!(desk.bench.is_binned(thing).unwrap());
    // Its page can still be opened, and a second act changes nothing.
    assert_eq!(desk.bench.trial(&trial.slug).unwrap().unwrap(), trial);
    desk.bench.put_in_bin(thing, LATER).unwrap();
    let [binned] = &desk.bench.bin().unwrap()[..] else {
        panic!("one thing lies there");
    };
    assert_eq!((binned.kind.as_str(), binned.at.as_str()), ("trial", NOW));
    assert_eq!(binned.title, trial.title);
    desk.bench.restore(thing, LATER).unwrap();
    assert!(desk.bench.bin().unwrap().is_empty());
    assert_eq!(desk.bench.trials().unwrap().len(), 1);
    let journal = desk
        .bench
        .journal(Some(trial.id), Place::NEWEST, 10)
        .unwrap();
    let whats: Vec<_> = journal.iter().map(|entry| entry.what.as_str()).collect();
    assert_eq!(
        whats,
        ["taken out of the bin", "put in the bin", "trial entered"]
    );
}

#[test]
fn readings_of_a_binned_photo_do_not_count_until_it_is_back() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let photo = desk.marked_photo(&trial, 0, "a");
    desk.bench.read_next_with(LATER, &sees(40.0)).unwrap();
    let count = |desk: &Desk| {
        (
            desk.bench.photos(trial.id).unwrap().len(),
            desk.bench.current_readings(trial.id).unwrap().len(),
            desk.bench
                .way_of_trial(&trial)
                .unwrap()
                .progress
                .looked
                .len(),
        )
    };
    let before = count(&desk);
    assert!(before.0 == 1 && before.1 > 0 && before.2 == 1);
    desk.bench.put_in_bin(Thing::Photo(photo), LATER).unwrap();
    assert_eq!(count(&desk), (0, 0, 0));
    // The picture is still there.
    assert!(desk.bench.photo(photo).unwrap().is_some());
    desk.bench.restore(Thing::Photo(photo), LATER).unwrap();
    assert_eq!(count(&desk), before);
}

#[test]
fn what_is_not_there_is_refused_in_words() {
    let mut desk = Desk::new();
    for (thing, words) in [
        (Thing::Trial("nothing"), "There is no such trial."),
        (Thing::Plan("x' OR 1"), "There is no such plan."),
        (Thing::Recipe(""), "There is no such recipe."),
        (Thing::Photo(PhotoId(9)), "There is no such photo."),
    ] {
        let error = desk.bench.put_in_bin(thing, NOW).unwrap_err();
        assert!(error.to_string().contains(words), "{error}");
        assert!(!desk.bench.is_binned(thing).unwrap());
    }
    assert!(
        desk.bench
            .journal(None, Place::NEWEST, 10)
            .unwrap()
            .is_empty()
    );
}

#[test]
fn the_journal_of_a_trial_is_its_own_and_goes_on_page_by_page() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    desk.marked_photo(&trial, 0, "a");
    let all = desk.bench.journal(None, Place::NEWEST, 10).unwrap();
    assert!(all.iter().all(|entry| {
        entry
            .trial
            .as_ref()
            .is_some_and(|(slug, _)| *slug == trial.slug)
    }));
    let first = desk
        .bench
        .journal(Some(trial.id), Place::NEWEST, 2)
        .unwrap();
    let second = desk
        .bench
        .journal(Some(trial.id), first[1].place, 2)
        .unwrap();
    assert_eq!([first, second].concat(), all);
}
