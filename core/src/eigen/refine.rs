//! From vectors that nearly are the modes to the modes: a few steps of block inverse iteration.
//!
//! What a dragged handle needs: K has changed a little, its modes are known from before. One step takes every vector x to
//! (K + sM)⁻¹Mx, which shrinks what is wrong along mode j by (λ + s)/(λⱼ + s), and a Rayleigh-Ritz analysis of the block
//! sorts out the rest (Parlett, chapter 14, subspace iteration; from memory). Vectors beyond the modes wanted guard
//! the highest of them, whose own step would otherwise shrink little.
//!
//! Nothing here proves that no mode was missed: a mode that comes down from above the block is only found as far as the fresh
//! directions hold it, which each step adds.

use nalgebra::{DMatrix, SymmetricEigen};

use super::basis::Basis;
use super::dense::{combination, inner_products, symmetric_products};
use super::error::check_values;
use super::factor::Factor;
use super::pencil::Ordered;
use super::rigid::unit_rigid;
use super::sequence::Sequence;
use super::shift::measure;
use super::symmetric::Symmetric;
use super::{EigenError, Pencil, Symbolic};
use crate::ascending::ascending;

/// What to start from, and how near to come.
#[derive(Debug, Clone, Copy)]
pub struct Refinement<'a> {
    /// (mode, equation): null vectors of K, as in [`Request`](super::Request), but taken at their word: a search on the same
    /// pattern has checked them.
    pub rigid: Option<&'a [f64]>,
    /// A few more vectors than wanted, near the lowest modes.
    pub start: Start<'a>,
    /// Pseudo-random vectors that go along, to hold what the others have no part of.
    pub fresh: usize,
    /// s in K + sM, units of λ; the one that the search before settled on.
    pub shift: f64,
    /// How many of the lowest modes must come near.
    pub wanted: usize,
    /// Largest |Kx - λMx| / |λMx| of those.
    pub residual: f64,
    /// Most steps.
    pub most_passes: usize,
}

/// What says where to start.
#[derive(Debug, Clone, Copy)]
pub enum Start<'a> {
    /// (vector, equation): the vectors.
    Vectors(&'a [f64]),
    /// (vector, position): their [`Refined::forces`] of a pencil a little different, on the same symbolic factorisation. Saves the
    /// first product with M; that they are of another M is no more than a start a little farther off.
    Forces(&'a [f64]),
}

/// Modes and guards, lowest first.
#[derive(Debug, Clone, PartialEq)]
pub struct Refined {
    /// (vector): λ, ascending.
    pub values: Vec<f64>,
    /// (vector, equation): M-orthonormal.
    pub vectors: Vec<f64>,
    /// (vector, position): M times each, in the order of elimination: a next refinement's start.
    pub forces: Vec<f64>,
    /// (vector): |Kx - λMx| / |λMx| in the plain norm, down to its rounding, some 1e-8.
    pub residuals: Vec<f64>,
    /// Steps taken.
    pub passes: usize,
}

/// Refines vectors near the lowest modes of a pencil; none when `most_passes` steps don't come near enough, as after a large
/// change, or when the vectors given depend on each other.
///
/// Cost: one factorisation, and a block solve and a product with M a step.
///
/// # Errors
/// [`EigenError::NotPositiveDefinite`] when K + sM has no Cholesky factor; [`EigenError::Count`], [`EigenError::Shift`],
/// [`EigenError::NotFinite`], [`EigenError::Length`], [`EigenError::ForeignSymbolic`] for wrong input.
pub fn refine(pencil: &Pencil, symbolic: &Symbolic, refinement: &Refinement) -> Result<Option<Refined>, EigenError> {
    let ordered = Ordered::new(pencil, symbolic)?;
    let Refinement { start, fresh, shift, wanted, residual, most_passes, .. } = *refinement;
    let dof = symbolic.dof();
    let (Start::Vectors(values) | Start::Forces(values)) = start;
    let given = values.len() / dof;
    check_values("the start block", values, given * dof)?;
    if wanted == 0 || wanted > given {
        return Err(EigenError::Count { wanted, available: given });
    }
    if !(shift > 0.0 && shift.is_finite()) {
        return Err(EigenError::Shift { shift: -shift });
    }
    let mass = &ordered.mass;
    let mut rigid = Basis::new(dof);
    if let Some(vectors) = refinement.rigid.filter(|vectors| !vectors.is_empty()) {
        rigid.append(unit_rigid(&ordered, vectors)?, mass, 0.0)?;
    }
    let factor = Factor::of(&ordered, -shift)?;
    let mut block = Block::new(&ordered, &rigid, start, fresh);
    for pass in 1..=most_passes {
        let Some(next) = block.step(&factor, mass, &rigid, shift) else { return Ok(None) };
        if next.residuals[..wanted].iter().all(|own| *own <= residual) {
            return Ok(Some(next.finish(symbolic, pass)));
        }
        block = next;
    }
    Ok(None)
}

/// The vectors as they are, in elimination order.
struct Block {
    dof: usize,
    /// (vector): λ and residual; none before the first step.
    values: Vec<f64>,
    residuals: Vec<f64>,
    /// (vector, position); none before the first step.
    vectors: Vec<f64>,
    /// (vector, position): M times each.
    forces: Vec<f64>,
}

impl Block {
    fn new(pencil: &Ordered, rigid: &Basis, start: Start, fresh: usize) -> Block {
        let dof = rigid.dof;
        let mut unknown = vec![0.0; fresh * dof];
        Sequence::new().fill(&mut unknown);
        let forces = match start {
            Start::Vectors(known) => {
                let mut vectors = pencil.symbolic.permuted(known);
                vectors.extend(unknown);
                rigid.remove(&mut vectors, 0);
                pencil.mass.multiply(&vectors)
            }
            Start::Forces(known) => {
                let inertia = unknown.chunks_exact(dof).flat_map(|_| pencil.mass.diagonal());
                let mut forces = known.to_vec();
                forces.extend(unknown.iter().zip(inertia).map(|(value, inertia)| value * inertia));
                forces
            }
        };
        Block { dof, values: Vec::new(), residuals: Vec::new(), vectors: Vec::new(), forces }
    }

    /// One step; none when the block has lost a direction.
    ///
    /// With Y = (K + sM)⁻¹F the energies are Yᵀ(K + sM)Y = YᵀF and, for y = Yc, (K + sM)y = Fc: no product with K is made. What is
    /// left of the equations, Fc - (λ + s)MYc, is measured by the inner products of F and MY.
    fn step(&self, factor: &Factor, mass: &Symmetric, rigid: &Basis, shift: f64) -> Option<Block> {
        let dof = self.dof;
        let mut moved = factor.solve_ordered(&self.forces);
        // Rounding along the rigid modes grows by the step more than anything else.
        rigid.remove(&mut moved, 0);
        let images = mass.multiply(&moved);
        let products = |a: &[f64], b: &[f64]| symmetric_products(a, b, dof);
        let ritz = ritz(&products(&moved, &self.forces), &products(&moved, &images))?;
        let count = ritz.values.len();
        let values: Vec<f64> = ritz.values.iter().map(|value| value - shift).collect();
        let given = products(&self.forces, &self.forces);
        let (mixed, made) = (inner_products(&self.forces, &images, dof), products(&images, &images));
        let residual = |(pair, c): (usize, &[f64])| {
            let (value, whole) = (values[pair], ritz.values[pair]);
            let image = quadratic(&made, c);
            let left = quadratic(&given, c) + whole * (whole * image - 2.0 * quadratic(&mixed, c));
            left.max(0.0).sqrt() / (measure(value, shift) * image.sqrt())
        };
        let residuals = ritz.coordinates.chunks_exact(count).enumerate().map(residual).collect();
        let vectors = combination(&moved, &ritz.coordinates, dof, count);
        let forces = combination(&images, &ritz.coordinates, dof, count);
        Some(Block { dof, values, residuals, vectors, forces })
    }

    fn finish(self, symbolic: &Symbolic, passes: usize) -> Refined {
        let vectors = symbolic.permuted_back(&self.vectors);
        Refined { values: self.values, vectors, forces: self.forces, residuals: self.residuals, passes }
    }
}

/// Least square of what a vector adds to those before it, of one. The step's rounding leaves some 1e-13 of it.
const DEPENDENT: f64 = 1e-10;

/// Ritz pairs of a block, lowest first.
pub(super) struct Ritz {
    /// (pair): λ + s.
    pub(super) values: Vec<f64>,
    /// (pair, vector of the block)
    pub(super) coordinates: Vec<f64>,
}

/// Solves A c = (λ + s) B c with A and B symmetric, B positive definite, both (column, row) of the block; none where it is not.
pub(super) fn ritz(energy: &[f64], gram: &[f64]) -> Option<Ritz> {
    let size = gram.len().isqrt();
    // To unit length first: high vectors shrink most in a step, which says nothing of how well they are known.
    let scale: Vec<f64> = (0..size).map(|at| 1.0 / gram[at * (size + 1)].sqrt()).collect();
    let scaled =
        |values: &[f64], i: usize, j: usize| 0.5 * scale[i] * scale[j] * (values[i * size + j] + values[j * size + i]);
    let inverse = inverse_factor(size, |i, j| scaled(gram, i, j))?;
    let (row, sum) = (|i: usize| &inverse[i * size..(i + 1) * size], |i: usize| 0..=i);
    let half: Vec<f64> = (0..size * size)
        .map(|at| sum(at / size).map(|k| row(at / size)[k] * scaled(energy, k, at % size)).sum())
        .collect();
    let reduced = DMatrix::from_fn(size, size, |i, j| sum(j).map(|k| half[i * size + k] * row(j)[k]).sum::<f64>());
    let pairs = SymmetricEigen::try_new(reduced, f64::EPSILON, 30 * size)?;
    let order = ascending(pairs.eigenvalues.as_slice());
    let mut coordinates = Vec::with_capacity(size * size);
    for &pair in &order {
        let vector = &pairs.eigenvectors.as_slice()[pair * size..(pair + 1) * size];
        coordinates.extend((0..size).map(|at| scale[at] * (at..size).map(|i| row(i)[at] * vector[i]).sum::<f64>()));
    }
    Some(Ritz { values: order.iter().map(|&pair| pairs.eigenvalues[pair]).collect(), coordinates })
}

/// L⁻¹ of a positive definite matrix L Lᵀ, (row, column): the rows of the identity made orthonormal in it one after the other
/// (Gram-Schmidt).
fn inverse_factor(size: usize, matrix: impl Fn(usize, usize) -> f64) -> Option<Vec<f64>> {
    let mut rows = vec![0.0; size * size];
    for at in 0..size {
        let (before, own) = rows.split_at_mut(at * size);
        own[at] = 1.0;
        for row in before.chunks_exact(size) {
            let part: f64 = row[..at].iter().enumerate().map(|(k, entry)| entry * matrix(k, at)).sum();
            for (own, entry) in own.iter_mut().zip(row) {
                *own -= part * entry;
            }
        }
        // The other entries are orthogonal to what was taken off.
        let square: f64 = own[..=at].iter().enumerate().map(|(k, entry)| entry * matrix(k, at)).sum();
        // What is left of a unit vector: below this the block has lost a direction to rounding.
        if square.is_nan() || square < DEPENDENT {
            return None;
        }
        own[..=at].iter_mut().for_each(|entry| *entry /= square.sqrt());
    }
    Some(rows)
}

/// cᵀAc, A (column, row).
fn quadratic(matrix: &[f64], c: &[f64]) -> f64 {
    let columns = matrix.chunks_exact(c.len());
    columns.zip(c).map(|(column, by)| by * column.iter().zip(c).map(|(entry, c)| entry * c).sum::<f64>()).sum()
}
