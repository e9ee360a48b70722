//! Block Lanczos on A = (K - σM)⁻¹ M with full reorthogonalisation in the M-inner product.

use super::EigenError;
use super::basis::Basis;
use super::factor::Factor;
use super::sequence::Sequence;
use super::spare;
use super::symmetric::Symmetric;
use crate::patience;

/// The iteration's state: a basis whose first `expanded` Krylov vectors have been multiplied by A.
pub(super) struct Lanczos<'a> {
    pub(super) factor: Factor<'a>,
    pub(super) mass: &'a Symmetric<'a>,
    pub(super) basis: Basis,
    /// Vectors at the front of the basis that are deflated, not iterated.
    pub(super) deflated: usize,
    pub(super) steps: Vec<Step>,
    sequence: Sequence,
    /// Largest entry of the projected operator so far: the scale against which a direction is nothing.
    scale: f64,
}

impl Drop for Lanczos<'_> {
    fn drop(&mut self) {
        spare::give(std::mem::take(&mut self.basis.vectors));
        spare::give(std::mem::take(&mut self.basis.images));
    }
}

/// One block's row of the projected operator. Indices count Krylov vectors, deflated ones left out.
pub(super) struct Step {
    /// First vector of the block.
    pub(super) first: usize,
    pub(super) width: usize,
    /// Qᵀ M A Q of the block: (column, row).
    pub(super) own: Vec<f64>,
    /// How A times the block reads in the block that follows: (column, vector of the next block), `rank` rows.
    pub(super) coupling: Vec<f64>,
    pub(super) rank: usize,
}

impl<'a> Lanczos<'a> {
    /// Starts from the deflated vectors and a block: the columns of `start` (vector, equation), made up to `width` by the fixed sequence.
    /// Memory is set aside for `expected` Krylov vectors.
    pub(super) fn new(
        factor: Factor<'a>,
        mass: &'a Symmetric<'a>,
        deflated: &Basis,
        start: &[f64],
        width: usize,
        expected: usize,
    ) -> Result<Lanczos<'a>, EigenError> {
        let (dof, count) = (deflated.dof, deflated.size());
        let with_room = |columns: &[f64]| {
            let mut piece = spare::take(columns.len() + expected * dof);
            piece.extend_from_slice(columns);
            piece
        };
        let (vectors, images) = (with_room(&deflated.vectors), with_room(&deflated.images));
        let mut lanczos = Lanczos {
            factor,
            mass,
            basis: Basis { dof, vectors, images },
            deflated: count,
            steps: Vec::new(),
            sequence: Sequence::new(),
            scale: 0.0,
        };
        let mut block = start.to_vec();
        let given = block.len();
        block.resize(given.max(width * dof), 0.0);
        lanczos.sequence.fill(&mut block[given..]);
        lanczos.admit(&block)?;
        Ok(lanczos)
    }

    /// Krylov vectors in the basis, expanded or not.
    pub(super) fn size(&self) -> usize {
        self.basis.size() - self.deflated
    }

    /// Krylov vectors multiplied by A so far.
    pub(super) fn expanded(&self) -> usize {
        self.steps.last().map_or(0, |step| step.first + step.width)
    }

    /// Appends fresh pseudo-random directions to the block that is expanded next; returns how many were independent.
    pub(super) fn refresh(&mut self, width: usize) -> Result<usize, EigenError> {
        let mut block = vec![0.0; width * self.basis.dof];
        self.sequence.fill(&mut block);
        self.admit(&block)
    }

    /// Multiplies a block by A once, which removes massless directions (A x never has any), and appends it.
    fn admit(&mut self, block: &[f64]) -> Result<usize, EigenError> {
        let mut block = self.factor.solve(&self.mass.multiply(block));
        let scale = self.scale;
        self.basis.remove(&mut block, 0);
        Ok(self.basis.append(block, self.mass, scale)?.rank)
    }

    /// Expands the pending block: the basis grows by what A times it adds. Does nothing when none is pending.
    pub(super) fn step(&mut self) -> Result<(), EigenError> {
        patience::check()?;
        let dof = self.basis.dof;
        let first = self.expanded();
        let width = self.size() - first;
        if width == 0 {
            return Ok(());
        }
        let mut block = self.factor.solve(&self.basis.images[(self.deflated + first) * dof..]);
        patience::check()?;
        // In exact arithmetic only this block and the one before have a part in A q; the full round in `append` sees to the rest.
        let before = self.steps.last().map_or(0, |step| step.first);
        let parts = self.basis.remove(&mut block, self.deflated + before);
        let rows = first - before + width;
        let own: Vec<f64> =
            parts.chunks_exact(rows).flat_map(|column| column[rows - width..].iter().copied()).collect();
        self.scale = parts.iter().fold(self.scale, |largest, part| part.abs().max(largest));
        let added = self.basis.append(block, self.mass, self.scale)?;
        self.scale = added.coupling.iter().fold(self.scale, |largest, part| part.abs().max(largest));
        self.steps.push(Step { first, width, own, coupling: added.coupling, rank: added.rank });
        Ok(())
    }
}
