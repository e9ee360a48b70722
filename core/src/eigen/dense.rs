//! Products of tall and small dense matrices, all (column, row) slices, on one thread.

use faer::linalg::matmul::matmul;
use faer::{Accum, MatMut, MatRef, Par};

/// Aᵀ B, where A is (a, row) and B is (b, row): the result is (b, a).
pub(super) fn inner_products(a: &[f64], b: &[f64], rows: usize) -> Vec<f64> {
    let (a_columns, b_columns) = (a.len() / rows, b.len() / rows);
    let mut product = vec![0.0; a_columns * b_columns];
    matmul(
        MatMut::from_column_major_slice_mut(&mut product, a_columns, b_columns),
        Accum::Replace,
        MatRef::from_column_major_slice(a, rows, a_columns).transpose(),
        MatRef::from_column_major_slice(b, rows, b_columns),
        1.0,
        Par::Seq,
    );
    product
}

/// B += `scale` A C, where A is (a, row), B is (b, row) and C is (b, a).
pub(super) fn add_combination(b: &mut [f64], scale: f64, a: &[f64], c: &[f64], rows: usize) {
    if rows == 0 || a.is_empty() || b.is_empty() {
        return;
    }
    let (a_columns, b_columns) = (a.len() / rows, b.len() / rows);
    matmul(
        MatMut::from_column_major_slice_mut(b, rows, b_columns),
        Accum::Add,
        MatRef::from_column_major_slice(a, rows, a_columns),
        MatRef::from_column_major_slice(c, a_columns, b_columns),
        scale,
        Par::Seq,
    );
}

/// A C, where A is (a, row) and C is (b, a): the result is (b, row).
pub(super) fn combination(a: &[f64], c: &[f64], rows: usize, b_columns: usize) -> Vec<f64> {
    let mut product = vec![0.0; b_columns * rows];
    add_combination(&mut product, 1.0, a, c, rows);
    product
}

/// The places of `values` from the lowest to the highest; equal ones stay in their order.
pub(super) fn ascending(values: &[f64]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..values.len()).collect();
    order.sort_by(|&a, &b| values[a].total_cmp(&values[b]));
    order
}
