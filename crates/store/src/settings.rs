//! What the person chose for the whole bench. Rows are added; the newest counts.

use crate::text;
use crate::{Bench, StoreError, journal, json};
use locale::Locale;
use rusqlite::{OptionalExtension, params};

impl Bench {
    /// How measures, money, days and times are written; as in [`Locale::DATA`] until someone chose.
    ///
    /// # Errors
    /// The database can't be read, or holds a setting that can't be understood.
    pub fn locale(&self) -> Result<Locale, StoreError> {
        let newest: Option<String> = self
            .database
            .query_row(
                "SELECT locale FROM setting ORDER BY id DESC LIMIT 1",
                [],
                |row| row.get(0),
            )
            .optional()
            .map_err(StoreError::database(text::doing::read_its_settings()))?;
        newest.map_or(Ok(Locale::DATA), |text| json::locale(&text))
    }

    /// Keeps how they are written from now on; false if that is how they are written already.
    ///
    /// # Errors
    /// The database can't be read or written.
    pub fn set_locale(&mut self, chosen: Locale, now: &str) -> Result<bool, StoreError> {
        if self.locale()? == chosen {
            return Ok(false);
        }
        let text = json::locale_text(&chosen);
        let change = self.change()?;
        change
            .execute(
                "INSERT INTO setting (locale, made_at) VALUES (?1, ?2)",
                params![text, now],
            )
            .and_then(|_| journal::note(&change, now, "settings changed", &in_words(&chosen)))
            .map_err(StoreError::database(text::doing::keep_its_settings()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::keep_its_settings()))?;
        Ok(true)
    }
}

/// A locale by what it writes.
fn in_words(chosen: &Locale) -> String {
    let measures = match chosen.measures {
        locale::Measures::Metric => text::settings::metric(),
        locale::Measures::UsCustomary => text::settings::us_customary(),
    };
    text::settings::measures_sums_as_days_as_times(
        measures,
        locale::sum_in(chosen, "8.50", ""),
        locale::day_in(chosen, "2026-11-26"),
        locale::time_of_day_in(chosen, 18, 5),
    )
}
