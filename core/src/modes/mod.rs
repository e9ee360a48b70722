//! The modes of a shell: frequencies and shapes, with the proof that none was missed.
//!
//! After this stage each elastic mode carries its frequency, its shape at every node, and how well it solves the equations.
//! Rigid motions that the supports allow are found from the geometry (six for a plate in the hand), deflated, and
//! reported with the frequency the assembled matrices give them, which must come out as zero. The twist, the X and the ring
//! of a free plate are told from their shapes.

mod archetypes;
mod assurance;
mod certainty;
mod damping;
mod follow;
mod matching;
mod names;
mod rigid;
mod sensitivity;
mod solve;

pub use assurance::{LEAST_ASSURANCE, pairs_by_shape, shape_correlations};
pub use certainty::{Certainty, certainty, mesh_errors_hz};
pub use damping::{Damping, EnergyShares, damping};
pub use follow::{FOLLOW_RESIDUAL, Followed, Trail, follow_modes};
pub use matching::{match_modes, pair_off};
pub use names::{ModeName, name_modes};
pub use rigid::rigid_motions;
pub use sensitivity::{Sensitivity, WOOD_PARTS, sensitivities};
pub(crate) use solve::frequency_hz;
pub use solve::{ModesError, ModesRequest, solve_modes};

use crate::shell::DOFS_PER_NODE;

/// Modes of one shell, lowest first.
#[derive(Debug, Clone, PartialEq)]
pub struct Modes {
    /// Number of nodes.
    pub nodes: usize,
    /// (mode) natural frequency, Hz.
    pub frequencies_hz: Vec<f64>,
    /// (mode, node, dof): displacements (m) along x, y, z and rotations (rad) about them, for unit modal mass (1 kg);
    /// the sign is fixed.
    pub shapes: Vec<f64>,
    /// (mode): what free-plate work calls it, where it has a name.
    pub names: Vec<Option<ModeName>>,
    /// (mode): |Kφ − ω²Mφ| / |ω²Mφ|.
    pub residuals: Vec<f64>,
    /// (mode): largest |φᵀMφ′ − δ| over all modes φ′.
    pub orthogonality: Vec<f64>,
    /// (rigid motion): frequency that the matrices give the rigid motions left free by the supports, Hz; zeros but for rounding.
    pub rigid_hz: Vec<f64>,
    /// Modes counted by inertia below a frequency just above the last, rigid motions included; none when not asked for.
    pub counted: Option<usize>,
}

impl Modes {
    /// Number of elastic modes.
    #[must_use]
    pub fn count(&self) -> usize {
        self.frequencies_hz.len()
    }

    /// (node, dof): the shape of mode `mode`, counted from zero.
    #[must_use]
    pub fn shape(&self, mode: usize) -> &[f64] {
        let length = self.nodes * DOFS_PER_NODE;
        &self.shapes[mode * length..(mode + 1) * length]
    }
}

#[cfg(test)]
mod tests;
