//! Null vectors of K that the caller knows: taken out of the problem before the iteration starts.

use super::EigenError;
use super::basis::Basis;
use super::dense::dot;
use super::error::check_values;
use super::part::{Part, Shares};
use super::pencil::Checked;

/// Largest |Kz|ᵢ over the largest (|K||z|)ᵢ for a rigid mode. Assembly in double precision leaves 1e-13 or so, an element that
/// resists rigid motion 1e-4 and more; deflating such a vector would bend every mode silently.
const NULL_LIMIT: f64 = 1e-9;

/// A share of a rigid mode below this, by squares, is rounding of one that belongs to the other part.
const LEAST_SHARE: f64 = 1e-12;

/// (part): an M-orthonormal basis of its shares of the rigid modes given, (mode, equation of the whole); empty without any. `check` may refuse
/// shares.
pub(super) fn rigid_bases(
    parts: &[Part],
    rigid: Option<&[f64]>,
    dof: usize,
    check: impl Fn(&Checked, &Shares) -> Result<(), EigenError>,
) -> Result<Vec<Basis>, EigenError> {
    let unit = unit_rigid(rigid.unwrap_or_default(), dof)?;
    let (given, mut independent) = (unit.len() / dof, 0);
    let mut bases = Vec::new();
    for part in parts {
        let shares = part.shares(&unit, LEAST_SHARE);
        check(&part.pencil, &shares)?;
        let mut basis = Basis::new(part.dof());
        if !shares.of.is_empty() {
            independent += basis.append(shares.vectors, &part.pencil.mass, 0.0)?.rank;
        }
        bases.push(basis);
    }
    if independent < given {
        return Err(EigenError::RigidDependent { given, independent });
    }
    Ok(bases)
}

/// Refuses what is no null vector of K.
pub(super) fn check_null(pencil: &Checked, shares: &Shares) -> Result<(), EigenError> {
    let dof = pencil.symbolic.dof();
    let forces = pencil.stiffness.multiply(&shares.vectors);
    let magnitudes: Vec<f64> = shares.vectors.iter().map(|value| value.abs()).collect();
    let bounds = pencil.stiffness.magnitudes().multiply(&magnitudes);
    for (&mode, (force, bound)) in shares.of.iter().zip(forces.chunks_exact(dof).zip(bounds.chunks_exact(dof))) {
        let ratio = largest(force) / largest(bound);
        if ratio > NULL_LIMIT {
            return Err(EigenError::RigidNotNull { mode, ratio, limit: NULL_LIMIT });
        }
    }
    Ok(())
}

/// Rigid modes (mode, equation) at unit length; a zero vector stays zero.
pub(super) fn unit_rigid(rigid: &[f64], dof: usize) -> Result<Vec<f64>, EigenError> {
    check_values("the rigid modes", rigid, rigid.len().div_ceil(dof) * dof)?;
    let mut block = rigid.to_vec();
    for vector in block.chunks_exact_mut(dof) {
        let length = dot(vector, vector).sqrt();
        let scale = if length > 0.0 { 1.0 / length } else { 0.0 };
        vector.iter_mut().for_each(|value| *value *= scale);
    }
    Ok(block)
}

fn largest(values: &[f64]) -> f64 {
    values.iter().fold(0.0, |largest, value| value.abs().max(largest))
}
