//! Several things done at once, their outcomes taken in order.

use std::{
    collections::BTreeMap,
    num::NonZeroUsize,
    sync::{
        atomic::{AtomicUsize, Ordering},
        mpsc,
    },
    thread,
};

/// Does `work` on each item, `jobs` at a time, and hands each outcome to `take`
/// in the order of the items, as soon as its turn has come.
///
/// # Errors
/// The first error of `take`; items not begun by then are left undone.
pub fn in_order<T: Sync, R: Send, E>(
    items: &[T],
    jobs: NonZeroUsize,
    work: impl Fn(&T) -> R + Sync,
    mut take: impl FnMut(R) -> Result<(), E>,
) -> Result<(), E> {
    let next = AtomicUsize::new(0);
    thread::scope(|scope| {
        let (sender, receiver) = mpsc::channel();
        for _ in 0..jobs.get().min(items.len()) {
            let (sender, next, work) = (sender.clone(), &next, &work);
            scope.spawn(move || {
                loop {
                    let i = next.fetch_add(1, Ordering::Relaxed);
                    let Some(item) = items.get(i) else { break };
                    if sender.send((i, work(item))).is_err() {
                        break;
                    }
                }
            });
        }
        drop(sender);
        let (mut early, mut turn) = (BTreeMap::new(), 0);
        for (i, outcome) in receiver {
            early.insert(i, outcome);
            while let Some(outcome) = early.remove(&turn) {
                turn += 1;
                take(outcome)?;
            }
        }
        Ok(())
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn outcomes_come_in_order_whoever_is_first() {
        for jobs in [1, 2, 7] {
            let items: Vec<u64> = (0..40).collect();
            let mut taken = Vec::new();
            let jobs = NonZeroUsize::new(jobs).unwrap();
            let work = |&n: &u64| (0..(40 - n) * 500).fold(n, |sum, k| sum ^ k ^ k) * 2;
            let done: Result<(), ()> = in_order(&items, jobs, work, |n| {
                taken.push(n);
                Ok(())
            });
            assert_eq!(done, Ok(()));
            let expected: Vec<u64> = items.iter().map(|n| n * 2).collect();
            assert_eq!(taken, expected);
        }
    }

    #[test]
    fn an_error_ends_it() {
        let items = [1, 2, 3, 4];
        let outcome = in_order(
            &items,
            NonZeroUsize::MIN,
            |&n| n,
            |n| {
                if n == 2 { Err("two") } else { Ok(()) }
            },
        );
        assert_eq!(outcome, Err("two"));
    }
}
