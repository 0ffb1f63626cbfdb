//! Taking the photograph.

use crate::{
    PieceTruth, Scene, Truth, camera::Sensor, develop::Developer, finish::finish, ground::Ground,
    hand::HandShape, local_tone::Gains, optics::Barrel, resist::Laid, viewpoint::Projection,
};

/// What a perfect white gives in the middle of the photo, as a share of full scale.
const WHITE_LEVEL: f64 = 0.88;

/// The lens's own blur, px.
const LENS_BLUR_PX: f64 = 0.55;

/// Rows rendered at once; the blur's margin is small beside it.
const BAND_ROWS: usize = 64;

/// A rendered photograph.
#[derive(Debug, Clone, PartialEq)]
pub struct Rendered {
    /// The file.
    pub jpeg: Vec<u8>,
    /// What a perfect reader would find in it.
    pub truth: Truth,
}

/// Renders the scene; the same scene always gives the same bytes.
///
/// The spectra are weighed once per surface and camera; each pixel is then seen
/// through the lens a few times, blurred, given noise and developed.
///
/// # Panics
/// Where a side is 0 or above 65,535 px, the most a JPEG can hold.
pub fn render(scene: &Scene) -> Rendered {
    let sides = [scene.width_px, scene.height_px];
    assert!(
        sides.iter().all(|side| (1..=65_535).contains(side)),
        "A photo's sides have to be 1 to 65,535 px; this scene asks for {} x {}.",
        scene.width_px,
        scene.height_px
    );
    let size = sides.map(f64::from);
    let projection = projection(scene);
    let other = scene
        .flaws
        .second_light
        .as_ref()
        .map(|second| &second.light);
    let sensor = Sensor::new(&scene.camera, &scene.light, other, scene.white_balance);
    let hand = |hand| HandShape::new(hand, size, sensor.see(&hand.skin));
    let mut taking = Taking {
        scene,
        projection,
        ground: Ground::new(scene, &sensor),
        developer: Developer::new(scene, &sensor),
        kernel: kernel(LENS_BLUR_PX.hypot(scene.flaws.blur_px)),
        level: WHITE_LEVEL * scene.exposure_stops.exp2(),
        hands: scene.flaws.hands.iter().map(hand).collect(),
        gains: None,
    };
    taking.gains = scene.flaws.local_tone.map(|tone| {
        Gains::new(tone, size, |point| {
            taking.light_at(point[0] - 0.5, point[1] - 0.5)[1]
        })
    });
    let (width, height) = (scene.width_px as usize, scene.height_px as usize);
    let mut rgb = taking.pixels(width, height);
    finish(&mut rgb, width, scene.camera.optics);
    let jpeg = scene.jpeg.write(width, height, &rgb, &scene.camera.name);
    let truth = truth(scene, projection);
    Rendered { jpeg, truth }
}

/// The way from table to photo.
pub(crate) fn projection(scene: &Scene) -> Projection {
    let size = [scene.width_px, scene.height_px].map(f64::from);
    let straight = scene.viewpoint.fit(&content(scene), size);
    let turned = if scene.flaws.mirrored {
        straight.mirrored(size[0])
    } else {
        straight
    };
    turned.through(Barrel::new(scene.camera.optics.barrel, size))
}

/// Every point (mm) that has to be in the photo.
pub(crate) fn content(scene: &Scene) -> Vec<[f64; 2]> {
    let charts = scene.chart.iter().chain(&scene.flaws.second_chart);
    charts
        .flat_map(|chart| chart.corners_mm(chart.margin_mm))
        .chain(scene.pieces.iter().flat_map(|p| p.outline_mm.clone()))
        .chain(scene.sheet.iter().flat_map(|sheet| sheet.corners_mm()))
        .collect()
}

fn truth(scene: &Scene, projection: Projection) -> Truth {
    let piece = |piece: &crate::Piece| {
        let resist = Laid::new(piece).map(|laid| laid.truth(piece));
        let mean = resist.as_ref().map_or(&piece.reflectance, |(mean, _)| mean);
        PieceTruth {
            id: piece.id.clone(),
            polygon: piece
                .inner_mm()
                .into_iter()
                .map(|point| projection.to_photo(point))
                .collect(),
            lab_d65_10: mean.lab_d65_10(),
            parts: resist.as_ref().map(|(_, parts)| *parts),
        }
    };
    let corners = |chart: &crate::Chart| chart.corners_mm(0.0).map(|p| projection.to_photo(p));
    Truth {
        width: scene.width_px,
        height: scene.height_px,
        chart_corners: scene.chart.as_ref().map_or([[0.0; 2]; 4], corners),
        pieces: scene.pieces.iter().map(piece).collect(),
    }
}

/// A photo being taken.
struct Taking<'a> {
    scene: &'a Scene,
    projection: Projection,
    ground: Ground<'a>,
    developer: Developer,
    kernel: Vec<f64>,
    level: f64,
    hands: Vec<HandShape>,
    gains: Option<Gains>,
}

impl Taking<'_> {
    /// All pixels; bands of rows are shared among the processor's cores.
    fn pixels(&self, width: usize, height: usize) -> Vec<u8> {
        let mut rgb = vec![0; width * height * 3];
        let cores = std::thread::available_parallelism().map_or(1, usize::from);
        let mut bands: Vec<_> = rgb.chunks_mut(width * 3 * BAND_ROWS).enumerate().collect();
        let share = bands.len().div_ceil(cores);
        std::thread::scope(|scope| {
            for some in bands.chunks_mut(share) {
                scope.spawn(|| {
                    for (i, band) in some {
                        self.band(*i * BAND_ROWS, width, band);
                    }
                });
            }
        });
        rgb
    }

    /// The rows from `top` on that fill `band`.
    fn band(&self, top: usize, width: usize, band: &mut [u8]) {
        let rows = band.len() / (width * 3);
        let reach = self.kernel.len() / 2;
        let sharp: Vec<Vec<[f64; 3]>> = (0..rows + 2 * reach)
            .map(|row| self.blurred_row((top + row) as f64 - reach as f64, width))
            .collect();
        for (row, line) in band.chunks_mut(width * 3).enumerate() {
            for (x, pixel) in line.chunks_mut(3).enumerate() {
                let mut sum = [0.0; 3];
                for (weight, source) in self.kernel.iter().zip(&sharp[row..]) {
                    for k in 0..3 {
                        sum[k] += weight * source[x][k];
                    }
                }
                let middle = [x as f64 + 0.5, (top + row) as f64 + 0.5];
                let gain = self.gains.as_ref().map_or(1.0, |gains| gains.at(middle));
                pixel.copy_from_slice(&self.developer.pixel(x, top + row, sum, gain));
            }
        }
    }

    /// A row of channel values, blurred along the row.
    fn blurred_row(&self, y: f64, width: usize) -> Vec<[f64; 3]> {
        let reach = self.kernel.len() / 2;
        let sharp: Vec<[f64; 3]> = (0..width + 2 * reach)
            .map(|x| self.light_at(x as f64 - reach as f64, y))
            .collect();
        let blur = |window: &[[f64; 3]]| {
            let mut sum = [0.0; 3];
            for (weight, source) in self.kernel.iter().zip(window) {
                for k in 0..3 {
                    sum[k] += weight * source[k];
                }
            }
            sum
        };
        sharp.windows(self.kernel.len()).map(blur).collect()
    }

    /// The channel values of a pixel, the mean of a few places in it.
    fn light_at(&self, x: f64, y: f64) -> [f64; 3] {
        const PLACES: [[f64; 2]; 4] = [
            [0.375, 0.125],
            [0.625, 0.875],
            [0.875, 0.375],
            [0.125, 0.625],
        ];
        let middle = [x + 0.5, y + 0.5];
        let near = self.ground.near(self.projection.to_table(middle));
        // The bare table has few hard edges: two places do.
        let places = if near.is_some() {
            &PLACES[..]
        } else {
            &PLACES[..2]
        };
        let size = [self.scene.width_px, self.scene.height_px].map(f64::from);
        let flaws = &self.scene.flaws;
        let lit = flaws
            .second_light
            .as_ref()
            .map_or(0.0, |second| second.share(middle, size));
        let mut sum = [0.0; 3];
        for place in places {
            let pixel = [x + place[0], y + place[1]];
            let hand = self.hands.iter().find_map(|hand| hand.at(pixel, lit));
            let seen = hand.unwrap_or_else(|| {
                let point = self.projection.to_table(pixel);
                self.ground.at(near, point, lit)
            });
            for k in 0..3 {
                sum[k] += seen[k];
            }
        }
        let mut light = self.level * self.scene.gradient.at(middle, size) / places.len() as f64;
        light *= self.scene.camera.optics.transmitted(middle, size);
        if flaws.near_lamp.is_some() || flaws.shadow.is_some() {
            let point = self.projection.to_table(middle);
            light *= flaws.near_lamp.map_or(1.0, |lamp| lamp.at(point));
            light *= flaws.shadow.map_or(1.0, |shadow| shadow.at(point));
        }
        sum.map(|value| value * light)
    }
}

/// A bell-shaped blur kernel that sums to 1.
fn kernel(deviation_px: f64) -> Vec<f64> {
    let reach = (2.5 * deviation_px).ceil() as i32;
    let bell = |i: i32| (-0.5 * (f64::from(i) / deviation_px).powi(2)).exp();
    let sum: f64 = (-reach..=reach).map(bell).sum();
    (-reach..=reach).map(|i| bell(i) / sum).collect()
}
