//! What the modes that were left out answer to given loads.
//!
//! Of x = (K + sM)⁻¹f the part along the known modes is taken away. What remains is the answer of all others, and the space of a few such
//! answers is made into Ritz pairs: vectors that go on after the known modes as if they were modes, and with which a load's
//! answer at λ = −s is exact (modal truncation augmentation: Dickens, Nakagawa & Wittbrodt 1997, Computers & Structures 62, 985; from
//! memory).

use super::basis::Basis;
use super::dense::{combination, inner_products};
use super::error::check_values;
use super::factor::Factor;
use super::pencil::Checked;
use super::rayleigh_ritz::ritz;
use super::rigid::unit_rigid;
use super::{EigenError, Pencil, Symbolic};

/// Answers to a load: the first is right at λ = −s, the second (to the inertia of the first) makes the slope over λ right there. On a violin top the
/// first alone is up to 1.3 % off at two thirds of the last mode's frequency.
const MOMENTS: usize = 2;

/// What is known, and the loads to be answered.
#[derive(Debug, Clone, Copy)]
pub struct Known<'a> {
    /// (mode, equation): null vectors of K, independent; empty when it has none.
    pub rigid: &'a [f64],
    /// (mode, equation): eigenvectors, M-orthonormal to each other and to the null vectors.
    pub modes: &'a [f64],
    /// (load, equation).
    pub loads: &'a [f64],
    /// s in K + sM, units of λ, above zero: small against the eigenvalues left out, so that it plays no part in their answer.
    pub shift: f64,
}

/// What makes the known modes complete for the loads.
#[derive(Debug, Clone, PartialEq)]
pub struct Complement {
    /// (mode, equation): the null vectors' space, M-orthonormal.
    pub rigid: Vec<f64>,
    /// (vector): Rayleigh quotients, ascending; no eigenvalues.
    pub values: Vec<f64>,
    /// (vector, equation): M-orthonormal to each other and to all modes; no more than two for each load.
    pub vectors: Vec<f64>,
}

/// Completes `known` modes of a pencil for given loads. A load whose answer the others already hold adds no vector.
///
/// Cost: one factorisation, two block solves, and eight flops for each equation, mode and load.
///
/// # Errors
/// [`EigenError::NotPositiveDefinite`] when K + sM has no Cholesky factor; [`EigenError::Shift`], [`EigenError::Length`],
/// [`EigenError::NotFinite`], [`EigenError::ForeignSymbolic`] for wrong input.
pub fn complement(pencil: &Pencil, symbolic: &Symbolic, known: &Known) -> Result<Complement, EigenError> {
    let checked = Checked::new(pencil, symbolic)?;
    let dof = symbolic.dof();
    for (what, values) in [("the modes", known.modes), ("the loads", known.loads)] {
        check_values(what, values, values.len() / dof * dof)?;
    }
    if !(known.shift > 0.0 && known.shift.is_finite()) {
        return Err(EigenError::Shift { shift: -known.shift });
    }
    let Checked { mass, stiffness, .. } = &checked;
    let mut basis = Basis::new(dof);
    if !known.rigid.is_empty() {
        basis.append(unit_rigid(known.rigid, dof)?, mass, 0.0)?;
    }
    let rigid = basis.vectors.clone();
    // Orthonormal as they are; appending them would cost their square.
    basis.images.extend(mass.multiply(known.modes));
    basis.vectors.extend(known.modes);
    let before = basis.vectors.len();
    let factor = Factor::of(&checked, -known.shift)?;
    let mut forces = known.loads.to_vec();
    for _ in 0..MOMENTS {
        let last = basis.vectors.len();
        basis.append(factor.solve(&forces), mass, 0.0)?;
        forces = basis.images[last..].to_vec();
    }
    let (vectors, images) = (&basis.vectors[before..], &basis.images[before..]);
    let energy = inner_products(vectors, &stiffness.multiply(vectors), dof);
    let size = vectors.len() / dof;
    if size == 0 {
        return Ok(Complement { rigid, values: Vec::new(), vectors: Vec::new() });
    }
    let pairs = ritz(&energy, &inner_products(vectors, images, dof)).ok_or(EigenError::Projection { size })?;
    let vectors = combination(vectors, &pairs.vectors, dof, size);
    Ok(Complement { rigid, values: pairs.values, vectors })
}
