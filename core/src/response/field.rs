//! Displacement and rotation of every node at one frequency.

use super::{Complex, ModalBasis};
use crate::shell::DOFS_PER_NODE;

/// Numbers summed at once: real and imaginary part of so many, and the shapes' own, stay in the nearest cache.
const BLOCK: usize = 1024;

/// Complex displacements (m) and rotations (rad) of all nodes: the motion is Re[(re + i im) e^{iωt}].
#[derive(Debug, Clone, PartialEq)]
pub struct ComplexField {
    /// (node, dof)
    pub re: Vec<f32>,
    /// (node, dof)
    pub im: Vec<f32>,
}

impl ComplexField {
    /// Σ qᵣ φᵣ with `amplitudes` (mode).
    #[must_use]
    pub(super) fn new(basis: &ModalBasis, amplitudes: &[Complex]) -> Self {
        let length = basis.node_count() * DOFS_PER_NODE;
        let mut field = Self { re: vec![0.0; length], im: vec![0.0; length] };
        for start in (0..length).step_by(BLOCK) {
            let part = start..(start + BLOCK).min(length);
            for (mode, amplitude) in amplitudes.iter().enumerate() {
                let shape = &basis.shape(mode)[part.clone()];
                add_multiple(&mut field.re[part.clone()], amplitude.re as f32, shape);
                add_multiple(&mut field.im[part.clone()], amplitude.im as f32, shape);
            }
        }
        field
    }

    /// (node, dof): Σ qᵣ φᵣ of real `amplitudes` (mode).
    pub(super) fn real(basis: &ModalBasis, amplitudes: &[f64]) -> Vec<f32> {
        let mut sum = vec![0.0; basis.node_count() * DOFS_PER_NODE];
        for (mode, amplitude) in amplitudes.iter().enumerate() {
            add_multiple(&mut sum, *amplitude as f32, basis.shape(mode));
        }
        sum
    }

    /// (xyz): complex displacement of a node, m.
    #[must_use]
    pub fn displacement(&self, node: usize) -> [Complex; 3] {
        [0, 1, 2].map(|axis| {
            let at = node * DOFS_PER_NODE + axis;
            Complex::new(self.re[at].into(), self.im[at].into())
        })
    }

    /// (node): complex displacement along the outward normals of `basis`, m.
    #[must_use]
    pub fn outward(&self, basis: &ModalBasis) -> Vec<Complex> {
        let along = |(node, normal): (usize, &[f64; 3])| {
            self.displacement(node).into_iter().zip(normal).map(|(moved, part)| moved * *part).sum()
        };
        basis.surface().normals.iter().enumerate().map(along).collect()
    }
}

fn add_multiple(sum: &mut [f32], times: f32, shape: &[f32]) {
    for (sum, own) in sum.iter_mut().zip(shape) {
        *sum += times * own;
    }
}
