//! The nine constants of an orthotropic wood, and whether nature allows them.

use nalgebra::Matrix6;
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// Nine independent elastic constants of wood.
///
/// `nu_ij` is minus the strain along j over the strain along i for a stress along i; the other three follow from
/// reciprocity (`nu_ji = nu_ij E_j / E_i`), because a handbook's six measured ratios break it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OrthotropicConstants {
    /// Young's modulus along the grain, GPa.
    pub e_l_gpa: f64,
    /// Young's modulus across the rings (radial), GPa.
    pub e_r_gpa: f64,
    /// Young's modulus tangential to the rings, GPa.
    pub e_t_gpa: f64,
    /// Shear modulus in the grain-radial plane, GPa.
    pub g_lr_gpa: f64,
    /// Shear modulus in the grain-tangential plane, GPa.
    pub g_lt_gpa: f64,
    /// Rolling-shear modulus, GPa.
    pub g_rt_gpa: f64,
    /// Poisson's ratio, stress along L, strain along R.
    pub nu_lr: f64,
    /// Poisson's ratio, stress along L, strain along T.
    pub nu_lt: f64,
    /// Poisson's ratio, stress along R, strain along T.
    pub nu_rt: f64,
}

/// Constants no material can have, or measurements that give none.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum WoodError {
    /// A modulus, density or speed that isn't a positive finite number.
    #[error("{name} is {value}; it must be a finite number greater than zero")]
    NotPositive {
        /// The constant's name.
        name: &'static str,
        /// What was given.
        value: f64,
    },
    /// A Poisson's ratio too large for its two moduli.
    #[error(
        "{name} is {value}, but with {first} and {second} as given it must lie between -{limit:.3} and {limit:.3} \
         (|nu_ij| < sqrt(E_i/E_j)); lower {name} or bring the two moduli closer"
    )]
    PoissonTooLarge {
        /// The ratio's name.
        name: &'static str,
        /// What was given.
        value: f64,
        /// Largest magnitude allowed.
        limit: f64,
        /// The modulus along the stress.
        first: &'static str,
        /// The modulus along the strain.
        second: &'static str,
    },
    /// Each Poisson's ratio is possible, the three together are not.
    #[error(
        "nu_LR {nu_lr}, nu_LT {nu_lt} and nu_RT {nu_rt} cannot occur together with these moduli: the determinant \
         1 - nu_LR nu_RL - nu_RT nu_TR - nu_LT nu_TL - 2 nu_RL nu_TR nu_LT is {determinant:.4}, and must be above \
         zero; lower the largest ratio"
    )]
    PoissonsTogether {
        /// `nu_LR` as given.
        nu_lr: f64,
        /// `nu_LT` as given.
        nu_lt: f64,
        /// `nu_RT` as given.
        nu_rt: f64,
        /// The determinant that must be positive.
        determinant: f64,
    },
}

impl OrthotropicConstants {
    /// An isotropic material with Young's modulus `e_gpa` (GPa) and Poisson's ratio `nu`.
    #[must_use]
    pub fn isotropic(e_gpa: f64, nu: f64) -> Self {
        let g = e_gpa / (2.0 * (1.0 + nu));
        Self {
            e_l_gpa: e_gpa,
            e_r_gpa: e_gpa,
            e_t_gpa: e_gpa,
            g_lr_gpa: g,
            g_lt_gpa: g,
            g_rt_gpa: g,
            nu_lr: nu,
            nu_lt: nu,
            nu_rt: nu,
        }
    }

    /// Checks that the constants are thermodynamically admissible: deforming the wood must cost energy.
    ///
    /// # Errors
    /// The first constant, or group of constants, that cannot be (Lempriere 1968, AIAA J. 6, 2226: the conditions for
    /// a positive definite orthotropic compliance).
    pub fn check(&self) -> Result<(), WoodError> {
        for (name, value) in [
            ("E_L", self.e_l_gpa),
            ("E_R", self.e_r_gpa),
            ("E_T", self.e_t_gpa),
            ("G_LR", self.g_lr_gpa),
            ("G_LT", self.g_lt_gpa),
            ("G_RT", self.g_rt_gpa),
        ] {
            if !(value.is_finite() && value > 0.0) {
                return Err(WoodError::NotPositive { name, value });
            }
        }
        for (name, value, e_i, e_j, first, second) in [
            ("nu_LR", self.nu_lr, self.e_l_gpa, self.e_r_gpa, "E_L", "E_R"),
            ("nu_LT", self.nu_lt, self.e_l_gpa, self.e_t_gpa, "E_L", "E_T"),
            ("nu_RT", self.nu_rt, self.e_r_gpa, self.e_t_gpa, "E_R", "E_T"),
        ] {
            let limit = (e_i / e_j).sqrt();
            if value.is_nan() || value.abs() >= limit {
                return Err(WoodError::PoissonTooLarge { name, value, limit, first, second });
            }
        }
        let nu_rl = self.nu_lr * self.e_r_gpa / self.e_l_gpa;
        let nu_tl = self.nu_lt * self.e_t_gpa / self.e_l_gpa;
        let nu_tr = self.nu_rt * self.e_t_gpa / self.e_r_gpa;
        let determinant =
            1.0 - self.nu_lr * nu_rl - self.nu_rt * nu_tr - self.nu_lt * nu_tl - 2.0 * nu_rl * nu_tr * self.nu_lt;
        if determinant > 0.0 {
            Ok(())
        } else {
            Err(WoodError::PoissonsTogether { nu_lr: self.nu_lr, nu_lt: self.nu_lt, nu_rt: self.nu_rt, determinant })
        }
    }

    /// Compliance in the wood's own axes: strains (LL, RR, TT, RT, LT, LR; shears as engineering strains) per
    /// stress in the same order, 1/Pa.
    #[must_use]
    pub fn compliance_per_pa(&self) -> Matrix6<f64> {
        const PA_PER_GPA: f64 = 1e9;
        let mut s = Matrix6::zeros();
        s[(0, 0)] = 1.0 / self.e_l_gpa;
        s[(1, 1)] = 1.0 / self.e_r_gpa;
        s[(2, 2)] = 1.0 / self.e_t_gpa;
        s[(0, 1)] = -self.nu_lr / self.e_l_gpa;
        s[(0, 2)] = -self.nu_lt / self.e_l_gpa;
        s[(1, 2)] = -self.nu_rt / self.e_r_gpa;
        s[(1, 0)] = s[(0, 1)];
        s[(2, 0)] = s[(0, 2)];
        s[(2, 1)] = s[(1, 2)];
        s[(3, 3)] = 1.0 / self.g_rt_gpa;
        s[(4, 4)] = 1.0 / self.g_lt_gpa;
        s[(5, 5)] = 1.0 / self.g_lr_gpa;
        s / PA_PER_GPA
    }
}

#[cfg(test)]
mod tests;
