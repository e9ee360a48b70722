//! The lean that forces in the plane alone give the normal.
//!
//! Wood whose grain or rings lie at a slope to the surface shears when it is pulled: forces N (per width) lean the normal by γ = CᵀN/t,
//! C being the compliance's coupling, with no transverse force at all. The edges' constraint is therefore put on what is
//! left of the shear strain, which alone has its transverse force and asks the edge to bend: Δβ = −3/2 (gap/l − t·γ)/(1 + φ).
//! With all of the strain under the constraint, elements wider than √(12 bending/shear stiffness) (about 15 mm in 3 mm of spruce) took a part
//! 1/(1 + φ) of it for bending: an arched top on a hinged rim was 2 % too stiff at 2 600 nodes and nearer by
//! only half with every halving of the mesh.
//!
//! Left out: what the added bubble stretches a curved edge by, which is of the second order in the surface's turn within
//! the element.

use nalgebra::Matrix2x3;

use super::bending::EdgeLean;
use super::edge_fields::EdgeFields;
use super::facet::Facet;

/// Per mean in-plane strain (11, 22, 12), from `shear_by_stretch`: transverse shear strains (13, 23) per in-plane strain
/// without transverse forces.
pub(super) fn force_lean(facet: &Facet, lean: &EdgeLean, shear_by_stretch: &Matrix2x3<f64>) -> EdgeFields<3> {
    let along = facet.tangents.map(|tangent| shear_by_stretch.tr_mul(&tangent));
    let part = |edge: usize| along[edge] / (1.0 + lean.ratio[edge]);
    EdgeFields {
        bubble: [0, 1, 2].map(|edge| part(edge) * 1.5),
        // The whole of it, less what the bubble takes: (1 − φ/(1 + φ)).
        shear: [0, 1, 2].map(part),
    }
}
