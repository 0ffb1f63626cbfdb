//! Differences by a grey card alone: for those who have no chart.

use crate::text;
use colour::{View, Xyz, adapt, difference};
use moxcms::Matrix3d;

use super::{
    Difference,
    piece::{Piece, Recorded},
};
use crate::{
    Area, Flag, Point, Refusal, RefusalCode,
    area::Mask,
    correct::Sight,
    decode::{self, Upright},
    light::{Light, Whereabouts, from_ground},
    matrix::{Matrix3, ONE, add, outer},
    patches::CLIPPED_CODE,
    survey::{hidden, middle, refuse_greyscale},
};

/// What is asked of a photo with a grey card and no chart.
#[derive(Debug, Clone, PartialEq)]
pub struct GreyRequest {
    /// The four corners of the card in order, pixels of the upright photo.
    pub card: [Point; 4],
    /// The card's reflectance, 0 to 1: 0.18 for the common card.
    pub reflectance: f64,
    /// The areas to compare.
    pub areas: Vec<Area>,
    /// Light and observer of the differences.
    pub view: View,
}

/// How pieces of one photo differ, as far as a grey card can tell. No colour of a
/// piece is claimed.
#[derive(Debug, Clone, PartialEq)]
pub struct GreyComparison {
    /// Width of the upright photo, pixels.
    pub width: u32,
    /// Height of the upright photo, pixels.
    pub height: u32,
    /// What was noticed about the photo as a whole.
    pub flags: Vec<Flag>,
    /// What was noticed about each area, in the order asked.
    pub area_flags: Vec<(String, Vec<Flag>)>,
    /// Every pair of areas that were read, with wide intervals.
    pub differences: Vec<Difference>,
}

/// By how much of itself a difference may be wrong in each of its directions
/// where no chart tells the camera's colours and tone: a standard deviation, read
/// off rendered photos of many cameras.
const SHARE: f64 = 0.12;
/// Standard deviation of each of L*, a*, b* that no difference gets below.
const FLOOR: f64 = 0.05;
/// How steep light usually is: standard deviation of its logarithm per longer side.
const USUAL_SLOPE: f64 = 0.25;

/// Compares areas of a photo by a grey card in it.
///
/// The file's own curve and primaries are believed, the card sets the balance, and
/// the ground around tells the light where it can. Cameras bend both, so the
/// intervals are wide.
///
/// # Errors
/// A [`Refusal`] where the photo can't be read or the card can't be used.
pub fn compare_by_grey(bytes: &[u8], request: &GreyRequest) -> Result<GreyComparison, Refusal> {
    let photo = decode::decode(bytes)?;
    refuse_greyscale(&photo)?;
    let card = card(&photo, request)?;
    let sight = sight(&photo, request, card);
    let pieces: Vec<Piece> = request
        .areas
        .iter()
        .map(|area| Piece::read(&photo, area, &sight, &request.card))
        .collect();
    let mut differences = Vec::new();
    for (i, a) in pieces.iter().enumerate() {
        for b in &pieces[i + 1..] {
            if let (Some(read_a), Some(read_b)) = (&a.recorded, &b.recorded) {
                let cov = covariance(read_a, read_b, &sight);
                let (a, b) = ((a.id.as_str(), read_a.lab), (b.id.as_str(), read_b.lab));
                differences.push(Difference::between(a, b, &cov));
            }
        }
    }
    Ok(GreyComparison {
        width: photo.width as u32,
        height: photo.height as u32,
        flags: photo.flags,
        area_flags: pieces
            .into_iter()
            .map(|piece| (piece.id, piece.flags))
            .collect(),
        differences,
    })
}

/// Mean linear light of the card.
fn card(photo: &Upright, request: &GreyRequest) -> Result<[f64; 3], Refusal> {
    const FEWEST_PIXELS: usize = 200;
    let bad = |message: &str| Err(Refusal::new(RefusalCode::BadCorners, message));
    if !(0.02..=1.0).contains(&request.reflectance) {
        return bad(text::read::the_grey_cards_reflectance_is_a_share());
    }
    let Some(mask) = Mask::on(photo, &request.card) else {
        return bad(text::read::the_grey_cards_corners_span_no_surface());
    };
    if mask.count() < FEWEST_PIXELS {
        return bad(text::read::the_grey_card_holds_too_few_pixels());
    }
    let (mut sum, mut clipped) = ([0.0; 3], 0usize);
    mask.each(|x, y| {
        let codes = photo.at(x, y);
        clipped += usize::from(codes.iter().any(|&c| c as usize >= CLIPPED_CODE));
        for (k, code) in codes.into_iter().enumerate() {
            sum[k] += photo.profile.linear[k][code as usize];
        }
    });
    let n = mask.count();
    let mean = sum.map(|s| s / n as f64);
    if clipped * 20 > n {
        return Err(Refusal::new(
            RefusalCode::OverExposed,
            text::read::the_grey_card_is_burnt_out_take(),
        ));
    }
    if mean.iter().any(|&v| v < 0.004) {
        return Err(Refusal::new(
            RefusalCode::UnderExposed,
            text::read::the_grey_card_is_nearly_black(),
        ));
    }
    let [low, high] = [f64::min, f64::max].map(|pick| mean.into_iter().reduce(pick).unwrap_or(0.0));
    if high > 4.0 * low {
        return bad(text::read::what_is_marked_as_the_grey_card());
    }
    Ok(mean)
}

/// The file's own curve and primaries, balanced by the card.
fn sight(photo: &Upright, request: &GreyRequest, card: [f64; 3]) -> Sight {
    let linear =
        [0, 1, 2].map(|k| photo.profile.linear[k].map(|v| v * request.reflectance / card[k]));
    let place = middle(&request.card);
    let even = Light::even(place, photo.width, photo.height);
    let variance = USUAL_SLOPE * USUAL_SLOPE;
    let unknown = even.with_plane([0.0; 2], [[variance, 0.0], [0.0, variance]]);
    let areas = request.areas.iter().map(|area| area.polygon.as_slice());
    let hidden = hidden(areas, &request.card);
    let whereabouts = Whereabouts {
        hidden: &hidden,
        bare: &[],
    };
    // A card in one place can't tell a shadow from a darker ground.
    let light = from_ground(photo, &linear, &unknown, whereabouts).map_or(unknown, |ground| {
        ground
            .with_edge
            .map_or(ground.smooth, Light::doubting_fine_edge)
    });
    let white = request.view.white();
    Sight::by_matrix(linear, light, &to_xyz(photo, white), white)
}

/// From linear file values, white being 1, to XYZ under the view's white.
fn to_xyz(photo: &Upright, white: Xyz) -> Matrix3 {
    let own = photo.profile.icc.as_ref().map_or(SRGB, |icc| {
        let Matrix3d { v } = icc.rgb_to_xyz_matrix();
        v
    });
    let column = |k: usize| Xyz::from([0, 1, 2].map(|row| 100.0 * own[row][k]));
    let sum = [0, 1, 2].map(|row| 100.0 * own[row].iter().sum::<f64>());
    let columns = [0, 1, 2].map(|k| adapt::cat16(column(k), Xyz::from(sum), white).to_array());
    crate::matrix::transposed(&columns)
}

/// Linear sRGB to XYZ.
///
/// # Source
/// IEC 61966-2-1.
const SRGB: Matrix3 = [
    [0.4124, 0.3576, 0.1805],
    [0.2126, 0.7152, 0.0722],
    [0.0193, 0.1192, 0.9505],
];

/// Covariance of b - a: what cloth and light make unsure, and a share of the
/// difference itself.
fn covariance(a: &Recorded, b: &Recorded, sight: &Sight) -> Matrix3 {
    let mut cov = a.pixel_cov;
    add(&mut cov, &b.pixel_cov, 1.0);
    let light = &sight.light;
    let between = light.variance(a.middle) + light.variance(b.middle)
        - 2.0 * light.covariance(a.middle, b.middle);
    let by_light = [0, 1, 2].map(|k| (a.by_light[k] + b.by_light[k]) / 2.0);
    add(&mut cov, &outer(by_light), between.max(0.0));
    let apart = SHARE * difference::cie76(a.lab, b.lab);
    add(&mut cov, &ONE, apart * apart + FLOOR * FLOOR);
    cov
}
