//! From vectors that nearly are the modes to the modes: a few steps of block inverse iteration.
//!
//! What a dragged handle needs: K has changed a little, its modes are known from before. One step takes every vector x to
//! (K + sM)⁻¹Mx, which shrinks what is wrong along mode j by (λ + s)/(λⱼ + s), and a Rayleigh-Ritz analysis of the block
//! sorts out the rest (Parlett, chapter 14, subspace iteration; from memory). Vectors beyond the modes wanted guard
//! the highest of them, whose own step would otherwise shrink little.
//!
//! Where K has changed very little, the factor of the pencil before leads nearly as well: it is tried first, on what is left of the
//! equations ([`Block::by_residuals`]), and a step takes a product with K more and no factorisation. How well it led is measured
//! ([`Drift`](super::drift::Drift)); where it misled, the pencil gets a factor of its own.
//!
//! Nothing here proves that no mode was missed: a mode that comes down from above the block is only found as far as the fresh
//! directions hold it, which each step adds.

use std::sync::Arc;

use super::basis::Basis;
use super::block::{Block, fresh_forces};
use super::cholesky::Cholesky;
use super::error::check_values;
use super::factor::Factor;
use super::pencil::Checked;
use super::rigid::unit_rigid;
use super::{EigenError, Pencil, Symbolic};

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
    /// Largest |Kx - λMx| / |λMx| of those, where they are refined with a factor of this pencil.
    pub residual: f64,
    /// Most steps.
    pub most_passes: usize,
}

/// What says where to start.
#[derive(Debug, Clone, Copy)]
pub enum Start<'a> {
    /// (vector, equation): the vectors.
    Vectors(&'a [f64]),
    /// What the refinement for a pencil a little different left, on the same symbolic factorisation and with the same shift.
    Onward(&'a Onward),
}

/// What a refinement leaves for the next.
#[derive(Debug, Clone, PartialEq)]
pub struct Onward {
    /// (vector, equation): M-orthonormal, the lowest first, as many as were given.
    pub vectors: Vec<f64>,
    /// (vector, equation): M times each. Saves the next one's first product with M; that they are of another M then is no more than a
    /// start a little farther off.
    forces: Vec<f64>,
    /// Of K + sM, of this pencil or one before; none where another step with it is not expected to do.
    pub(super) factor: Option<Arc<Cholesky>>,
}

/// Modes and guards, lowest first.
#[derive(Debug, Clone, PartialEq)]
pub struct Refined {
    /// (vector): λ, ascending.
    pub values: Vec<f64>,
    /// (vector): |Kx - λMx| / |λMx| in the plain norm, down to its rounding, some 1e-8. A factor of another pencil leaves more of
    /// it, in the finest waves, than of what the modes err by.
    pub residuals: Vec<f64>,
    /// Steps taken with a factor of this pencil; none with one of before.
    pub passes: usize,
    /// The vectors, and what else the next refinement starts from.
    pub onward: Onward,
}

/// Refines vectors near the lowest modes of a pencil; none when `most_passes` steps don't come near enough, as after a large
/// change, or when the vectors given depend on each other.
///
/// Cost: one factorisation, and a block solve and a product with M a step. With a factor of before, a block solve and two products with K.
///
/// # Errors
/// [`EigenError::NotPositiveDefinite`] when K + sM has no Cholesky factor; [`EigenError::Count`], [`EigenError::Shift`],
/// [`EigenError::NotFinite`], [`EigenError::Length`], [`EigenError::ForeignSymbolic`] for wrong input.
pub fn refine(pencil: &Pencil, symbolic: &Symbolic, refinement: &Refinement) -> Result<Option<Refined>, EigenError> {
    let checked = Checked::new(pencil, symbolic)?;
    let Refinement { start, fresh, shift, wanted, residual, most_passes, .. } = *refinement;
    let dof = symbolic.dof();
    let values = match start {
        Start::Vectors(vectors) => vectors,
        Start::Onward(onward) => &onward.vectors,
    };
    let given = values.len() / dof;
    check_values("the start block", values, given * dof)?;
    if wanted == 0 || wanted > given {
        return Err(EigenError::Count { wanted, available: given });
    }
    if !(shift > 0.0 && shift.is_finite()) {
        return Err(EigenError::Shift { shift: -shift });
    }
    let mass = &checked.mass;
    let mut rigid = Basis::new(dof);
    if let Some(vectors) = refinement.rigid.filter(|vectors| !vectors.is_empty()) {
        rigid.append(unit_rigid(&checked, vectors)?, mass, 0.0)?;
    }
    let mut misled = false;
    let mut forces = match start {
        Start::Vectors(known) => {
            let mut vectors = known.to_vec();
            rigid.remove(&mut vectors, 0);
            mass.multiply(&vectors)
        }
        Start::Onward(onward) => {
            if let Some(held) = onward.factor.as_ref().and_then(|factor| Factor::held(symbolic, factor)) {
                let stepped = Block::by_residuals(&checked, &rigid, &held, &onward.vectors, fresh, shift, wanted);
                if let Some((block, drift)) = stepped {
                    let factor = drift.goes_on().then_some(held.cholesky);
                    return Ok(Some(Refined::of(block, 0, given * dof, factor)));
                }
                misled = true;
            }
            onward.forces.clone()
        }
    };
    forces.extend(fresh_forces(mass, fresh, dof));
    let factor = Factor::of(&checked, -shift)?;
    for pass in 1..=most_passes {
        let Some(block) = Block::by_inverse(&factor, &forces, mass, &rigid, shift) else { return Ok(None) };
        if block.residuals[..wanted].iter().all(|own| *own <= residual) {
            // After steps too long for a factor of before the next ones are expected to be as long.
            let factor = (!misled).then_some(factor.cholesky);
            return Ok(Some(Refined::of(block, pass, given * dof, factor)));
        }
        forces = block.forces;
    }
    Ok(None)
}

impl Refined {
    /// `kept` values of the vectors go on.
    fn of(block: Block, passes: usize, kept: usize, factor: Option<Arc<Cholesky>>) -> Refined {
        let Block { values, residuals, mut vectors, mut forces } = block;
        vectors.truncate(kept);
        forces.truncate(kept);
        let onward = Onward { vectors, forces, factor };
        Refined { values, residuals, passes, onward }
    }
}
