//! The few operations on 3 x 3 matrices that readings need.

/// Three by three, row by row.
pub(crate) type Matrix3 = [[f64; 3]; 3];

/// The unit matrix.
pub(crate) const ONE: Matrix3 = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];

/// `a` times `b`.
pub(crate) fn times(a: &Matrix3, b: &Matrix3) -> Matrix3 {
    a.map(|row| [0, 1, 2].map(|j| (0..3).map(|k| row[k] * b[k][j]).sum()))
}

/// `m` with rows and columns exchanged.
pub(crate) fn transposed(m: &Matrix3) -> Matrix3 {
    [0, 1, 2].map(|r| [0, 1, 2].map(|c| m[c][r]))
}

/// The symmetric root of a covariance: times itself it gives `m` again.
pub(crate) fn root(m: &Matrix3) -> Matrix3 {
    let eigen = nalgebra::Matrix3::from_fn(|r, c| m[r][c]).symmetric_eigen();
    let sizes = eigen.eigenvalues.map(|v| v.max(0.0).sqrt());
    let out = eigen.eigenvectors
        * nalgebra::Matrix3::from_diagonal(&sizes)
        * eigen.eigenvectors.transpose();
    [0, 1, 2].map(|r| [0, 1, 2].map(|c| out[(r, c)]))
}

/// `m` times `v`.
pub(crate) fn apply(m: &Matrix3, v: [f64; 3]) -> [f64; 3] {
    [0, 1, 2].map(|r| m[r][0] * v[0] + m[r][1] * v[1] + m[r][2] * v[2])
}

/// `j` times `c` times `j` transposed: a covariance carried through a Jacobian.
pub(crate) fn carry(j: &Matrix3, c: &Matrix3) -> Matrix3 {
    let mut out = [[0.0; 3]; 3];
    for (row, out_row) in out.iter_mut().enumerate() {
        for (col, cell) in out_row.iter_mut().enumerate() {
            for a in 0..3 {
                for b in 0..3 {
                    *cell += j[row][a] * c[a][b] * j[col][b];
                }
            }
        }
    }
    out
}

/// Adds `share` times `c` to `sum`.
pub(crate) fn add(sum: &mut Matrix3, c: &Matrix3, share: f64) {
    for (row, more) in sum.iter_mut().zip(c) {
        for (cell, value) in row.iter_mut().zip(more) {
            *cell += share * value;
        }
    }
}

/// `v` times itself, as a matrix.
pub(crate) fn outer(v: [f64; 3]) -> Matrix3 {
    v.map(|a| v.map(|b| a * b))
}

/// The Jacobian of `f` at `v` by steps to both sides, each `step` times the
/// value (or at least `step`).
pub(crate) fn jacobian(f: impl Fn([f64; 3]) -> [f64; 3], v: [f64; 3], step: f64) -> Matrix3 {
    let mut j = [[0.0; 3]; 3];
    for k in 0..3 {
        let h = step * v[k].abs().max(1.0e-3);
        let (mut up, mut down) = (v, v);
        up[k] += h;
        down[k] -= h;
        let (fu, fd) = (f(up), f(down));
        for row in 0..3 {
            j[row][k] = (fu[row] - fd[row]) / (2.0 * h);
        }
    }
    j
}
