//! Null vectors of K that the caller knows: taken out of the problem before the iteration starts.

use super::EigenError;
use super::basis::Basis;
use super::dense::dot;
use super::error::check_values;
use super::pencil::Checked;

/// Largest |Kz|ᵢ over the largest (|K||z|)ᵢ for a rigid mode. Assembly in double precision leaves 1e-13 or so, an element that
/// resists rigid motion 1e-4 and more; deflating such a vector would bend every mode silently.
const NULL_LIMIT: f64 = 1e-9;

/// An M-orthonormal basis of the rigid modes given, (mode, equation); empty without any.
pub(super) fn rigid_basis(pencil: &Checked, rigid: Option<&[f64]>) -> Result<Basis, EigenError> {
    let dof = pencil.symbolic.dof();
    let mut basis = Basis::new(dof);
    let Some(rigid) = rigid.filter(|rigid| !rigid.is_empty()) else {
        return Ok(basis);
    };
    let given = rigid.len() / dof;
    let block = unit_rigid(pencil, rigid)?;
    let forces = pencil.stiffness.multiply(&block);
    let magnitudes: Vec<f64> = block.iter().map(|value| value.abs()).collect();
    let bounds = pencil.stiffness.magnitudes().multiply(&magnitudes);
    for (mode, (force, bound)) in forces.chunks_exact(dof).zip(bounds.chunks_exact(dof)).enumerate() {
        let ratio = largest(force) / largest(bound);
        if ratio > NULL_LIMIT {
            return Err(EigenError::RigidNotNull { mode, ratio, limit: NULL_LIMIT });
        }
    }
    let independent = basis.append(block, &pencil.mass, 0.0)?.rank;
    if independent < given {
        return Err(EigenError::RigidDependent { given, independent });
    }
    Ok(basis)
}

/// Rigid modes (mode, equation) at unit length; a zero vector stays zero.
pub(super) fn unit_rigid(pencil: &Checked, rigid: &[f64]) -> Result<Vec<f64>, EigenError> {
    let dof = pencil.symbolic.dof();
    check_values("the rigid modes", rigid, (rigid.len() / dof).max(1) * dof)?;
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
