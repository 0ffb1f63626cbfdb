//! The bench on disk: trials, photos and readings of one person in one folder.
//!
//! In: the database `woadstone.sqlite` with its migrations, the `vault` that
//! keeps photos by their content, the queue of photos that wait to be read, the
//! checks of set-ups, plans and recipes with all their revisions, runs with
//! all that happened in them and what was read of their waters. Out:
//! what a reading means (`trial`), how a photo is read (`photo`), clocks (times
//! come in as RFC 3339 text). Start with [`Bench`] and [`NewPhoto`].
//!
//! Photos, markings and readings are added, never changed; triggers in the
//! database hold that.
//!
//! ```
//! let home = tempfile::tempdir()?;
//! let bench = store::Bench::open(home.path())?;
//! assert!(bench.trials()?.is_empty());
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod baths;
mod bench;
mod bin;
mod charts;
mod deliveries;
mod devices;
mod error;
mod event_words;
mod eye_grades;
mod eye_sessions;
mod journal;
mod json;
mod marking;
mod material;
mod materials;
mod near;
mod notices;
mod outcome;
mod parts;
mod past_outcomes;
mod photo_maps;
mod photo_row;
mod photos;
mod plans;
mod promises;
mod queue;
mod readings;
mod recipe_aims;
mod recipes;
mod requeue;
mod results;
mod revision_journal;
mod revisions;
mod run_events;
mod run_journal;
mod runs;
mod same_photo;
mod search;
mod settings;
mod setup_checks;
mod setup_photos;
mod slug;
mod stages;
mod stock;
mod studio;
mod tags;
mod text;
mod told;
mod trials;
mod vault;
mod waters;
mod way;
mod withdrawals;

pub use bench::Bench;
pub use bin::{Binned, Thing};
pub use charts::KeptChart;
pub use deliveries::Delivery;
pub use devices::{Device, PhoneNetwork};
pub use error::StoreError;
pub use journal::{Entry, Place, RevisedThing, Seen, SeenRevision};
pub use material::{Lot, Material, MaterialKind, NewLot, NewMaterial, Taken};
pub use near::NearReading;
pub use outcome::Outcome;
pub use past_outcomes::PastOutcome;
pub use photos::NewPhoto;
pub use plans::{KeptPlan, PlanSummary, TrialPlan};
pub use promises::Unpromised;
pub use queue::{Reader, Waiting};
pub use recipe_aims::RecipeAim;
pub use recipes::{BathSummary, KeptRecipe, RecipeSummary};
pub use revisions::Revision;
pub use runs::{KeptRun, NewEvent, RunSummary};
pub use search::{Found, FoundIn, Part as FoundPart, marked};
pub use setup_checks::{KeptSetupCheck, NewSetupCheck, SetupPhoto};
pub use setup_photos::check_setup;
pub use stages::SaidStage;
pub use trials::TrialSummary;
pub use waters::CLEAR;
pub use way::{PartOfTrial, TrialWay};
pub use withdrawals::Added;
