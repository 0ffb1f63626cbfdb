//! A dyed piece on the table.

use crate::{Reflectance, ResistDyed, Texture, Wet, resist::Laid};

/// A dyed piece, lying flat on the table.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// Its code, given back in the truth.
    pub id: String,
    /// What its whole face sends back on average, when dry.
    pub reflectance: Reflectance,
    /// Its outline on the table, mm, x right and y down from the table's middle.
    pub outline_mm: Vec<[f64; 2]>,
    /// The relief of its cloth.
    pub texture: Texture,
    /// Its pattern, where it is resist-dyed; set it by [`Piece::resisted`].
    pub resist: Option<Box<ResistDyed>>,
    /// Water on it.
    pub wet: Option<Wet>,
}

impl Piece {
    /// A square of woven cloth with its sides along the table's axes, all in mm.
    pub fn square(id: &str, reflectance: Reflectance, middle_mm: [f64; 2], side_mm: f64) -> Self {
        let (half, [x, y]) = (side_mm / 2.0, middle_mm);
        Self {
            id: id.to_owned(),
            reflectance,
            outline_mm: vec![
                [x - half, y - half],
                [x + half, y - half],
                [x + half, y + half],
                [x - half, y + half],
            ],
            texture: Texture::default(),
            resist: None,
            wet: None,
        }
    }

    /// The piece with a pattern of pale and deep, its reflectance their mean well
    /// inside the edge.
    pub fn resisted(mut self, dyed: ResistDyed) -> Self {
        self.resist = Some(Box::new(dyed));
        if let Some(laid) = Laid::new(&self) {
            let (mean, _) = laid.truth(&self);
            self.reflectance = mean;
        }
        self
    }

    /// The piece with water on it.
    pub fn wetted(self, wet: Wet) -> Self {
        Self {
            wet: Some(wet),
            ..self
        }
    }

    /// The piece with another relief.
    pub fn with_texture(mut self, texture: Texture) -> Self {
        self.texture = texture;
        self
    }

    /// The piece turned about its middle, clockwise, in degrees.
    pub fn turned(mut self, degrees: f64) -> Self {
        let [x, y] = self.middle_mm();
        let (sin, cos) = degrees.to_radians().sin_cos();
        for point in &mut self.outline_mm {
            let (dx, dy) = (point[0] - x, point[1] - y);
            *point = [x + dx * cos - dy * sin, y + dx * sin + dy * cos];
        }
        self
    }

    /// Squares of 40 mm in rows of up to six below the default chart, each a
    /// little askew as hands lay them.
    pub fn rows<'a>(pieces: impl IntoIterator<Item = (&'a str, Reflectance)>) -> Vec<Self> {
        const STEP_MM: f64 = 47.0;
        let pieces: Vec<_> = pieces.into_iter().collect();
        let rows = pieces.len().div_ceil(6).max(1);
        let columns = pieces.len().div_ceil(rows);
        let lay = |(i, (id, reflectance)): (usize, (&str, Reflectance))| {
            let (row, column) = (i / columns, i % columns);
            let x = (column as f64 - (columns as f64 - 1.0) / 2.0) * STEP_MM;
            let y = 34.0 + row as f64 * STEP_MM;
            let askew = [1.6, -1.1, 0.5, -2.0, 1.0][i % 5];
            Self::square(id, reflectance, [x, y], 40.0).turned(askew)
        };
        pieces.into_iter().enumerate().map(lay).collect()
    }

    /// A shade of it as wet as it is.
    pub(crate) fn body(&self, dry: &Reflectance) -> Reflectance {
        self.wet.map_or_else(|| dry.clone(), |wet| wet.body(dry))
    }

    /// The mean of its corners, mm.
    pub(crate) fn middle_mm(&self) -> [f64; 2] {
        let n = self.outline_mm.len().max(1) as f64;
        let sum = |k: usize| self.outline_mm.iter().map(|p| p[k]).sum::<f64>() / n;
        [sum(0), sum(1)]
    }

    /// Its outline drawn in to 70 % about its middle: well away from the edges.
    pub(crate) fn inner_mm(&self) -> Vec<[f64; 2]> {
        let m = self.middle_mm();
        let inwards = |p: &[f64; 2]| [0, 1].map(|k| m[k] + 0.7 * (p[k] - m[k]));
        self.outline_mm.iter().map(inwards).collect()
    }
}

/// Whether a polygon holds a point.
pub(crate) fn holds(polygon: &[[f64; 2]], [x, y]: [f64; 2]) -> bool {
    let n = polygon.len();
    (0..n).fold(false, |inside, i| {
        let ([ax, ay], [bx, by]) = (polygon[i], polygon[(i + 1) % n]);
        let crosses = (ay > y) != (by > y) && x < ax + (y - ay) / (by - ay) * (bx - ax);
        inside != crosses
    })
}
