//! A motion laid on the picture's vertices.

use super::Picture;
use crate::mesh::MidSurface;
use crate::response::{ComplexField, ShellSurface};
use crate::shell::DOFS_PER_NODE;

const M_PER_MM: f64 = 1e-3;

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
        let moved: Vec<[f64; 6]> = picture
            .sources
            .iter()
            .enumerate()
            .map(|(vertex, &(node, side))| {
                let node = node as usize;
                let half_m = 0.5 * f64::from(side) * mid.thickness_mm[node] * M_PER_MM;
                let normal = [0, 1, 2].map(|axis| f64::from(picture.normals[3 * vertex + axis]));
                at_vertex(&shape[node * DOFS_PER_NODE..], mid.normals[node].map(|n| n * half_m), normal)
            })
            .collect();
        let largest = moved.iter().map(|m| m[0].hypot(m[1]).hypot(m[2])).fold(0.0, f64::max);
        Self::scaled(&moved, if largest > 0.0 { 1.0 / largest } else { 0.0 })
    }

    /// Real and imaginary part of a driven motion `field` of `surface`, laid on vertices as [`MotionField::new`] lays a shape; both scaled
    /// alike, so that the largest displacement while it swings is 1 mm.
    ///
    /// `sources` (vertex) as [`Picture::sources`] has them, `normals` (vertex, xyz); vertices of nodes that aren't there are left out.
    #[must_use]
    pub fn of_response(
        sources: &[(u32, f32)],
        normals: &[f32],
        surface: &ShellSurface,
        field: &ComplexField,
    ) -> [Self; 2] {
        let part = |values: &[f32]| -> Vec<[f64; 6]> {
            let vertices = sources.iter().zip(normals.as_chunks::<3>().0);
            let known = vertices.filter(|((node, _), _)| (*node as usize) < surface.places_m.len());
            known
                .map(|(&(node, side), normal)| {
                    let node = node as usize;
                    let dofs: [f64; DOFS_PER_NODE] =
                        std::array::from_fn(|dof| values[node * DOFS_PER_NODE + dof].into());
                    let half_m = 0.5 * f64::from(side) * surface.thickness_m[node];
                    at_vertex(&dofs, surface.normals[node].map(|n| n * half_m), normal.map(f64::from))
                })
                .collect()
        };
        let (re, im) = (part(&field.re), part(&field.im));
        let largest = re.iter().zip(&im).map(|(re, im)| largest_swing(re, im)).fold(0.0, f64::max);
        let scale = if largest > 0.0 { 1.0 / largest } else { 0.0 };
        [Self::scaled(&re, scale), Self::scaled(&im, scale)]
    }

    fn scaled(moved: &[[f64; 6]], scale_mm_per_m: f64) -> Self {
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

/// Displacement and change of `normal` of what stands at `offset` from a node that moves by `dofs`.
fn at_vertex(dofs: &[f64], offset: [f64; 3], normal: [f64; 3]) -> [f64; 6] {
    let turn = [dofs[3], dofs[4], dofs[5]];
    let (swing, tilt) = (cross(turn, offset), cross(turn, normal));
    [dofs[0] + swing[0], dofs[1] + swing[1], dofs[2] + swing[2], tilt[0], tilt[1], tilt[2]]
}

/// The longer half axis of the ellipse Re[(re + i im) e^{iφ}].
fn largest_swing(re: &[f64; 6], im: &[f64; 6]) -> f64 {
    let product = |a: &[f64; 6], b: &[f64; 6]| a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    let (a, b, c) = (product(re, re), product(im, im), product(re, im));
    (0.5 * (a + b + ((a - b).powi(2) + 4.0 * c * c).sqrt())).sqrt()
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The definition: no phase goes further, and one goes as far.
    #[test]
    fn the_largest_swing_is_that_of_all_phases() {
        let (re, im) = ([0.3, -1.1, 0.4, 0.0, 0.0, 0.0], [0.9, 0.2, -0.7, 0.0, 0.0, 0.0]);
        let at = |step: i32| {
            let (sin, cos) = (f64::from(step) * 1e-4).sin_cos();
            (0..3).map(|axis| (re[axis] * cos - im[axis] * sin).powi(2)).sum::<f64>().sqrt()
        };
        let largest = (0..31_416).map(at).fold(0.0, f64::max);
        assert!((largest_swing(&re, &im) - largest).abs() < 1e-7, "{largest}");
    }
}
