//! What the three edges say of the lean between their ends, and the fields it spreads over the element.

use nalgebra::{SMatrix, SVector, Vector2, Vector3};

use super::facet::Facet;
use super::patch::next;

/// Along each edge, per any `N` quantities that it is linear in.
#[derive(Debug, Clone, Copy)]
pub(super) struct EdgeFields<const N: usize> {
    /// (edge): the lean at mid edge, along it, beyond the mean of its ends.
    pub(super) bubble: [SVector<f64, N>; 3],
    /// (edge): the transverse shear strain along it.
    pub(super) shear: [SVector<f64, N>; 3],
}

impl<const N: usize> EdgeFields<N> {
    /// (quantity, curvature 11 22 12) that the bubbles make at the point with `barycentric` coordinates.
    pub(super) fn curvature(&self, facet: &Facet, barycentric: &[f64; 3]) -> SMatrix<f64, N, 3> {
        let mut curvature = SMatrix::zeros();
        for edge in 0..3 {
            let g = bubble_gradient(facet, barycentric, edge);
            let t = facet.tangents[edge];
            let shape = Vector3::new(g.x * t.x, g.y * t.y, g.y * t.x + g.x * t.y);
            curvature += self.bubble[edge] * shape.transpose();
        }
        curvature
    }

    /// (quantity): how the bubbles' lean towards `towards` grows along `along` at the point with `barycentric` coordinates, 1/m.
    pub(super) fn growth(
        &self,
        facet: &Facet,
        barycentric: &[f64; 3],
        towards: &Vector2<f64>,
        along: &Vector2<f64>,
    ) -> SVector<f64, N> {
        let of = |edge: usize| {
            let g = bubble_gradient(facet, barycentric, edge);
            self.bubble[edge] * (facet.tangents[edge].dot(towards) * g.dot(along))
        };
        of(0) + of(1) + of(2)
    }

    /// Mean curl (∂γ₂/∂1 − ∂γ₁/∂2) of the transverse shear strain: its circulation round the edges, over the area.
    pub(super) fn shear_curl(&self, facet: &Facet) -> SVector<f64, N> {
        let [a, b, c] = [0, 1, 2].map(|edge| self.shear[edge] * (facet.lengths[edge] / facet.area));
        a + b + c
    }

    /// (quantity, 13 23): mean transverse shear strains.
    pub(super) fn mean_shear(&self, facet: &Facet) -> SMatrix<f64, N, 2> {
        let [a, b, c] = self.corner_shear(facet);
        (a + b + c) / 3.0
    }

    /// (corner): (quantity, 13 23), transverse shear strains; linear in between.
    pub(super) fn corner_shear(&self, facet: &Facet) -> [SMatrix<f64, N, 2>; 3] {
        [0, 1, 2].map(|corner| {
            let (leaving, arriving) = (corner, next(next(corner)));
            let (a, b) = (facet.tangents[leaving], facet.tangents[arriving]);
            let determinant = a.x * b.y - a.y * b.x;
            let (along_a, along_b) = (self.shear[leaving] / determinant, self.shear[arriving] / determinant);
            SMatrix::from_columns(&[along_a * b.y - along_b * a.y, along_b * a.x - along_a * b.x])
        })
    }
}

/// Of the function that is one at the edge's middle and zero on both other edges, 1/m.
fn bubble_gradient(facet: &Facet, barycentric: &[f64; 3], edge: usize) -> Vector2<f64> {
    let (i, j) = (edge, next(edge));
    (facet.gradients[i] * barycentric[j] + facet.gradients[j] * barycentric[i]) * 4.0
}
