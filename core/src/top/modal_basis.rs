//! A top's modes as what a response is made of.

use super::figures::energy_slopes;
use super::{Carved, Plan, Stages, TopError};
use crate::design::Design;
use crate::fittings::FittingError;
use crate::mesh::MeshSize;
use crate::modes::{ModesRequest, damping, sensitivities};
use crate::response::{Bridge, CompleteModes, ModalArrays, ShellSurface, complete_modes, unit_loads};
use crate::shell::DOFS_PER_NODE;
use crate::statics::right_side;

const M_PER_MM: f64 = 1e-3;
/// By how many of the lowest modes the wood's scatter is told: what higher ones differ by hardly depends on the mode.
const SCATTER_BY: usize = 12;

/// What a top is driven with.
#[derive(Debug, Clone, PartialEq)]
pub struct DrivableModes {
    /// To be checked by [`ModalBasis::new`](crate::response::ModalBasis::new) where they are used.
    pub arrays: ModalArrays,
    /// By what share frequencies differ from board to board: the mean of one standard deviation over the lowest dozen elastic modes.
    pub wood_scatter: f64,
}

/// A violin's bridge for the stop of `design`, weightless or not, see [`Bridge::of_stop`].
#[must_use]
pub fn bridge_of(design: &Design) -> Bridge {
    Bridge::of_stop(design.sound_holes.stop_mm * M_PER_MM)
}

/// Where the middle of the bridge stands in plan, m: on the centreline, at the stop.
#[must_use]
pub fn bridge_stands_at_m(design: &Design) -> [f64; 2] {
    [0.0, design.bridge_station_mm() * M_PER_MM]
}

impl Stages {
    /// See [`bridge_of`].
    #[must_use]
    pub fn bridge(&self) -> Bridge {
        bridge_of(self.design())
    }

    /// See [`bridge_stands_at_m`].
    #[must_use]
    pub fn bridge_stands_at_m(&self) -> [f64; 2] {
        bridge_stands_at_m(self.design())
    }

    /// The modes of `request` on `size`, completed for the forces of `bridge`, see [`drivable_modes`]. Nothing of it is kept, and the
    /// modes kept for the page stay what they were.
    ///
    /// # Errors
    /// [`TopError`] of the stage that failed; [`TopError::Fitting`] where the bridge has no wood under its feet.
    pub fn drivable_modes(
        &mut self,
        size: MeshSize,
        bridge: &Bridge,
        request: &ModesRequest,
    ) -> Result<DrivableModes, TopError> {
        let design = self.design().clone();
        let (plan, carved) = self.carved(size)?;
        drivable_modes(&design, plan, carved, bridge, request)
    }
}

/// The modes of `request` of `carved`, which is `design` on `plan`, completed for the forces of `bridge` and damped by the wood's own losses:
/// everything that a response needs.
///
/// What a rim, a bar or a post takes is whatever the design says of them. Cost: that of the modes and their damping, and one
/// factorisation.
///
/// # Errors
/// [`TopError::Modes`] when they can't be had; [`TopError::Fitting`] where the bridge has no wood under its feet.
pub fn drivable_modes(
    design: &Design,
    plan: &Plan,
    carved: &Carved,
    bridge: &Bridge,
    request: &ModesRequest,
) -> Result<DrivableModes, TopError> {
    let stands_at_m = bridge_stands_at_m(design);
    let geometry = &carved.geometry;
    let model = carved.whole_model(plan);
    let surface = ShellSurface::new(geometry, model.node_masses_kg(&plan.equations));
    let Some(patches) = bridge.patches(&surface, stands_at_m) else {
        let [x_mm, y_mm] = stands_at_m.map(|at| at / M_PER_MM);
        return Err(FittingError::OffTheWood { what: "the bridge", x_mm, y_mm }.into());
    };
    let forces = unit_loads(&patches).map(|loads| right_side(&plan.equations, &loads)).concat();
    let modes = carved.modes(plan, request)?;
    let complete = complete_modes(geometry, &plan.supports, &plan.equations, &model, &plan.symbolic, &modes, &forces);
    let CompleteModes { rigid, residual, frequencies_hz, shapes } = complete?;
    let node_values = geometry.node_count() * DOFS_PER_NODE;
    let slopes = energy_slopes(design, plan, carved, &shapes[rigid * node_values..])?;
    let mut loss_factors = vec![0.0; rigid];
    let damping = damping(&slopes, &design.wood.loss_factors());
    loss_factors.extend(damping.iter().map(|own| own.loss_factor.max(0.0)));
    let told_by = sensitivities(&slopes);
    let told_by = &told_by[..SCATTER_BY.min(told_by.len() - residual)];
    let scatter = design.wood.scatter();
    let sum_pct: f64 = told_by.iter().map(|own| own.wood_pct(&scatter)).sum();
    let wood_scatter = 0.01 * sum_pct / told_by.len().max(1) as f64;
    let shapes = shapes.iter().map(|value| *value as f32).collect();
    let arrays = ModalArrays { surface, rigid, residual, frequencies_hz, loss_factors, shapes };
    Ok(DrivableModes { arrays, wood_scatter })
}
