//! A motion laid on the picture's vertices.

use super::Picture;
use crate::mesh::MidSurface;
use crate::shell::DOFS_PER_NODE;

/// Displacement and tilt of every vertex of a [`Picture`], scaled so that the largest displacement is 1 mm.
#[derive(Debug, Clone, PartialEq)]
pub struct MotionField {
    /// (vertex, [ux, uy, uz, nx, ny, nz]): displacement, mm, and change of the normal.
    pub values: Vec<f32>,
    /// What the shape was multiplied by, mm per unit of its displacement (m).
    pub scale_mm_per_m: f64,
}

impl MotionField {
    /// Lays the real `shape` (node, dof; m and rad) on `picture`.
    ///
    /// A point off the mid-surface moves with its node and swings with its rotation θ: u + θ × r; its normal by θ × n.
    #[must_use]
    pub fn new(picture: &Picture, mid: &MidSurface, shape: &[f64]) -> Self {
        const M_PER_MM: f64 = 1e-3;
        let moved: Vec<[f64; 6]> = picture
            .sources
            .iter()
            .enumerate()
            .map(|(vertex, &(node, side))| {
                let node = node as usize;
                let dofs = &shape[node * DOFS_PER_NODE..(node + 1) * DOFS_PER_NODE];
                let turn = [dofs[3], dofs[4], dofs[5]];
                let half_m = 0.5 * f64::from(side) * mid.thickness_mm[node] * M_PER_MM;
                let swing = cross(turn, mid.normals[node].map(|n| n * half_m));
                let normal = [0, 1, 2].map(|axis| f64::from(picture.normals[3 * vertex + axis]));
                let tilt = cross(turn, normal);
                [dofs[0] + swing[0], dofs[1] + swing[1], dofs[2] + swing[2], tilt[0], tilt[1], tilt[2]]
            })
            .collect();
        let largest = moved.iter().map(|m| m[0].hypot(m[1]).hypot(m[2])).fold(0.0, f64::max);
        let scale_mm_per_m = if largest > 0.0 { 1.0 / largest } else { 0.0 };
        let values = moved
            .iter()
            .flat_map(|m| {
                let displacement = [m[0], m[1], m[2]].map(|u| (u * scale_mm_per_m) as f32);
                // Rotations per metre of displacement times millimetres per metre: a thousandth each.
                let tilt = [m[3], m[4], m[5]].map(|n| (n * scale_mm_per_m * M_PER_MM) as f32);
                displacement.into_iter().chain(tilt)
            })
            .collect();
        Self { values, scale_mm_per_m }
    }
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}
