//! The bending and transverse-shear part: a discrete Kirchhoff-Mindlin triangle.
//!
//! Katili 1993, "A new discrete Kirchhoff-Mindlin element based on Mindlin-Reissner plate theory and assumed shear strain
//! fields. Part I: an extended DKT element for thick-plate bending analysis", Int. J. Numer. Meth. Engng 36, 1859-1883.
//! Made anisotropic: the ratio of bending to shear stiffness on each edge is taken along that edge.
//!
//! Degrees of freedom: (w, rotation about 1, rotation about 2) at corners 0, 1, 2. The normal leans by β = (rotation
//! about 2, −rotation about 1).

use nalgebra::{Matrix2, Matrix3, SMatrix, Vector2, Vector3};

use super::facet::Facet;
use super::patch::next;

/// (curvature 11 22 12, dof).
pub(super) type CurvatureMatrix = SMatrix<f64, 3, 9>;
/// (shear strain 13 23, dof).
pub(super) type ShearMatrix = SMatrix<f64, 2, 9>;
/// One quantity per degree of freedom.
pub(super) type Row = SMatrix<f64, 1, 9>;

/// What the discrete constraints on the three edges say.
#[derive(Debug, Clone, Copy)]
pub(super) struct EdgeLean {
    /// (edge): the lean at mid edge, along it, beyond the mean of its ends.
    pub(super) bubble: [Row; 3],
    /// (edge): the lean along the edge at its first and second corner.
    pub(super) ends: [[Row; 2]; 3],
    /// (edge): the transverse shear strain along it.
    shear: [Row; 3],
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
        Self { bubble, ends, shear }
    }

    /// Mean curl (∂γ₂/∂1 − ∂γ₁/∂2) of the transverse shear strain: its circulation round the edges, over the area.
    pub(super) fn shear_curl(&self, facet: &Facet) -> Row {
        let [a, b, c] = [0, 1, 2].map(|edge| self.shear[edge] * (facet.lengths[edge] / facet.area));
        a + b + c
    }

    /// Curvatures per degree of freedom at the point with `barycentric` coordinates.
    pub(super) fn curvature(&self, facet: &Facet, barycentric: &[f64; 3]) -> CurvatureMatrix {
        let mut curvature = CurvatureMatrix::zeros();
        for corner in 0..3 {
            let g = facet.gradients[corner];
            let (about_1, about_2) = (3 * corner + 1, 3 * corner + 2);
            curvature[(0, about_2)] = g.x;
            curvature[(1, about_1)] = -g.y;
            curvature[(2, about_2)] = g.y;
            curvature[(2, about_1)] = -g.x;
        }
        for edge in 0..3 {
            let (i, j) = (edge, next(edge));
            let g = (facet.gradients[i] * barycentric[j] + facet.gradients[j] * barycentric[i]) * 4.0;
            let t = facet.tangents[edge];
            let shape = Vector3::new(g.x * t.x, g.y * t.y, g.y * t.x + g.x * t.y);
            curvature += shape * self.bubble[edge];
        }
        curvature
    }

    /// Mean transverse shear strains per degree of freedom.
    pub(super) fn mean_shear(&self, facet: &Facet) -> ShearMatrix {
        let [a, b, c] = self.corner_shear(facet);
        (a + b + c) / 3.0
    }

    /// (corner): transverse shear strains per degree of freedom; linear in between.
    pub(super) fn corner_shear(&self, facet: &Facet) -> [ShearMatrix; 3] {
        [0, 1, 2].map(|corner| {
            let (leaving, arriving) = (corner, next(next(corner)));
            let (a, b) = (facet.tangents[leaving], facet.tangents[arriving]);
            let determinant = a.x * b.y - a.y * b.x;
            let mut shear = ShearMatrix::zeros();
            let (along_a, along_b) = (self.shear[leaving], self.shear[arriving]);
            shear.row_mut(0).copy_from(&((along_a * b.y - along_b * a.y) / determinant));
            shear.row_mut(1).copy_from(&((along_b * a.x - along_a * b.x) / determinant));
            shear
        })
    }
}

/// The lean along `tangent` at `corner`, per degree of freedom.
fn lean_along(corner: usize, tangent: &Vector2<f64>) -> Row {
    let mut row = Row::zeros();
    row[3 * corner + 2] = tangent.x;
    row[3 * corner + 1] = -tangent.y;
    row
}
