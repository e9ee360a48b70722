//! The Cholesky factor of K - σM.

use std::sync::Arc;

use super::cholesky::{Cholesky, Refused};
use super::error::check_values;
use super::pencil::Checked;
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
    pub fn new(pencil: &Pencil<'a>, symbolic: &'a Symbolic, sigma: f64) -> Result<Factor<'a>, EigenError> {
        check_values("the shift", &[sigma], 1)?;
        Factor::of(&Checked::new(pencil, symbolic)?, sigma)
    }

    /// One that was made before; none where it hasn't the entries of one on `symbolic`.
    pub(super) fn held(symbolic: &'a Symbolic, cholesky: &Arc<Cholesky>) -> Option<Factor<'a>> {
        cholesky.fits(symbolic).then(|| Factor { symbolic, cholesky: cholesky.clone() })
    }

    pub(super) fn of(pencil: &Checked<'a>, sigma: f64) -> Result<Factor<'a>, EigenError> {
        let symbolic = pencil.symbolic;
        let factorised = Cholesky::new(symbolic, pencil.shifted(sigma));
        let cholesky = factorised.map_err(|refused| match refused {
            Refused::Pivot { equation } => EigenError::NotPositiveDefinite { equation, sigma },
            Refused::GivenUp(given_up) => given_up.into(),
        })?;
        Ok(Factor { symbolic, cholesky: Arc::new(cholesky) })
    }

    /// X of (K - σM) X = B, both (column, equation).
    ///
    /// Cost: about four flops per entry of the factor and column.
    ///
    /// # Panics
    /// If B does not hold whole columns.
    #[must_use]
    pub fn solve(&self, right_sides: &[f64]) -> Vec<f64> {
        assert!(right_sides.len().is_multiple_of(self.symbolic.dof()), "right-hand sides must be (column, equation)");
        self.cholesky.solve(self.symbolic, right_sides)
    }
}
