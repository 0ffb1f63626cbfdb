//! Cameras: what the sensor makes of light, and what the camera makes of that.

use crate::{
    Light, Optics, Reflectance, Tone, chart_spectra, lamp, reflectance::weigh,
    tables::WEIGHTS_D65_2, wavelengths_nm,
};

/// A bell over the wavelength.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bell {
    /// Wavelength of the peak, nm.
    pub peak_nm: f64,
    /// Standard deviation, nm.
    pub width_nm: f64,
    /// Height; only ratios matter.
    pub height: f64,
}

/// Errors of the automatic white balance: factors on the red and blue channel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WhiteBalance {
    /// Factor on red, 1 = perfect.
    pub red: f64,
    /// Factor on blue, 1 = perfect.
    pub blue: f64,
}

/// A camera. All of them are invented.
#[derive(Debug, Clone, PartialEq)]
pub struct Camera {
    /// Its name, written into the EXIF data.
    pub name: String,
    /// Sensitivities of the red, green and blue channel, each a sum of bells.
    pub channels: [Vec<Bell>; 3],
    /// How far colours are pushed away from grey, 1 = not at all.
    pub saturation: f64,
    /// The tone curve.
    pub tone: Tone,
    /// Standard deviation of the noise at white, as a share of white.
    pub noise: f64,
    /// Lens and processing.
    pub optics: Optics,
}

impl Camera {
    /// A camera of `[(peak nm, width nm, height), ...]` for red, green and blue,
    /// with the sRGB tone curve and little noise.
    pub fn new(name: &str, channels: [&[(f64, f64, f64)]; 3]) -> Self {
        let bell = |&(peak_nm, width_nm, height): &(f64, f64, f64)| Bell {
            peak_nm,
            width_nm,
            height,
        };
        Self {
            name: name.to_owned(),
            channels: channels.map(|bells| bells.iter().map(bell).collect()),
            saturation: 1.0,
            tone: Tone::Srgb,
            noise: 0.006,
            optics: Optics::default(),
        }
    }

    /// A plain camera with moderate overlap.
    pub fn plain() -> Self {
        Self::new(
            "Plain One",
            [
                &[(600.0, 34.0, 1.0), (450.0, 25.0, 0.05)],
                &[(535.0, 38.0, 1.0)],
                &[(460.0, 28.0, 0.95)],
            ],
        )
    }

    /// A telephone: wide overlap, strong tone curve, some extra colour.
    pub fn phone() -> Self {
        let channels: [&[(f64, f64, f64)]; 3] = [
            &[(605.0, 44.0, 0.9), (520.0, 40.0, 0.18)],
            &[(530.0, 48.0, 1.0), (460.0, 30.0, 0.12)],
            &[(465.0, 34.0, 0.9), (540.0, 30.0, 0.08)],
        ];
        Self {
            saturation: 1.08,
            tone: Tone::Phone,
            noise: 0.010,
            ..Self::new("Pocket Two", channels)
        }
    }

    /// A camera with narrow channels, far from the eye's.
    pub fn narrow() -> Self {
        Self::new(
            "Narrow Three",
            [
                &[(610.0, 31.0, 1.0)],
                &[(538.0, 33.0, 1.0)],
                &[(456.0, 26.0, 1.0)],
            ],
        )
    }

    /// A camera whose red sits close to its green.
    pub fn close() -> Self {
        let channels: [&[(f64, f64, f64)]; 3] = [
            &[(590.0, 38.0, 1.0), (650.0, 30.0, 0.25)],
            &[(545.0, 42.0, 1.0), (610.0, 30.0, 0.10)],
            &[(455.0, 32.0, 1.0), (500.0, 24.0, 0.10)],
        ];
        Self {
            noise: 0.008,
            ..Self::new("Close Four", channels)
        }
    }

    /// Every camera of this crate.
    pub fn all() -> [Self; 4] {
        [Self::plain(), Self::phone(), Self::narrow(), Self::close()]
    }
}

/// Lamps warmer than this are developed with the calibration for incandescent light.
const WARM_KELVIN: f64 = 3400.0;

/// A camera set to a light: surfaces in, balanced channel values out.
pub(crate) struct Sensor {
    /// Weights of each wavelength for red, green and blue, white giving 1, 1, 1
    /// (but for the errors of the white balance).
    weights: [[f64; 3]; 36],
    /// The same under a second light, with the white balance of the first two halves.
    other: Option<Box<[[f64; 3]; 36]>>,
    /// From balanced channel values to linear sRGB; its rows sum to 1.
    pub(crate) matrix: [[f64; 3]; 3],
}

/// A surface in the camera's channels, under the one light and under the other.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Seen {
    one: [f64; 3],
    other: [f64; 3],
}

impl Seen {
    /// The channel values where `share` of the light comes from the other.
    pub(crate) fn under(&self, share: f64) -> [f64; 3] {
        [0, 1, 2].map(|k| self.one[k] + share * (self.other[k] - self.one[k]))
    }
}

impl Sensor {
    /// `other` is a second light that is balanced against half of each.
    pub(crate) fn new(
        camera: &Camera,
        light: &Light,
        other: Option<&Light>,
        balance: WhiteBalance,
    ) -> Self {
        let one = light.power();
        let (mut weights, mut second) = match other {
            None => (balanced(camera, &one, &one), None),
            Some(other) => {
                let other = other.power();
                let both = lamp::mix(&one, &other, 0.5);
                let [one, other] =
                    [one, other].map(|power| power.map(|v| v / lamp::illuminance(&power)));
                let weights = balanced(camera, &one, &both);
                (weights, Some(Box::new(balanced(camera, &other, &both))))
            }
        };
        let matrix = calibrate(&{
            let bench = bench(light).power();
            balanced(camera, &bench, &bench)
        });
        for row in weights
            .iter_mut()
            .chain(second.iter_mut().flat_map(|w| w.iter_mut()))
        {
            row[0] *= balance.red;
            row[2] *= balance.blue;
        }
        Self {
            weights,
            other: second,
            matrix: saturate(matrix, camera.saturation),
        }
    }

    /// The channel values of a surface in full light; a perfect white gives about 1.
    pub(crate) fn see(&self, surface: &Reflectance) -> Seen {
        let one = weigh(&surface.0, &self.weights);
        let other = self.other.as_ref().map(|w| weigh(&surface.0, w));
        Seen {
            one,
            other: other.unwrap_or(one),
        }
    }

    /// Linear sRGB of a surface in full light, as the camera has it.
    #[cfg(test)]
    pub(crate) fn linear(&self, surface: &Reflectance) -> [f64; 3] {
        apply(&self.matrix, self.see(surface).one)
    }
}

/// The light for which the maker calibrated: daylight or an incandescent lamp,
/// not each light there is.
fn bench(light: &Light) -> Light {
    let is_warm = match light {
        Light::A => true,
        Light::D65 | Light::D50 | Light::Fl2 | Light::Led | Light::Other(_) => false,
        _ => light.kelvin() < WARM_KELVIN,
    };
    if is_warm { Light::A } else { Light::D65 }
}

/// Sensitivity times light, scaled so that each channel of a perfect white is 1
/// under the light `white`.
fn balanced(camera: &Camera, light: &[f64; 36], white: &[f64; 36]) -> [[f64; 3]; 36] {
    let mut weights = [[0.0; 3]; 36];
    let mut sums = [0.0; 3];
    for (i, (row, nm)) in weights.iter_mut().zip(wavelengths_nm()).enumerate() {
        for (k, bells) in camera.channels.iter().enumerate() {
            let at = |b: &Bell| b.height * (-0.5 * ((nm - b.peak_nm) / b.width_nm).powi(2)).exp();
            let sensitivity = bells.iter().map(at).sum::<f64>();
            row[k] = light[i] * sensitivity;
            sums[k] += white[i] * sensitivity;
        }
    }
    weights.map(|row| [0, 1, 2].map(|k| row[k] / sums[k]))
}

/// The matrix that brings the patches nearest to their sRGB values by least
/// squares while white stays white, as makers calibrate their cameras.
fn calibrate(weights: &[[f64; 3]; 36]) -> [[f64; 3]; 3] {
    let seen: Vec<([f64; 3], [f64; 3])> = chart_spectra()
        .iter()
        .map(|patch| (weigh(&patch.0, weights), linear_srgb(patch)))
        .collect();
    [0, 1, 2].map(|channel| {
        // With rows that sum to 1, two unknowns remain: the shares of red and blue.
        let (mut rr, mut rb, mut bb, mut rt, mut bt) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for (camera, wanted) in &seen {
            let (r, b) = (camera[0] - camera[1], camera[2] - camera[1]);
            let t = wanted[channel] - camera[1];
            rr += r * r;
            rb += r * b;
            bb += b * b;
            rt += r * t;
            bt += b * t;
        }
        let det = rr * bb - rb * rb;
        let red = (rt * bb - bt * rb) / det;
        let blue = (bt * rr - rt * rb) / det;
        [red, 1.0 - red - blue, blue]
    })
}

/// Linear sRGB of a surface in daylight.
///
/// # Source
/// IEC 61966-2-1, for the CIE 1931 observer.
fn linear_srgb(surface: &Reflectance) -> [f64; 3] {
    const FROM_XYZ: [[f64; 3]; 3] = [
        [3.240_97, -1.537_383, -0.498_611],
        [-0.969_244, 1.875_968, 0.041_555],
        [0.055_63, -0.203_977, 1.056_972],
    ];
    let xyz = weigh(&surface.0, &WEIGHTS_D65_2).map(|v| v / 100.0);
    apply(&FROM_XYZ, xyz)
}

/// The matrix followed by a push away from grey.
fn saturate(matrix: [[f64; 3]; 3], saturation: f64) -> [[f64; 3]; 3] {
    const LUMINANCE: [f64; 3] = [0.2126, 0.7152, 0.0722];
    let grey = [0, 1, 2].map(|j| (0..3).map(|i| LUMINANCE[i] * matrix[i][j]).sum::<f64>());
    matrix.map(|row| [0, 1, 2].map(|j| grey[j] + saturation * (row[j] - grey[j])))
}

/// A matrix times a column.
pub(crate) fn apply(matrix: &[[f64; 3]; 3], v: [f64; 3]) -> [f64; 3] {
    matrix.map(|row| row[0] * v[0] + row[1] * v[1] + row[2] * v[2])
}
