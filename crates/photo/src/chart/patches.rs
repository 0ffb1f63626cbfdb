//! Where the patches lie, given the corners of the grid.

use super::homography::Homography;

/// Side of a patch as a share of the pitch, midway between the makers' charts.
const SIDE: f64 = 0.86;
/// Half of the side that is safely inside a patch whatever the gap (4 to 25 % of
/// the pitch), as a share of the pitch.
const INSET: f64 = 0.27;

/// The corners of an area well inside each patch, in the chart's order, from the
/// outer corners of the patch grid at the first patch, the end of the first row,
/// the last patch and the start of the last row.
///
/// All in px of the photo. None where the corners span no area or cross over.
pub fn patches(corners: [[f64; 2]; 4], columns: usize, rows: usize) -> Option<Vec<[[f64; 2]; 4]>> {
    let [width, height] = [columns, rows].map(|n| n as f64 - 1.0 + SIDE);
    let flat = [[0.0, 0.0], [width, 0.0], [width, height], [0.0, height]];
    let map = Homography::fit(&std::array::from_fn::<_, 4, _>(|k| (flat[k], corners[k])))?;
    if !map.faces(&flat) {
        return None;
    }
    let inset = |patch: usize| {
        let x = (patch % columns) as f64 + SIDE / 2.0;
        let y = (patch / columns) as f64 + SIDE / 2.0;
        [[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]]
            .map(|[dx, dy]| map.map([x + INSET * dx, y + INSET * dy]))
    };
    Some((0..columns * rows).map(inset).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn insets_stay_inside_the_patches_for_any_usual_gap() {
        for side in [0.75, 0.8, 0.86, 0.92, 0.96] {
            let (w, h) = (5.0 + side, 3.0 + side);
            let quads =
                patches([[0.0, 0.0], [w, 0.0], [w, h], [0.0, h]], 6, 4).expect("a rectangle");
            for (k, quad) in quads.iter().enumerate() {
                let (x, y) = ((k % 6) as f64, (k / 6) as f64);
                for p in quad {
                    assert!(
                        (x + 0.02..x + side - 0.02).contains(&p[0]),
                        "{side} {k} {p:?}"
                    );
                    assert!(
                        (y + 0.02..y + side - 0.02).contains(&p[1]),
                        "{side} {k} {p:?}"
                    );
                }
            }
        }
    }

    #[test]
    fn corners_on_one_line_give_no_patches() {
        assert!(patches([[0.0, 0.0], [1.0, 1.0], [2.0, 2.0], [3.0, 3.0]], 6, 4).is_none());
    }
}
