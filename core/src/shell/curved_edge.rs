//! The stretch of a facet's edges as curves on the smooth surface.
//!
//! Over the chord an edge stands up by w₀(s), a cubic with the surface's own slopes ψ at its ends; when the surface bends,
//! w(s) is added. Its length then changes by the chord's stretch plus ∫w₀′w′ds (the first-order term of Marguerre's shallow
//! shell strain; Marguerre 1938, Proc. 5th Int. Congr. Appl. Mech.). The chord's own turn drops out because w₀ vanishes at
//! both ends, so a rigid motion stretches nothing.
//!
//! Derivation: with ξ from 0 to 1 along the edge, β the lean along it and Δβ its bubble, the slope beyond the chord's is
//! w′ = −½(β_i − β_j)(1 − 2ξ) + ⅔ Δβ (1 − 6ξ + 6ξ²), and w₀′ = ½(ψ_i − ψ_j)(1 − 2ξ) + ½(ψ_i + ψ_j)(1 − 6ξ + 6ξ²). The two
//! polynomials are orthogonal with squares 1/3 and 1/5.

use nalgebra::{Matrix3, Vector3};

use super::bending::EdgeLean;
use super::facet::Facet;
use super::form::PerDof;
use super::patch::next;

/// What the curvature of the surface adds to a flat facet.
#[derive(Debug, Clone, Copy)]
pub(super) struct CurvedEdges {
    /// (bending dof, strain 11 22 12): mean in-plane strain caused by bending.
    pub(super) strain: PerDof<3>,
    /// Area of the smooth surface over the facet's.
    pub(super) area_ratio: f64,
}

impl CurvedEdges {
    /// `corner_normals` (corner, xyz) unit, on the facet's side, in the top's frame.
    pub(super) fn new(facet: &Facet, corner_normals: &[Vector3<f64>; 3], lean: &EdgeLean) -> Self {
        let slopes = slopes_along_edges(facet, corner_normals);
        let mut stretch = PerDof::<3>::zeros();
        let mut excess = Vector3::zeros();
        for edge in 0..3 {
            let [first, second] = slopes[edge];
            let ends = lean.ends[edge];
            let along =
                (ends[1] - ends[0]) * ((first - second) / 12.0) + lean.edges.bubble[edge] * ((first + second) / 15.0);
            stretch.set_column(edge, &along);
            // Half of ∫w₀′²: how much longer the curve is than its chord.
            excess[edge] = (first - second).powi(2) / 24.0 + (first + second).powi(2) / 40.0;
        }
        let strain_from_edges = facet.strain_from_edges();
        let spread = strain_from_edges * excess;
        Self { strain: stretch * strain_from_edges.transpose(), area_ratio: 1.0 + spread[0] + spread[1] }
    }
}

/// (edge, end): slope of the smooth surface over the facet, along the edge.
fn slopes_along_edges(facet: &Facet, corner_normals: &[Vector3<f64>; 3]) -> [[f64; 2]; 3] {
    let to_facet: &Matrix3<f64> = &facet.facet_from_top;
    let slopes = corner_normals.map(|normal| {
        let n = to_facet * normal;
        -n.xy() / n.z
    });
    [0, 1, 2].map(|edge| [edge, next(edge)].map(|corner| slopes[corner].dot(&facet.tangents[edge])))
}
