//! The piece of the smooth surface that one element stands for.

use nalgebra::Vector3;

/// What an element is made from; edge k runs from corner k to corner k + 1.
#[derive(Debug, Clone, Copy)]
pub(super) struct Patch {
    /// (corner, xyz), m.
    pub(super) nodes: [Vector3<f64>; 3],
    /// (corner, xyz) unit: the smooth surface's normals, on the side of the facet's.
    pub(super) normals: [Vector3<f64>; 3],
    /// (edge, xyz) unit: the same over the edges' middles.
    pub(super) edge_normals: [Vector3<f64>; 3],
    /// (edge), m: the thickness at the edges' middles.
    pub(super) edge_thickness: [f64; 3],
    /// (edge): whether the shell ends there and no couple holds it.
    pub(super) free_edges: [bool; 3],
}

impl Patch {
    /// With what is known at the corners only: linear thickness (corner; m) and normals half way between the corners'.
    pub(super) fn between(nodes: [Vector3<f64>; 3], normals: [Vector3<f64>; 3], thickness: [f64; 3]) -> Self {
        Self {
            nodes,
            normals,
            edge_normals: [0, 1, 2].map(|edge| (normals[edge] + normals[next(edge)]).normalize()),
            edge_thickness: [0, 1, 2].map(|edge| 0.5 * (thickness[edge] + thickness[next(edge)])),
            free_edges: [false; 3],
        }
    }

    /// Mean over the element, m: exact for a thickness that varies as a quadratic.
    pub(super) fn mean_thickness(&self) -> f64 {
        self.edge_thickness.iter().sum::<f64>() / 3.0
    }

    /// The same with thickness multiplied by `factor`.
    pub(super) fn thickened(self, factor: f64) -> Self {
        Self { edge_thickness: self.edge_thickness.map(|t| t * factor), ..self }
    }
}

/// The corner that edge `edge` runs to.
pub(super) const fn next(edge: usize) -> usize {
    (edge + 1) % 3
}

/// The edge that runs to corner `corner`.
pub(super) const fn before(corner: usize) -> usize {
    (corner + 2) % 3
}
