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

use std::borrow::Cow;
use std::sync::Arc;

use super::basis::Basis;
use super::block::{Block, fresh_forces};
use super::cholesky::Cholesky;
use super::error::check_values;
use super::factor::Factor;
use super::halves::Side;
use super::lanes::LANES;
use super::part::{MOST, Part, Shares};
use super::pencil::Checked;
use super::rigid::rigid_bases;
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
    parts: Vec<PartOnward>,
    /// (vector): part and place in it, the lowest first.
    order: Vec<(usize, usize)>,
}

/// What goes on in one part of a pencil.
#[derive(Debug, Clone, PartialEq)]
struct PartOnward {
    /// (vector, equation): M-orthonormal, the lowest first.
    vectors: Vec<f64>,
    /// (vector, equation): M times each. Saves the next one's first product with M; that they are of another M then is no more than a
    /// start a little farther off.
    forces: Vec<f64>,
    /// Of K + sM, of this pencil or one before; none where another step with it is not expected to do.
    factor: Option<Arc<Cholesky>>,
}

/// Modes and guards, lowest first.
#[derive(Debug, Clone, PartialEq)]
pub struct Refined {
    /// (vector): λ, ascending.
    pub values: Vec<f64>,
    /// (vector): |Kx - λMx| / |λMx| in the plain norm, down to its rounding, some 1e-8. A factor of another pencil leaves more of
    /// it, in the finest waves, than of what the modes err by.
    pub residuals: Vec<f64>,
    /// Steps taken with a factor of this pencil, the most in any part; none with one of before.
    pub passes: usize,
    /// The vectors, at least as many as were given, and what else the next refinement starts from.
    pub onward: Onward,
}

impl Onward {
    /// The same, so that the next step makes a factor of its own.
    #[cfg(test)]
    pub(super) fn without_factor(mut self) -> Self {
        self.parts.iter_mut().for_each(|part| part.factor = None);
        self
    }

    #[cfg(test)]
    pub(super) fn has_factor(&self) -> bool {
        self.parts.iter().any(|part| part.factor.is_some())
    }

    /// (vector, equation): the lowest `count` vectors, M-orthonormal, on `symbolic`, for which they were found.
    #[must_use]
    pub fn vectors(&self, symbolic: &Symbolic, count: usize) -> Cow<'_, [f64]> {
        if let [only] = &self.parts[..] {
            return only.vectors[..count * symbolic.dof()].into();
        }
        let mut vectors = Vec::new();
        if let Some(halves) = symbolic.halves() {
            let dof = halves.symbolic.dof();
            for &(part, place) in &self.order[..count] {
                let own = &self.parts[part].vectors[place * dof..(place + 1) * dof];
                halves.unfold(own, Side::BOTH[part], &mut vectors);
            }
        }
        vectors.into()
    }
}

/// Refines vectors near the lowest modes of a pencil; none when `most_passes` steps don't come near enough, as after a large
/// change, or when the vectors given depend on each other.
///
/// Cost: one factorisation, and a block solve and a product with M a step. With a factor of before, a block solve and two products with K.
/// A pencil that is its own mirror image is refined in two parts, for some half of that.
///
/// # Errors
/// [`EigenError::NotPositiveDefinite`] when K + sM has no Cholesky factor; [`EigenError::Count`], [`EigenError::Shift`],
/// [`EigenError::NotFinite`], [`EigenError::Length`], [`EigenError::ForeignSymbolic`] for wrong input.
pub fn refine(pencil: &Pencil, symbolic: &Symbolic, refinement: &Refinement) -> Result<Option<Refined>, EigenError> {
    let parts = Part::all(pencil, symbolic)?;
    let Refinement { rigid, start, shift, wanted, .. } = *refinement;
    let dof = symbolic.dof();
    let given = match start {
        Start::Vectors(vectors) => vectors.len() / dof,
        Start::Onward(onward) => onward.order.len(),
    };
    if wanted == 0 || wanted > given {
        return Err(EigenError::Count { wanted, available: given });
    }
    if !(shift > 0.0 && shift.is_finite()) {
        return Err(EigenError::Shift { shift: -shift });
    }
    let starts = match start {
        Start::Vectors(vectors) => {
            check_values("the start block", vectors, given * dof)?;
            PartStart::of_vectors(&parts, vectors, wanted)
        }
        Start::Onward(onward) if onward.parts.len() == parts.len() => PartStart::onward(onward, wanted),
        Start::Onward(onward) => PartStart::of_vectors(&parts, &onward.vectors(symbolic, given), wanted),
    };
    let rigid = rigid_bases(&parts, rigid, dof, |_, _| Ok(()))?;
    let (mut values, mut residuals, mut places, mut passes) = (Vec::new(), Vec::new(), Vec::new(), 0);
    let mut onward = Onward { parts: Vec::new(), order: Vec::new() };
    for ((start, part), rigid) in starts.iter().zip(&parts).zip(&rigid) {
        let fresh = start.fresh(refinement.fresh, part.dof(), parts.len() > 1);
        let Some(Stepped { block, passes: own, factor }) = start.step(&part.pencil, rigid, fresh, refinement)? else {
            return Ok(None);
        };
        places.extend((0..block.values.len()).map(|place| (onward.parts.len(), place)));
        values.extend_from_slice(&block.values);
        residuals.extend_from_slice(&block.residuals);
        onward.parts.push(PartOnward { vectors: block.vectors, forces: block.forces, factor });
        passes = passes.max(own);
    }
    let order = ascending(&values);
    let picked = |list: &[f64]| order.iter().map(|&at| list[at]).collect();
    let (values, residuals) = (picked(&values), picked(&residuals));
    onward.order = order.iter().map(|&at| places[at]).collect();
    Ok(Some(Refined { values, residuals, passes, onward }))
}

/// Where one part starts.
struct PartStart<'a> {
    /// (vector, equation)
    vectors: Cow<'a, [f64]>,
    onward: Option<&'a PartOnward>,
    /// How many of the modes wanted it has, as far as is known.
    wanted: usize,
}

/// What a step made of one part.
struct Stepped {
    block: Block,
    passes: usize,
    /// Of this pencil or one before, if it is to lead the next step.
    factor: Option<Arc<Cholesky>>,
}

impl<'a> PartStart<'a> {
    fn of_vectors(parts: &[Part], vectors: &[f64], wanted: usize) -> Vec<Self> {
        let shares = parts.iter().map(|part| part.shares(vectors, MOST));
        let start = |shares: Shares| PartStart {
            wanted: shares.of.iter().filter(|&&vector| vector < wanted).count(),
            vectors: shares.vectors.into(),
            onward: None,
        };
        shares.map(start).collect()
    }

    fn onward(onward: &'a Onward, wanted: usize) -> Vec<Self> {
        let start = |(at, part): (usize, &'a PartOnward)| PartStart {
            vectors: (&part.vectors[..]).into(),
            onward: Some(part),
            wanted: onward.order[..wanted].iter().filter(|&&(own, _)| own == at).count(),
        };
        onward.parts.iter().enumerate().map(start).collect()
    }

    /// How many fresh vectors go along: as many as are asked for and, where the modes are shared among parts, what makes up the number that the
    /// kernels take at once, with one beyond the modes wanted: nobody knows beforehand which part has the guards.
    fn fresh(&self, fresh: usize, dof: usize, is_shared: bool) -> usize {
        let own = self.vectors.len() / dof;
        if is_shared { (own.max(self.wanted + 1) + fresh).next_multiple_of(LANES) - own } else { fresh }
    }

    fn step(
        &self,
        pencil: &Checked,
        rigid: &Basis,
        fresh: usize,
        refinement: &Refinement,
    ) -> Result<Option<Stepped>, EigenError> {
        let Refinement { shift, residual, most_passes, .. } = *refinement;
        let (dof, mass) = (rigid.dof, &pencil.mass);
        // All but the fresh ones that were asked for go on.
        let kept = self.vectors.len() / dof + fresh - refinement.fresh;
        let stepped = |mut block: Block, passes: usize, factor: Option<Arc<Cholesky>>| {
            block.keep(kept);
            Ok(Some(Stepped { block, passes, factor }))
        };
        let mut misled = false;
        let mut forces = match self.onward {
            None => {
                let mut vectors = self.vectors.to_vec();
                rigid.remove(&mut vectors, 0);
                mass.multiply(&vectors)
            }
            Some(onward) => {
                if let Some(held) = onward.factor.as_ref().and_then(|factor| Factor::held(pencil.symbolic, factor)) {
                    let led = Block::by_residuals(pencil, rigid, &held, &self.vectors, fresh, shift, self.wanted);
                    if let Some((block, drift)) = led {
                        return stepped(block, 0, drift.goes_on().then_some(held.cholesky));
                    }
                    misled = true;
                }
                onward.forces.clone()
            }
        };
        forces.extend(fresh_forces(mass, fresh, dof));
        let factor = Factor::of(pencil, -shift)?;
        for pass in 1..=most_passes {
            let Some(block) = Block::by_inverse(&factor, &forces, mass, rigid, shift) else { return Ok(None) };
            if block.residuals[..self.wanted].iter().all(|own| *own <= residual) {
                // After steps too long for a factor of before the next ones are expected to be as long.
                return stepped(block, pass, (!misled).then_some(factor.cholesky));
            }
            forces = block.forces;
        }
        Ok(None)
    }
}
