//! The flat triangle through an element's three nodes, and its axes.

use nalgebra::{Matrix2, Matrix3, Vector2, Vector3};

use super::patch::next;

/// A triangle in its own plane.
///
/// Corners 0, 1, 2 run counter-clockwise seen from the tip of axis 3; edge k runs from corner k to corner k + 1.
#[derive(Debug, Clone, Copy)]
pub(super) struct Facet {
    /// Axes 1, 2, 3 as rows, written in the top's frame; axis 3 is the facet's normal.
    pub(super) facet_from_top: Matrix3<f64>,
    /// (corner, 12) in metres, origin at corner 0.
    pub(super) corners: [Vector2<f64>; 3],
    /// Square metres.
    pub(super) area: f64,
    /// (corner): gradient of the corner's linear shape function, 1/m.
    pub(super) gradients: [Vector2<f64>; 3],
    /// (edge) length, m.
    pub(super) lengths: [f64; 3],
    /// (edge, 12) unit tangent.
    pub(super) tangents: [Vector2<f64>; 3],
}

impl Facet {
    pub(super) fn new(nodes: &[Vector3<f64>; 3]) -> Self {
        let to_1 = nodes[1] - nodes[0];
        let to_2 = nodes[2] - nodes[0];
        let axis_1 = to_1.normalize();
        let axis_3 = to_1.cross(&to_2).normalize();
        let axis_2 = axis_3.cross(&axis_1);
        let flat = |v: &Vector3<f64>| Vector2::new(v.dot(&axis_1), v.dot(&axis_2));
        let corners = [Vector2::zeros(), flat(&to_1), flat(&to_2)];
        let area = 0.5 * (corners[1].x * corners[2].y - corners[2].x * corners[1].y);
        let edge = |k: usize| corners[next(k)] - corners[k];
        // The gradient at corner k is the opposite edge turned inwards, over twice the area.
        let gradients = [0, 1, 2].map(|k| {
            let opposite = edge(next(k));
            Vector2::new(-opposite.y, opposite.x) / (2.0 * area)
        });
        let lengths = [0, 1, 2].map(|k| edge(k).norm());
        let tangents = [0, 1, 2].map(|k| edge(k) / lengths[k]);
        let facet_from_top = Matrix3::from_rows(&[axis_1.transpose(), axis_2.transpose(), axis_3.transpose()]);
        Self { facet_from_top, corners, area, gradients, lengths, tangents }
    }

    /// Mean of r rᵀ over the area, r from the centroid, m².
    pub(super) fn second_moment(&self) -> Matrix2<f64> {
        let centroid = (self.corners[0] + self.corners[1] + self.corners[2]) / 3.0;
        let of = |corner: &Vector2<f64>| {
            let r = corner - centroid;
            r * r.transpose() / 12.0
        };
        of(&self.corners[0]) + of(&self.corners[1]) + of(&self.corners[2])
    }

    /// The matrix that gives a constant strain (11, 22, 12) from the stretches of the three edges.
    pub(super) fn strain_from_edges(&self) -> Matrix3<f64> {
        let stretch_of_strain = Matrix3::from_fn(|edge, strain| {
            let (c, s) = (self.tangents[edge].x, self.tangents[edge].y);
            [c * c, s * s, c * s][strain]
        });
        stretch_of_strain.try_inverse().expect("the three edges of a checked triangle differ in direction")
    }
}
