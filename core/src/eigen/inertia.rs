//! How many eigenvalues lie below a value, by Sylvester's law of inertia.
//!
//! K - λM = L S Lᵀ has as many negative eigenvalues as the pencil has eigenvalues below λ (M positive semidefinite), and as many as S has
//! negative signs (Parlett, "The Symmetric Eigenvalue Problem", section 3.3). Pivots are taken as they come: interchanging them, by Bunch and
//! Kaufman's rule within each supernode, gave the same counts on shells and made the module larger. Growth is possible then; it is
//! measured, and a count with too much growth is refused rather than returned. Another place in the same gap serves as well.

use super::cholesky::{Panels, Pivots, Refused, factorise};
use super::error::check_values;
use super::pencil::Checked;
use super::supernodes::Supernode;
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
/// [`EigenError::CountUncertain`] when `lambda` is so close to an eigenvalue (of the pencil or of a leading block) that
/// digits are lost; [`EigenError::NotFinite`], [`EigenError::Length`], [`EigenError::ForeignSymbolic`] for wrong input.
pub fn count_below(pencil: &Pencil, symbolic: &Symbolic, lambda: f64) -> Result<usize, EigenError> {
    check_values("lambda", &[lambda], 1)?;
    count_checked(&Checked::new(pencil, symbolic)?, lambda)
}

pub(super) fn count_checked(pencil: &Checked, lambda: f64) -> Result<usize, EigenError> {
    let shifted = pencil.shifted(lambda);
    let mut growth = Growth::new(pencil.symbolic.dof());
    let growth = match factorise(pencil.symbolic, shifted, Pivots::Any, &mut growth) {
        Ok(signs) => {
            let growth = growth.largest(&shifted.row_sums(pencil.symbolic.dof()));
            if growth <= GROWTH_LIMIT {
                return Ok(signs.iter().filter(|&&sign| sign < 0.0).count());
            }
            growth
        }
        Err(Refused::Pivot { .. }) => f64::INFINITY,
        Err(Refused::GivenUp(given_up)) => return Err(given_up.into()),
    };
    Err(EigenError::CountUncertain { lambda, growth, limit: GROWTH_LIMIT })
}

/// How the rows have grown, |L||Lᵀ| e with e all ones, told from each panel of L while it is at hand; none is kept.
struct Growth {
    /// (equation)
    grown: Vec<f64>,
    /// (equation): the pivots' magnitudes.
    pivots: Vec<f64>,
}

impl Panels for Growth {
    fn take(&mut self, own: &Supernode, panel: &[f64]) {
        for (column, panel) in panel.chunks_exact(own.rows()).enumerate() {
            self.pivots[own.start + column] = panel[column] * panel[column];
            let sum: f64 = panel[column..].iter().map(|entry| entry.abs()).sum();
            let (diagonal, below) = panel.split_at(own.columns);
            let rows = self.grown[own.start..].iter_mut();
            for (grown, entry) in rows.zip(diagonal).skip(column) {
                *grown += entry.abs() * sum;
            }
            for (&row, entry) in own.pattern.iter().zip(below) {
                self.grown[row as usize] += entry.abs() * sum;
            }
        }
    }
}

impl Growth {
    fn new(dof: usize) -> Growth {
        Growth { grown: vec![0.0; dof], pivots: vec![0.0; dof] }
    }

    /// Largest ratio over the rows of |L||Lᵀ| e to |K - λM| e, the `row_sums`; infinite when a pivot is as good as zero.
    ///
    /// Bounds the backward error of the factorisation row by row (N. Higham, "Accuracy and Stability of Numerical
    /// Algorithms", 2nd ed., theorem 9.3; from memory).
    fn largest(&self, row_sums: &[f64]) -> f64 {
        let mut largest: f64 = 0.0;
        for ((grown, row_sum), pivot) in self.grown.iter().zip(row_sums).zip(&self.pivots) {
            let ratio = grown / row_sum;
            // NaN must count as infinite growth, and f64::max would drop it.
            let doubtful = ratio.is_nan() || *pivot <= PIVOT_UNITS * f64::EPSILON * grown;
            largest = if doubtful { f64::INFINITY } else { largest.max(ratio) };
        }
        largest
    }
}
