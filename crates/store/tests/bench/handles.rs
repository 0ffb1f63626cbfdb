//! Two handles on one bench.

use crate::desk::{Desk, LATER, NOW, new_photo, rinses, sees};
use std::thread;
use store::Bench;

#[test]
fn two_handles_see_each_others_changes() {
    let mut desk = Desk::new();
    let other = Bench::open(desk.home.path()).unwrap();
    let trial = desk.trial();
    assert_eq!(other.trial(&trial.slug).unwrap(), Some(trial.clone()));
    let photo = desk.photo(&trial, 0, "a");
    assert_eq!(other.photo(photo).unwrap().unwrap().trial, trial.id);
}

#[test]
fn a_photo_taken_by_two_readers_is_recorded_once() {
    let mut desk = Desk::new();
    let mut other = Bench::open(desk.home.path()).unwrap();
    let trial = desk.trial();
    desk.marked_photo(&trial, 0, "a");
    let mine = desk.bench.next_waiting().unwrap().unwrap();
    let theirs = other.next_waiting().unwrap().unwrap();
    assert_eq!(mine.photo(), theirs.photo());
    let recorded = other
        .record(&theirs, theirs.read(&sees(40.0)), LATER)
        .unwrap();
    assert!(recorded.is_some());
    let late = desk
        .bench
        .record(&mine, mine.read(&sees(50.0)), LATER)
        .unwrap();
    assert_eq!(late, None);
    let readings = desk.bench.current_readings(trial.id).unwrap();
    assert_eq!(readings.len(), 5);
    assert!(readings.iter().all(|reading| reading.lab[0] == 40.0));
}

#[test]
fn a_photo_marked_anew_while_it_is_read_is_read_by_the_new_marks() {
    let mut desk = Desk::new();
    let mut other = Bench::open(desk.home.path()).unwrap();
    let trial = desk.trial();
    let photo = desk.marked_photo(&trial, 0, "a");
    let taken = other.next_waiting().unwrap().unwrap();
    desk.mark(photo, [trial.pieces[0].id]);
    assert_eq!(
        other
            .record(&taken, taken.read(&sees(40.0)), LATER)
            .unwrap(),
        None
    );
    let (read, _) = other.read_next_with(LATER, &sees(41.0)).unwrap().unwrap();
    assert_eq!(read, photo);
    let readings = desk.bench.current_readings(trial.id).unwrap();
    assert_eq!(readings.len(), 1);
    assert_eq!(readings[0].lab[0], 41.0);
}

#[test]
fn handles_at_work_at_the_same_time_wait_for_each_other() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    thread::scope(|scope| {
        for worker in 0..4 {
            let (home, trial) = (desk.home.path(), &trial);
            scope.spawn(move || {
                let mut bench = Bench::open(home).unwrap();
                for i in 0..5 {
                    bench.create_trial(&rinses(), NOW).unwrap();
                    // Two workers each add the same content at about the same time.
                    let content = format!("{} {i}", worker / 2);
                    bench.add_photo(new_photo(trial, i, &content), NOW).unwrap();
                }
            });
        }
    });
    let mut slugs: Vec<_> = desk
        .bench
        .trials()
        .unwrap()
        .into_iter()
        .map(|t| t.slug)
        .collect();
    slugs.sort();
    slugs.dedup();
    assert_eq!(slugs.len(), 21);
    assert_eq!(desk.bench.photos(trial.id).unwrap().len(), 20);
    assert_eq!(desk.vault().len(), 10);
}

#[test]
fn several_programs_may_make_the_bench_at_the_same_time() {
    for _ in 0..10 {
        let home = tempfile::tempdir().unwrap();
        thread::scope(|scope| {
            for _ in 0..4 {
                scope.spawn(|| {
                    let mut bench = Bench::open(home.path()).unwrap();
                    bench.create_trial(&rinses(), NOW).unwrap();
                });
            }
        });
        let bench = Bench::open(home.path()).unwrap();
        assert_eq!(bench.trials().unwrap().len(), 4);
    }
}
