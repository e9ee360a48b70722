//! How many eigenvalues lie below a value, by Sylvester's law of inertia.
//!
//! K - λM = L S Lᵀ has as many negative eigenvalues as the pencil has eigenvalues below λ (M positive semidefinite), and as many as S has
//! negative signs (Parlett, "The Symmetric Eigenvalue Problem", section 3.3). Pivots are taken as they come: interchanging them, by Bunch and
//! Kaufman's rule within each supernode, gave the same counts on shells and made the module larger. Growth is possible then; it is
//! measured, and a count with too much growth is refused rather than returned. Another place in the same gap serves as well.

use super::cholesky::{Cholesky, Pivots, Refused};
use super::error::check_values;
use super::pencil::Ordered;
use super::{EigenError, Pencil, Symbolic};

/// Largest growth of a row, |L||Lᵀ| over |K - λM|, at which a count is believed.
///
/// The factorisation is exact for a matrix whose entries differ from K - λM by a few rounding units times this growth. A growth of
/// 1e6 leaves ten true digits in every row, as many as assembly in double precision promises on meshes whose element sizes
/// differ a thousandfold. Cholesky-like pencils stay near 1e3; larger limits would accept counts made within 1e-10 of an eigenvalue of a
/// leading block, smaller ones refuse counts for no gain.
const GROWTH_LIMIT: f64 = 1e6;

/// A pivot smaller than so many rounding units of its grown row has an uncertain sign: λ then is an eigenvalue to working precision.
const PIVOT_UNITS: f64 = 16.0;

/// Number of eigenvalues of the pencil below `lambda` (units of λ), rigid modes included, multiplicities counted.
///
/// Cost: one factorisation.
///
/// # Errors
/// [`EigenError::CountUncertain`] when `lambda` is so close to an eigenvalue (of the pencil or of a leading block in elimination order) that
/// digits are lost; [`EigenError::NotFinite`], [`EigenError::Length`], [`EigenError::ForeignSymbolic`] for wrong input.
pub fn count_below(pencil: &Pencil, symbolic: &Symbolic, lambda: f64) -> Result<usize, EigenError> {
    check_values("lambda", &[lambda], 1)?;
    count_ordered(&Ordered::new(pencil, symbolic)?, lambda)
}

pub(super) fn count_ordered(pencil: &Ordered, lambda: f64) -> Result<usize, EigenError> {
    let shifted = pencil.shifted(lambda);
    let growth = match Cholesky::new(pencil.symbolic, &shifted, Pivots::Any) {
        Ok(factor) => {
            let growth = growth(&factor, pencil.symbolic, &pencil.row_sums(&shifted));
            if growth <= GROWTH_LIMIT {
                return Ok(factor.negative());
            }
            growth
        }
        Err(Refused::Pivot { .. }) => f64::INFINITY,
        Err(Refused::GivenUp(given_up)) => return Err(given_up.into()),
    };
    Err(EigenError::CountUncertain { lambda, growth, limit: GROWTH_LIMIT })
}

/// Largest ratio over the rows of |L||Lᵀ| e to |K - λM| e, e all ones; infinite when a pivot is as good as zero.
///
/// Bounds the backward error of the factorisation row by row (N. Higham, "Accuracy and Stability of Numerical
/// Algorithms", 2nd ed., theorem 9.3; from memory).
fn growth(factor: &Cholesky, symbolic: &Symbolic, row_sums: &[f64]) -> f64 {
    let mut grown = vec![0.0; row_sums.len()];
    let mut pivots = vec![0.0; row_sums.len()];
    for column in factor.columns(symbolic) {
        pivots[column.position] = column.entries[0] * column.entries[0];
        let sum: f64 = column.entries.iter().map(|entry| entry.abs()).sum();
        for (row, entry) in column.rows().zip(column.entries) {
            grown[row] += entry.abs() * sum;
        }
    }
    let mut largest: f64 = 0.0;
    for ((grown, row_sum), pivot) in grown.iter().zip(row_sums).zip(&pivots) {
        let ratio = grown / row_sum;
        // NaN must count as infinite growth, and f64::max would drop it.
        let doubtful = ratio.is_nan() || *pivot <= PIVOT_UNITS * f64::EPSILON * grown;
        largest = if doubtful { f64::INFINITY } else { largest.max(ratio) };
    }
    largest
}
