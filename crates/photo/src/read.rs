//! Reading: each area becomes a colour with its covariance, each pair a difference.

mod across;
mod cells;
mod grey;
mod joint;
mod piece;
mod shine;
mod split;
mod spots;

use crate::text;
use colour::{Lab, View};

use crate::{
    Flag, FlagCode, Point, Refusal, Request,
    board::{self, BoardSeen},
    decode::{self, Upright},
    interval,
    map::{self, LightGrid, PhotoMap},
    matrix::Matrix3,
    survey::{Prepared, Setting, prepare},
};
pub use across::{SeenColour, covariance_of_errors_across, de00_interval};
pub use grey::{GreyComparison, GreyRequest, compare_by_grey};
pub use joint::{Parts, covariance_of_difference};
use piece::{Cloth, Piece};
use split::Divided;
pub use split::{Split, SplitPart};

/// What a photo says.
#[derive(Debug, Clone, PartialEq)]
pub struct PhotoReading {
    /// Width of the upright photo, pixels.
    pub width: u32,
    /// Height of the upright photo, pixels.
    pub height: u32,
    /// What was noticed about the photo as a whole.
    pub flags: Vec<Flag>,
    /// The chart and how well it is fitted.
    pub chart: ChartFit,
    /// Light and observer of the colours.
    pub view: View,
    /// The areas, in the order asked.
    pub readings: Vec<AreaReading>,
    /// Every pair of areas that were read; after them every two pale and every two
    /// deep parts, under names like "P1/pale".
    pub differences: Vec<Difference>,
    /// Covariance of reading i with reading j, in the order of `readings`; 0
    /// where one of them was not read. What two readings share drops out of
    /// their difference, whose covariance is `[i][i] + [j][j] - [i][j] - [j][i]`.
    pub joint: Vec<Vec<[[f64; 3]; 3]>>,
    /// The board that the pieces lie on, if they lie on one.
    pub board: Option<BoardSeen>,
    /// Where on the photo lies what was found.
    pub map: PhotoMap,
}

/// The chart and how well it is fitted.
#[derive(Debug, Clone, PartialEq)]
pub struct ChartFit {
    /// Its outer corners at the brown, bluish-green, black and white patch, pixels.
    pub corners: [Point; 4],
    /// The correction that was chosen, in words.
    pub model: String,
    /// Median miss of a patch left out of the fit, CIEDE2000.
    pub loo_de00_median: f64,
    /// The miss that 95 of 100 left-out patches stay below, CIEDE2000.
    pub loo_de00_p95: f64,
    /// Foretold minus true Lab of each patch left out of the fit in turn; none
    /// for patches that could not be used.
    pub misses: Vec<Option<[f64; 3]>>,
}

/// The colour of one area.
#[derive(Debug, Clone, PartialEq)]
pub struct AreaReading {
    /// The name that the caller gave it.
    pub id: String,
    /// Its colour; none where nothing could be read, a flag says why.
    pub lab: Option<Lab>,
    /// Covariance of L*, a* and b*, from all causes.
    pub cov: [[f64; 3]; 3],
    /// The same by cause.
    pub parts: Parts,
    /// Pixels that went into it.
    pub pixels: u64,
    /// Its pale and its deep part, where it is resist-dyed.
    pub split: Option<Split>,
    /// What was noticed about it.
    pub flags: Vec<Flag>,
}

/// The difference of two areas of one photo.
#[derive(Debug, Clone, PartialEq)]
pub struct Difference {
    /// Name of the one.
    pub a: String,
    /// Name of the other.
    pub b: String,
    /// CIEDE2000.
    pub de00: f64,
    /// Lower end of the 95 % interval, 0 where no difference is shown.
    pub low: f64,
    /// Upper end.
    pub high: f64,
}

/// Brightest over darkest light from which on unevenness is remarked.
const UNEVEN: f64 = 1.35;

/// Reads the areas of a photo.
///
/// # Errors
/// A [`Refusal`] says what is wrong with the photo as a whole and how to mend
/// it. An area that can't be read is no error: its flags say why.
pub fn read(bytes: &[u8], request: &Request) -> Result<PhotoReading, Refusal> {
    let photo = decode::decode(bytes)?;
    let (board, request) = &board::asked(&photo, request)?;
    let outlines: Vec<Vec<Point>> = request
        .areas
        .iter()
        .filter(|area| area.polygon.iter().flatten().all(|v| v.is_finite()))
        .map(|area| area.polygon.clone())
        .collect();
    let prepared = prepare(
        &photo,
        &Setting {
            corners: request.corners,
            reference: &request.chart,
            view: request.view,
            areas: &outlines,
            ground: &request.ground,
            board: board.as_ref(),
        },
    )?;
    let sight = &prepared.correction.sight;
    let mut pieces: Vec<Piece> = request
        .areas
        .iter()
        .map(|area| Piece::read(&photo, area, sight, &prepared.corners))
        .collect();
    let (median, p95) = prepared.correction.median_and_p95();
    let board = board.clone();
    let mut flags = prepared.flags.clone();
    flags.extend(uneven_light(&prepared, &pieces));
    let photo_to_photo = &request.photo_to_photo;
    let divided: Vec<Option<Divided>> = pieces
        .iter()
        .map(|piece| Divided::of(&photo, piece, &prepared, photo_to_photo))
        .collect();
    for (piece, divided) in pieces.iter_mut().zip(&divided) {
        if let Some(divided) = divided {
            divided.reread(piece, &photo, sight);
        }
    }
    let of_parts = split::differences(&pieces, &divided, &prepared);
    let map = map_of(
        &photo,
        request,
        &prepared,
        (&pieces, &divided),
        board.as_ref(),
    );
    let (readings, joint) = together(pieces, divided, &prepared, photo_to_photo);
    let mut differences = differences(&readings, &joint);
    differences.extend(of_parts);
    Ok(PhotoReading {
        width: photo.width as u32,
        height: photo.height as u32,
        flags,
        chart: ChartFit {
            corners: prepared.corners,
            model: prepared.correction.name(),
            loo_de00_median: median,
            loo_de00_p95: p95,
            misses: prepared.correction.misses(),
        },
        view: request.view,
        differences,
        readings,
        joint,
        board,
        map,
    })
}

/// Where on the photo lies what was found.
fn map_of(
    photo: &Upright,
    request: &Request,
    prepared: &Prepared,
    (pieces, divided): (&[Piece], &[Option<Divided>]),
    board: Option<&BoardSeen>,
) -> PhotoMap {
    let sight = &prepared.correction.sight;
    let [columns, rows] = map::columns_and_rows(&request.chart);
    let misses = prepared.correction.misses();
    let spots = pieces.iter().zip(divided).flat_map(|(piece, divided)| {
        let mask = piece.mask.as_ref();
        let told = piece.flags.iter().any(|flag| spots::has_a_place(flag.code));
        let cloth = mask.filter(|_| told).map(|mask| match divided {
            Some(divided) => divided.cloth(mask),
            None => Cloth::even(mask),
        });
        cloth.map_or_else(Vec::new, |cloth| spots::of(photo, &piece.id, cloth, sight))
    });
    PhotoMap {
        patches: map::patches(prepared.corners, columns, rows, &misses),
        light: LightGrid::of(&sight.light, photo.width, photo.height),
        spots: spots.collect(),
        board: board.map(|board| board.corners.map(map::place)),
    }
}

fn uneven_light(prepared: &Prepared, pieces: &[Piece]) -> Option<Flag> {
    let mut places: Vec<Point> = prepared.corners.to_vec();
    places.extend(
        pieces
            .iter()
            .filter_map(|p| Some(p.recorded.as_ref()?.middle)),
    );
    let light = &prepared.correction.sight.light;
    if light.has_doubtful_edge() && light.has_edge_across(&places) {
        return Some(Flag::new(
            FlagCode::UnevenLight,
            text::read::a_hard_edge_lies_between_chart_and_pieces(),
        ));
    }
    let range = light.range(&places);
    (range > UNEVEN).then(|| {
        Flag::new(
            FlagCode::UnevenLight,
            text::read::light_falls_unevenly_the_brightest_place(format_args!(
                "{:.0}",
                100.0 * (range - 1.0)
            )),
        )
    })
}

fn not_read(piece: Piece) -> AreaReading {
    AreaReading {
        id: piece.id,
        lab: None,
        cov: [[0.0; 3]; 3],
        parts: Parts::default(),
        pixels: 0,
        split: None,
        flags: piece.flags,
    }
}

/// The readings with every pair's covariance.
fn together(
    pieces: Vec<Piece>,
    divided: Vec<Option<Divided>>,
    prepared: &Prepared,
    photo_to_photo: &Matrix3,
) -> (Vec<AreaReading>, Vec<Vec<Matrix3>>) {
    let parts: Vec<Option<Parts>> = pieces
        .iter()
        .map(|piece| {
            Some(joint::parts(
                piece.recorded.as_ref()?,
                prepared,
                photo_to_photo,
            ))
        })
        .collect();
    let read = |i: usize| Some((pieces[i].recorded.as_ref()?, parts[i].as_ref()?));
    let covariance = |i: usize, j: usize| match (read(i), read(j)) {
        (Some((_, own)), Some(_)) if i == j => own.total(),
        (Some(a), Some(b)) => joint::shared(a, b, prepared),
        _ => [[0.0; 3]; 3],
    };
    let n = pieces.len();
    let half: Vec<Vec<Matrix3>> = (0..n)
        .map(|i| (i..n).map(|j| covariance(i, j)).collect())
        .collect();
    let whole = |i: usize, j: usize| match j.checked_sub(i) {
        Some(beyond) => half[i][beyond],
        None => crate::matrix::transposed(&half[j][i - j]),
    };
    let all = (0..n)
        .map(|i| (0..n).map(|j| whole(i, j)).collect())
        .collect();
    let readings = pieces
        .into_iter()
        .zip(parts)
        .zip(divided)
        .map(|((piece, parts), divided)| match (piece.recorded, parts) {
            (Some(r), Some(parts)) => AreaReading {
                id: piece.id,
                lab: Some(r.lab),
                cov: parts.total(),
                parts,
                pixels: r.pixels,
                split: divided.map(|divided| divided.split),
                flags: piece.flags,
            },
            (recorded, _) => not_read(Piece { recorded, ..piece }),
        })
        .collect();
    (readings, all)
}

fn differences(readings: &[AreaReading], joint: &[Vec<Matrix3>]) -> Vec<Difference> {
    let mut all = Vec::new();
    for (i, a) in readings.iter().enumerate() {
        for (j, b) in readings.iter().enumerate().skip(i + 1) {
            let (Some(lab_a), Some(lab_b)) = (a.lab, b.lab) else {
                continue;
            };
            let cov = covariance_of_difference(&joint[i][i], &joint[j][j], &joint[i][j]);
            all.push(Difference::between((&a.id, lab_a), (&b.id, lab_b), &cov));
        }
    }
    all
}

impl Difference {
    /// The difference of two named colours, `cov` being the covariance of b - a.
    fn between((a, lab_a): (&str, Lab), (b, lab_b): (&str, Lab), cov: &Matrix3) -> Self {
        let (de00, low, high) = interval::de00(lab_a, lab_b, cov);
        Self {
            a: a.to_owned(),
            b: b.to_owned(),
            de00,
            low,
            high,
        }
    }
}

impl PhotoReading {
    /// The reading of an area by its name.
    pub fn reading(&self, id: &str) -> Option<&AreaReading> {
        self.readings.iter().find(|reading| reading.id == id)
    }
}
