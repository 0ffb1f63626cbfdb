//! Numbers that look random but follow from a seed and a place.

/// A well mixed 64-bit number from two.
///
/// # Source
/// The output step of SplitMix64 (Steele, Lea and Flood 2014).
pub(crate) fn mix(seed: u64, place: u64) -> u64 {
    let mut z = seed ^ place.wrapping_mul(0x9E37_79B9_7F4A_7C15);
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ (z >> 31)
}

/// A number of mean 0 and standard deviation 1, nearly normal.
pub(crate) fn bell(seed: u64, place: u64) -> f64 {
    let bits = mix(seed, place);
    let sum: u64 = (0..4).map(|i| (bits >> (16 * i)) & 0xFFFF).sum();
    // Four evenly spread numbers of 0..1 have the variance 1/3.
    (sum as f64 / 65_536.0 - 2.0) * 3.0f64.sqrt()
}

/// Smooth noise of the plane with mean 0, within -1..=1; it changes over a distance of 1.
pub(crate) fn smooth(seed: u64, x: f64, y: f64) -> f64 {
    let (left, top) = (x.floor(), y.floor());
    let ease = |t: f64| t * t * (3.0 - 2.0 * t);
    let (u, v) = (ease(x - left), ease(y - top));
    let (left, top) = (left as i64 as u64, top as i64 as u64);
    let knot = |dx: u64, dy: u64| {
        let place = left.wrapping_add(dx) ^ top.wrapping_add(dy).rotate_left(32);
        (mix(seed, place) >> 11) as f64 / (1u64 << 52) as f64 - 1.0
    };
    let upper = knot(0, 0) * (1.0 - u) + knot(1, 0) * u;
    let lower = knot(0, 1) * (1.0 - u) + knot(1, 1) * u;
    upper * (1.0 - v) + lower * v
}
