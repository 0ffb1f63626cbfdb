//! Lines along which a quantity on an even grid has one value.

/// A piece of a line, from one place to another, in grid steps: x to the right from
/// the first column, y down from the first row.
pub type Segment = [[f64; 2]; 2];

/// The lines of one level on a grid of so many columns, its values row by row, as
/// segments. Values are taken as changing evenly between neighbouring crossings.
///
/// A grid of fewer than two columns or rows, or with values missing, has no lines.
///
/// # Source
/// Marching squares, from memory; a saddle is cut by the mean of its four corners.
pub fn iso_lines(columns: usize, values: &[f64], level: f64) -> Vec<Segment> {
    if columns < 2 || values.len() < 2 * columns || !values.len().is_multiple_of(columns) {
        return Vec::new();
    }
    let mut segments = Vec::new();
    for row in 0..values.len() / columns - 1 {
        for column in 0..columns - 1 {
            let at = |dx: usize, dy: usize| values[(row + dy) * columns + column + dx] - level;
            // Clockwise from the upper left.
            let corners = [at(0, 0), at(1, 0), at(1, 1), at(0, 1)];
            let place = [column as f64, row as f64];
            segments.extend(cell(corners).map(|s| s.map(|p| [0, 1].map(|k| place[k] + p[k]))));
        }
    }
    segments
}

/// The segments within one square, whose sides are 1 long.
fn cell(corners: [f64; 4]) -> impl Iterator<Item = Segment> {
    const PLACES: [[f64; 2]; 4] = [[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]];
    let crossing = |side: usize| {
        let (a, b) = (side, (side + 1) % 4);
        let [from, to] = [corners[a], corners[b]];
        ((from > 0.0) != (to > 0.0)).then(|| {
            let share = from / (from - to);
            [0, 1].map(|k| PLACES[a][k] + share * (PLACES[b][k] - PLACES[a][k]))
        })
    };
    let found: Vec<[f64; 2]> = (0..4).filter_map(crossing).collect();
    let pairs: &[[usize; 2]] = match found.len() {
        2 => &[[0, 1]],
        4 => {
            let middle = corners.iter().sum::<f64>() > 0.0;
            match middle == (corners[0] > 0.0) {
                true => &[[0, 1], [2, 3]],
                false => &[[3, 0], [1, 2]],
            }
        }
        _ => &[],
    };
    pairs.iter().map(move |[a, b]| [found[*a], found[*b]])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slope_has_straight_lines_where_it_passes_the_level() {
        // x from 0 to 3 in each of three rows.
        let values: Vec<f64> = (0..12).map(|k| f64::from(k % 4)).collect();
        let lines = iso_lines(4, &values, 1.25);
        assert_eq!(lines.len(), 2);
        for [a, b] in lines {
            assert!((a[0] - 1.25).abs() < 1e-12 && (b[0] - 1.25).abs() < 1e-12);
            assert!((a[1] - b[1]).abs() == 1.0);
        }
        assert!(iso_lines(4, &values, 5.0).is_empty());
    }

    #[test]
    fn a_hill_has_a_ring_around_its_top() {
        // A distance-squared hill: the line of level r^2 lies near the circle of radius r.
        let n = 41;
        let values: Vec<f64> = (0..n * n)
            .map(|k| {
                let (x, y) = ((k % n) as f64 - 20.0, (k / n) as f64 - 20.0);
                x * x + y * y
            })
            .collect();
        let lines = iso_lines(n, &values, 100.0);
        assert!(lines.len() > 50);
        for point in lines.iter().flatten() {
            let r = (point[0] - 20.0).hypot(point[1] - 20.0);
            assert!((r - 10.0).abs() < 0.05, "{r}");
        }
        let length: f64 = lines
            .iter()
            .map(|[a, b]| (a[0] - b[0]).hypot(a[1] - b[1]))
            .sum();
        assert!(
            (length - 20.0 * std::f64::consts::PI).abs() < 0.3,
            "{length}"
        );
    }

    #[test]
    fn a_saddle_is_cut_without_lines_that_cross() {
        for (corners, level) in [([1.0, 0.0, 0.0, 1.0], 0.4), ([1.0, 0.0, 0.0, 1.0], 0.6)] {
            let lines = iso_lines(2, &corners, level);
            assert_eq!(lines.len(), 2, "{level}");
        }
    }

    #[test]
    fn what_is_no_grid_has_no_lines() {
        assert!(iso_lines(0, &[], 1.0).is_empty());
        assert!(iso_lines(1, &[1.0, 2.0], 1.5).is_empty());
        assert!(iso_lines(3, &[1.0, 2.0, 3.0, 4.0], 1.5).is_empty());
        assert!(iso_lines(2, &[1.0, 1.0, 1.0, 1.0], 1.0).is_empty());
    }
}
