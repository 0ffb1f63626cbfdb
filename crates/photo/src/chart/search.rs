//! The picture in which a chart is searched, at several sizes.

/// Longest side of the finest picture kept, px. The least chart that a person
/// would use is 250 px wide in 4000, so its patches stay above 15 px here.
const FINEST_PX: usize = 2600;
/// No picture smaller than this is made, px.
const COARSEST_PX: usize = 420;

/// An upright photo in linear light, kept at several sizes for the search.
#[derive(Debug, Clone)]
pub struct Search {
    levels: Vec<Level>,
}

/// One size of the photo.
#[derive(Debug, Clone)]
pub(crate) struct Level {
    /// Width, px.
    pub(crate) width: usize,
    /// Height, px.
    pub(crate) height: usize,
    /// Linear light, red, green and blue in turn, row by row.
    pub(crate) rgb: Vec<f32>,
    /// Pixels of the photo for one pixel here.
    pub(crate) scale: f64,
    /// Whether no coarser picture is kept.
    pub(crate) is_coarsest: bool,
}

impl Search {
    /// Takes the upright photo pixel by pixel: `pixel(x, y)` gives red, green and
    /// blue in linear light, 0 to 1, in any RGB space; each is asked for once.
    pub fn new(width: usize, height: usize, pixel: impl Fn(usize, usize) -> [f32; 3]) -> Self {
        let mut levels = vec![Level::taken(width, height, pixel)];
        while let Some(last) = levels.last()
            && last.width.max(last.height) / 2 >= COARSEST_PX
        {
            levels.push(last.halved());
        }
        if let Some(last) = levels.last_mut() {
            last.is_coarsest = true;
        }
        Self { levels }
    }

    /// The pictures, the finest first.
    pub(crate) fn levels(&self) -> &[Level] {
        &self.levels
    }
}

impl Level {
    /// The finest picture: blocks of pixels averaged.
    fn taken(width: usize, height: usize, pixel: impl Fn(usize, usize) -> [f32; 3]) -> Self {
        let block = width.max(height).div_ceil(FINEST_PX).max(1);
        let (w, h) = (width / block, height / block);
        let share = 1.0 / (block * block) as f32;
        let mut rgb = vec![0.0f32; 3 * w * h];
        for y in 0..h * block {
            let row = &mut rgb[3 * w * (y / block)..][..3 * w];
            for (bx, out) in row.chunks_exact_mut(3).enumerate() {
                for x in bx * block..(bx + 1) * block {
                    for (sum, value) in out.iter_mut().zip(pixel(x, y)) {
                        // The maximum turns a NaN into 0.
                        *sum += value.max(0.0).clamp(0.0, 1.0) * share;
                    }
                }
            }
        }
        Self {
            width: w,
            height: h,
            rgb,
            scale: block as f64,
            is_coarsest: false,
        }
    }

    fn halved(&self) -> Self {
        let (w, h) = (self.width / 2, self.height / 2);
        let mut rgb = Vec::with_capacity(3 * w * h);
        for y in 0..h {
            let upper = &self.rgb[6 * y * self.width..][..3 * self.width];
            let lower = &self.rgb[3 * (2 * y + 1) * self.width..][..3 * self.width];
            for (a, b) in upper.chunks_exact(6).zip(lower.chunks_exact(6)) {
                for c in 0..3 {
                    rgb.push(0.25 * (a[c] + a[c + 3] + b[c] + b[c + 3]));
                }
            }
        }
        Self {
            width: w,
            height: h,
            rgb,
            scale: 2.0 * self.scale,
            is_coarsest: false,
        }
    }

    /// The linear colour between pixels; none outside the picture.
    pub(crate) fn at(&self, [x, y]: [f64; 2]) -> Option<[f32; 3]> {
        let (x, y) = (x - 0.5, y - 0.5);
        let inside =
            x >= -0.5 && y >= -0.5 && x <= self.width as f64 - 0.5 && y <= self.height as f64 - 0.5;
        if !inside {
            return None;
        }
        let x = x.clamp(0.0, (self.width - 1) as f64);
        let y = y.clamp(0.0, (self.height - 1) as f64);
        let (left, top) = (x as usize, y as usize);
        let (right, bottom) = (
            (left + 1).min(self.width - 1),
            (top + 1).min(self.height - 1),
        );
        let (fx, fy) = ((x - left as f64) as f32, (y - top as f64) as f32);
        let pixel = |x: usize, y: usize, c: usize| self.rgb[3 * (y * self.width + x) + c];
        Some([0, 1, 2].map(|c| {
            let upper = pixel(left, top, c) * (1.0 - fx) + pixel(right, top, c) * fx;
            let lower = pixel(left, bottom, c) * (1.0 - fx) + pixel(right, bottom, c) * fx;
            upper * (1.0 - fy) + lower * fy
        }))
    }

    /// Roughly the brightest value that isn't a speck: the 99th percentile.
    pub(crate) fn bright(&self) -> f32 {
        let mut counts = [0usize; 1001];
        let mut seen = 0;
        for pixel in self.rgb.chunks_exact(3).step_by(7) {
            let value = pixel[0].max(pixel[1]).max(pixel[2]);
            counts[(value * 1000.0) as usize] += 1;
            seen += 1;
        }
        let mut above = 0;
        for (value, count) in counts.iter().enumerate().rev() {
            above += count;
            if above * 100 >= seen {
                return value.max(1) as f32 / 1000.0;
            }
        }
        1.0
    }
}

/// A linear value on a scale of even steps to the eye, 0 to about 1.
pub(crate) fn even(linear: f32) -> f32 {
    linear.max(0.0).sqrt()
}
