//! Where a point in plan lies on the shell.

use nalgebra::{Matrix3x6, Vector2, Vector3};

use super::FittingError;
use crate::shell::ShellGeometry;

/// Barycentric coordinates this little below zero still count as inside: rounding on an edge, nanometres on any element.
pub(super) const ON_EDGE: f64 = 1e-9;
/// A triangle whose plan has less than this share of its area stands upright and has no place in plan.
const UPRIGHT: f64 = 1e-6;

/// A point on one element.
#[derive(Debug, Clone, Copy)]
pub(super) struct Place {
    pub(super) nodes: [u32; 3],
    pub(super) barycentric: [f64; 3],
    /// On the mid-surface, m.
    pub(super) middle_m: Vector3<f64>,
    /// Unit normal of the facet, outwards (z > 0).
    pub(super) outward: Vector3<f64>,
    /// Thickness, m.
    pub(super) thickness_m: f64,
}

impl Place {
    /// The first triangle that holds the plan point.
    pub(super) fn find(geometry: &ShellGeometry, point_m: [f64; 2], what: &'static str) -> Result<Self, FittingError> {
        (0..geometry.triangles().len())
            .find_map(|triangle| {
                let barycentric = barycentric_in_plan(geometry, triangle, point_m)?;
                barycentric.iter().all(|share| *share >= -ON_EDGE).then(|| Self::on(geometry, triangle, barycentric))
            })
            .ok_or_else(|| FittingError::off_the_wood(what, point_m))
    }

    /// The point with `barycentric` coordinates in `triangle`.
    pub(super) fn on(geometry: &ShellGeometry, triangle: usize, barycentric: [f64; 3]) -> Self {
        let nodes = geometry.triangles()[triangle];
        let places = nodes.map(|node| geometry.nodes_m()[node as usize]);
        let middle_m = places.iter().zip(barycentric).map(|(place, share)| place * share).sum();
        let upright = (places[1] - places[0]).cross(&(places[2] - places[0])).normalize();
        let outward = if upright.z < 0.0 { -upright } else { upright };
        let thickness_m =
            nodes.iter().zip(barycentric).map(|(node, share)| geometry.thickness_m()[*node as usize] * share).sum();
        Self { nodes, barycentric, middle_m, outward, thickness_m }
    }

    /// The point of the inner face here, from the mid-surface.
    pub(super) fn to_inner_face(self) -> Vector3<f64> {
        self.outward * (-0.5 * self.thickness_m)
    }
}

/// (xyz, dof): how a point moves that is joined rigidly to a node and stands at `offset` from it: u + θ × offset.
pub(super) fn carried(offset: &Vector3<f64>) -> Matrix3x6<f64> {
    let mut motion = Matrix3x6::zeros();
    motion.fixed_view_mut::<3, 3>(0, 0).fill_with_identity();
    motion.fixed_view_mut::<3, 3>(0, 3).copy_from(&(-offset.cross_matrix()));
    motion
}

/// Barycentric coordinates of a plan point, negative outside; none for an upright triangle.
pub(super) fn barycentric_in_plan(geometry: &ShellGeometry, triangle: usize, point_m: [f64; 2]) -> Option<[f64; 3]> {
    let [a, b, c] = geometry.triangles()[triangle].map(|node| geometry.nodes_m()[node as usize]);
    let twice = |p: Vector2<f64>, q: Vector2<f64>, r: Vector2<f64>| (q - p).perp(&(r - p));
    let whole = twice(a.xy(), b.xy(), c.xy());
    if whole.abs() <= UPRIGHT * (b - a).cross(&(c - a)).norm() {
        return None;
    }
    let p = Vector2::from(point_m);
    Some([twice(p, b.xy(), c.xy()), twice(a.xy(), p, c.xy()), twice(a.xy(), b.xy(), p)].map(|part| part / whole))
}
