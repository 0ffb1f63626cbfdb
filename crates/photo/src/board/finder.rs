//! The square eyes at three corners of a code (ISO/IEC 18004, finder patterns).

use crate::{Point, chart::homography::distance};

/// A grey picture.
pub(super) struct Grey {
    pub width: usize,
    pub height: usize,
    values: Vec<u8>,
}

/// An eye: dark, light and dark squares within each other, 7 modules wide.
#[derive(Debug, Clone, Copy)]
pub(super) struct Eye {
    pub middle: Point,
    /// Width of a module, px of the grey picture.
    pub module: f64,
    /// The grey that parts dark from light there.
    pub threshold: f64,
    /// How many lines of the scan met it.
    seen: usize,
}

/// Most eyes of a picture that are looked at, the plainest first.
const MOST_EYES: usize = 160;

impl Grey {
    /// A picture whose grey at each pixel is given.
    pub fn new(width: usize, height: usize, pixel: impl Fn(usize, usize) -> u8) -> Self {
        let mut values = Vec::with_capacity(width * height);
        for y in 0..height {
            values.extend((0..width).map(|x| pixel(x, y)));
        }
        Self {
            width,
            height,
            values,
        }
    }

    /// The grey between pixels; white beyond the picture.
    pub fn at(&self, [x, y]: Point) -> f64 {
        let (x, y) = (x - 0.5, y - 0.5);
        let inside =
            x >= 0.0 && y >= 0.0 && x < self.width as f64 - 1.0 && y < self.height as f64 - 1.0;
        if !inside {
            return 255.0;
        }
        let (left, top) = (x as usize, y as usize);
        let (fx, fy) = (x - left as f64, y - top as f64);
        let i = top * self.width + left;
        let value = |i: usize| f64::from(self.values[i]);
        let upper = value(i) * (1.0 - fx) + value(i + 1) * fx;
        let lower = value(i + self.width) * (1.0 - fx) + value(i + self.width + 1) * fx;
        upper * (1.0 - fy) + lower * fy
    }

    /// The eyes in the picture, each once. Every `step`-th line is scanned.
    pub fn eyes(&self, step: usize) -> Vec<Eye> {
        let mut eyes: Vec<Eye> = Vec::new();
        let mut dark = vec![false; self.width];
        for y in (step / 2..self.height).step_by(step) {
            darker_than_around(&self.values[y * self.width..][..self.width], &mut dark);
            for (x, module) in patterns(&dark) {
                let guess = [x, y as f64 + 0.5];
                let known = eyes
                    .iter_mut()
                    .find(|e| distance(e.middle, guess) < 2.5 * e.module);
                match known {
                    Some(eye) => eye.seen += 1,
                    None => eyes.extend(self.checked(guess, module)),
                }
            }
        }
        eyes.sort_by_key(|eye| std::cmp::Reverse(eye.seen));
        eyes.truncate(MOST_EYES);
        eyes
    }

    /// A guess confirmed along both axes, with its middle and threshold measured.
    fn checked(&self, guess: Point, module: f64) -> Option<Eye> {
        let ring = |middle: Point| -> f64 {
            let r = 2.0 * module;
            let around = [[r, 0.0], [-r, 0.0], [0.0, r], [0.0, -r]];
            let sum: f64 = around
                .iter()
                .map(|[dx, dy]| self.at([middle[0] + dx, middle[1] + dy]))
                .sum();
            sum / 4.0
        };
        let (core, light) = (self.at(guess), ring(guess));
        if light - core < 24.0 {
            return None;
        }
        let threshold = (core + light) / 2.0;
        let [up, down] = self.across(guess, [0.0, 1.0], module, threshold)?;
        let centred = [guess[0], guess[1] + (down - up) / 2.0];
        let [left, right] = self.across(centred, [1.0, 0.0], module, threshold)?;
        let middle = [centred[0] + (right - left) / 2.0, centred[1]];
        let [up, down] = self.across(middle, [0.0, 1.0], module, threshold)?;
        let middle = [middle[0], middle[1] + (down - up) / 2.0];
        Some(Eye {
            middle,
            module: (left + right + up + down) / 14.0,
            threshold,
            seen: 1,
        })
    }

    /// From a point to both outer edges of an eye along a direction, px; none where
    /// the widths don't stand as 1 : 1 : 3 : 1 : 1.
    fn across(&self, from: Point, along: Point, module: f64, threshold: f64) -> Option<[f64; 2]> {
        let half = |sign: f64| -> Option<[f64; 3]> {
            // Ends of the dark core, the light ring and the dark ring.
            let mut ends = [0.0; 3];
            let mut k = 0;
            let mut last = self.at(from) - threshold;
            let step = (module / 6.0).max(0.25);
            let mut t = 0.0;
            while t < 9.0 * module {
                t += step;
                let at = [from[0] + sign * along[0] * t, from[1] + sign * along[1] * t];
                let now = self.at(at) - threshold;
                if (now > 0.0) != (last > 0.0) {
                    ends[k] = t - step * now / (now - last);
                    k += 1;
                    if k == 3 {
                        return Some(ends);
                    }
                }
                last = now;
            }
            None
        };
        if self.at(from) > threshold {
            return None;
        }
        let (back, forth) = (half(-1.0)?, half(1.0)?);
        let whole = back[2] + forth[2];
        let unit = whole / 7.0;
        let near = |width: f64, modules: f64| (width - modules * unit).abs() < 0.55 * unit;
        let fits = near(back[0] + forth[0], 3.0)
            && near(back[1] - back[0], 1.0)
            && near(forth[1] - forth[0], 1.0)
            && near(back[2] - back[1], 1.0)
            && near(forth[2] - forth[1], 1.0)
            && unit < 2.0 * module
            && module < 2.0 * unit;
        fits.then_some([back[2], forth[2]])
    }
}

/// Whether a picture's lines, every `step`-th of them, show anything like eyes: the
/// cheap look that spares photos without codes the making of the picture. `fill`
/// gives a line by its number.
pub(super) fn may_hold_eyes(
    width: usize,
    height: usize,
    step: usize,
    fill: impl Fn(usize, &mut [u8]),
) -> bool {
    let mut line = vec![0; width];
    let mut dark = vec![false; width];
    let mut above: Vec<(f64, f64)> = Vec::new();
    let mut seen = 0;
    for y in (step / 2..height).step_by(step) {
        fill(y, &mut line);
        darker_than_around(&line, &mut dark);
        let here = patterns(&dark);
        // An eye that can be read is met by two lines at least, texture seldom is.
        let again =
            |&&(x, module): &&(f64, f64)| above.iter().any(|(other, _)| (x - other).abs() < module);
        seen += here.iter().filter(again).count();
        if seen >= 3 {
            return true;
        }
        above = here;
    }
    false
}

/// Which pixels of a line are darker than the line around them.
fn darker_than_around(line: &[u8], dark: &mut [bool]) {
    let reach = (line.len() / 24).max(12);
    let mut before = Vec::with_capacity(line.len() + 1);
    before.push(0);
    let mut sum = 0;
    before.extend(line.iter().map(|&value| {
        sum += u32::from(value);
        sum
    }));
    // Ink reflects a tenth of what paper does: well below nine tenths of the mean.
    let is_dark = |value: u8, sum: u32, count: u32| u32::from(value) * count * 10 < sum * 9;
    let near_end = |x: usize| {
        let (first, end) = (x.saturating_sub(reach), (x + reach + 1).min(line.len()));
        is_dark(line[x], before[end] - before[first], (end - first) as u32)
    };
    // Away from the ends all pixels have as many around them.
    let around = 2 * reach + 1;
    let (first, end) = if line.len() >= around {
        (reach, line.len() - reach)
    } else {
        (line.len(), line.len())
    };
    for x in (0..first).chain(end..line.len()) {
        dark[x] = near_end(x);
    }
    let sums = before.iter().zip(before.get(around..).unwrap_or_default());
    for ((dark, value), (first, end)) in
        dark[first..end].iter_mut().zip(&line[first..end]).zip(sums)
    {
        *dark = is_dark(*value, end - first, around as u32);
    }
}

/// Middles and modules of every dark, light, dark, light, dark that stand roughly
/// as 1 : 1 : 3 : 1 : 1 in a line.
fn patterns(dark: &[bool]) -> Vec<(f64, f64)> {
    let mut found = Vec::new();
    let mut runs = [0usize; 5];
    let mut start = 0;
    while start < dark.len() {
        let is_dark = dark[start];
        let length = run_length(&dark[start..]);
        start += length;
        runs.rotate_left(1);
        runs[4] = length;
        let whole: usize = runs.iter().sum();
        if !is_dark || runs[0] == 0 || whole < 10 {
            continue;
        }
        let unit = whole as f64 / 7.0;
        let near = |run: usize, modules: f64| {
            (run as f64 - modules * unit).abs() <= (0.5 * modules.sqrt() * unit).max(1.2)
        };
        let fits = near(runs[2], 3.0) && [0, 1, 3, 4].into_iter().all(|k| near(runs[k], 1.0));
        if fits {
            let middle = start as f64 - (runs[4] + runs[3]) as f64 - runs[2] as f64 / 2.0;
            found.push((middle, unit));
        }
    }
    found
}

/// How many values from the first on are like it.
fn run_length(values: &[bool]) -> usize {
    const AT_ONCE: usize = 16;
    let like = [values[0]; AT_ONCE];
    // Most runs are long: whole stretches are compared first.
    let mut stretches = values.chunks_exact(AT_ONCE);
    let whole = stretches.by_ref().take_while(|s| **s == like).count() * AT_ONCE;
    let rest = &values[whole..];
    whole
        + rest
            .iter()
            .position(|v| *v != like[0])
            .unwrap_or(rest.len())
}
