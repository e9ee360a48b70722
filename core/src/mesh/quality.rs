//! Measures of a mesh's quality, for tests.

use super::PlanMesh;
use crate::plan::{
    Point,
    vector::{cross, dot, sub},
};

/// What a mesh is like.
#[derive(Clone, Debug)]
pub(super) struct Quality {
    /// Smallest angle of each triangle, degrees, ascending.
    pub(super) angles_deg: Vec<f64>,
    /// Sum of the triangles' areas, mm2.
    pub(super) area_mm2: f64,
}

impl Quality {
    pub(super) fn of(mesh: &PlanMesh) -> Quality {
        let mut angles_deg: Vec<f64> = mesh.triangles.iter().map(|t| smallest_angle_deg(corners(mesh, t))).collect();
        angles_deg.sort_by(f64::total_cmp);
        let area_mm2 = mesh
            .triangles
            .iter()
            .map(|t| {
                let [a, b, c] = corners(mesh, t);
                0.5 * cross(sub(b, a), sub(c, a))
            })
            .sum();
        Quality { angles_deg, area_mm2 }
    }

    /// Share of triangles whose smallest angle is at least so many degrees.
    pub(super) fn share_from(&self, degrees: f64) -> f64 {
        let below = self.angles_deg.partition_point(|&angle| angle < degrees);
        1.0 - below as f64 / self.angles_deg.len() as f64
    }
}

pub(super) fn corners(mesh: &PlanMesh, triangle: &[u32; 3]) -> [Point; 3] {
    triangle.map(|corner| mesh.points_mm[corner as usize])
}

pub(super) fn smallest_angle_deg(p: [Point; 3]) -> f64 {
    (0..3)
        .map(|i| {
            let u = sub(p[(i + 1) % 3], p[i]);
            let v = sub(p[(i + 2) % 3], p[i]);
            cross(u, v).atan2(dot(u, v)).to_degrees()
        })
        .fold(f64::INFINITY, f64::min)
}
