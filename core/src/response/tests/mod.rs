//! Responses against closed forms, laws of mechanics, and a direct solve of the equations.

mod bridge;
mod closed_forms;
mod direct;
mod laws;
mod plate;
mod radiation;
mod sound;

use super::{ModalArrays, ModalBasis, ShellSurface};
use crate::shell::DOFS_PER_NODE;

/// A level square of one metre in four triangles round a middle node (node 4), of mass 1 kg in all, moving outwards as a whole at each of
/// `frequencies_hz`: modes of unit modal mass with all the freedom that a textbook's oscillators have.
fn oscillators(frequencies_hz: &[f64], loss_factors: &[f64]) -> ModalBasis {
    let surface = ShellSurface {
        places_m: vec![[0.0, 0.0, 0.0], [1.0, 0.0, 0.0], [1.0, 1.0, 0.0], [0.0, 1.0, 0.0], [0.5, 0.5, 0.0]],
        normals: vec![[0.0, 0.0, 1.0]; 5],
        areas_m2: [1.0 / 6.0; 4].into_iter().chain([1.0 / 3.0]).collect(),
        thickness_m: vec![0.01; 5],
        masses_kg: vec![0.2; 5],
        triangles: vec![[0, 1, 4], [1, 2, 4], [2, 3, 4], [3, 0, 4]],
    };
    let outward: [f32; DOFS_PER_NODE] = [0.0, 0.0, 1.0, 0.0, 0.0, 0.0];
    let shapes = outward.repeat(5 * frequencies_hz.len());
    let (frequencies_hz, loss_factors) = (frequencies_hz.to_vec(), loss_factors.to_vec());
    ModalBasis::new(ModalArrays { surface, rigid: 0, residual: 0, frequencies_hz, loss_factors, shapes }).unwrap()
}
