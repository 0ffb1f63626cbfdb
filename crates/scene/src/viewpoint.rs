//! Where the camera stands, and where the table lands in the photo.

use crate::optics::Barrel;

/// The camera above the table. Its distance follows from what has to fit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Viewpoint {
    /// Lean away from straight down, degrees, 0 to 40.
    pub tilt_deg: f64,
    /// The side of the photo that the lean pushes away: 0 right, 90 bottom, degrees.
    pub tilt_towards_deg: f64,
    /// Turn of the table in the photo, clockwise, degrees.
    pub turn_deg: f64,
    /// Share of the photo's width or height that chart and pieces fill, 0 to 1.
    pub fill: f64,
    /// Focal length as a share of the photo's longer side; a telephone has about 0.75.
    pub focal: f64,
    /// Shift of everything in the photo, as shares of its width and height.
    pub shift: [f64; 2],
}

impl Default for Viewpoint {
    /// Nearly straight down, from a little above the near edge.
    fn default() -> Self {
        Self {
            tilt_deg: 4.0,
            tilt_towards_deg: 250.0,
            turn_deg: 1.5,
            fill: 0.86,
            focal: 0.85,
            shift: [0.0, 0.0],
        }
    }
}

/// The map from the table (mm) to the upright photo (px) and back.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Projection {
    to_photo: [[f64; 3]; 3],
    to_table: [[f64; 3]; 3],
    barrel: Option<Barrel>,
}

impl Viewpoint {
    /// The projection under which all `points` (mm) fit a photo of `size` (px).
    pub(crate) fn fit(&self, points: &[[f64; 2]], size: [f64; 2]) -> Projection {
        let focal = self.focal * size[0].max(size[1]);
        let [left, top, right, bottom] = bounds(points.iter().copied());
        let mut aim = [(left + right) / 2.0, (top + bottom) / 2.0];
        let reach = (right - left).hypot(bottom - top).max(1.0);
        let mut distance = 3.0 * reach;
        // Each round centres what is seen and then steps nearer or away; both
        // settle fast because the lean is small.
        for _ in 0..12 {
            let projection = self.project(aim, distance, focal, size);
            let seen = bounds(points.iter().map(|p| projection.to_photo(*p)));
            let filled = ((seen[2] - seen[0]) / size[0]).max((seen[3] - seen[1]) / size[1]);
            aim = projection.to_table([(seen[0] + seen[2]) / 2.0, (seen[1] + seen[3]) / 2.0]);
            distance = (distance * filled / self.fill).clamp(0.8 * reach, 60.0 * reach);
        }
        let moved = [0, 1].map(|k| size[k] * (1.0 + 2.0 * self.shift[k]));
        self.project(aim, distance, focal, moved)
    }

    /// The projection with a point of the table in the middle of `size`.
    fn project(&self, aim: [f64; 2], distance: f64, focal: f64, size: [f64; 2]) -> Projection {
        let (sin, cos) = self.turn_deg.to_radians().sin_cos();
        let (lean_sin, lean_cos) = self.tilt_deg.to_radians().sin_cos();
        let (side_sin, side_cos) = self.tilt_towards_deg.to_radians().sin_cos();
        // The table turned, then leaned about the axis across `side`: along the
        // side it shortens and moves away, across it nothing changes.
        let turn = [[cos, -sin, 0.0], [sin, cos, 0.0], [0.0, 0.0, 1.0]];
        let short = lean_cos - 1.0;
        let lean = [
            [
                1.0 + short * side_cos * side_cos,
                short * side_cos * side_sin,
                0.0,
            ],
            [
                short * side_cos * side_sin,
                1.0 + short * side_sin * side_sin,
                0.0,
            ],
            [lean_sin * side_cos, lean_sin * side_sin, distance],
        ];
        let lens = [
            [focal, 0.0, size[0] / 2.0],
            [0.0, focal, size[1] / 2.0],
            [0.0, 0.0, 1.0],
        ];
        let aimed = [[1.0, 0.0, -aim[0]], [0.0, 1.0, -aim[1]], [0.0, 0.0, 1.0]];
        let to_photo = times(&times(&lens, &lean), &times(&turn, &aimed));
        Projection {
            to_photo,
            to_table: adjugate(&to_photo),
            barrel: None,
        }
    }
}

impl Projection {
    /// Where a point of the table (mm) lies in the photo (px).
    pub(crate) fn to_photo(self, point: [f64; 2]) -> [f64; 2] {
        let straight = map(&self.to_photo, point);
        self.barrel.map_or(straight, |lens| lens.bent(straight))
    }

    /// The point of the table (mm) seen at a place of the photo (px).
    pub(crate) fn to_table(self, pixel: [f64; 2]) -> [f64; 2] {
        let straight = self.barrel.map_or(pixel, |lens| lens.straight(pixel));
        map(&self.to_table, straight)
    }

    /// The same photo seen in a mirror, `width` px wide.
    pub(crate) fn mirrored(self, width: f64) -> Self {
        let flip = [[-1.0, 0.0, width], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];
        let to_photo = times(&flip, &self.to_photo);
        Self {
            to_photo,
            to_table: adjugate(&to_photo),
            ..self
        }
    }

    /// The same photo through a lens that bends lines.
    pub(crate) fn through(self, barrel: Option<Barrel>) -> Self {
        Self { barrel, ..self }
    }
}

/// Left, top, right and bottom of some points; a 1 mm square where there are none.
fn bounds(points: impl Iterator<Item = [f64; 2]>) -> [f64; 4] {
    let wider = |b: Option<[f64; 4]>, [x, y]: [f64; 2]| {
        Some(b.map_or([x, y, x, y], |b| {
            [b[0].min(x), b[1].min(y), b[2].max(x), b[3].max(y)]
        }))
    };
    points.fold(None, wider).unwrap_or([-0.5, -0.5, 0.5, 0.5])
}

fn map(m: &[[f64; 3]; 3], [x, y]: [f64; 2]) -> [f64; 2] {
    let [u, v, w] = crate::camera::apply(m, [x, y, 1.0]);
    [u / w, v / w]
}

fn times(a: &[[f64; 3]; 3], b: &[[f64; 3]; 3]) -> [[f64; 3]; 3] {
    a.map(|row| [0, 1, 2].map(|j| (0..3).map(|k| row[k] * b[k][j]).sum()))
}

/// The inverse up to a factor, which a projection doesn't mind.
fn adjugate(m: &[[f64; 3]; 3]) -> [[f64; 3]; 3] {
    let minor = |a: usize, b: usize, c: usize, d: usize| m[a][b] * m[c][d] - m[a][d] * m[c][b];
    [
        [minor(1, 1, 2, 2), -minor(0, 1, 2, 2), minor(0, 1, 1, 2)],
        [-minor(1, 0, 2, 2), minor(0, 0, 2, 2), -minor(0, 0, 1, 2)],
        [minor(1, 0, 2, 1), -minor(0, 0, 2, 1), minor(0, 0, 1, 1)],
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    const SIZE: [f64; 2] = [2000.0, 1500.0];
    const POINTS: [[f64; 2]; 4] = [[-90.0, -70.0], [120.0, -60.0], [100.0, 80.0], [-95.0, 70.0]];

    #[test]
    fn everything_fits_and_fills_its_share() {
        for (tilt_deg, turn_deg) in [(0.0, 0.0), (15.0, 40.0), (25.0, 200.0)] {
            let viewpoint = Viewpoint {
                tilt_deg,
                turn_deg,
                ..Viewpoint::default()
            };
            let projection = viewpoint.fit(&POINTS, SIZE);
            let [left, top, right, bottom] = bounds(POINTS.iter().map(|p| projection.to_photo(*p)));
            let filled = ((right - left) / SIZE[0]).max((bottom - top) / SIZE[1]);
            assert!((filled - viewpoint.fill).abs() < 0.005, "{filled}");
            assert!(((left + right) / 2.0 - 1000.0).abs() < 5.0);
            assert!(((top + bottom) / 2.0 - 750.0).abs() < 5.0);
        }
    }

    #[test]
    fn photo_and_table_are_each_other_s_inverse() {
        let viewpoint = Viewpoint {
            tilt_deg: 20.0,
            turn_deg: 33.0,
            ..Viewpoint::default()
        };
        let projection = viewpoint.fit(&POINTS, SIZE);
        for point in POINTS {
            let back = projection.to_table(projection.to_photo(point));
            assert!((back[0] - point[0]).hypot(back[1] - point[1]) < 1e-9);
        }
    }
}
