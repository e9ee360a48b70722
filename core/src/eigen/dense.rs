//! Products of tall and small dense matrices, all (column, row) slices, on one thread.

use pulp::{Simd, WithSimd};

use super::tiles::{add_inner_products, add_multiples};
use super::widest::widest;

/// Aᵀ B, where A is (a, row) and B is (b, row): the result is (b, a).
pub(crate) fn inner_products(a: &[f64], b: &[f64], rows: usize) -> Vec<f64> {
    let mut gram = vec![0.0; (a.len() / rows) * (b.len() / rows)];
    widest(InnerProducts { gram: &mut gram, a, b, rows, symmetric: false });
    gram
}

/// The same where it is known to be symmetric: at half the cost.
pub(super) fn symmetric_products(a: &[f64], b: &[f64], rows: usize) -> Vec<f64> {
    let count = a.len() / rows;
    let mut gram = vec![0.0; count * count];
    widest(InnerProducts { gram: &mut gram, a, b, rows, symmetric: true });
    for column in 0..count {
        for row in 0..column {
            gram[column * count + row] = gram[row * count + column];
        }
    }
    gram
}

/// B += `scale` A C, where A is (a, row), B is (b, row) and C is (b, a).
pub(super) fn add_combination(b: &mut [f64], scale: f64, a: &[f64], c: &[f64], rows: usize) {
    if rows == 0 || a.is_empty() || b.is_empty() {
        return;
    }
    let factors: Vec<f64> = c.iter().map(|factor| scale * factor).collect();
    widest(Combination { b, a, factors: &factors, rows });
}

/// aᵀb, in sums that don't wait for each other.
#[inline(never)] // A long loop in many places; a copy in each only makes the module larger.
pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    let ((a, a_rest), (b, b_rest)) = (a.as_chunks::<4>(), b.as_chunks::<4>());
    let mut sums = [0.0; 4];
    for (a, b) in a.iter().zip(b) {
        for (sum, (a, b)) in sums.iter_mut().zip(a.iter().zip(b)) {
            *sum += a * b;
        }
    }
    sums.iter().sum::<f64>() + a_rest.iter().zip(b_rest).map(|(a, b)| a * b).sum::<f64>()
}

struct InnerProducts<'a> {
    gram: &'a mut [f64],
    a: &'a [f64],
    b: &'a [f64],
    rows: usize,
    symmetric: bool,
}

impl WithSimd for InnerProducts<'_> {
    type Output = ();

    #[inline(always)]
    fn with_simd<S: Simd>(self, simd: S) {
        add_inner_products(simd, self.gram, self.a, self.b, self.rows, self.symmetric);
    }
}

struct Combination<'a> {
    b: &'a mut [f64],
    a: &'a [f64],
    factors: &'a [f64],
    rows: usize,
}

impl WithSimd for Combination<'_> {
    type Output = ();

    #[inline(always)]
    fn with_simd<S: Simd>(self, simd: S) {
        let Combination { b, a, factors, rows } = self;
        add_multiples(simd, b, a, factors, rows);
    }
}

/// A C, where A is (a, row) and C is (b, a): the result is (b, row).
pub(super) fn combination(a: &[f64], c: &[f64], rows: usize, b_columns: usize) -> Vec<f64> {
    let mut product = Vec::with_capacity(b_columns * rows);
    append_combination(&mut product, a, c, rows, b_columns);
    product
}

/// The same after what `to` holds already.
pub(super) fn append_combination(to: &mut Vec<f64>, a: &[f64], c: &[f64], rows: usize, b_columns: usize) {
    let before = to.len();
    to.resize(before + b_columns * rows, 0.0);
    add_combination(&mut to[before..], 1.0, a, c, rows);
}

#[cfg(test)]
mod tests {
    use super::super::tiles::tests::number;
    use super::*;

    /// The definitions, written out, over sizes with every remainder of a tile.
    #[test]
    fn products_are_those_of_the_definitions() {
        for (rows, a_columns, b_columns) in
            [(1, 1, 1), (3, 2, 5), (7, 5, 3), (64, 4, 2), (65, 6, 8), (300, 9, 1), (521, 3, 7)]
        {
            let a: Vec<f64> = (0..rows * a_columns).map(number).collect();
            let b: Vec<f64> = (0..rows * b_columns).map(|at| number(at + 31)).collect();
            let gram = inner_products(&a, &b, rows);
            for column in 0..b_columns {
                for row in 0..a_columns {
                    let sum: f64 = (0..rows).map(|k| a[row * rows + k] * b[column * rows + k]).sum();
                    assert!((gram[column * a_columns + row] - sum).abs() < 1e-12, "{rows} {a_columns} {b_columns}");
                }
            }
            let own = symmetric_products(&a, &a, rows);
            assert!(own.iter().zip(inner_products(&a, &a, rows)).all(|(one, other)| (one - other).abs() < 1e-12));
            let mut added = b.clone();
            add_combination(&mut added, -0.5, &a, &gram, rows);
            for column in 0..b_columns {
                for k in 0..rows {
                    let sum: f64 = (0..a_columns).map(|row| a[row * rows + k] * gram[column * a_columns + row]).sum();
                    let wanted = b[column * rows + k] - 0.5 * sum;
                    assert!((added[column * rows + k] - wanted).abs() < 1e-11, "{rows} {a_columns} {b_columns}");
                }
            }
        }
    }
}
