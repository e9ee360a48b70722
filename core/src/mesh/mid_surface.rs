//! The carved wood's mid-surface on a plan mesh.

use super::{Across, PlanMesh};
use crate::{graduation::Graduation, plan::Point, surface::Surface};

/// Where the middle of the wood is, which way it faces and how thick it is.
#[derive(Clone, Debug, PartialEq)]
pub struct MidSurface {
    /// (node, xyz), mm: the outer surface's point less half the thickness along its normal.
    pub nodes_mm: Vec<[f64; 3]>,
    /// (node, xyz), unit, outwards: the outer surface's normal.
    pub normals: Vec<[f64; 3]>,
    /// (node), mm, along the normal.
    pub thickness_mm: Vec<f64>,
    /// (edge, xyz), unit, outwards: the outer surface's normal over the edge's middle in plan.
    pub edge_normals: Vec<[f64; 3]>,
    /// (edge), mm, along that normal.
    pub edge_thickness_mm: Vec<f64>,
    /// The middle's own normals, and the thickness along these.
    pub across: Across,
}

/// The wood over a place in plan.
#[derive(Clone, Copy, Debug)]
pub struct Sample {
    /// Its middle, xyz, mm.
    pub middle_mm: [f64; 3],
    /// Unit, outwards.
    pub normal: [f64; 3],
    /// Along the normal, mm.
    pub thickness_mm: f64,
}

impl Sample {
    /// Carved wood under the point `p` of the outer surface.
    pub fn carved(surface: &Surface, graduation: &Graduation, p: Point) -> Sample {
        let on = surface.at(p);
        let normal = on.normal();
        let thickness_mm = graduation.thickness_mm(p);
        let outside = [p[0], p[1], on.height_mm];
        let middle_mm = [0, 1, 2].map(|k| outside[k] - 0.5 * thickness_mm * normal[k]);
        Sample { middle_mm, normal, thickness_mm }
    }
}

impl MidSurface {
    /// Lays surface and graduation on a mesh. The plan point of a node is that of its point on the outer surface.
    pub fn new(mesh: &PlanMesh, surface: &Surface, graduation: &Graduation) -> MidSurface {
        let mut mid = MidSurface::laid(mesh, |p| Sample::carved(surface, graduation, p));
        mid.across = Across::carved(mesh, &mid);
        mid
    }

    /// Lays what `at` says of each place in plan on a mesh; the normals are to be the middle's own.
    pub fn sampled(mesh: &PlanMesh, at: impl Fn(Point) -> Sample) -> MidSurface {
        let mut mid = MidSurface::laid(mesh, at);
        mid.across = Across::even(&mid);
        mid
    }

    /// The same, but for `across`, which stays empty.
    pub(super) fn laid(mesh: &PlanMesh, at: impl Fn(Point) -> Sample) -> MidSurface {
        let (nodes, edges) = (mesh.points_mm.len(), mesh.edges.ends.len());
        let mut mid = MidSurface {
            nodes_mm: Vec::with_capacity(nodes),
            normals: Vec::with_capacity(nodes),
            thickness_mm: Vec::with_capacity(nodes),
            edge_normals: Vec::with_capacity(edges),
            edge_thickness_mm: Vec::with_capacity(edges),
            across: Across::default(),
        };
        for &p in &mesh.points_mm {
            let sample = at(p);
            mid.nodes_mm.push(sample.middle_mm);
            mid.normals.push(sample.normal);
            mid.thickness_mm.push(sample.thickness_mm);
        }
        for ends in &mesh.edges.ends {
            let [a, b] = ends.map(|node| mesh.points_mm[node as usize]);
            let sample = at([0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])]);
            mid.edge_normals.push(sample.normal);
            mid.edge_thickness_mm.push(sample.thickness_mm);
        }
        mid
    }

    /// Volume of wood, mm3: each triangle's area times its mean thickness, exact for a quadratic one.
    pub fn volume_mm3(&self, mesh: &PlanMesh) -> f64 {
        mesh.triangles
            .iter()
            .zip(&mesh.edges.of_triangle)
            .map(|(triangle, edges)| {
                let [a, b, c] = triangle.map(|corner| self.nodes_mm[corner as usize]);
                let u = [0, 1, 2].map(|k| b[k] - a[k]);
                let v = [0, 1, 2].map(|k| c[k] - a[k]);
                let normal = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
                let area = 0.5 * normal.iter().map(|n| n * n).sum::<f64>().sqrt();
                let thickness: f64 = edges.iter().map(|&edge| self.edge_thickness_mm[edge as usize]).sum();
                area * thickness / 3.0
            })
            .sum()
    }
}
