//! What the wood itself takes from each mode.
//!
//! The loss factor of a mode is the mean of the wood's, weighted by the strain energy that each kind of stress stores (Ungar &
//! Kerwin 1962, J. Acoust. Soc. Am. 34, 954; for orthotropic sheets Adams & Bacon 1973, J. Composite Materials 7, 402). A
//! stress σ with its strain ε stores ½σε, so energy that Poisson's ratio makes two stresses share is halved
//! between them, each half losing at its own rate. Air and supports are not in it, nor what bar, post and ribs lose, for want
//! of figures: a real mode rings no longer than this.

use crate::shell::EnergySlopes;
use crate::wood::{LossFactors, WoodConstant};

/// Where a mode keeps its strain energy; the four add up to one.
///
/// A share falls slightly below zero where stress one way is mostly Poisson's answer to stress the other way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EnergyShares {
    /// Stress along the grain.
    pub along: f64,
    /// Stress across it, radial and tangential.
    pub across: f64,
    /// Shear in all three planes.
    pub shear: f64,
    /// Bar, post and ribs.
    pub fittings: f64,
}

/// How fast a mode dies away.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Damping {
    /// Where the mode keeps its strain energy.
    pub shares: EnergyShares,
    /// Energy lost in one radian over the energy stored.
    pub loss_factor: f64,
}

impl Damping {
    /// The quality factor: resonance frequency over the width of the peak at half power.
    #[must_use]
    pub fn q(&self) -> f64 {
        1.0 / self.loss_factor
    }
}

/// (mode): damping of modes with `slopes` by `losses`.
#[must_use]
pub fn damping(slopes: &EnergySlopes, losses: &LossFactors) -> Vec<Damping> {
    (0..slopes.count())
        .map(|mode| {
            let whole = slopes.whole_stiffness[mode];
            let fittings = 1.0 - slopes.stiffness[mode] / whole;
            let shares = energy_shares(|constant| slopes.by_constant[constant as usize][mode] / whole, fittings);
            let loss_factor = losses.along * shares.along + losses.across * shares.across + losses.shear * shares.shear;
            Damping { shares, loss_factor }
        })
        .collect()
}

/// Shares from d ln U / d ln p at fixed displacements.
///
/// Scaling stress and strain of one direction, C_ij → √s_i C_ij √s_j, raises U by ½σᵢεᵢ per ln sᵢ. In the nine constants
/// that is E_i by s_i with the ratios ν_ij = −S_ij E_i by √s_i of the stress and 1/√s_j of the strain.
fn energy_shares(slope: impl Fn(WoodConstant) -> f64, fittings: f64) -> EnergyShares {
    use WoodConstant::{EL, ER, ET, GLR, GLT, GRT, NuLR, NuLT, NuRT};
    let radial = slope(ER) + 0.5 * (slope(NuRT) - slope(NuLR));
    let tangential = slope(ET) - 0.5 * (slope(NuLT) + slope(NuRT));
    let along = slope(EL) + 0.5 * (slope(NuLR) + slope(NuLT));
    let across = radial + tangential;
    let shear = slope(GLR) + slope(GLT) + slope(GRT);
    EnergyShares { along, across, shear, fittings }
}
