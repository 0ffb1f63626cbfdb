//! What lens and processor of a camera add of their own.

/// Lens and processing beside the tone curve. A perfect camera by default.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Optics {
    /// Share of the light lost in the photo's corners, 0 to 0.5.
    pub vignette: f64,
    /// Barrel distortion: the share by which a corner is drawn towards the middle, 0 to 0.08.
    pub barrel: f64,
    /// Sharpening: the share of the local contrast added to it, 0 to 1.5.
    pub sharpening: f64,
    /// How far the processor smooths colour to hide noise, px; 0 = not at all.
    pub colour_smoothing_px: u32,
}

impl Optics {
    /// The share of the light that reaches a point of a photo of the given size, px.
    pub(crate) fn transmitted(self, point: [f64; 2], size: [f64; 2]) -> f64 {
        if self.vignette == 0.0 {
            return 1.0;
        }
        let [x, y] = [0, 1].map(|k| point[k] - size[k] / 2.0);
        let squared = (x * x + y * y) * 4.0 / (size[0] * size[0] + size[1] * size[1]);
        // The slow start and steeper end of the fourth power of a cosine and a
        // narrow barrel together.
        1.0 - self.vignette * squared * (0.6 + 0.4 * squared)
    }
}

/// The bending of straight lines by a lens, about the middle of the photo.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Barrel {
    middle: [f64; 2],
    /// Per square px.
    strength: f64,
}

impl Barrel {
    pub(crate) fn new(share: f64, size: [f64; 2]) -> Option<Self> {
        let corner = (size[0] * size[0] + size[1] * size[1]) / 4.0;
        // A corner drawn in by `share` stands at 1 - share of its true distance.
        let share = share.clamp(0.0, 0.2);
        let drawn_in = (1.0 - share) * (1.0 - share);
        (share > 0.0).then(|| Self {
            middle: size.map(|side| side / 2.0),
            strength: share / (1.0 - share) / (corner * drawn_in),
        })
    }

    /// Where a place of the photo (px) would lie without the bending.
    pub(crate) fn straight(self, point: [f64; 2]) -> [f64; 2] {
        let [x, y] = [0, 1].map(|k| point[k] - self.middle[k]);
        let factor = 1.0 + self.strength * (x * x + y * y);
        [self.middle[0] + x * factor, self.middle[1] + y * factor]
    }

    /// Where a place lands that without the bending would lie at `point`, px.
    pub(crate) fn bent(self, point: [f64; 2]) -> [f64; 2] {
        let [x, y] = [0, 1].map(|k| point[k] - self.middle[k]);
        let wanted = x.hypot(y);
        if wanted == 0.0 {
            return point;
        }
        // Newton's steps for r + s r^3 = wanted; the left side only rises.
        let mut r = wanted;
        for _ in 0..12 {
            let squared = self.strength * r * r;
            r -= (r * (1.0 + squared) - wanted) / (1.0 + 3.0 * squared);
        }
        [0, 1].map(|k| self.middle[k] + (point[k] - self.middle[k]) * r / wanted)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SIZE: [f64; 2] = [2000.0, 1500.0];

    #[test]
    fn the_corner_is_drawn_in_by_its_share() {
        let barrel = Barrel::new(0.03, SIZE).unwrap();
        let corner = barrel.bent([0.0, 0.0]);
        assert!((corner[0] - 30.0).abs() < 1e-6 && (corner[1] - 22.5).abs() < 1e-6);
        assert!(Barrel::new(0.0, SIZE).is_none());
    }

    #[test]
    fn bent_and_straight_are_each_other_s_inverse() {
        let barrel = Barrel::new(0.05, SIZE).unwrap();
        for point in [[3.0, 9.0], [1000.0, 750.0], [1800.0, 20.0], [700.0, 1400.0]] {
            let back = barrel.straight(barrel.bent(point));
            assert!((back[0] - point[0]).hypot(back[1] - point[1]) < 1e-9);
        }
    }

    #[test]
    fn corners_lose_what_they_should_and_the_middle_nothing() {
        let optics = Optics {
            vignette: 0.35,
            ..Optics::default()
        };
        assert!((optics.transmitted([1000.0, 750.0], SIZE) - 1.0).abs() < 1e-12);
        assert!((optics.transmitted([2000.0, 0.0], SIZE) - 0.65).abs() < 1e-12);
    }
}
