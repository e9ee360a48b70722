//! How far a piece of wood may lie from the figures taken for it.

use super::{MeasuredWood, WoodChoice, WoodConstant};

/// Standard deviation of each figure over its mean, per cent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scatter {
    /// (constant), as in [`WoodConstant::ALL`].
    pub by_constant_pct: [f64; WoodConstant::COUNT],
    /// Density.
    pub density_pct: f64,
}

/// Within a species, clear wood: modulus of elasticity along the grain (Kretschmann 2010, Wood Handbook FPL-GTR-190 ch. 5, Table
/// 5-6; from memory: row W-COV-MOE of `tests/reference/wood.csv`). Selected tonewood is narrower; no figure for it was to be had.
const MODULUS_PCT: f64 = 22.0;
/// Likewise specific gravity, same table, from memory (W-COV-SG).
const DENSITY_PCT: f64 = 10.0;
/// The other eight constants: assumed, no source. The table has strengths only for them; as much as the modulus along the grain is taken.
const ASSUMED_PCT: f64 = MODULUS_PCT;

/// A wedge weighed and measured on the bench: common practice, no source.
const MEASURED_DENSITY_PCT: f64 = 1.0;
/// A speed of sound from length and time: common practice, no source.
const MEASURED_SPEED_PCT: f64 = 1.0;

impl Scatter {
    /// Of a species' clear wood.
    pub const CLEAR_WOOD: Self = {
        let mut by_constant_pct = [ASSUMED_PCT; WoodConstant::COUNT];
        by_constant_pct[WoodConstant::EL as usize] = MODULUS_PCT;
        Self { by_constant_pct, density_pct: DENSITY_PCT }
    };

    /// Of measured wood: what was measured is as sure as the measurement, the rest as in the species.
    fn measured(measured: &MeasuredWood) -> Self {
        // E = ρc².
        let modulus_pct = MEASURED_DENSITY_PCT.hypot(2.0 * MEASURED_SPEED_PCT);
        let mut scatter = Self { density_pct: MEASURED_DENSITY_PCT, ..Self::CLEAR_WOOD };
        scatter.by_constant_pct[WoodConstant::EL as usize] = modulus_pct;
        if measured.speed_across_m_s.is_some() {
            scatter.by_constant_pct[WoodConstant::ER as usize] = modulus_pct;
        }
        scatter
    }
}

impl WoodChoice {
    /// How far the piece may lie from [`WoodChoice::wood`].
    #[must_use]
    pub fn scatter(&self) -> Scatter {
        self.measured.as_ref().map_or(Scatter::CLEAR_WOOD, Scatter::measured)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wood::Species;

    /// Rows W-COV-MOE and W-COV-SG of `tests/reference/wood.csv` (Wood Handbook, Table 5-6; from memory).
    #[test]
    fn clear_wood_scatters_as_the_handbook_says() {
        let choice = WoodChoice { species: Species::SitkaSpruce, ring_angle_deg: 0.0, measured: None };
        assert!((choice.scatter().by_constant_pct[WoodConstant::EL as usize] - 22.0).abs() < 1e-12);
        assert!((choice.scatter().density_pct - 10.0).abs() < 1e-12);
    }

    #[test]
    fn what_was_measured_is_surer() {
        let measured = MeasuredWood { density_kg_m3: 400.0, speed_along_m_s: 5500.0, speed_across_m_s: None };
        let of = |measured| WoodChoice { species: Species::SitkaSpruce, ring_angle_deg: 0.0, measured }.scatter();
        let along = of(Some(measured));
        let both = of(Some(MeasuredWood { speed_across_m_s: Some(1500.0), ..measured }));
        let pct = |scatter: &Scatter, constant: WoodConstant| scatter.by_constant_pct[constant as usize];
        assert!(pct(&along, WoodConstant::EL) < 3.0 && pct(&along, WoodConstant::ER) > 20.0);
        assert!(pct(&both, WoodConstant::ER) < 3.0 && pct(&both, WoodConstant::GLR) > 20.0);
    }
}
