//! The Cholesky factor of K - σM.

use std::cell::RefCell;

use faer::dyn_stack::{MemBuffer, MemStack, StackReq};
use faer::linalg::cholesky::llt::factor::{LltError, LltRegularization};
use faer::sparse::SparseColMatRef;
use faer::sparse::linalg::cholesky::LltRef;
use faer::{Conj, MatMut, Par, Side, Spec};

use super::error::check_values;
use super::pencil::Ordered;
use super::{EigenError, Pencil, Symbolic};

/// Right-hand sides solved together. Eight keep a supernode's panel in cache; sixteen at once were slower than two runs of eight.
pub(super) const TOGETHER: usize = 8;

/// The Cholesky factor of K - σM, for many right-hand sides.
///
/// Holds its own working memory, so that solving allocates nothing; for that reason one factor serves one thread.
pub struct Factor<'a> {
    symbolic: &'a Symbolic,
    values: Vec<f64>,
    workspace: RefCell<Workspace>,
}

struct Workspace {
    memory: MemBuffer,
    /// (column, position), at most [`TOGETHER`] columns.
    block: Vec<f64>,
}

impl<'a> Factor<'a> {
    /// Factorises K - σM; σ = 0 factorises K. Units of σ: those of λ.
    ///
    /// Cost: the factorisation's flops, about 15 ms at 15 000 shell equations natively.
    ///
    /// # Errors
    /// [`EigenError::NotPositiveDefinite`] unless σ lies below the lowest eigenvalue; [`EigenError::NotFinite`],
    /// [`EigenError::Length`], [`EigenError::ForeignSymbolic`] for wrong input.
    pub fn new(pencil: &Pencil, symbolic: &'a Symbolic, sigma: f64) -> Result<Factor<'a>, EigenError> {
        check_values("the shift", &[sigma], 1)?;
        Factor::of(&Ordered::new(pencil, symbolic)?, sigma)
    }

    pub(super) fn of(pencil: &Ordered<'a>, sigma: f64) -> Result<Factor<'a>, EigenError> {
        let symbolic = pencil.symbolic;
        let shifted = pencil.shifted(sigma);
        let cholesky = &symbolic.cholesky;
        let mut values = vec![0.0; cholesky.len_val()];
        let scratch = StackReq::any_of(&[
            cholesky.factorize_numeric_llt_scratch::<f64>(Par::Seq, Spec::default()),
            cholesky.solve_in_place_scratch::<f64>(TOGETHER, Par::Seq),
        ]);
        let mut memory = MemBuffer::try_new(scratch).map_err(|_| out_of_memory(symbolic))?;
        cholesky
            .factorize_numeric_llt(
                &mut values,
                SparseColMatRef::new(symbolic.lower.as_ref(), &shifted),
                Side::Lower,
                LltRegularization::default(),
                Par::Seq,
                MemStack::new(&mut memory),
                Spec::default(),
            )
            .map_err(|LltError::NonPositivePivot { index }| EigenError::NotPositiveDefinite {
                equation: symbolic.order[index] as usize,
                sigma,
            })?;
        let block = vec![0.0; TOGETHER * symbolic.dof()];
        Ok(Factor { symbolic, values, workspace: RefCell::new(Workspace { memory, block }) })
    }

    /// Solves (K - σM) X = B in place, B given as `rhs` (column, equation).
    ///
    /// Cost: about four flops per entry of the factor and column; columns go in groups of eight.
    ///
    /// # Panics
    /// If `rhs` does not hold `columns` whole columns.
    pub fn solve_in_place(&self, rhs: &mut [f64], columns: usize) {
        let dof = self.symbolic.dof();
        assert_eq!(rhs.len(), columns * dof, "right-hand sides must be (column, equation)");
        let workspace = &mut *self.workspace.borrow_mut();
        for group in rhs.chunks_mut(TOGETHER * dof) {
            let block = &mut workspace.block[..group.len()];
            for (vector, permuted) in group.chunks_exact(dof).zip(block.chunks_exact_mut(dof)) {
                self.symbolic.permute_into(vector, permuted);
            }
            self.solve_group(block, &mut workspace.memory);
            for (vector, permuted) in group.chunks_exact_mut(dof).zip(block.chunks_exact(dof)) {
                self.symbolic.permute_back(permuted, vector);
            }
        }
    }

    /// The same for vectors in elimination order: (column, position).
    pub(super) fn solve_ordered(&self, rhs: &mut [f64]) {
        let workspace = &mut *self.workspace.borrow_mut();
        for group in rhs.chunks_mut(TOGETHER * self.symbolic.dof()) {
            self.solve_group(group, &mut workspace.memory);
        }
    }

    fn solve_group(&self, group: &mut [f64], memory: &mut MemBuffer) {
        let dof = self.symbolic.dof();
        let columns = group.len() / dof;
        LltRef::new(&self.symbolic.cholesky, &self.values).solve_in_place_with_conj(
            Conj::No,
            MatMut::from_column_major_slice_mut(group, dof, columns),
            Par::Seq,
            MemStack::new(memory),
        );
    }
}

pub(super) fn out_of_memory(symbolic: &Symbolic) -> EigenError {
    let limit = i32::MAX as usize / size_of::<f64>();
    EigenError::TooLarge { what: "the factor (out of memory)", got: symbolic.factor_entries(), limit }
}
