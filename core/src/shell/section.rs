//! The wood through the thickness at a facet: resultants from strains.

use nalgebra::{Matrix2, Matrix2x3, Matrix3, Matrix3x2, SMatrix};

use crate::wood::FacetCompliance;

/// Shear stress is a parabola through the thickness; its energy is 6/5 of a uniform one's (Reissner 1945, J. Appl. Mech.
/// 12, A69).
const PARABOLIC_SHEAR: f64 = 6.0 / 5.0;

/// Stiffness of unit width of shell in the facet's axes, for one thickness.
///
/// Made by inverting the complementary energy ½[N·S N/t + 12 M·S M/t³ + 2 N·C T/t + 6/5 T·Q T/t] with S, C, Q the in-plane,
/// coupling and transverse compliance; moments and transverse forces don't couple, by symmetry through the thickness.
#[derive(Debug, Clone, Copy)]
pub(super) struct Section {
    /// In-plane forces per mean strains, N/m, with the coupling to shear in place.
    pub(super) membrane: Matrix3<f64>,
    /// In-plane forces per transverse shear strains, N/m.
    pub(super) coupling: Matrix3x2<f64>,
    /// Transverse forces per transverse shear strains, N/m.
    pub(super) shear: Matrix2<f64>,
    /// Plane-stress stiffness of the wood, Pa: moments are t³/12 of it.
    pub(super) plane_stress_pa: Matrix3<f64>,
    /// Transverse shear strains (13, 23) per in-plane strains where no transverse force acts.
    pub(super) shear_by_stretch: Matrix2x3<f64>,
}

impl Section {
    /// The section of wood with `compliance` and thickness `t` (m).
    pub(super) fn new(compliance: &FacetCompliance, t: f64) -> Self {
        let mut joint = SMatrix::<f64, 5, 5>::zeros();
        joint.fixed_view_mut::<3, 3>(0, 0).copy_from(&compliance.in_plane);
        joint.fixed_view_mut::<3, 2>(0, 3).copy_from(&compliance.coupling);
        joint.fixed_view_mut::<2, 3>(3, 0).copy_from(&compliance.coupling.transpose());
        joint.fixed_view_mut::<2, 2>(3, 3).copy_from(&(compliance.transverse * PARABOLIC_SHEAR));
        let stiffness = invert(joint) * t;
        let plane_stress_pa = invert(compliance.in_plane);
        Self {
            membrane: stiffness.fixed_view::<3, 3>(0, 0).into_owned(),
            coupling: stiffness.fixed_view::<3, 2>(0, 3).into_owned(),
            shear: stiffness.fixed_view::<2, 2>(3, 3).into_owned(),
            plane_stress_pa,
            shear_by_stretch: compliance.coupling.transpose() * plane_stress_pa,
        }
    }
}

/// The inverse of a block of an admissible compliance, which is positive definite, block by block.
fn invert<const N: usize>(compliance: SMatrix<f64, N, N>) -> SMatrix<f64, N, N> {
    nalgebra::Cholesky::new(compliance).expect("admissible wood has a positive definite compliance").inverse()
}
