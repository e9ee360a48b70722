//! How a frequency follows each constant of the wood, the density and the thickness.
//!
//! For a mode with Kφ = λMφ, dλ/dp = φᵀ(dK/dp − λ dM/dp)φ / φᵀMφ (Fox & Kapoor 1968, AIAA J. 6, 2426): the shape's own change
//! plays no part, so no further solve is needed. Holds for modes whose frequencies lie apart; of a repeated one it gives
//! the slope of the shapes as they came out.

use crate::shell::EnergySlopes;
use crate::wood::{Scatter, WoodConstant};

/// d ln f / d ln p of one mode: by how many per cent the frequency rises when p rises by one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sensitivity {
    /// (constant), as in [`WoodConstant::ALL`]; on a bare shell all six moduli together give ½.
    pub by_constant: [f64; WoodConstant::COUNT],
    /// Density of the shell's wood: −½ on a bare shell, whatever the shape; less where other masses move along.
    pub by_density: f64,
    /// Thickness, everywhere by the same ratio.
    pub by_thickness: f64,
}

impl Sensitivity {
    /// What the frequency differs by from board to board, ± per cent: root of the sum of squares of what each figure's scatter does.
    ///
    /// Taken as independent. Density and stiffness of wood rise together, which would cancel in part, so this is
    /// rather too wide.
    #[must_use]
    pub fn wood_pct(&self, scatter: &Scatter) -> f64 {
        let constants = self.by_constant.iter().zip(&scatter.by_constant_pct).map(|(slope, pct)| slope * pct);
        constants.chain([self.by_density * scatter.density_pct]).map(|pct| pct * pct).sum::<f64>().sqrt()
    }
}

/// (mode): sensitivities of modes with `slopes`.
#[must_use]
pub fn sensitivities(slopes: &EnergySlopes) -> Vec<Sensitivity> {
    (0..slopes.count())
        .map(|mode| {
            let (stiffness, mass) = (slopes.whole_stiffness[mode], slopes.whole_mass[mode]);
            Sensitivity {
                by_constant: std::array::from_fn(|constant| 0.5 * slopes.by_constant[constant][mode] / stiffness),
                by_density: -0.5 * slopes.mass[mode] / mass,
                by_thickness: 0.5
                    * (slopes.stiffness_by_thickness[mode] / stiffness - slopes.mass_by_thickness[mode] / mass),
            }
        })
        .collect()
}
