//! The stress along a free edge of the wood.
//!
//! Nothing pulls on a free edge from outside, so that the wood there is pulled in one direction only: its stress is the
//! strain along the edge times the modulus in that direction. This needs the motion of the edge's nodes alone, and
//! the greatest stress beside a hole lies on its edge.

use nalgebra::{Matrix3, Vector3};

use crate::{
    shell::{DOFS_PER_NODE, ShellGeometry},
    wood::Wood,
};

const MM_PER_M: f64 = 1e3;
const PA_PER_MPA: f64 = 1e6;

/// The stress in the middle of one side of an edge line, tension positive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EdgeStress {
    /// Where, on the mid-surface, mm.
    pub at_mm: [f64; 3],
    /// Of the side, mm.
    pub length_mm: f64,
    /// On the outer face and on the inner one, MPa.
    pub faces_mpa: [f64; 2],
    /// Angle between the edge and the grain, 0 to 90 degrees.
    pub to_grain_deg: f64,
}

/// (side of `line`): stresses along a line of nodes on a free edge, from node to node, and back from the last to the first
/// when `closed`. `moved` is what [`super::displacements`] gives.
///
/// The error falls as the square of the sides' length where the edge is smooth. At a sharp inner corner stress has no limit,
/// and what is given grows as the mesh gets finer.
#[must_use]
pub fn edge_stresses(
    geometry: &ShellGeometry,
    wood: &Wood,
    line: &[u32],
    closed: bool,
    moved: &[[f64; DOFS_PER_NODE]],
) -> Vec<EdgeStress> {
    let (nodes, thickness, normals) = (geometry.nodes_m(), geometry.thickness_m(), geometry.node_normals());
    let grain = wood.grain();
    let sides = if closed { line.len() } else { line.len().saturating_sub(1) };
    let stress = |side: usize| {
        let ends = [line[side], line[(side + 1) % line.len()]].map(|node| node as usize);
        let [start, end] = ends.map(|node| nodes[node]);
        let along = (end - start).normalize();
        let normal = normals[ends[0]] + normals[ends[1]];
        let normal = (normal - along * normal.dot(&along)).normalize();
        let facet = Matrix3::from_rows(&[along.transpose(), normal.cross(&along).transpose(), normal.transpose()]);
        let compliance = grain.seen_from(&facet);
        let face = |sign: f64| {
            let [(p, u), (q, v)] = ends.map(|node| {
                let arm = normals[node] * (0.5 * sign * thickness[node]);
                let [ux, uy, uz, rx, ry, rz] = moved[node];
                (nodes[node] + arm, Vector3::new(ux, uy, uz) + Vector3::new(rx, ry, rz).cross(&arm))
            });
            (v - u).dot(&(q - p)) / (q - p).norm_squared() / compliance.in_plane[(0, 0)] / PA_PER_MPA
        };
        EdgeStress {
            length_mm: (end - start).norm() * MM_PER_M,
            at_mm: ((start + end) * (0.5 * MM_PER_M)).into(),
            faces_mpa: [face(1.0), face(-1.0)],
            to_grain_deg: along.y.abs().min(1.0).acos().to_degrees(),
        }
    };
    (0..sides).map(stress).collect()
}
