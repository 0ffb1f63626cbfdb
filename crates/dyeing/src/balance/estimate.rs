//! A quantity with the bounds between which it lies.

use crate::text;
use serde::Serialize;

/// A quantity with its 95 % bounds; the bounds needn't lie evenly about the middle.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Estimate {
    /// The likeliest value.
    pub middle: f64,
    /// Lower bound.
    pub low: f64,
    /// Upper bound.
    pub high: f64,
}

impl Estimate {
    /// A value within a factor either way: a spread of 0.25 is from value / 1.25 to value x 1.25.
    pub(super) fn within(middle: f64, spread: f64) -> Self {
        Self {
            middle,
            low: middle / (1.0 + spread),
            high: middle * (1.0 + spread),
        }
    }

    /// A value that is known.
    pub(super) fn exact(middle: f64) -> Self {
        Self::within(middle, 0.0)
    }

    /// That many times as much.
    pub(super) fn scaled(self, factor: f64) -> Self {
        Self {
            middle: self.middle * factor,
            low: self.low * factor,
            high: self.high * factor,
        }
    }

    /// The product of two that err apart from each other: their relative distances to each bound
    /// add in squares. What may be nothing has the product of the upper bounds for its own.
    pub(super) fn times(self, other: Self) -> Self {
        let middle = self.middle * other.middle;
        if middle <= 0.0 {
            return Self {
                middle,
                low: middle.min(0.0),
                high: self.high * other.high,
            };
        }
        let down = libm::hypot(1.0 - self.low / self.middle, 1.0 - other.low / other.middle);
        let up = libm::hypot(
            self.high / self.middle - 1.0,
            other.high / other.middle - 1.0,
        );
        Self {
            middle,
            low: (middle * (1.0 - down)).max(0.0),
            high: middle * (1.0 + up),
        }
    }

    /// One over it; only for what is above 0.
    pub(super) fn inverse(self) -> Self {
        Self {
            middle: 1.0 / self.middle,
            low: 1.0 / self.high,
            high: 1.0 / self.low,
        }
    }

    /// The sum of several that err apart from each other: distances to each bound add in squares.
    ///
    /// Source: Zou and Donner, Statistics in Medicine 27 (2008), variance estimates recovered from
    /// intervals; from memory.
    pub(super) fn sum(all: impl IntoIterator<Item = Self>) -> Self {
        let (mut middle, mut down, mut up) = (0.0, 0.0, 0.0);
        for one in all {
            middle += one.middle;
            down = libm::hypot(down, one.middle - one.low);
            up = libm::hypot(up, one.high - one.middle);
        }
        Self {
            middle,
            low: middle - down,
            high: middle + up,
        }
    }

    /// What is left of a whole of 1.
    pub(super) fn rest(self) -> Self {
        Self {
            middle: 1.0 - self.middle,
            low: 1.0 - self.high,
            high: 1.0 - self.low,
        }
    }

    /// As percent of the dye, with its bounds, as in `62 % (55 to 68 %)`.
    pub fn percent(self) -> String {
        let [middle, low, high] = [self.middle, self.low, self.high].map(|v| 100.0 * v);
        let digits = |value: f64| {
            // Whole percents are enough until a share is small.
            let digits = match value.abs() {
                v if v >= 9.95 || v == 0.0 => 0,
                v if v >= 0.095 => 1,
                _ => 2,
            };
            let text = format!("{value:.digits$}").replace('-', "−");
            let bare = text.trim_matches(['−', '0', '.']).is_empty();
            if bare { "0".to_owned() } else { text }
        };
        text::balance::to(digits(middle), digits(low), digits(high))
    }
}

#[cfg(test)]
mod tests {
    use super::Estimate;

    #[test]
    fn errors_add_in_squares() {
        // 3, 4, 5: a sum of two that are each off by 3 and by 4 is off by 5.
        let of = |middle: f64, off: f64| Estimate {
            middle,
            low: middle - off,
            high: middle + off,
        };
        let sum = Estimate::sum([of(10.0, 3.0), of(20.0, 4.0)]);
        assert_eq!(sum, of(30.0, 5.0));
        let product = of(10.0, 0.3).times(of(2.0, 0.08));
        assert!((product.high - 20.0 * 1.05).abs() < 1e-12);
        assert!((product.low - 20.0 * 0.95).abs() < 1e-12);
        assert_eq!(of(0.4, 0.1).rest(), of(0.6, 0.1));
    }

    #[test]
    fn percents_have_as_many_digits_as_say_something() {
        let said = |middle, low, high| Estimate { middle, low, high }.percent();
        assert_eq!(said(0.623, 0.55, 0.68), "62 % (55 to 68 %)");
        assert_eq!(said(0.0312, 0.02, 0.104), "3.1 % (2.0 to 10 %)");
        assert_eq!(said(0.0004, 0.0, 0.001), "0.04 % (0 to 0.1 %)");
        assert_eq!(said(-0.02, -0.11, 0.06), "−2.0 % (−11 to 6.0 %)");
    }
}
