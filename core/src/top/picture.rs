//! The top as the view draws it: outside, inside and the walls between.

use crate::mesh::{MidSurface, PlanMesh};

/// Which surface a vertex belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[repr(u32)]
pub enum VertexKind {
    /// The outer surface.
    Outside = 0,
    /// The inner surface.
    Inside = 1,
    /// The edge and the walls of the holes.
    Wall = 2,
}

/// One triangle mesh of the carved wood.
///
/// Vertices: the outside nodes, the inside nodes, then for each node on the outline or a hole a vertex of the wall outside
/// and one inside: doubled, so that edges are crisp.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// (vertex, xyz) mm.
    pub positions: Vec<f32>,
    /// (vertex, xyz) unit.
    pub normals: Vec<f32>,
    /// (triangle, corner), counter-clockwise seen from the air.
    pub triangles: Vec<u32>,
    /// (vertex) [`VertexKind`] as a number.
    pub kinds: Vec<u32>,
    /// (vertex) the node it moves with and where it stands: +1 at the outer surface, −1 at the inner.
    pub(super) sources: Vec<(u32, f32)>,
}

impl Picture {
    /// (vertex): the node it moves with and where it stands, +1 at the outer surface, −1 at the inner.
    #[must_use]
    pub fn sources(&self) -> &[(u32, f32)] {
        &self.sources
    }

    /// Draws the wood round `mid` on `mesh`.
    #[must_use]
    pub fn new(mesh: &PlanMesh, mid: &MidSurface) -> Self {
        let mut picture = Self {
            positions: Vec::new(),
            normals: Vec::new(),
            triangles: Vec::with_capacity(6 * mesh.triangles.len()),
            kinds: Vec::new(),
            sources: Vec::new(),
        };
        let nodes = mesh.points_mm.len() as u32;
        for (kind, side) in [(VertexKind::Outside, 1.0), (VertexKind::Inside, -1.0)] {
            for node in 0..nodes {
                let normal = mid.normals[node as usize].map(|n| n * side);
                picture.push_vertex(mid, node, side, normal, kind);
            }
        }
        for &[a, b, c] in &mesh.triangles {
            picture.triangles.extend([a, b, c, nodes + a, nodes + c, nodes + b]);
        }
        picture.push_wall(mesh, mid, &mesh.rim_nodes);
        for hole in &mesh.hole_loops {
            picture.push_wall(mesh, mid, hole);
        }
        picture
    }

    /// Number of vertices.
    #[must_use]
    pub fn vertices(&self) -> usize {
        self.kinds.len()
    }

    fn push_vertex(&mut self, mid: &MidSurface, node: u32, side: f64, normal: [f64; 3], kind: VertexKind) {
        let at = node as usize;
        let half = 0.5 * side * mid.thickness_mm[at];
        self.positions
            .extend(mid.nodes_mm[at].iter().zip(&mid.normals[at]).map(|(place, n)| (place + half * n) as f32));
        self.normals.extend(normal.map(|n| n as f32));
        self.kinds.push(kind as u32);
        self.sources.push((node, side as f32));
    }

    /// The wall along a closed loop of nodes that has the wood on its left.
    fn push_wall(&mut self, mesh: &PlanMesh, mid: &MidSurface, boundary: &[u32]) {
        let first = self.vertices() as u32;
        let count = boundary.len();
        for (index, &node) in boundary.iter().enumerate() {
            let before = mesh.points_mm[boundary[(index + count - 1) % count] as usize];
            let after = mesh.points_mm[boundary[(index + 1) % count] as usize];
            // The wood lies on the left, so the air is where the loop's direction turned right points.
            let (x, y) = (after[1] - before[1], before[0] - after[0]);
            let length = x.hypot(y).max(f64::MIN_POSITIVE);
            let outwards = [x / length, y / length, 0.0];
            for side in [1.0, -1.0] {
                self.push_vertex(mid, node, side, outwards, VertexKind::Wall);
            }
        }
        for index in 0..count as u32 {
            let (top, next) = (first + 2 * index, first + 2 * ((index + 1) % count as u32));
            self.triangles.extend([top, top + 1, next + 1, top, next + 1, next]);
        }
    }
}
