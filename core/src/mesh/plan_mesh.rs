//! The mesh in plan.

use super::{
    Edges, MeshError,
    count::{self, Placed},
    domain::Domain,
    improve, smooth, triangulate,
};
use crate::{
    outline::Outline,
    plan::{
        Point,
        vector::{distance, mirrored},
    },
    sound_holes::SoundHole,
};

/// How fine a mesh is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeshSize {
    /// 1 000 to 1 200 nodes: follows a dragged handle.
    Preview,
    /// 2 500 to 3 000 nodes: the figures shown.
    Standard,
    /// 8 000 to 10 000 nodes: the figures checked.
    Fine,
}

impl MeshSize {
    /// Fewest and most nodes.
    pub fn node_range(self) -> [usize; 2] {
        match self {
            MeshSize::Preview => [1000, 1200],
            MeshSize::Standard => [2500, 3000],
            MeshSize::Fine => [8000, 10_000],
        }
    }

    pub(super) fn edges_along(self) -> f64 {
        match self {
            MeshSize::Preview => 30.0,
            MeshSize::Standard => 60.0,
            MeshSize::Fine => 120.0,
        }
    }
}

/// The top between outline and holes as triangles in plan; knows no heights.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanMesh {
    /// (node, xy), mm: where the node's point of the outer surface stands.
    pub points_mm: Vec<Point>,
    /// (triangle, corner) nodes, counter-clockwise seen from outside.
    pub triangles: Vec<[u32; 3]>,
    /// Nodes on the outline, in order, counter-clockwise.
    pub rim_nodes: Vec<u32>,
    /// Per hole, its nodes in order, clockwise: the wood lies on the left.
    pub hole_loops: Vec<Vec<u32>>,
    /// The triangles' edges.
    pub edges: Edges,
}

/// Nodes and edges that mirror an earlier one; none for the others.
#[derive(Clone, Debug, Default)]
pub struct Mirror {
    /// (node) node.
    pub of_node: Vec<Option<u32>>,
    /// (edge) edge.
    pub of_edge: Vec<Option<u32>>,
}

/// Rounds of smoothing and of mending sharp triangles, each with a new triangulation: most is gained in the first few.
const SMOOTHING: usize = 5;
const MENDING: usize = 3;

impl PlanMesh {
    /// Meshes the wood.
    ///
    /// # Errors
    /// [`MeshError`] when boundaries are too near each other or the node count can't be reached.
    pub fn new(outline: &Outline, holes: &[SoundHole], size: MeshSize) -> Result<PlanMesh, MeshError> {
        let domain = Domain::new(outline, holes);
        let Placed { boundary, interior, polygons, field } = count::place(&domain, outline.length_mm(), size)?;
        let fixed = boundary.points.len();
        let mut points = boundary.points;
        points.extend(interior);
        let edges: Vec<[usize; 2]> = boundary
            .rings
            .iter()
            .flat_map(|ring| (0..ring.len()).map(|i| [ring[i] as usize, ring[(i + 1) % ring.len()] as usize]))
            .collect();
        let mut triangles = triangulate::triangles(&points, &edges, fixed, &polygons)?;
        for round in 0..SMOOTHING + MENDING {
            if round < SMOOTHING {
                smooth::round(&mut points, &triangles, fixed, &field);
            } else {
                improve::sharp_triangles(&mut points, &triangles, fixed);
            }
            triangles = triangulate::triangles(&points, &edges, fixed, &polygons)?;
        }
        let mut rings = boundary.rings.into_iter();
        let rim_nodes = rings.next().unwrap_or_default();
        let hole_loops = rings.collect();
        let mesh = PlanMesh { points_mm: points, triangles, rim_nodes, hole_loops, edges: Edges::default() };
        let mesh = if domain.is_half { mesh.with_mirror_image() } else { mesh };
        Ok(PlanMesh { edges: Edges::of(&mesh.triangles), ..mesh })
    }

    /// The outline's nodes, then those of each hole.
    pub(super) fn loops(&self) -> impl Iterator<Item = &Vec<u32>> {
        std::iter::once(&self.rim_nodes).chain(&self.hole_loops)
    }

    /// (edge), mm.
    pub(super) fn edge_lengths_mm(&self) -> impl Iterator<Item = f64> {
        self.edges.ends.iter().map(|&[a, b]| distance(self.points_mm[a as usize], self.points_mm[b as usize]))
    }

    /// Of a mesh that was joined to its mirror image: each node off the centreline that was meshed, with its image.
    pub(super) fn images(&self) -> impl Iterator<Item = (usize, usize)> {
        let on_centreline = self.points_mm.iter().filter(|p| p[0] == 0.0).count();
        let meshed = (self.points_mm.len() + on_centreline) / 2;
        (0..meshed).filter(|&node| self.points_mm[node][0] != 0.0).zip(meshed..)
    }

    /// Which node and which edge mirrors which; none unless the second half of the triangles mirrors the first exactly.
    pub fn mirror(&self) -> Option<Mirror> {
        let (own, images) = self.triangles.split_at(self.triangles.len() / 2);
        let (own_edges, image_edges) = self.edges.of_triangle.split_at(own.len());
        let mut mirror =
            Mirror { of_node: vec![None; self.points_mm.len()], of_edge: vec![None; self.edges.ends.len()] };
        if own.len() != images.len() {
            return None;
        }
        for (own, image) in own.iter().zip(images) {
            // Two corners change places, so that both triangles face the same way.
            for (node, image) in own.iter().zip([image[0], image[2], image[1]]) {
                if self.points_mm[image as usize] != mirrored(self.points_mm[*node as usize]) {
                    return None;
                }
                mirror.of_node[image as usize] = Some(*node).filter(|&node| node < image);
            }
        }
        for (own, image) in own_edges.iter().zip(image_edges) {
            for (edge, image) in own.iter().zip([image[2], image[1], image[0]]) {
                mirror.of_edge[image as usize] = Some(*edge).filter(|&edge| edge < image);
            }
        }
        Some(mirror)
    }

    /// Joins a treble half, closed by the centreline x = 0, to its mirror image.
    fn with_mirror_image(self) -> PlanMesh {
        let mut points_mm = self.points_mm;
        let mut image: Vec<u32> = Vec::with_capacity(points_mm.len());
        for i in 0..points_mm.len() {
            let p = points_mm[i];
            if p[0] == 0.0 {
                image.push(i as u32);
            } else {
                image.push(points_mm.len() as u32);
                points_mm.push(mirrored(p));
            }
        }
        let images = |nodes: &[u32]| -> Vec<u32> { nodes.iter().rev().map(|&node| image[node as usize]).collect() };
        let mut triangles = self.triangles;
        for i in 0..triangles.len() {
            let [a, b, c] = triangles[i].map(|corner| image[corner as usize]);
            triangles.push([a, c, b]);
        }
        // The half's rim runs up the treble side from the bottom centre to the neck-end centre, then down the centreline.
        let top = self.rim_nodes.iter().skip(1).position(|&node| points_mm[node as usize][0] == 0.0);
        let treble = &self.rim_nodes[..top.map_or(self.rim_nodes.len(), |i| i + 2)];
        let mut rim_nodes = treble.to_vec();
        rim_nodes.extend(images(&treble[1..treble.len() - 1]));
        let hole_loops = self.hole_loops.iter().flat_map(|nodes| [images(nodes), nodes.clone()]).collect();
        PlanMesh { points_mm, triangles, rim_nodes, hole_loops, edges: self.edges }
    }
}
