//! Photographs of dyed pieces that were never dyed.
//!
//! [`render()`] draws a JPEG, with EXIF and a colour profile, of pieces beside a
//! 24-patch chart, from reflectance spectra under a given light, as a camera
//! with its own sensitivities would take it; the true colours come back with it.
//! It serves tests and the demo only, and shares no code and no tables with the
//! crates that read photographs, or those tests would prove nothing.
//!
//! Know two types first: [`Scene`], everything that stands before and inside the
//! camera, and [`Truth`], what a perfect reader would find.
//!
//! ```
//! use scene::{Dye, Piece, Scene, render, wool};
//! let (new, faded) = (Dye::madder().on(&wool(), 1.0), Dye::madder().on(&wool(), 0.7));
//! let scene = Scene {
//!     width_px: 400,
//!     height_px: 300,
//!     pieces: Piece::rows([("before", new), ("after", faded)]),
//!     ..Scene::default()
//! };
//! let rendered = render(&scene);
//! assert_eq!(rendered.truth.pieces[1].id, "after");
//! ```

mod background;
mod camera;
mod chart;
mod develop;
mod difficulty;
mod drawn;
mod dye;
mod finish;
mod flaw;
mod ground;
mod hand;
mod hash;
mod jpeg;
mod lamp;
mod light;
mod local_tone;
mod optics;
mod palette;
mod piece;
mod reflectance;
mod render;
mod resist;
mod scene;
mod sheet;
mod shot;
mod tables;
mod texture;
mod tone;
mod truth;
mod varied;
mod viewpoint;
mod wet;
mod wild;

pub use background::Background;
pub use camera::{Bell, Camera, WhiteBalance};
pub use chart::{Chart, Frame, PATCHES, chart_spectra};
pub use difficulty::Difficulty;
pub use dye::{Band, Dye, cotton, dyed, linen, wool};
pub use flaw::{Flaws, Hand, LocalTone, NearLamp, SecondLight, Shadow, skin};
pub use jpeg::{Jpeg, Orientation, Profile};
pub use light::{Glare, Gradient, Light, Mixed};
pub use optics::Optics;
pub use palette::{bleached_cotton, hemp, silk};
pub use piece::Piece;
pub use reflectance::{Reflectance, wavelengths_nm};
pub use render::{Rendered, render};
pub use resist::{Resist, ResistDyed};
pub use scene::Scene;
pub use sheet::Sheet;
pub use texture::{Cloth, Texture};
pub use tone::{Bend, Tone};
pub use truth::{PieceParts, PieceTruth, Truth};
pub use viewpoint::Viewpoint;
pub use wet::Wet;
