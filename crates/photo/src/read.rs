//! Reading: each area becomes a colour with its covariance, each pair a difference.

mod piece;

use colour::{Lab, View};

use crate::{
    Flag, FlagCode, Point, Refusal, Request, decode, interval,
    matrix::{Matrix3, add, outer},
    survey::{Prepared, prepare},
};
use piece::{Piece, Recorded};

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
    /// Every pair of areas that were read.
    pub differences: Vec<Difference>,
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
}

/// The colour of one area.
#[derive(Debug, Clone, PartialEq)]
pub struct AreaReading {
    /// The name that the caller gave it.
    pub id: String,
    /// Its colour; none where nothing could be read, a flag says why.
    pub lab: Option<Lab>,
    /// Covariance of L*, a* and b*.
    pub cov: [[f64; 3]; 3],
    /// Pixels that went into it.
    pub pixels: u64,
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
/// Standard deviation of each of L*, a*, b* that no photo gets below.
const FLOOR: f64 = 0.05;
/// Distance of two colours (CIELAB) over which their chart errors part ways:
/// that at which 95 of 100 intervals of near pairs hold on rendered photos.
const SHARED_REACH: f64 = 7.0;
/// The chart's error is told twice, by how much the fit moves without a patch
/// and by how far patches left out are missed. Both hold the fit's own scatter:
/// their mean is taken, not their sum.
const EACH: f64 = 0.5;

/// Reads the areas of a photo.
///
/// # Errors
/// A [`Refusal`] says what is wrong with the photo as a whole and how to mend
/// it. An area that can't be read is no error: its flags say why.
pub fn read(bytes: &[u8], request: &Request) -> Result<PhotoReading, Refusal> {
    let photo = decode::decode(bytes)?;
    let outlines: Vec<Vec<Point>> = request
        .areas
        .iter()
        .filter(|area| area.polygon.iter().flatten().all(|v| v.is_finite()))
        .map(|area| area.polygon.clone())
        .collect();
    let prepared = prepare(
        &photo,
        request.corners,
        &request.chart,
        request.view,
        &outlines,
    )?;
    let pieces: Vec<Piece> = request
        .areas
        .iter()
        .map(|area| Piece::read(&photo, area, &prepared))
        .collect();
    let (median, p95) = prepared.correction.median_and_p95();
    let mut flags = prepared.flags.clone();
    flags.extend(uneven_light(&prepared, &pieces));
    Ok(PhotoReading {
        width: photo.width as u32,
        height: photo.height as u32,
        flags,
        chart: ChartFit {
            corners: prepared.corners,
            model: prepared.correction.name(),
            loo_de00_median: median,
            loo_de00_p95: p95,
        },
        view: request.view,
        differences: differences(&pieces, &prepared),
        readings: pieces
            .into_iter()
            .map(|piece| reading(piece, &prepared))
            .collect(),
    })
}

fn uneven_light(prepared: &Prepared, pieces: &[Piece]) -> Option<Flag> {
    let mut places: Vec<Point> = prepared.corners.to_vec();
    places.extend(
        pieces
            .iter()
            .filter_map(|p| Some(p.recorded.as_ref()?.middle)),
    );
    let range = prepared.correction.light.range(&places);
    (range > UNEVEN).then(|| {
        Flag::new(
            FlagCode::UnevenLight,
            format!(
                "Light falls unevenly: the brightest place gets {:.0} % more than the darkest. It was evened out by calculation; softer light from further away is safer.",
                100.0 * (range - 1.0)
            ),
        )
    })
}

fn reading(piece: Piece, prepared: &Prepared) -> AreaReading {
    let Some(r) = piece.recorded else {
        return AreaReading {
            id: piece.id,
            lab: None,
            cov: [[0.0; 3]; 3],
            pixels: 0,
            flags: piece.flags,
        };
    };
    let correction = &prepared.correction;
    let mut cov = r.pixel_cov;
    add(&mut cov, &jackknife(&r.replicates, r.lab.to_array()), EACH);
    add(&mut cov, &correction.miss_near(r.lab), EACH);
    add(
        &mut cov,
        &outer(r.by_light),
        correction.light.variance(r.middle),
    );
    for (k, row) in cov.iter_mut().enumerate() {
        row[k] += FLOOR * FLOOR;
    }
    AreaReading {
        id: piece.id,
        lab: Some(r.lab),
        cov,
        pixels: r.pixels,
        flags: piece.flags,
    }
}

/// The jackknife's covariance of a value from its values with one patch left out.
fn jackknife(replicates: &[Lab], whole: [f64; 3]) -> Matrix3 {
    let values = replicates.iter().map(|lab| lab.to_array());
    spread(values, whole)
}

fn spread(values: impl ExactSizeIterator<Item = [f64; 3]>, whole: [f64; 3]) -> Matrix3 {
    let n = values.len() as f64;
    let mut sum = [[0.0; 3]; 3];
    for value in values {
        let d = [0, 1, 2].map(|k| value[k] - whole[k]);
        add(&mut sum, &outer(d), (n - 1.0) / n.max(1.0));
    }
    sum
}

fn differences(pieces: &[Piece], prepared: &Prepared) -> Vec<Difference> {
    let read: Vec<(&str, &Recorded)> = pieces
        .iter()
        .filter_map(|piece| Some((piece.id.as_str(), piece.recorded.as_ref()?)))
        .collect();
    let mut all = Vec::with_capacity(read.len() * read.len().saturating_sub(1) / 2);
    for (i, (name_a, a)) in read.iter().enumerate() {
        for (name_b, b) in &read[i + 1..] {
            let cov = covariance_between(a, b, prepared);
            let (de00, low, high) = interval::de00(a.lab, b.lab, &cov);
            all.push(Difference {
                a: (*name_a).to_owned(),
                b: (*name_b).to_owned(),
                de00,
                low,
                high,
            });
        }
    }
    all
}

/// Covariance of b - a: what two areas of a photo share drops out.
fn covariance_between(a: &Recorded, b: &Recorded, prepared: &Prepared) -> Matrix3 {
    let mut cov = a.pixel_cov;
    add(&mut cov, &b.pixel_cov, 1.0);
    let gap = |a: Lab, b: Lab| [b.l - a.l, b.a - a.a, b.b - a.b];
    let pairs = a.replicates.iter().zip(&b.replicates);
    let moved = pairs.map(|(&a, &b)| gap(a, b));
    add(&mut cov, &spread(moved, gap(a.lab, b.lab)), EACH);
    // Colours near each other are missed in nearly the same way.
    let apart = colour::difference::cie76(a.lab, b.lab) / SHARED_REACH;
    let own = EACH * (1.0 - (-0.5 * apart * apart).exp());
    let correction = &prepared.correction;
    add(&mut cov, &correction.miss_near(a.lab), own);
    add(&mut cov, &correction.miss_near(b.lab), own);
    let by_light = [0, 1, 2].map(|k| (a.by_light[k] + b.by_light[k]) / 2.0);
    let light = correction.light.variance_between(a.middle, b.middle);
    add(&mut cov, &outer(by_light), light);
    for (k, row) in cov.iter_mut().enumerate() {
        row[k] += 2.0 * (FLOOR / 2.0) * (FLOOR / 2.0);
    }
    cov
}
