//! The wood through the thickness at a facet: resultants from strains.

use nalgebra::{Matrix2, Matrix2x3, Matrix3, Matrix3x2};

use crate::wood::FacetCompliance;

/// Shear stress is a parabola through the thickness; its energy is 6/5 of a uniform one's (Reissner 1945, J. Appl. Mech.
/// 12, A69).
const PARABOLIC_SHEAR: f64 = 6.0 / 5.0;

const POSITIVE: &str = "admissible wood has a positive definite compliance";

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
    /// Its inverse, m/N.
    pub(super) shear_flexibility: Matrix2<f64>,
    /// Plane-stress stiffness of the wood, Pa: moments are t³/12 of it.
    pub(super) plane_stress_pa: Matrix3<f64>,
    /// Its inverse, the in-plane compliance, 1/Pa.
    pub(super) in_plane_per_pa: Matrix3<f64>,
    /// Transverse shear strains (13, 23) per in-plane strains where no transverse force acts.
    pub(super) shear_by_stretch: Matrix2x3<f64>,
}

impl Section {
    /// The section of wood with `compliance` and thickness `t` (m).
    pub(super) fn new(compliance: &FacetCompliance, t: f64) -> Self {
        let FacetCompliance { in_plane, coupling, transverse } = compliance;
        let plane_stress_pa = in_plane.try_inverse().expect(POSITIVE);
        // The inverse of the whole block by block.
        let drawn_along = plane_stress_pa * coupling;
        let shear_flexibility = (transverse * PARABOLIC_SHEAR - coupling.tr_mul(&drawn_along)) / t;
        let shear = shear_flexibility.try_inverse().expect(POSITIVE);
        let coupling = -drawn_along * shear;
        let shear_by_stretch = drawn_along.transpose();
        let membrane = plane_stress_pa * t - coupling * shear_by_stretch;
        Self {
            membrane,
            coupling,
            shear,
            shear_flexibility,
            plane_stress_pa,
            in_plane_per_pa: *in_plane,
            shear_by_stretch,
        }
    }
}
