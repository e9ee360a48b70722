//! Rayleigh and Ritz: the best approximations to eigenpairs that a few vectors hold.

use nalgebra::{DMatrix, SymmetricEigen};

use super::dense::{combination, inner_products};
use crate::ascending::ascending;

/// An eigenvalue takes two or three QR sweeps; a matrix that needs so many of them has none that can be found.
const MOST_SWEEPS: usize = 30;

/// Least square of what a direction of unit vectors has of them. The step's rounding leaves some 1e-13 of one that is lost.
const DEPENDENT: f64 = 1e-10;

/// Pairs of values and vectors, ascending.
pub(super) struct Pairs {
    /// (pair)
    pub(super) values: Vec<f64>,
    /// (pair, row)
    pub(super) vectors: Vec<f64>,
}

/// Solves A c = (λ + s) B c with A and B symmetric, B positive definite, both (column, row) of a block: λ + s, and B-orthonormal
/// coordinates in the block. None where B is not.
pub(super) fn ritz(energy: &[f64], gram: &[f64]) -> Option<Pairs> {
    let size = gram.len().isqrt();
    // To unit length first: high vectors shrink most in a step, which says nothing of how well they are known.
    let scale: Vec<f64> = (0..size).map(|at| 1.0 / gram[at * (size + 1)].sqrt()).collect();
    let scaled = |matrix: &[f64]| -> Vec<f64> {
        let entry = |at: usize| {
            let (i, j) = (at / size, at % size);
            0.5 * scale[i] * scale[j] * (matrix[at] + matrix[j * size + i])
        };
        (0..size * size).map(entry).collect()
    };
    let Pairs { values: squares, vectors: mut axes } = eigenpairs(scaled(gram))?;
    if !squares.iter().all(|square| *square >= DEPENDENT) {
        return None;
    }
    for (axis, square) in axes.chunks_exact_mut(size).zip(squares) {
        axis.iter_mut().for_each(|entry| *entry /= square.sqrt());
    }
    let reduced = inner_products(&axes, &combination(&scaled(energy), &axes, size, size), size);
    let mut pairs = eigenpairs(reduced)?;
    pairs.vectors = combination(&axes, &pairs.vectors, size, size);
    for pair in pairs.vectors.chunks_exact_mut(size) {
        pair.iter_mut().zip(&scale).for_each(|(entry, scale)| *entry *= scale);
    }
    Some(pairs)
}

/// All orthonormal eigenpairs of a small symmetric matrix, of which the lower triangle of (column, row) is read; none where one isn't found or isn't a number.
pub(super) fn eigenpairs(matrix: Vec<f64>) -> Option<Pairs> {
    let size = matrix.len().isqrt();
    if !matrix.iter().all(|entry| entry.is_finite()) {
        return None;
    }
    let found = SymmetricEigen::try_new(DMatrix::from_vec(size, size, matrix), f64::EPSILON, MOST_SWEEPS * size)?;
    let order = ascending(found.eigenvalues.as_slice());
    let vectors = found.eigenvectors.as_slice();
    Some(Pairs {
        values: order.iter().map(|&pair| found.eigenvalues[pair]).collect(),
        vectors: order.iter().flat_map(|&pair| &vectors[pair * size..][..size]).copied().collect(),
    })
}
