//! The layer along a free edge in which the wood sheds its twisting moment.
//!
//! On a free edge the twisting moment must vanish, while the plate inside is twisted. Kirchhoff's theory puts a line force
//! there; wood, which yields to transverse shear, needs a layer of width δ = √(D_ns f_s), D_ns being the twisting
//! stiffness and f_s the transverse shear flexibility along the edge: 0.32 t along the grain and 1.5 t across it in quarter-cut
//! spruce, a millimetre to four. In it the plate loses the twisting energy ½ δ M²/D_ns per unit of length (for an isotropic
//! strip the familiar 0.63 t of torsional width; Timoshenko & Goodier 1951, Theory of Elasticity, ch. 10).
//!
//! An element of height h over the edge resolves only part of it. Linear rotations on a uniform mesh resolve
//! δ²/√(δ² + h²/12), from the difference equation of u − δ²u″ = 0 in closed form; the rest is taken off here. It vanishes as
//! h² when the mesh resolves the layer, and without it frequencies of a top with holes fall with h instead of h².

use nalgebra::{Matrix2, Matrix3, SMatrix, Vector2, Vector3};

use super::bending::EdgeLean;
use super::facet::{Facet, next};

/// What free edge `edge` takes off the bending stiffness (dof, dof), N·m and the like; positive semidefinite.
///
/// At most 9 % of the twisting energy of a strip as high as the element, so the element stays positive.
pub(super) fn unresolved(
    facet: &Facet,
    edge: usize,
    lean: &EdgeLean,
    bending: &Matrix3<f64>,
    shear_flexibility: &Matrix2<f64>,
) -> SMatrix<f64, 9, 9> {
    let s = facet.tangents[edge];
    let n = Vector2::new(s.y, -s.x);
    // The curvature that turns (β_s),n alone makes, in (11, 22, 12) order; its conjugate moment is the twisting moment.
    let twist = Vector3::new(s.x * n.x, s.y * n.y, s.x * n.y + s.y * n.x);
    let twisting_stiffness = twist.dot(&(bending * twist));
    let delta_squared = twisting_stiffness * s.dot(&(shear_flexibility * s));
    let height = 2.0 * facet.area / facet.lengths[edge];
    let delta = delta_squared.sqrt();
    let unresolved = delta - delta_squared / (delta_squared + height * height / 12.0).sqrt();

    let mut middle = [0.0; 3];
    middle[edge] = 0.5;
    middle[next(edge)] = 0.5;
    let moment = (bending * twist).transpose() * lean.curvature(facet, &middle);
    moment.transpose() * moment * (unresolved * facet.lengths[edge] / twisting_stiffness)
}
