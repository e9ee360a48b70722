//! How sure a frequency is: by the mesh, and by the wood.

use super::sensitivity::{WOOD_PARTS, together_pct};
use super::{Modes, Sensitivity, match_modes};
use crate::shell::ShellGeometry;
use crate::wood::Scatter;

/// How the error of a frequency falls with the size of the mesh: error ∝ size to this power.
///
/// Measured on meshes of 8 600, 34 600 and 84 800 nodes, each finer everywhere in one ratio: the mean error of twelve modes of the
/// demonstration falls with the power 1.21 free, 1.23 hinged and 1.30 without holes, of a hinged one without holes 1.6, of a cello 1.0.
/// Flat plates of even thickness without soft shear, 2.0. Below 2 000 nodes errors follow no power: some modes of a preview mesh are 2 % too low.
const MESH_ORDER: f64 = 1.25;

/// Share of the correction that may be wrong: as much, should the error fall with the second power, as it does where wood doesn't
/// shear. On the demonstration it is a seventh: 0.1 to 0.2 % rms of corrections of 0.5 to 2.2 % rms, against 34 000 nodes extrapolated.
const DOUBTED_SHARE: f64 = 0.6;

/// What a converged shell leaves open against solid wood, per cent: on 34 000 nodes, extrapolated, it lies within 0.3 % of arched
/// spruce as solids (those of `cargo xtask verify`, rows SOLID, on their fine plan), for what stresses do within a thickness or two of
/// a steep change.
const SHELL_PCT: f64 = 0.3;

/// How sure one mode's frequency is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Certainty {
    /// The frequency as it was computed, Hz.
    pub frequency_hz: f64,
    /// The frequency on an ever finer mesh, as two meshes foretell it, Hz; none where the other mesh has no mode of this shape.
    pub converged_hz: Option<f64>,
    /// What mesh and shell leave open in it, ± per cent: none without it.
    pub numerical_pct: Option<f64>,
    /// What one standard deviation of each figure of the wood makes, per cent with its sign, see [`Sensitivity::wood_parts_pct`].
    pub wood_parts_pct: [f64; WOOD_PARTS],
}

impl Certainty {
    /// The best there is: converged where known, else as computed, Hz.
    #[must_use]
    pub fn best_hz(&self) -> f64 {
        self.converged_hz.unwrap_or(self.frequency_hz)
    }

    /// What mesh and shell leave open, ± Hz.
    #[must_use]
    pub fn numerical_hz(&self) -> Option<f64> {
        self.numerical_pct.map(|pct| pct / 100.0 * self.best_hz())
    }

    /// One standard deviation that the wood's scatter makes, ± per cent.
    #[must_use]
    pub fn wood_pct(&self) -> f64 {
        together_pct(&self.wood_parts_pct)
    }

    /// One standard deviation that the wood's scatter makes, ± Hz.
    #[must_use]
    pub fn wood_hz(&self) -> f64 {
        self.wood_pct() / 100.0 * self.best_hz()
    }
}

/// (mode of `own`): how sure its frequency is, from the modes of the same shell on a coarser or finer mesh, `other`, and from
/// `sensitivities` (mode of `own`) to the figures of wood with `scatter`.
///
/// Modes trade shape and frequency with their neighbours as the mesh changes, so that some hardly differ between two meshes
/// and yet are wrong by as much as the others. What is left open is therefore taken from the mode's own correction or from
/// the root mean square of all, whichever is larger.
#[must_use]
pub fn certainty(
    own: (&ShellGeometry, &Modes),
    other: (&ShellGeometry, &Modes),
    sensitivities: &[Sensitivity],
    scatter: &Scatter,
) -> Vec<Certainty> {
    let frequencies = &own.1.frequencies_hz;
    let converged_hz: Vec<Option<f64>> = mesh_errors_hz(own, other)
        .iter()
        .zip(frequencies)
        .map(|(error, frequency)| error.map(|error| frequency - error))
        .collect();
    let correction_pct = |(own, converged): (&f64, &f64)| 100.0 * (own / converged - 1.0).abs();
    let known = frequencies.iter().zip(&converged_hz).filter_map(|(own, converged)| Some((own, converged.as_ref()?)));
    let squares = known.clone().map(|both| correction_pct(both).powi(2)).sum::<f64>();
    let usual_pct = (squares / known.count().max(1) as f64).sqrt();
    frequencies
        .iter()
        .zip(converged_hz)
        .zip(sensitivities)
        .map(|((&frequency_hz, converged_hz), sensitivity)| Certainty {
            frequency_hz,
            converged_hz,
            numerical_pct: converged_hz.map(|converged| {
                let correction_pct = correction_pct((&frequency_hz, &converged)).max(usual_pct);
                SHELL_PCT.hypot(DOUBTED_SHARE * correction_pct)
            }),
            wood_parts_pct: sensitivity.wood_parts_pct(scatter),
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
