//! Vectors near the lowest modes, and what one step makes of them.

use super::basis::Basis;
use super::dense::{add_combination, combination, dot, inner_products, symmetric_products};
use super::drift::Drift;
use super::factor::Factor;
use super::pencil::Checked;
use super::rayleigh_ritz::ritz;
use super::sequence::Sequence;
use super::shift::measure;
use super::symmetric::Symmetric;

/// Ritz pairs of a pencil, lowest first.
pub(super) struct Block {
    /// (vector): λ.
    pub(super) values: Vec<f64>,
    /// (vector): |Kx - λMx| / |λMx|.
    pub(super) residuals: Vec<f64>,
    /// (vector, equation): M-orthonormal.
    pub(super) vectors: Vec<f64>,
    /// (vector, equation): M times each.
    pub(super) forces: Vec<f64>,
}

impl Block {
    /// A step of inverse iteration from `forces` F, with the factor of K + sM itself: Y = (K + sM)⁻¹F. None when the block has lost a
    /// direction.
    pub(super) fn by_inverse(
        factor: &Factor,
        forces: &[f64],
        mass: &Symmetric,
        rigid: &Basis,
        shift: f64,
    ) -> Option<Block> {
        let mut moved = factor.solve(forces);
        // Rounding along the rigid modes grows by the step more than anything else.
        rigid.remove(&mut moved, 0);
        let images = mass.multiply(&moved);
        Block::of(&moved, forces, &images, rigid.dof, shift)
    }

    /// The Ritz pairs of Y, which K + sM takes to F and M to `images`: the energies are YᵀF. What is left of the equations of
    /// y = Yc, Fc - (λ + s)MYc, is measured by the inner products of F and MY.
    fn of(moved: &[f64], forces: &[f64], images: &[f64], dof: usize, shift: f64) -> Option<Block> {
        let products = |a: &[f64], b: &[f64]| symmetric_products(a, b, dof);
        let ritz = ritz(&products(moved, forces), &products(moved, images))?;
        let count = ritz.values.len();
        let values: Vec<f64> = ritz.values.iter().map(|value| value - shift).collect();
        let given = products(forces, forces);
        let (mixed, made) = (inner_products(forces, images, dof), products(images, images));
        let residual = |(pair, c): (usize, &[f64])| {
            let (value, whole) = (values[pair], ritz.values[pair]);
            let image = quadratic(&made, c);
            let left = quadratic(&given, c) + whole * (whole * image - 2.0 * quadratic(&mixed, c));
            left.max(0.0).sqrt() / (measure(value, shift) * image.sqrt())
        };
        let residuals = ritz.vectors.chunks_exact(count).enumerate().map(residual).collect();
        let vectors = combination(moved, &ritz.vectors, dof, count);
        let forces = combination(images, &ritz.vectors, dof, count);
        Some(Block { values, residuals, vectors, forces })
    }

    /// Leaves all but the lowest `count`.
    pub(super) fn keep(&mut self, count: usize) {
        let dof = self.vectors.len() / self.values.len();
        self.values.truncate(count);
        self.residuals.truncate(count);
        self.vectors.truncate(count * dof);
        self.forces.truncate(count * dof);
    }

    /// A step of preconditioned inverse iteration from vectors X, with the factor of a pencil a little different:
    /// Y = X - F⁻¹(KX - MXΛ), which with this pencil's own factor is [`Block::by_inverse`] (A. Knyazev and K. Neymeyr, Linear Algebra
    /// Appl. 358 (2003) 95-114; from memory). `fresh` directions go along. None where the
    /// factor misled, and when the block has lost a direction.
    pub(super) fn by_residuals(
        pencil: &Checked,
        rigid: &Basis,
        factor: &Factor,
        start: &[f64],
        fresh: usize,
        shift: f64,
        wanted: usize,
    ) -> Option<(Block, Drift)> {
        let Checked { stiffness, mass, .. } = pencil;
        let dof = rigid.dof;
        let mut start = start.to_vec();
        // What is left of the equations then has no part along the rigid modes, which a small s would blow up.
        rigid.remove(&mut start, 0);
        let mut left = stiffness.multiply(&start);
        let inertia = mass.multiply(&start);
        // (vector): mass, λ
        let mut quotients = Vec::new();
        for ((x, left), inertia) in
            start.chunks_exact(dof).zip(left.chunks_exact_mut(dof)).zip(inertia.chunks_exact(dof))
        {
            let own = dot(x, inertia);
            let value = dot(x, left) / own;
            add_combination(left, -value, inertia, &[1.0], dof);
            quotients.push((own, value));
        }
        left.extend(fresh_forces(mass, fresh, dof));
        let mut moved = factor.solve(&left);
        let work: Vec<f64> = left.chunks_exact(dof).zip(moved.chunks_exact(dof)).map(|(r, w)| dot(r, w)).collect();
        moved.iter_mut().zip(&start).for_each(|(own, x)| *own = x - *own);
        rigid.remove(&mut moved, 0);
        let images = mass.multiply(&moved);
        let mut forces = stiffness.multiply(&moved);
        add_combination(&mut forces, shift, &images, &[1.0], images.len());
        let columns = start.chunks_exact(dof).zip(moved.chunks_exact(dof)).zip(forces.chunks_exact(dof));
        let mut drift = Drift::default();
        for (((x, y), force), (work, (own, value))) in columns.zip(work.into_iter().zip(quotients)).take(wanted) {
            let energy = (value + shift) * own - 2.0 * dot(x, force) + dot(y, force);
            drift.take(own * value, work, energy);
        }
        if !drift.is_good() {
            return None;
        }
        Block::of(&moved, &forces, &images, dof, shift).map(|block| (block, drift))
    }
}

/// (vector, equation): directions that hold a part of everything, times the diagonal of M.
pub(super) fn fresh_forces(mass: &Symmetric, count: usize, dof: usize) -> Vec<f64> {
    let mut forces = vec![0.0; count * dof];
    Sequence::new().fill(&mut forces);
    let inertia = (0..count).flat_map(|_| mass.diagonal());
    forces.iter_mut().zip(inertia).for_each(|(value, inertia)| *value *= inertia);
    forces
}

/// cᵀAc, A (column, row).
fn quadratic(matrix: &[f64], c: &[f64]) -> f64 {
    let columns = matrix.chunks_exact(c.len());
    columns.zip(c).map(|(column, by)| by * dot(column, c)).sum()
}
