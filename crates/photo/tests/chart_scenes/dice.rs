//! Numbers drawn from a seed (SplitMix64), the same on every machine.

pub struct Dice(u64);

impl Dice {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15))
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * (self.next() >> 11) as f64 / (1u64 << 53) as f64
    }

    pub fn below(&mut self, count: usize) -> usize {
        (self.next() % count as u64) as usize
    }

    pub fn pick<T: Clone>(&mut self, of: &[T]) -> T {
        of[self.below(of.len())].clone()
    }

    pub fn shuffle<T>(&mut self, items: &mut [T]) {
        for k in (1..items.len()).rev() {
            items.swap(k, self.below(k + 1));
        }
    }

    /// A colour that a dye might give.
    pub fn colour(&mut self) -> scene::Reflectance {
        let base = self.between(0.03, 0.5);
        let humps = [(); 2].map(|()| {
            let peak = self.between(400.0, 700.0);
            let width = self.between(25.0, 90.0);
            (peak, width, self.between(0.0, 0.8))
        });
        scene::Reflectance::from_fn(move |nm| {
            let hump = |(peak, width, height): (f64, f64, f64)| {
                height * (-0.5 * ((nm - peak) / width).powi(2)).exp()
            };
            (base + humps.into_iter().map(hump).sum::<f64>()).min(0.92)
        })
    }
}
