//! The bending and transverse-shear part: a discrete Kirchhoff-Mindlin triangle.
//!
//! Katili 1993, "A new discrete Kirchhoff-Mindlin element based on Mindlin-Reissner plate theory and assumed shear strain
//! fields. Part I: an extended DKT element for thick-plate bending analysis", Int. J. Numer. Meth. Engng 36, 1859-1883.
//! Made anisotropic: the ratio of bending to shear stiffness on each edge is taken along that edge.
//!
//! Degrees of freedom: (w, rotation about 1, rotation about 2) at corners 0, 1, 2. The normal leans by β = (rotation
//! about 2, −rotation about 1).

use nalgebra::{Matrix2, Matrix3, SVector, Vector2, Vector3};

use super::edge_fields::EdgeFields;
use super::facet::Facet;
use super::form::PerDof;
use super::patch::next;

/// One quantity per degree of freedom.
pub(super) type Row = SVector<f64, 9>;

/// What the discrete constraints on the three edges say.
#[derive(Debug, Clone, Copy)]
pub(super) struct EdgeLean {
    /// (edge): the lean along the edge at its first and second corner.
    pub(super) ends: [[Row; 2]; 3],
    /// (edge): twelve times bending over shear stiffness along it and length squared.
    pub(super) ratio: [f64; 3],
    /// Per degree of freedom.
    pub(super) edges: EdgeFields<9>,
}

impl EdgeLean {
    /// Solves the three edge constraints for bending stiffness `bending` (N·m) and transverse shear flexibility
    /// `shear_flexibility` (m/N).
    pub(super) fn new(facet: &Facet, bending: &Matrix3<f64>, shear_flexibility: &Matrix2<f64>) -> Self {
        let ends = [0, 1, 2].map(|edge| [edge, next(edge)].map(|corner| lean_along(corner, &facet.tangents[edge])));
        let ratio = [0, 1, 2].map(|edge| {
            let t = facet.tangents[edge];
            let along = Vector3::new(t.x * t.x, t.y * t.y, 2.0 * t.x * t.y);
            12.0 * along.dot(&(bending * along)) * t.dot(&(shear_flexibility * t)) / facet.lengths[edge].powi(2)
        });
        let bubble = [0, 1, 2].map(|edge| {
            let mut gap = (ends[edge][0] + ends[edge][1]) * (0.5 * facet.lengths[edge]);
            gap[3 * next(edge)] += 1.0;
            gap[3 * edge] -= 1.0;
            gap * (-1.5 / (facet.lengths[edge] * (1.0 + ratio[edge])))
        });
        let shear = [0, 1, 2].map(|edge| bubble[edge] * (-2.0 / 3.0 * ratio[edge]));
        Self { ends, ratio, edges: EdgeFields { bubble, shear } }
    }

    /// (dof, curvature 11 22 12) at the point with `barycentric` coordinates.
    pub(super) fn curvature(&self, facet: &Facet, barycentric: &[f64; 3]) -> PerDof<3> {
        let mut curvature = PerDof::zeros();
        for corner in 0..3 {
            let g = facet.gradients[corner];
            let (about_1, about_2) = (3 * corner + 1, 3 * corner + 2);
            curvature[(about_2, 0)] = g.x;
            curvature[(about_1, 1)] = -g.y;
            curvature[(about_2, 2)] = g.y;
            curvature[(about_1, 2)] = -g.x;
        }
        curvature + self.edges.curvature(facet, barycentric)
    }

    /// How the lean towards `towards` grows along `along` at the point with `barycentric` coordinates, 1/m.
    pub(super) fn growth(
        &self,
        facet: &Facet,
        barycentric: &[f64; 3],
        towards: &Vector2<f64>,
        along: &Vector2<f64>,
    ) -> Row {
        let of = |corner: usize| lean_along(corner, towards) * facet.gradients[corner].dot(along);
        of(0) + of(1) + of(2) + self.edges.growth(facet, barycentric, towards, along)
    }
}

/// The lean along `tangent` at `corner`, per degree of freedom.
fn lean_along(corner: usize, tangent: &Vector2<f64>) -> Row {
    let mut row = Row::zeros();
    row[3 * corner + 2] = tangent.x;
    row[3 * corner + 1] = -tangent.y;
    row
}
