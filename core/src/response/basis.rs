//! What a response needs of a shell: its modes on its surface.

use std::ops::Range;

use super::error::check;
use super::{Resonators, ResponseError, ShellSurface};
use crate::shell::DOFS_PER_NODE;

/// A [`ModalBasis`] as flat arrays, to be sent and rebuilt elsewhere without any equations; not checked yet.
#[derive(Debug, Clone, PartialEq)]
pub struct ModalArrays {
    /// Nodes and triangles.
    pub surface: ShellSurface,
    /// How many of the first modes are rigid motions, of 0 Hz.
    pub rigid: usize,
    /// How many of the last modes are residual vectors: they stand for all modes that were left out, and aren't modes themselves.
    pub residual: usize,
    /// (mode) natural frequency, Hz.
    pub frequencies_hz: Vec<f64>,
    /// (mode) structural loss factor: energy lost in one radian over the energy stored.
    pub loss_factors: Vec<f64>,
    /// (mode, node, dof): displacements (m) along x, y, z and rotations (rad) about them, for unit modal mass (1 kg).
    pub shapes: Vec<f32>,
}

/// Modes of a shell that a response can be made of: every array has its length and every number is finite.
///
/// Shapes are kept in single precision, mode after mode: what is summed over a hundred modes is then good to some 1e-6 of the
/// largest, and half as much has to be sent and read.
#[derive(Debug, Clone, PartialEq)]
pub struct ModalBasis {
    arrays: ModalArrays,
    resonators: Resonators,
}

impl ModalBasis {
    /// Checks `arrays` and takes them over.
    ///
    /// # Errors
    /// [`ResponseError::Length`] or [`ResponseError::BadNumber`] naming the array at fault.
    pub fn new(arrays: ModalArrays) -> Result<Self, ResponseError> {
        let ModalArrays { surface, rigid, residual, frequencies_hz, loss_factors, shapes } = &arrays;
        let modes = frequencies_hz.len();
        surface.check()?;
        check("the frequencies", frequencies_hz, modes, 0.0)?;
        check("the loss factors", loss_factors, modes, 0.0)?;
        let wanted = modes * surface.places_m.len() * DOFS_PER_NODE;
        if shapes.len() != wanted {
            return Err(ResponseError::Length { what: "the shapes", got: shapes.len(), wanted });
        }
        if let Some((index, &value)) = shapes.iter().enumerate().find(|(_, value)| !value.is_finite()) {
            return Err(ResponseError::BadNumber { what: "the shapes", index, value: value.into(), and: "" });
        }
        if rigid + residual > modes {
            return Err(ResponseError::Length { what: "the frequencies", got: modes, wanted: rigid + residual });
        }
        let resonators = Resonators::new(frequencies_hz, loss_factors);
        Ok(Self { arrays, resonators })
    }

    /// The same as flat arrays.
    #[must_use]
    pub fn arrays(&self) -> &ModalArrays {
        &self.arrays
    }

    /// Number of modes, rigid motions and residual vectors included.
    #[must_use]
    pub fn count(&self) -> usize {
        self.arrays.frequencies_hz.len()
    }

    /// Number of nodes.
    #[must_use]
    pub fn node_count(&self) -> usize {
        self.arrays.surface.places_m.len()
    }

    /// Nodes and triangles.
    #[must_use]
    pub fn surface(&self) -> &ShellSurface {
        &self.arrays.surface
    }

    /// Frequencies and losses.
    #[must_use]
    pub fn resonators(&self) -> &Resonators {
        &self.resonators
    }

    /// (elastic mode) natural frequencies, Hz, ascending: without rigid motions and residual vectors.
    #[must_use]
    pub fn elastic_hz(&self) -> &[f64] {
        &self.arrays.frequencies_hz[self.elastic()]
    }

    /// Which modes are elastic.
    pub(super) fn elastic(&self) -> Range<usize> {
        self.arrays.rigid..self.count() - self.arrays.residual
    }

    /// The highest frequency of which every mode is there, Hz: the last elastic mode's.
    #[must_use]
    pub fn complete_to_hz(&self) -> f64 {
        self.elastic_hz().last().copied().unwrap_or(0.0)
    }

    /// (node, dof): the shape of mode `mode`.
    #[must_use]
    pub fn shape(&self, mode: usize) -> &[f32] {
        let length = self.node_count() * DOFS_PER_NODE;
        &self.arrays.shapes[mode * length..(mode + 1) * length]
    }

    /// The displacement of one node in one mode along the outward normal.
    pub(super) fn outward(&self, mode: usize, node: usize) -> f64 {
        let along = self.displacement(mode, node).into_iter().zip(self.arrays.surface.normals[node]);
        along.map(|(moved, part)| f64::from(moved) * part).sum()
    }

    /// (xyz): the displacement of one node in one mode.
    pub(super) fn displacement(&self, mode: usize, node: usize) -> [f32; 3] {
        let start = (mode * self.node_count() + node) * DOFS_PER_NODE;
        [0, 1, 2].map(|axis| self.arrays.shapes[start + axis])
    }
}
