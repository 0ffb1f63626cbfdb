//! Numbers drawn at random from a seed, the same on every system.

/// A stream of random numbers.
///
/// ```
/// let mut cards = [1, 2, 3, 4, 5];
/// inference::chance::Chance::new(2026).shuffle(&mut cards);
/// let mut again = [1, 2, 3, 4, 5];
/// inference::chance::Chance::new(2026).shuffle(&mut again);
/// assert_eq!(cards, again);
/// ```
#[derive(Debug, Clone)]
pub struct Chance {
    state: u64,
    /// The second of two normals that are drawn together.
    spare: Option<f64>,
}

impl Chance {
    /// The stream that follows from a seed.
    pub fn new(seed: u64) -> Self {
        Self {
            state: seed,
            spare: None,
        }
    }

    /// The next 64 bits, by SplitMix64.
    fn bits(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.state;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A number from -1 to 1, each as likely.
    fn even(&mut self) -> f64 {
        const STEP: f64 = 1.0 / (1u64 << 52) as f64;
        (self.bits() >> 11) as f64 * STEP - 1.0
    }

    /// A standard normal, by Marsaglia's polar method.
    pub fn normal(&mut self) -> f64 {
        if let Some(spare) = self.spare.take() {
            return spare;
        }
        loop {
            let (x, y) = (self.even(), self.even());
            let square = x * x + y * y;
            if square > 0.0 && square < 1.0 {
                let scale = (-2.0 * libm::log(square) / square).sqrt();
                self.spare = Some(y * scale);
                return x * scale;
            }
        }
    }

    /// A chi-square with `df` (> 0) degrees of freedom, which above 1e6 count as endless.
    ///
    /// # Source
    /// G. Marsaglia and W. W. Tsang, ACM Transactions on Mathematical Software 26 (2000)
    /// 363-372.
    pub(crate) fn chi_square(&mut self, df: f64) -> f64 {
        if df > 1e6 {
            return df;
        }
        let shape = df / 2.0;
        // A small shape is a greater one, shrunk.
        let shrink = if shape < 1.0 {
            libm::pow(self.share(), 1.0 / shape)
        } else {
            1.0
        };
        let d = if shape < 1.0 { shape + 1.0 } else { shape } - 1.0 / 3.0;
        let c = 1.0 / (9.0 * d).sqrt();
        loop {
            let normal = self.normal();
            let root = 1.0 + c * normal;
            if root <= 0.0 {
                continue;
            }
            let cube = root * root * root;
            let limit = 0.5 * normal * normal + d - d * cube + d * libm::log(cube);
            if libm::log(self.share()) < limit {
                return 2.0 * d * cube * shrink;
            }
        }
    }

    /// A number between 0 and 1, both left out, each as likely.
    fn share(&mut self) -> f64 {
        const PARTS: usize = 1 << 52;
        (self.below(PARTS) as f64 + 0.5) / PARTS as f64
    }

    /// A whole number from 0 to below `count`, each as likely; 0 if `count` is 0.
    pub fn below(&mut self, count: usize) -> usize {
        // The high half of a 128-bit product; what it favours is below 1 in 2^32.
        ((u128::from(self.bits()) * count as u128) >> 64) as usize
    }

    /// Puts things into random order, each order as likely (Fisher and Yates).
    pub fn shuffle<T>(&mut self, things: &mut [T]) {
        for last in (1..things.len()).rev() {
            things.swap(last, self.below(last + 1));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Published: the first numbers from this seed, from memory.
    #[test]
    fn bits_are_those_of_the_published_generator() {
        let mut chance = Chance::new(1_234_567);
        for expected in [
            6_457_827_717_110_365_317,
            3_203_168_211_198_807_973,
            9_817_491_932_198_370_423,
        ] {
            assert_eq!(chance.bits(), expected);
        }
    }

    #[test]
    fn normals_have_the_moments_and_the_tail_of_a_normal() {
        let mut chance = Chance::new(7);
        let drawn: Vec<f64> = (0..200_000).map(|_| chance.normal()).collect();
        let mean_of =
            |power: i32| drawn.iter().map(|v| v.powi(power)).sum::<f64>() / drawn.len() as f64;
        assert!(mean_of(1).abs() < 0.01);
        assert!((mean_of(2) - 1.0).abs() < 0.015);
        assert!(mean_of(3).abs() < 0.04);
        assert!((mean_of(4) - 3.0).abs() < 0.1);
        let far = drawn.iter().filter(|v| v.abs() > 1.959_964).count();
        assert!((far as f64 / drawn.len() as f64 - 0.05).abs() < 0.002);
    }

    #[test]
    fn every_order_of_three_comes_up_as_often() {
        let mut chance = Chance::new(3);
        let mut counts = std::collections::BTreeMap::new();
        for _ in 0..60_000 {
            let mut things = [0, 1, 2];
            chance.shuffle(&mut things);
            *counts.entry(things).or_insert(0) += 1;
        }
        assert_eq!(counts.len(), 6);
        // Four standard deviations of a count of 10,000 in 60,000.
        assert!(
            counts.values().all(|n: &i32| (n - 10_000).abs() < 370),
            "{counts:?}"
        );
        assert_eq!(chance.below(0), 0);
    }
}
