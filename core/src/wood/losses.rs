//! How much of the energy that bends it the wood turns into heat.

use super::WoodChoice;

/// Loss factors: energy lost in one radian of vibration over the strain energy stored by each kind of stress.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LossFactors {
    /// Stress along the grain.
    pub along: f64,
    /// Stress across the grain, radial or tangential.
    pub across: f64,
    /// Shear in any of the three planes.
    pub shear: f64,
}

impl LossFactors {
    /// A sheet of quarter-cut Norway spruce: η₁, η₃, η₄ of McIntyre & Woodhouse 1988, "On measuring the elastic and damping
    /// constants of orthotropic sheet materials", Acta Metallurgica 36, 1397-1416 (from memory).
    ///
    /// Measured in the plane of the sheet: tangential stress and the two shears through the thickness are assumed to lose as
    /// much as radial stress and the shear in the plane; no source.
    pub const QUARTER_CUT_SPRUCE: Self = Self { along: 0.0051, across: 0.0216, shear: 0.0164 };
}

impl WoodChoice {
    /// The wood's losses: those of a measured spruce sheet for every species, since no others were to be had.
    #[must_use]
    pub fn loss_factors(&self) -> LossFactors {
        LossFactors::QUARTER_CUT_SPRUCE
    }
}
