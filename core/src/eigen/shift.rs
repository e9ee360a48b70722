//! Where to put the shift σ = -s, s > 0.
//!
//! K - σM = K + sM must be positive definite although K may be singular, so s > 0. What trades: the iteration sees eigenvalues θ = 1/(λ + s).
//! An s far above the modes wanted squeezes their θ together and costs iterations; an s far below the first mode makes a free
//! structure's K + sM nearly singular, and its rigid part drowns the rest in rounding. Between a ten-thousandth of the first eigenvalue and
//! a few times it, neither is felt. So a rough guess does, checked once by the first Ritz value.

use super::EigenError;
use super::factor::Factor;
use super::pencil::Checked;

/// The shift is moved when it is above this many times the first Ritz value.
const TOO_FAR: f64 = 4.0;
/// ... or below this share of it.
const TOO_NEAR: f64 = 1e-4;
/// Where it is moved to, as a share of the first Ritz value. That value is still an upper bound of the true one, by a factor of two or so.
const SHARE: f64 = 0.25;
/// Without a positive definite factor the guess grows by this factor: K + sM is then singular to working precision.
const LIFT: f64 = 1e3;
/// A guess is lifted this often before the pencil is declared indefinite.
const LIFTS: usize = 3;

/// An eigenvalue below this share of s counts as zero: the rigid modes of a free structure. True elastic values can't be, s being at most
/// a few times the first of them.
pub(super) const ZERO: f64 = 1e-3;

/// What an error in λ is compared with: λ itself, or s for a zero.
pub(super) fn measure(value: f64, shift: f64) -> f64 {
    if value.abs() > ZERO * shift { value.abs() } else { shift }
}

/// Least s, as a share of the largest diagonal quotient Kᵢᵢ/Mᵢᵢ, which estimates the highest eigenvalue: some thousand rounding units. Below it rounding of K
/// decides whether K + sM is positive definite, and zeros of a free structure can't be told from small eigenvalues.
const LEAST_SHARE: f64 = 1e-12;

/// What the diagonals say of the shift.
pub(super) struct Scale {
    /// A first s.
    pub(super) guess: f64,
    /// The least s that rounding allows.
    pub(super) least: f64,
}

impl Scale {
    /// A first s from the diagonals and the number of nodes: the softest diagonal quotient Kᵢᵢ/Mᵢᵢ belongs to a wave one element long, and
    /// in a bending surface of N nodes the longest wave is N^(1/2) elements long, so its eigenvalue is about N² lower. On second-order
    /// operators this is too low by N, which is harmless while N is below some ten thousands (and is checked).
    pub(super) fn of(pencil: &Checked) -> Result<Scale, EigenError> {
        let [stiffness, mass] = [&pencil.stiffness, &pencil.mass].map(|matrix| matrix.diagonal().collect::<Vec<_>>());
        if let Some(&value) = mass.iter().find(|&&value| value < 0.0) {
            return Err(EigenError::MassNotPositive { value });
        }
        if mass.iter().all(|&value| value == 0.0) {
            return Err(EigenError::MassNotPositive { value: 0.0 });
        }
        let quotients = || {
            let pairs = stiffness.iter().zip(&mass).filter(|&(&k, &m)| k > 0.0 && m > 0.0);
            pairs.map(|(k, m)| k / m).filter(|quotient| quotient.is_finite())
        };
        let softest = quotients().fold(f64::INFINITY, f64::min);
        if softest.is_infinite() {
            return Err(EigenError::NoStiffness);
        }
        let least = LEAST_SHARE * quotients().fold(0.0, f64::max);
        let nodes = pencil.symbolic.nodes() as f64;
        Ok(Scale { guess: (softest / (nodes * nodes)).max(least), least })
    }
}

/// Factorises K + sM, lifting s while rounding hides that it is positive definite. Returns s with the factor.
pub(super) fn factorise<'a>(pencil: &Checked<'a>, guess: f64) -> Result<(f64, Factor<'a>), EigenError> {
    let mut shift = guess;
    for _ in 0..LIFTS {
        match Factor::of(pencil, -shift) {
            Err(EigenError::NotPositiveDefinite { .. }) => {}
            factorised => return Ok((shift, factorised?)),
        }
        shift *= LIFT;
    }
    Ok((shift, Factor::of(pencil, -shift)?))
}

/// A better s, when the first Ritz value shows the present one to be far off.
pub(super) fn better(shift: f64, first_ritz: f64, least: f64) -> Option<f64> {
    let off = shift > TOO_FAR * first_ritz || shift < TOO_NEAR * first_ritz;
    let better = (SHARE * first_ritz).max(least);
    (off && better != shift).then_some(better)
}

/// A larger s for a pencil whose zeros, at 1/s, drown its modes in rounding.
pub(super) fn clearer(shift: f64, first_elastic: f64) -> Option<f64> {
    let better = SHARE * first_elastic;
    (better > 2.0 * shift).then_some(better)
}
