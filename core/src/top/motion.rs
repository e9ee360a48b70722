//! A motion laid on the picture's vertices.

use super::Picture;
use crate::mesh::MidSurface;
use crate::response::ComplexField;
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
    #[must_use]
    pub fn new(picture: &Picture, mid: &MidSurface, shape: &[f64]) -> Self {
        let moved = moved(picture, mid, |dof| shape[dof]);
        let scale_mm_per_m = scale(moved.iter().map(size));
        Self { values: scaled(&moved, scale_mm_per_m), scale_mm_per_m }
    }
}

/// The same of a motion with a phase of its own everywhere, Re[(re + i im) e^{iωt}]; no displacement is ever above 1 mm.
#[derive(Debug, Clone, PartialEq)]
pub struct SwingingField {
    /// (vertex, [ux, uy, uz, nx, ny, nz]), as for [`MotionField`].
    pub re: Vec<f32>,
    /// (vertex, [ux, uy, uz, nx, ny, nz])
    pub im: Vec<f32>,
    /// What both were multiplied by, mm per m.
    pub scale_mm_per_m: f64,
}

impl SwingingField {
    /// Lays `field` on `picture`.
    #[must_use]
    pub fn new(picture: &Picture, mid: &MidSurface, field: &ComplexField) -> Self {
        let part = |values: &[f32]| moved(picture, mid, |dof| f64::from(values[dof]));
        let (re, im) = (part(&field.re), part(&field.im));
        let scale_mm_per_m = scale(re.iter().zip(&im).map(|(re, im)| farthest(re, im)));
        Self { re: scaled(&re, scale_mm_per_m), im: scaled(&im, scale_mm_per_m), scale_mm_per_m }
    }
}

/// (vertex): displacement, m, and change of the normal for the displacements and rotations `dof` (node times six, and which).
///
/// A point off the mid-surface moves with its node and swings with its rotation θ: u + θ × r; its normal by θ × n.
fn moved(picture: &Picture, mid: &MidSurface, dof: impl Fn(usize) -> f64) -> Vec<[f64; 6]> {
    let of_vertex = |(vertex, &(node, side)): (usize, &(u32, f32))| {
        let node = node as usize;
        let dofs: [f64; 6] = std::array::from_fn(|axis| dof(node * DOFS_PER_NODE + axis));
        let turn = [dofs[3], dofs[4], dofs[5]];
        let half_m = 0.5 * f64::from(side) * mid.thickness_mm[node] * M_PER_MM;
        let swing = cross(turn, mid.normals[node].map(|n| n * half_m));
        let normal = [0, 1, 2].map(|axis| f64::from(picture.normals[3 * vertex + axis]));
        let tilt = cross(turn, normal);
        [dofs[0] + swing[0], dofs[1] + swing[1], dofs[2] + swing[2], tilt[0], tilt[1], tilt[2]]
    };
    picture.sources.iter().enumerate().map(of_vertex).collect()
}

fn scale(sizes: impl Iterator<Item = f64>) -> f64 {
    let largest = sizes.fold(0.0, f64::max);
    if largest > 0.0 { 1.0 / largest } else { 0.0 }
}

fn size(moved: &[f64; 6]) -> f64 {
    moved[0].hypot(moved[1]).hypot(moved[2])
}

/// The longer half axis of the ellipse that a vertex goes round: (|re|² + |im|²)/2 and what is left of it when re and im are
/// turned until they are square to each other.
fn farthest(re: &[f64; 6], im: &[f64; 6]) -> f64 {
    let dot = |a: &[f64; 6], b: &[f64; 6]| a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    let (a, b, c) = (dot(re, re), dot(im, im), dot(re, im));
    (0.5 * (a + b + (a - b).hypot(2.0 * c))).sqrt()
}

fn scaled(moved: &[[f64; 6]], scale_mm_per_m: f64) -> Vec<f32> {
    let values = |m: &[f64; 6]| {
        // Rotations per metre of displacement times millimetres per metre: a thousandth each.
        let tilt = scale_mm_per_m * M_PER_MM;
        let factors = [scale_mm_per_m, scale_mm_per_m, scale_mm_per_m, tilt, tilt, tilt];
        std::array::from_fn::<f32, 6, _>(|k| (m[k] * factors[k]) as f32)
    };
    moved.iter().flat_map(values).collect()
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against the motion itself, sampled round the period.
    #[test]
    fn the_farthest_is_as_far_as_the_motion_goes() {
        for (re, im) in [([3.0, 0.0, 1.0], [0.5, -2.0, 0.25]), ([0.0, 0.0, 2.0], [0.0, 0.0, 1.0]), ([1.0; 3], [0.0; 3])]
        {
            let six = |v: [f64; 3]| [v[0], v[1], v[2], 9.0, 9.0, 9.0];
            let (re, im) = (six(re), six(im));
            let at = |step: i32| {
                let (sin, cos) = (f64::from(step) * std::f64::consts::TAU / 7200.0).sin_cos();
                size(&std::array::from_fn(|k| re[k] * cos - im[k] * sin))
            };
            let sampled = (0..7200).map(at).fold(0.0, f64::max);
            assert!((farthest(&re, &im) / sampled - 1.0).abs() < 1e-6, "{} {sampled}", farthest(&re, &im));
        }
    }
}
