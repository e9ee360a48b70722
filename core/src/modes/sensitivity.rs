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
    /// What one standard deviation of each figure of the wood does to the frequency, per cent: the constants, then the density. Two tops
    /// of one board share each figure, so that their frequencies' ratio moves by the differences of these.
    #[must_use]
    pub fn wood_parts_pct(&self, scatter: &Scatter) -> [f64; WOOD_PARTS] {
        let mut parts = [self.by_density * scatter.density_pct; WOOD_PARTS];
        for (part, (slope, pct)) in parts.iter_mut().zip(self.by_constant.iter().zip(&scatter.by_constant_pct)) {
            *part = slope * pct;
        }
        parts
    }

    /// What the frequency differs by from board to board, ± per cent, one standard deviation.
    #[must_use]
    pub fn wood_pct(&self, scatter: &Scatter) -> f64 {
        together_pct(&self.wood_parts_pct(scatter))
    }
}

/// Root of the sum of squares of what each figure's scatter does.
///
/// Taken as independent. Density and stiffness of wood rise together, which would cancel in part, so this is
/// rather too wide.
pub(super) fn together_pct(parts_pct: &[f64]) -> f64 {
    parts_pct.iter().map(|pct| pct * pct).sum::<f64>().sqrt()
}

/// Figures of the wood that scatter from board to board: its constants and its density.
pub const WOOD_PARTS: usize = WoodConstant::COUNT + 1;

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
