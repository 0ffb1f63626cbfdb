//! What two arms' loads allow: which difference, with which error.

use super::{
    Repeatability,
    change::{Against, Change},
    keepers::shared_errors,
};
use inference::scatter::{Error, Scatter, mean};
use nalgebra::Vector3;
use std::collections::BTreeMap;

/// How the pieces of two arms shared their loads.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Design {
    /// Loads not noted, or all pieces in one: the piece is the unit.
    Pieces,
    /// Each arm had one load, its own: arm and load can't be told apart.
    OwnLoad,
    /// Each arm had loads of its own: the load is the unit.
    Loads,
    /// Loads held pieces of both arms: compared within loads.
    Blocks,
}

/// The difference of two arms in CIELAB.
pub(super) struct Contrast {
    pub design: Design,
    /// Change of each arm, so that their difference is free of shared loads.
    pub changes: [Vector3<f64>; 2],
    /// Errors of the difference of changes; empty if nothing is known of them.
    pub errors: Vec<Error>,
    /// Units (pieces or loads) in the smaller arm.
    pub units: usize,
    /// The scatter of one arm had to be taken from elsewhere.
    pub borrowed: bool,
    /// All pieces were read from the same photos, so that these drop out.
    pub in_one_photo: bool,
}

/// Scatter of one arm's units and how many there are.
struct Side {
    scatter: Scatter,
    units: usize,
}

impl Contrast {
    /// The difference of two arms with all its errors.
    pub fn of(a: &Change, b: &Change, all: &[Change], known: Option<&Repeatability>) -> Self {
        let in_one_photo = a.in_one_photo(b);
        let [of_a, of_b] = match &in_one_photo {
            Some([of_a, of_b]) => [of_a, of_b],
            None => [a, b],
        };
        let (mut contrast, pieces) = Self::by_loads(of_a, of_b);
        contrast.in_one_photo = in_one_photo.is_some();
        if !contrast.in_one_photo && !contrast.errors.is_empty() {
            contrast
                .errors
                .extend(shared_errors(&[a, b], all, pieces, known));
        }
        contrast
    }

    /// The difference without the keepers' error, and the scatter of pieces.
    fn by_loads(a: &Change, b: &Change) -> (Self, Scatter) {
        match (a.loads(), b.loads()) {
            (Some(in_a), Some(in_b)) => {
                let shared = in_a.keys().any(|load| in_b.contains_key(load));
                let several = in_a.len() + in_b.len() > 2;
                match (shared, several) {
                    (true, true) => {
                        Self::blocks(a, b, &in_a, &in_b).unwrap_or_else(|| Self::pieces(a, b))
                    }
                    (true, false) => Self::pieces(a, b),
                    (false, true) => {
                        let side = |change: &Change, loads| Side {
                            scatter: change.load_scatter(loads),
                            units: loads.len(),
                        };
                        Self::sides(Design::Loads, a, b, [side(a, &in_a), side(b, &in_b)])
                    }
                    (false, false) => {
                        let (pieces, scatter) = Self::pieces(a, b);
                        let design = Design::OwnLoad;
                        (Self { design, ..pieces }, scatter)
                    }
                }
            }
            _ => Self::pieces(a, b),
        }
    }

    fn pieces(a: &Change, b: &Change) -> (Self, Scatter) {
        let side = |change: &Change| Side {
            scatter: change.piece_scatter(),
            units: change.pieces.len(),
        };
        Self::sides(Design::Pieces, a, b, [side(a), side(b)])
    }

    fn sides(design: Design, a: &Change, b: &Change, [of_a, of_b]: [Side; 2]) -> (Self, Scatter) {
        let (one_a, one_b) = (1.0 / of_a.units as f64, 1.0 / of_b.units as f64);
        let own = [of_a.scatter.error(one_a), of_b.scatter.error(one_b)];
        let both = of_a.scatter.with(of_b.scatter);
        // Against keepers as they look now, pieces scatter as they did when dyed.
        let dyed =
            matches!(a.against, Against::Keepers(_)) || matches!(b.against, Against::Keepers(_));
        let errors: Vec<Error> = match own {
            [Some(error_a), Some(error_b)] => vec![error_a, error_b],
            // With scatter in one arm only, the other's is taken to be the same.
            _ if both.df() > 0 => both.error(one_a + one_b).into_iter().collect(),
            _ if dyed => {
                let start = a.start_scatter.with(b.start_scatter);
                start.error(one_a + one_b).into_iter().collect()
            }
            _ => Vec::new(),
        };
        let contrast = Self {
            design,
            changes: [a.mean, b.mean],
            errors,
            units: of_a.units.min(of_b.units),
            borrowed: own.iter().any(Option::is_none),
            in_one_photo: false,
        };
        (contrast, a.piece_scatter().with(b.piece_scatter()))
    }

    /// Arms and loads as two additive parts, least squares: deviations from each
    /// load's mean carry the arms' difference. None if they leave no scatter.
    fn blocks(a: &Change, b: &Change, in_a: &Loads, in_b: &Loads) -> Option<(Self, Scatter)> {
        let mut weight = 0.0;
        let mut difference = Vector3::zeros();
        for (load, of_a) in in_a {
            if let Some(of_b) = in_b.get(load) {
                let (n, m) = (of_a.len() as f64, of_b.len() as f64);
                weight += n * m / (n + m);
                difference += (mean(of_b)? - mean(of_a)?) * (n * m / (n + m));
            }
        }
        difference /= weight;
        let mut squares = nalgebra::Matrix3::zeros();
        let mut loads: BTreeMap<&str, Vec<Vector3<f64>>> = in_a.clone();
        for (load, of_b) in in_b {
            let shifted = of_b.iter().map(|change| change - difference);
            loads.entry(load).or_default().extend(shifted);
        }
        for pieces in loads.values() {
            let centre = mean(pieces)?;
            for piece in pieces {
                squares += (piece - centre) * (piece - centre).transpose();
            }
        }
        let df = (a.pieces.len() + b.pieces.len()).checked_sub(loads.len() + 1)?;
        let scatter = Scatter::from_squares(squares, df);
        let errors = vec![scatter.error(1.0 / weight)?];
        let middle = (a.mean + b.mean) / 2.0;
        let contrast = Self {
            design: Design::Blocks,
            changes: [middle - difference / 2.0, middle + difference / 2.0],
            errors,
            units: a.pieces.len().min(b.pieces.len()),
            borrowed: false,
            in_one_photo: false,
        };
        Some((contrast, scatter))
    }
}

type Loads<'a> = BTreeMap<&'a str, Vec<Vector3<f64>>>;
