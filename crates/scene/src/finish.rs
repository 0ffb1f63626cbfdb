//! What the processor does to finished pixels: colour smoothed, edges sharpened.

use crate::Optics;

/// Standard deviation of the blur against which edges are sharpened, px; cameras
/// sharpen over one to two pixels.
const SHARPENING_RADIUS_PX: i32 = 2;

/// The finished pixels of a photo `width` px wide, as the camera leaves them.
pub(crate) fn finish(rgb: &mut [u8], width: usize, optics: Optics) {
    if optics.sharpening == 0.0 && optics.colour_smoothing_px == 0 {
        return;
    }
    let count = rgb.len() / 3;
    let mut grey = Vec::with_capacity(count);
    let mut colour = [Vec::with_capacity(count), Vec::with_capacity(count)];
    for pixel in rgb.chunks_exact(3) {
        let [r, g, b] = [pixel[0], pixel[1], pixel[2]].map(f32::from);
        let y = 0.299 * r + 0.587 * g + 0.114 * b;
        grey.push(y);
        colour[0].push(r - y);
        colour[1].push(b - y);
    }
    if optics.colour_smoothing_px > 0 {
        for plane in &mut colour {
            *plane = mean_about(plane, width, optics.colour_smoothing_px as usize);
        }
    }
    if optics.sharpening > 0.0 {
        let soft = mean_about(&grey, width, SHARPENING_RADIUS_PX as usize - 1);
        let soft = mean_about(&soft, width, 1);
        for (value, soft) in grey.iter_mut().zip(&soft) {
            *value += optics.sharpening as f32 * (*value - soft);
        }
    }
    for (i, pixel) in rgb.chunks_exact_mut(3).enumerate() {
        let (y, red, blue) = (grey[i], colour[0][i], colour[1][i]);
        let green = -(0.299 * red + 0.114 * blue) / 0.587;
        for (value, off) in pixel.iter_mut().zip([red, green, blue]) {
            *value = (y + off).round().clamp(0.0, 255.0) as u8;
        }
    }
}

/// The mean over a square of `2 * reach + 1` px about each pixel; edges repeat.
fn mean_about(plane: &[f32], width: usize, reach: usize) -> Vec<f32> {
    let height = plane.len() / width;
    let part = 1.0 / (2 * reach + 1) as f32;
    let mut along = Vec::with_capacity(plane.len());
    for row in plane.chunks_exact(width) {
        for x in 0..width {
            let sum: f32 = if x >= reach && x + reach < width {
                row[x - reach..=x + reach].iter().sum()
            } else {
                let at = |step: usize| row[(x + step).saturating_sub(reach).min(width - 1)];
                (0..=2 * reach).map(at).sum()
            };
            along.push(sum * part);
        }
    }
    let mut mean = vec![0.0; plane.len()];
    for (y, row) in mean.chunks_exact_mut(width).enumerate() {
        for step in 0..=2 * reach {
            let from = (y + step).saturating_sub(reach).min(height - 1) * width;
            for (sum, value) in row.iter_mut().zip(&along[from..from + width]) {
                *sum += value * part;
            }
        }
    }
    mean
}

#[cfg(test)]
mod tests {
    use super::*;

    const WIDTH: usize = 40;

    /// A dark half beside a bright one.
    fn edge() -> Vec<u8> {
        let pixel = |i: usize| {
            if i % WIDTH < 20 {
                [60, 70, 80]
            } else {
                [180, 170, 160]
            }
        };
        (0..WIDTH * 30).flat_map(pixel).collect()
    }

    #[test]
    fn sharpening_leaves_halos_at_edges_and_flats_alone() {
        let mut sharp = edge();
        let optics = Optics {
            sharpening: 0.8,
            ..Optics::default()
        };
        finish(&mut sharp, WIDTH, optics);
        let at = |x: usize| sharp[(15 * WIDTH + x) * 3 + 1];
        assert!(at(19) < 62 && at(20) > 178, "{} {}", at(19), at(20));
        for x in [5, 35] {
            assert!(at(x).abs_diff(edge()[(15 * WIDTH + x) * 3 + 1]) <= 1);
        }
    }

    #[test]
    fn smoothed_colour_keeps_brightness() {
        let mut smooth = edge();
        let optics = Optics {
            colour_smoothing_px: 3,
            ..Optics::default()
        };
        finish(&mut smooth, WIDTH, optics);
        let grey =
            |p: &[u8]| 0.299 * f64::from(p[0]) + 0.587 * f64::from(p[1]) + 0.114 * f64::from(p[2]);
        for (a, b) in smooth.chunks_exact(3).zip(edge().chunks_exact(3)) {
            assert!((grey(a) - grey(b)).abs() < 1.1);
        }
        let middle = (15 * WIDTH + 20) * 3;
        assert!(smooth[middle..middle + 3] != edge()[middle..middle + 3]);
    }
}
