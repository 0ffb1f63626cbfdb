//! The locale that holds now.

use crate::Locale;
use std::cell::Cell;
use std::sync::{PoisonError, RwLock};

/// The process's locale: that of the one bench it serves.
static HELD: RwLock<Locale> = RwLock::new(Locale::DATA);

thread_local! {
    /// What holds on this thread in the meantime.
    static MEANWHILE: Cell<Option<Locale>> = const { Cell::new(None) };
}

/// The locale that holds now: that of [`within`] on this thread, else the process's.
pub fn current() -> Locale {
    MEANWHILE
        .get()
        .unwrap_or_else(|| *HELD.read().unwrap_or_else(PoisonError::into_inner))
}

/// Makes it the process's locale, from the next thing that is written.
pub fn set(locale: Locale) {
    *HELD.write().unwrap_or_else(PoisonError::into_inner) = locale;
}

/// Does work on this thread within another locale, and gives what it gives.
///
/// For files of data, and for tests: other threads see nothing of it. The work must not wait for
/// anything (`async`), for it may go on on another thread.
pub fn within<T>(locale: Locale, work: impl FnOnce() -> T) -> T {
    /// Puts back what was before, also when the work panics.
    struct Before(Option<Locale>);
    impl Drop for Before {
        fn drop(&mut self) {
            MEANWHILE.set(self.0);
        }
    }
    let _before = Before(MEANWHILE.replace(Some(locale)));
    work()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{DateFormat, day};

    fn of(dates: DateFormat) -> Locale {
        Locale {
            dates,
            ..Locale::DATA
        }
    }

    #[test]
    fn a_locale_within_another_ends_with_its_work() {
        let at = || day("2026-11-26");
        let (inner, outer) = within(of(DateFormat::Dotted), || {
            let inner = within(of(DateFormat::DayNamed), at);
            (inner, at())
        });
        assert_eq!(
            (inner.as_str(), outer.as_str()),
            ("26 Nov 2026", "26.11.2026")
        );
        let panicked = std::panic::catch_unwind(|| {
            within(of(DateFormat::Dotted), || panic!("a fault in the work"))
        });
        assert!(panicked.is_err() && MEANWHILE.get().is_none());
    }

    // The one test that sets it for the whole process; others use `within`.
    #[test]
    fn the_process_has_one_locale_for_all_threads() {
        set(of(DateFormat::MonthFirst));
        let other = std::thread::spawn(|| day("2026-11-26")).join().unwrap();
        set(Locale::DATA);
        assert_eq!(other, "11/26/2026");
    }
}
