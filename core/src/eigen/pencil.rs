//! K and M on one pattern, as given and in elimination order.

use std::ops::Range;

use super::error::check_values;
use super::product::SymmetricProduct;
use super::{EigenError, Pattern, Symbolic};

/// The pencil K x = λ M x: two sets of values on one pattern.
///
/// K must be symmetric, M symmetric and positive semidefinite; only lower triangles are given. Units are the pencil's own:
/// λ has those of K over M.
#[derive(Debug, Clone, Copy)]
pub struct Pencil<'a> {
    /// The pattern of both.
    pub pattern: &'a Pattern,
    /// (entry of the pattern): K.
    pub stiffness: &'a [f64],
    /// (entry of the pattern): M.
    pub mass: &'a [f64],
}

/// A checked pencil with its values in elimination order.
pub(super) struct Ordered<'a> {
    pub(super) symbolic: &'a Symbolic,
    /// (entry of `symbolic.lower`)
    pub(super) stiffness: Vec<f64>,
    /// (entry of `symbolic.lower`)
    pub(super) mass: Vec<f64>,
}

/// K - σM, whose values are never all there at once: reading both twice costs less than fresh memory.
#[derive(Clone, Copy)]
pub(super) struct Shifted<'a> {
    stiffness: &'a [f64],
    mass: &'a [f64],
    sigma: f64,
}

impl Shifted<'_> {
    /// The values of some entries of `symbolic.lower`.
    #[inline(always)]
    pub(super) fn values(&self, entries: Range<usize>) -> impl Iterator<Item = f64> {
        self.stiffness[entries.clone()].iter().zip(&self.mass[entries]).map(|(k, m)| k - self.sigma * m)
    }
}

impl<'a> Ordered<'a> {
    pub(super) fn new(pencil: &Pencil, symbolic: &'a Symbolic) -> Result<Ordered<'a>, EigenError> {
        symbolic.check(pencil.pattern)?;
        let entries = pencil.pattern.entries();
        check_values("the stiffness", pencil.stiffness, entries)?;
        check_values("the mass", pencil.mass, entries)?;
        let (stiffness, mass) = (symbolic.gather(pencil.stiffness), symbolic.gather(pencil.mass));
        Ok(Ordered { symbolic, stiffness, mass })
    }

    /// K - σM.
    pub(super) fn shifted(&self, sigma: f64) -> Shifted<'_> {
        Shifted { stiffness: &self.stiffness, mass: &self.mass, sigma }
    }

    /// Of which most entries are zero: its directions are not coupled.
    pub(super) fn mass_product(&self) -> SymmetricProduct<'static> {
        SymmetricProduct::without_zeros(self.symbolic.lower.as_ref(), &self.mass)
    }

    pub(super) fn stiffness_product(&self) -> SymmetricProduct<'_> {
        SymmetricProduct::of(self.symbolic.lower.as_ref(), &self.stiffness)
    }

    /// (position): the diagonal of one set of values; each column of `lower` begins with it.
    pub(super) fn diagonal(&self, values: &[f64]) -> Vec<f64> {
        let starts = self.symbolic.lower.col_ptr();
        starts[..self.symbolic.dof()].iter().map(|&start| values[start as usize]).collect()
    }

    /// (position): the sum of magnitudes of each row of a symmetric matrix.
    pub(super) fn row_sums(&self, matrix: Shifted) -> Vec<f64> {
        let lower = self.symbolic.lower.as_ref();
        let mut sums = vec![0.0; self.symbolic.dof()];
        for column in 0..self.symbolic.dof() {
            let entries = lower.col_ptr()[column] as usize..lower.col_ptr()[column + 1] as usize;
            for (&row, value) in lower.row_idx()[entries.clone()].iter().zip(matrix.values(entries)) {
                sums[row as usize] += value.abs();
                if row as usize != column {
                    sums[column] += value.abs();
                }
            }
        }
        sums
    }
}
