//! A top's modes as what a response is made of.

use super::{Stages, TopError};
use crate::fittings::{Bare, FittingError, Fittings};
use crate::mesh::MeshSize;
use crate::modes::{ModesRequest, damping};
use crate::response::{Bridge, CompleteModes, ModalArrays, ShellSurface, complete_modes, unit_loads};
use crate::shell::{DOFS_PER_NODE, ElementOptions, EnergySlopes};
use crate::statics::right_side;

const M_PER_MM: f64 = 1e-3;

impl Stages {
    /// A violin's bridge for this design's stop, weightless or not, see [`Bridge::of_stop`].
    #[must_use]
    pub fn bridge(&self) -> Bridge {
        Bridge::of_stop(self.design().sound_holes.stop_mm * M_PER_MM)
    }

    /// Where the middle of the bridge stands in plan, m: on the centreline, at the stop.
    #[must_use]
    pub fn bridge_stands_at_m(&self) -> [f64; 2] {
        [0.0, self.design().bridge_station_mm() * M_PER_MM]
    }

    /// The modes of `request` on `size`, completed for the forces of `bridge` and damped by the wood's own losses: everything that a
    /// response of this design needs, to be checked by [`ModalBasis::new`](crate::response::ModalBasis::new) where it is used.
    ///
    /// Nothing of it is kept, and the modes kept for the page stay what they were. What a rim, a bar or a post takes is whatever the
    /// design says of them. Cost: that of the modes and their damping, and one factorisation.
    ///
    /// # Errors
    /// [`TopError`] of the stage that failed; [`TopError::Fitting`] where the bridge has no wood under its feet.
    pub fn modal_arrays(
        &mut self,
        size: MeshSize,
        bridge: &Bridge,
        request: &ModesRequest,
    ) -> Result<ModalArrays, TopError> {
        let stands_at_m = self.bridge_stands_at_m();
        let (wood, fittings) = (self.design().wood.wood()?, Fittings::of_design(self.design())?);
        let losses = self.design().wood.loss_factors();
        let (plan, carved) = self.carved(size)?;
        let geometry = &carved.geometry;
        let surface = ShellSurface::new(geometry, carved.model.node_masses_kg(&plan.equations));
        let Some(patches) = bridge.patches(&surface, stands_at_m) else {
            let [x_mm, y_mm] = stands_at_m.map(|at| at / M_PER_MM);
            return Err(FittingError::OffTheWood { what: "the bridge", x_mm, y_mm }.into());
        };
        let forces = unit_loads(&patches).map(|loads| right_side(&plan.equations, &loads)).concat();
        let modes = carved.modes(plan, request)?;
        let complete =
            complete_modes(geometry, &plan.supports, &plan.equations, &carved.model, &plan.symbolic, &modes, &forces);
        let CompleteModes { rigid, residual, frequencies_hz, shapes } = complete?;
        let options = ElementOptions::default();
        let elastic = &shapes[rigid * geometry.node_count() * DOFS_PER_NODE..];
        let mut slopes = EnergySlopes::new(geometry, &wood, options, elastic)?;
        let bare = Bare { geometry, wood: &wood, equations: &plan.equations, options };
        fittings.add_slopes(&bare, &plan.mesh.rim_nodes, elastic, &mut slopes)?;
        let mut loss_factors = vec![0.0; rigid];
        loss_factors.extend(damping(&slopes, &losses).iter().map(|own| own.loss_factor.max(0.0)));
        let shapes = shapes.iter().map(|value| *value as f32).collect();
        Ok(ModalArrays { surface, rigid, residual, frequencies_hz, loss_factors, shapes })
    }
}
