//! The Cholesky factor of K - σM.

use std::sync::Arc;

use super::cholesky::{Cholesky, Refused};
use super::error::check_values;
use super::pencil::Ordered;
use super::{EigenError, Pencil, Symbolic};

/// The Cholesky factor of K - σM, for many right-hand sides.
pub struct Factor<'a> {
    symbolic: &'a Symbolic,
    /// Shared with whoever goes on with it.
    pub(super) cholesky: Arc<Cholesky>,
}

impl<'a> Factor<'a> {
    /// Factorises K - σM; σ = 0 factorises K. Units of σ: those of λ.
    ///
    /// Cost: the factorisation's flops, about 20 ms at 15 000 shell equations natively.
    ///
    /// # Errors
    /// [`EigenError::NotPositiveDefinite`] unless σ lies below the lowest eigenvalue; [`EigenError::NotFinite`],
    /// [`EigenError::Length`], [`EigenError::ForeignSymbolic`] for wrong input.
    pub fn new(pencil: &Pencil, symbolic: &'a Symbolic, sigma: f64) -> Result<Factor<'a>, EigenError> {
        check_values("the shift", &[sigma], 1)?;
        Factor::of(&Ordered::new(pencil, symbolic)?, sigma)
    }

    /// One that was made before; none where it hasn't the entries of one on `symbolic`.
    pub(super) fn held(symbolic: &'a Symbolic, cholesky: &Arc<Cholesky>) -> Option<Factor<'a>> {
        cholesky.fits(symbolic).then(|| Factor { symbolic, cholesky: cholesky.clone() })
    }

    pub(super) fn of(pencil: &Ordered<'a>, sigma: f64) -> Result<Factor<'a>, EigenError> {
        let symbolic = pencil.symbolic;
        let factorised = Cholesky::new(symbolic, pencil.shifted(sigma));
        let cholesky = factorised.map_err(|refused| match refused {
            Refused::Pivot { position } => {
                EigenError::NotPositiveDefinite { equation: symbolic.order[position] as usize, sigma }
            }
            Refused::GivenUp(given_up) => given_up.into(),
        })?;
        Ok(Factor { symbolic, cholesky: Arc::new(cholesky) })
    }

    /// Solves (K - σM) X = B in place, B given as `rhs` (column, equation).
    ///
    /// Cost: about four flops per entry of the factor and column.
    ///
    /// # Panics
    /// If `rhs` does not hold `columns` whole columns.
    pub fn solve_in_place(&self, rhs: &mut [f64], columns: usize) {
        let dof = self.symbolic.dof();
        assert_eq!(rhs.len(), columns * dof, "right-hand sides must be (column, equation)");
        let solved = self.solve_ordered(&self.symbolic.permuted(rhs));
        rhs.copy_from_slice(&self.symbolic.permuted_back(&solved));
    }

    /// The same for vectors in elimination order: (column, position).
    pub(super) fn solve_ordered(&self, rhs: &[f64]) -> Vec<f64> {
        self.cholesky.solve(self.symbolic, rhs)
    }
}
