//! What a facet's surface feels of the wood under it.

use nalgebra::{Matrix2, Matrix3, Matrix3x2, Vector3, Vector6};

use super::{OrthotropicConstants, stress_in, wood_axes};

/// The parts of the turned 3D compliance that a shell needs, in the facet's axes 1, 2 (in it) and 3 (its normal), 1/Pa.
///
/// The normal stress is zero in a shell, so plane stress is just the choice of rows: no inversion is needed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FacetCompliance {
    /// In-plane strains (11, 22, 12) per in-plane stresses (11, 22, 12).
    pub in_plane: Matrix3<f64>,
    /// In-plane strains (11, 22, 12) per transverse shear stresses (13, 23): zero where the wood's axes lie in the facet,
    /// not zero on a slope.
    pub coupling: Matrix3x2<f64>,
    /// Transverse shear strains (13, 23) per transverse shear stresses (13, 23).
    pub transverse: Matrix2<f64>,
}

impl FacetCompliance {
    /// The mean of several.
    #[must_use]
    pub fn mean<const N: usize>(of: &[Self; N]) -> Self {
        let mut sum = Self { in_plane: Matrix3::zeros(), coupling: Matrix3x2::zeros(), transverse: Matrix2::zeros() };
        for one in of {
            sum.in_plane += one.in_plane;
            sum.coupling += one.coupling;
            sum.transverse += one.transverse;
        }
        let share = 1.0 / N as f64;
        Self { in_plane: sum.in_plane * share, coupling: sum.coupling * share, transverse: sum.transverse * share }
    }
}

/// Wood's compliance with its axes, to be looked at from any facet.
#[derive(Debug, Clone, Copy)]
pub struct Grain {
    /// Axes L, R, T as columns in the top's frame.
    axes: Matrix3<f64>,
    /// Strains (LL, RR, TT) per stresses (LL, RR, TT), 1/Pa.
    normal: Matrix3<f64>,
    /// Shear strains (RT, LT, LR) per their stresses, 1/Pa.
    shear: Vector3<f64>,
}

impl Grain {
    /// Of wood with `constants` and `ring_angle_deg` (see [`wood_axes`]).
    #[must_use]
    pub fn new(constants: &OrthotropicConstants, ring_angle_deg: f64) -> Self {
        let compliance = constants.compliance_per_pa();
        Self {
            axes: wood_axes(ring_angle_deg),
            normal: compliance.fixed_view::<3, 3>(0, 0).into_owned(),
            shear: Vector3::from_fn(|k, _| compliance[(3 + k, 3 + k)]),
        }
    }

    /// Whether a mirror at the plane x = 0 leaves it as it is: its axes lie in that plane or across it.
    #[must_use]
    pub fn is_symmetric(&self) -> bool {
        self.axes.column_iter().all(|axis| axis.x == 0.0 || axis.y == 0.0 && axis.z == 0.0)
    }

    /// As a facet feels it. `facet_from_top` has the facet's axes 1, 2 and normal as rows, written in the top's frame; orthonormal.
    #[must_use]
    pub fn seen_from(&self, facet_from_top: &Matrix3<f64>) -> FacetCompliance {
        let wood_from_facet = (facet_from_top * self.axes).transpose();
        // Unit stresses 11, 22, 12, 13 and 23 of the facet, in the wood's axes, and the strains that they make there.
        let stresses = [(0, 0), (1, 1), (0, 1), (0, 2), (1, 2)].map(|(i, j)| stress_in(&wood_from_facet, i, j));
        let strains = stresses.map(|stress| {
            let normal = self.normal * Vector3::new(stress[0], stress[1], stress[2]);
            let shear = self.shear.component_mul(&Vector3::new(stress[3], stress[4], stress[5]));
            Vector6::new(normal.x, normal.y, normal.z, shear.x, shear.y, shear.z)
        });
        let energy = |i: usize, j: usize| stresses[i].dot(&strains[j]);
        FacetCompliance {
            in_plane: Matrix3::from_fn(energy),
            coupling: Matrix3x2::from_fn(|i, j| energy(i, 3 + j)),
            transverse: Matrix2::from_fn(|i, j| energy(3 + i, 3 + j)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wood::Species;
    use nalgebra::Rotation3;

    fn sitka() -> OrthotropicConstants {
        Species::SitkaSpruce.record().constants
    }

    #[test]
    fn a_level_facet_sees_the_plane_stress_constants() {
        let c = sitka();
        let facet = Grain::new(&c, 0.0).seen_from(&Matrix3::identity());
        let per_gpa = facet.in_plane * 1e9;
        assert!((per_gpa[(0, 0)] - 1.0 / c.e_r_gpa).abs() < 1e-12);
        assert!((per_gpa[(1, 1)] - 1.0 / c.e_l_gpa).abs() < 1e-12);
        assert!((per_gpa[(2, 2)] - 1.0 / c.g_lr_gpa).abs() < 1e-12);
        assert!((per_gpa[(0, 1)] + c.nu_lr / c.e_l_gpa).abs() < 1e-12);
        assert!((facet.transverse[(0, 0)] * 1e9 - 1.0 / c.g_rt_gpa).abs() < 1e-9);
        assert!((facet.transverse[(1, 1)] * 1e9 - 1.0 / c.g_lt_gpa).abs() < 1e-9);
        assert!(facet.coupling.amax() < 1e-20);
    }

    /// Off-axis Young's modulus in the R-T plane, the textbook transformation
    /// 1/E = cos⁴/E_R + sin⁴/E_T + (1/G_RT − 2 nu_RT/E_R) sin² cos² (Lekhnitskii 1981, Theory of Elasticity of an
    /// Anisotropic Body; from memory).
    #[test]
    fn a_flank_is_softened_by_the_rolling_shear() {
        let c = sitka();
        let slope = 30_f64.to_radians();
        let facet_from_top = Rotation3::from_axis_angle(&nalgebra::Vector3::y_axis(), slope).matrix().transpose();
        let facet = Grain::new(&c, 0.0).seen_from(&facet_from_top);
        let (s, k) = slope.sin_cos();
        let expected = k.powi(4) / c.e_r_gpa
            + s.powi(4) / c.e_t_gpa
            + (1.0 / c.g_rt_gpa - 2.0 * c.nu_rt / c.e_r_gpa) * (s * k).powi(2);
        assert!((facet.in_plane[(0, 0)] * 1e9 / expected - 1.0).abs() < 1e-12);
        assert!(facet.coupling.amax() > 0.1 * facet.in_plane[(0, 0)], "force and shear couple on a slope");
    }

    /// Slab-cut wood is quarter-cut wood seen from the side.
    #[test]
    fn the_ring_angle_turns_the_wood_as_turning_the_facet_would() {
        let c = sitka();
        let turn = Rotation3::from_axis_angle(&nalgebra::Vector3::y_axis(), 25_f64.to_radians());
        let by_angle = Grain::new(&c, 25.0).seen_from(&Matrix3::identity());
        let by_facet = Grain::new(&c, 0.0).seen_from(&turn.matrix().transpose());
        assert!((by_angle.in_plane - by_facet.in_plane).amax() < 1e-20);
        assert!((by_angle.coupling - by_facet.coupling).amax() < 1e-20);
        assert!((by_angle.transverse - by_facet.transverse).amax() < 1e-20);
    }
}
