//! How sure a frequency is: by the mesh, and by the wood.

use super::{Modes, Sensitivity, match_modes};
use crate::shell::ShellGeometry;
use crate::wood::Scatter;

/// How the error of a frequency falls with the size of the mesh: error ∝ size to this power.
///
/// Measured on 12 modes of a carved top with holes at 1 200, 2 620 and 8 100 nodes: the eight that fall steadily do so with
/// 0.8 to 2.5, 1.3 in the middle; flat plates with 2.0. A power too high makes the figure too small: 2 in place of 1.3 would
/// halve it.
const MESH_ORDER: f64 = 1.3;

/// How sure one mode's frequency is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Certainty {
    /// The frequency as it was computed, Hz.
    pub frequency_hz: f64,
    /// Estimated error of the mesh, ± per cent, no less than is usual on this mesh; none where the other mesh has no mode of this shape.
    pub numerical_pct: Option<f64>,
    /// One standard deviation that the wood's scatter makes, ± per cent.
    pub wood_pct: f64,
}

impl Certainty {
    /// Estimated error of the mesh, ± Hz.
    #[must_use]
    pub fn numerical_hz(&self) -> Option<f64> {
        self.numerical_pct.map(|pct| pct / 100.0 * self.frequency_hz)
    }

    /// One standard deviation that the wood's scatter makes, ± Hz.
    #[must_use]
    pub fn wood_hz(&self) -> f64 {
        self.wood_pct / 100.0 * self.frequency_hz
    }
}

/// (mode of `own`): how sure its frequency is, from the modes of the same shell on a coarser or finer mesh, `other`, and from
/// `sensitivities` (mode of `own`) to the figures of wood with `scatter`.
///
/// Modes trade shape and frequency with their neighbours as the mesh changes, so that some hardly differ between two meshes
/// and yet are wrong by as much as the others (on a carved top, 0.03 % between 1 200 and 2 620 nodes, then 1 % to 8 100). The
/// error stated is therefore the mode's own or the root mean square of all, whichever is larger.
#[must_use]
pub fn certainty(
    own: (&ShellGeometry, &Modes),
    other: (&ShellGeometry, &Modes),
    sensitivities: &[Sensitivity],
    scatter: &Scatter,
) -> Vec<Certainty> {
    let frequencies = &own.1.frequencies_hz;
    let errors_pct: Vec<Option<f64>> = mesh_errors_hz(own, other)
        .iter()
        .zip(frequencies)
        .map(|(error, frequency)| error.map(|error| 100.0 * error.abs() / frequency))
        .collect();
    let known = errors_pct.iter().flatten();
    let usual_pct = (known.clone().map(|pct| pct * pct).sum::<f64>() / known.count().max(1) as f64).sqrt();
    frequencies
        .iter()
        .zip(errors_pct)
        .zip(sensitivities)
        .map(|((&frequency_hz, error_pct), sensitivity)| Certainty {
            frequency_hz,
            numerical_pct: error_pct.map(|pct| pct.max(usual_pct)),
            wood_pct: wood_pct(sensitivity, scatter),
        })
        .collect()
}

/// (mode of `own`): estimated excess of its frequency over the one of an ever finer mesh, Hz; none where `other` has no mode
/// of this shape.
///
/// Richardson's extrapolation: f = f∞ + c hᵖ on both meshes gives c, with h as the root of the nodes' number and p
/// the measured order `MESH_ORDER`. Meaningless for meshes with as many nodes as each other: none then.
#[must_use]
pub fn mesh_errors_hz(own: (&ShellGeometry, &Modes), other: (&ShellGeometry, &Modes)) -> Vec<Option<f64>> {
    // Sizes relative to own: (h_other/h_own)ᵖ.
    let ratio = (own.1.nodes as f64 / other.1.nodes as f64).powf(0.5 * MESH_ORDER);
    if own.1.nodes == other.1.nodes {
        return vec![None; own.1.count()];
    }
    match_modes(own, other)
        .iter()
        .zip(&own.1.frequencies_hz)
        .map(|(partner, own_hz)| partner.map(|mode| (own_hz - other.1.frequencies_hz[mode]) / (1.0 - ratio)))
        .collect()
}

/// Root of the sum of squares of what each figure's scatter does, per cent.
///
/// Taken as independent. Density and stiffness of wood rise together, which would cancel in part, so this is
/// rather too wide.
fn wood_pct(sensitivity: &Sensitivity, scatter: &Scatter) -> f64 {
    let constants = sensitivity.by_constant.iter().zip(&scatter.by_constant_pct).map(|(slope, pct)| slope * pct);
    constants.chain([sensitivity.by_density * scatter.density_pct]).map(|pct| pct * pct).sum::<f64>().sqrt()
}
