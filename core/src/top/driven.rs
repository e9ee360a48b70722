//! A top that is driven through its bridge.

use super::{
    BandFigures, Carved, DrivableModes, Plan, RegionResponse, Stages, TopError, bridge_of, bridge_stands_at_m,
    drivable_modes,
};
use crate::design::Design;
use crate::mesh::MeshSize;
use crate::modes::ModesRequest;
use crate::regions::Regions;
use crate::response::{Bridge, BridgeFeet, ModalBasis, ResponseError};

/// A top's modes up to [`DrivenTop::HIGHEST_HZ`], with a violin's bridge on it.
#[derive(Debug, Clone)]
pub struct DrivenTop {
    /// Its modes, completed for the bridge's forces.
    pub basis: ModalBasis,
    /// A stiff one, see [`bridge_of`].
    pub bridge: Bridge,
    /// Where it stands.
    pub feet: BridgeFeet,
    /// What regions do.
    pub regions: RegionResponse,
    /// See [`DrivableModes::wood_scatter`].
    pub wood_scatter: f64,
}

impl DrivenTop {
    /// Beyond this a shell's waves are as short as a standard mesh.
    pub const HIGHEST_HZ: f64 = 6000.0;

    /// Of `carved`, which is `design` on `plan`, with `regions`; at most [`ModesRequest::LIMIT`] modes, proven complete if `prove`.
    ///
    /// # Errors
    /// Those of [`drivable_modes`] and [`Bridge::feet`].
    pub fn of<E: From<TopError> + From<ResponseError>>(
        design: &Design,
        (plan, carved): (&Plan, &Carved),
        regions: &Regions,
        prove: bool,
    ) -> Result<Self, E> {
        let bridge = bridge_of(design);
        let request = ModesRequest { most: ModesRequest::LIMIT, below_hz: Some(Self::HIGHEST_HZ), prove };
        let DrivableModes { arrays, wood_scatter } = drivable_modes(design, plan, carved, &bridge, &request)?;
        let basis = ModalBasis::new(arrays)?;
        let feet = bridge.feet(&basis, bridge_stands_at_m(design))?;
        let regions = RegionResponse::new(&basis, regions);
        Ok(Self { basis, bridge, feet, regions, wood_scatter })
    }

    /// The figures that sum up what the bridge makes of it.
    ///
    /// # Errors
    /// As for [`BandFigures::new`].
    pub fn figures(&self) -> Result<BandFigures, ResponseError> {
        BandFigures::new(&self.regions, self.basis.resonators(), &self.bridge, &self.feet, self.wood_scatter)
    }
}

impl Stages {
    /// The design's top, driven; nothing of it is kept.
    ///
    /// # Errors
    /// As for [`DrivenTop::of`].
    pub fn driven<E: From<TopError> + From<ResponseError>>(
        &mut self,
        size: MeshSize,
        prove: bool,
    ) -> Result<DrivenTop, E> {
        let shape = self.shape()?;
        let regions = Regions::new(&shape.outline, &shape.holes);
        let design = self.design().clone();
        DrivenTop::of(&design, self.carved(size)?, &regions, prove)
    }
}
