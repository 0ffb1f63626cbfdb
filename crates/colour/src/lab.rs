//! Tristimulus values and CIELAB.

/// Tristimulus values on the scale where the perfect diffuser has Y = 100.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Xyz {
    /// X, 0 to about 111.
    pub x: f64,
    /// Y (luminous reflectance), percent.
    pub y: f64,
    /// Z, 0 to about 109.
    pub z: f64,
}

/// A colour in CIELAB. The light and observer stand beside it: see [`crate::View`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lab {
    /// Lightness L*, 0 (black) to 100 (perfect white).
    pub l: f64,
    /// a*: green (negative) to red (positive).
    pub a: f64,
    /// b*: blue (negative) to yellow (positive).
    pub b: f64,
}

/// The corner of the CIELAB function, (6/29) cubed.
const LINEAR_BELOW: f64 = 216.0 / 24389.0;
/// The slope of its straight part, (29/6) squared / 3.
const LINEAR_SLOPE: f64 = 841.0 / 108.0;

impl Xyz {
    /// Puts three tristimulus values together.
    pub const fn new(x: f64, y: f64, z: f64) -> Self {
        Self { x, y, z }
    }

    /// The values in the order X, Y, Z.
    pub const fn to_array(self) -> [f64; 3] {
        [self.x, self.y, self.z]
    }

    /// CIELAB of these values for the given white.
    ///
    /// # Source
    /// CIE 015:2018, CIELAB (same as ISO/CIE 11664-4).
    pub fn to_lab(self, white: Xyz) -> Lab {
        let fx = compress(self.x / white.x);
        let fy = compress(self.y / white.y);
        let fz = compress(self.z / white.z);
        Lab::new(116.0 * fy - 16.0, 500.0 * (fx - fy), 200.0 * (fy - fz))
    }
}

impl From<[f64; 3]> for Xyz {
    fn from([x, y, z]: [f64; 3]) -> Self {
        Self { x, y, z }
    }
}

impl Lab {
    /// Puts L*, a* and b* together.
    pub const fn new(l: f64, a: f64, b: f64) -> Self {
        Self { l, a, b }
    }

    /// The values in the order L*, a*, b*.
    pub const fn to_array(self) -> [f64; 3] {
        [self.l, self.a, self.b]
    }

    /// Tristimulus values of this colour for the given white.
    ///
    /// # Source
    /// CIE 015:2018, the reverse of CIELAB.
    pub fn to_xyz(self, white: Xyz) -> Xyz {
        let fy = (self.l + 16.0) / 116.0;
        let fx = fy + self.a / 500.0;
        let fz = fy - self.b / 200.0;
        Xyz::new(
            white.x * expand(fx),
            white.y * expand(fy),
            white.z * expand(fz),
        )
    }

    /// Chroma C*ab, 0 upward.
    pub fn chroma(self) -> f64 {
        libm::hypot(self.a, self.b)
    }

    /// Hue angle hab in degrees, 0 up to 360; 0 for a grey.
    pub fn hue_deg(self) -> f64 {
        if self.a == 0.0 && self.b == 0.0 {
            return 0.0;
        }
        let h = libm::atan2(self.b, self.a).to_degrees();
        if h < 0.0 { h + 360.0 } else { h }
    }
}

impl From<[f64; 3]> for Lab {
    fn from([l, a, b]: [f64; 3]) -> Self {
        Self { l, a, b }
    }
}

fn compress(t: f64) -> f64 {
    if t > LINEAR_BELOW {
        libm::cbrt(t)
    } else {
        t * LINEAR_SLOPE + 4.0 / 29.0
    }
}

fn expand(f: f64) -> f64 {
    if f > 6.0 / 29.0 {
        f * f * f
    } else {
        (f - 4.0 / 29.0) / LINEAR_SLOPE
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::View;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn lab_comes_back_from_xyz(l in 0.0..100.0, a in -80.0..80.0, b in -80.0..80.0) {
            let white = View::D65_10.white();
            let there = Lab::new(l, a, b);
            let back = there.to_xyz(white).to_lab(white);
            prop_assert!((there.l - back.l).abs() < 1e-9);
            prop_assert!((there.a - back.a).abs() < 1e-9);
            prop_assert!((there.b - back.b).abs() < 1e-9);
        }
    }

    #[test]
    fn white_is_100_and_black_is_0() {
        let white = View::D65_10.white();
        assert_eq!(white.to_lab(white), Lab::new(100.0, 0.0, 0.0));
        assert!(Xyz::new(0.0, 0.0, 0.0).to_lab(white).l.abs() < 1e-12);
    }

    #[test]
    fn a_grey_has_hue_zero() {
        assert_eq!(Lab::new(50.0, 0.0, 0.0).hue_deg(), 0.0);
        assert_eq!(Lab::new(50.0, 0.0, -3.0).hue_deg(), 270.0);
    }
}
