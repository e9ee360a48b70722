//! The carved wood's mid-surface on a plan mesh.

use super::PlanMesh;
use crate::{graduation::Graduation, surface::Surface};

/// Where the middle of the wood is, which way it faces and how thick it is, node by node.
#[derive(Clone, Debug, PartialEq)]
pub struct MidSurface {
    /// (node, xyz), mm: the outer surface's point less half the thickness along its normal.
    pub nodes_mm: Vec<[f64; 3]>,
    /// (node, xyz), unit, outwards: the outer surface's normal.
    pub normals: Vec<[f64; 3]>,
    /// (node), mm, along the normal.
    pub thickness_mm: Vec<f64>,
}

impl MidSurface {
    /// Lays surface and graduation on a mesh. The plan point of a node is that of its point on the outer surface.
    pub fn new(mesh: &PlanMesh, surface: &Surface, graduation: &Graduation) -> MidSurface {
        let count = mesh.points_mm.len();
        let mut mid = MidSurface {
            nodes_mm: Vec::with_capacity(count),
            normals: Vec::with_capacity(count),
            thickness_mm: Vec::with_capacity(count),
        };
        for &p in &mesh.points_mm {
            let on = surface.at(p);
            let normal = on.normal();
            let thickness = graduation.thickness_mm(p);
            let inwards = 0.5 * thickness;
            mid.nodes_mm.push([
                p[0] - inwards * normal[0],
                p[1] - inwards * normal[1],
                on.height_mm - inwards * normal[2],
            ]);
            mid.normals.push(normal);
            mid.thickness_mm.push(thickness);
        }
        mid
    }

    /// Volume of wood, mm3: each triangle's area times its mean thickness.
    pub fn volume_mm3(&self, mesh: &PlanMesh) -> f64 {
        mesh.triangles
            .iter()
            .map(|triangle| {
                let [a, b, c] = triangle.map(|corner| self.nodes_mm[corner as usize]);
                let u = [0, 1, 2].map(|k| b[k] - a[k]);
                let v = [0, 1, 2].map(|k| c[k] - a[k]);
                let normal = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
                let area = 0.5 * normal.iter().map(|n| n * n).sum::<f64>().sqrt();
                let thickness: f64 = triangle.iter().map(|&corner| self.thickness_mm[corner as usize]).sum();
                area * thickness / 3.0
            })
            .sum()
    }
}
