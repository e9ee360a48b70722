//! What the page is told about a solve and how sure it is.

use bombatura_core::modes::{Certainty, Damping, Followed, ModeName, Modes, WOOD_PARTS};
use serde::Serialize;

/// The modes of the last solve, lowest first.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub(super) struct ModeList {
    modes: Vec<ModeEntry>,
    /// (rigid motion): frequency that the matrices give the motions the supports leave free, Hz; zeros but for rounding, and
    /// none of modes that were followed.
    rigid_hz: Vec<f64>,
}

#[derive(Clone, Debug, PartialEq, Serialize)]
struct ModeEntry {
    /// 1 for the lowest elastic mode.
    number: usize,
    /// Assigned from the shape; empty where it has no name of the trade.
    name: String,
    frequency_hz: f64,
    residual: f64,
    /// Of a mode that was followed: the number that goes on with its shape. Zero otherwise.
    identity: u32,
}

impl ModeList {
    fn new(modes: &Modes, identities: &[u32]) -> ModeList {
        let entries = modes.frequencies_hz.iter().zip(&modes.residuals).zip(&modes.names).enumerate();
        ModeList {
            modes: entries
                .map(|(mode, ((&frequency_hz, &residual), name))| ModeEntry {
                    number: mode + 1,
                    name: name.map_or("", ModeName::word).to_owned(),
                    frequency_hz,
                    residual,
                    identity: identities.get(mode).copied().unwrap_or(0),
                })
                .collect(),
            rigid_hz: modes.rigid_hz.clone(),
        }
    }
}

impl From<&Modes> for ModeList {
    fn from(modes: &Modes) -> ModeList {
        ModeList::new(modes, &[])
    }
}

impl From<&Followed> for ModeList {
    fn from(followed: &Followed) -> ModeList {
        ModeList::new(&followed.modes, &followed.identities)
    }
}

/// How sure a mode's frequency is, and how the wood damps it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub(super) struct Surety {
    /// The frequency corrected for the mesh; none where the finer mesh has no mode of this shape.
    converged_hz: Option<f64>,
    /// What mesh and shell leave open in it, ± Hz; none without it.
    mesh_hz: Option<f64>,
    /// One standard deviation of what boards of the wood differ by, ± Hz.
    wood_hz: f64,
    /// What one standard deviation of each figure of the wood makes, per cent with its sign.
    wood_parts_pct: [f64; WOOD_PARTS],
    /// Quality factor, by the wood's own losses.
    q: f64,
}

impl Surety {
    pub(super) fn new(certainty: &Certainty, damping: &Damping) -> Surety {
        Surety {
            converged_hz: certainty.converged_hz,
            mesh_hz: certainty.numerical_hz(),
            wood_hz: certainty.wood_hz(),
            wood_parts_pct: certainty.wood_parts_pct,
            q: damping.q(),
        }
    }
}
