//! What change of thickness brings a top to a mass.

use thiserror::Error;

use super::Body;
use crate::{design::Measure, graduation::Graduation, mesh::PlanMesh, surface::Surface};

/// A mass that no uniform change reaches.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum MassTargetError {
    /// Not a mass.
    #[error("the mass wished for is {mass_g} g; it must be a number above 0 g")]
    NotAMass {
        /// What was wished for.
        mass_g: f64,
    },
    /// The wood would be thinner or thicker anywhere than wood may be.
    #[error(
        "{mass_g:.1} g needs a change of {change_mm:.2} mm, after which the wood is {thinnest_mm:.2} to {thickest_mm:.2} mm thick; it may be \
         {} to {} mm: choose another mass or other wood",
        limits_mm[0], limits_mm[1]
    )]
    OutOfReach {
        /// What was wished for.
        mass_g: f64,
        /// The change that would be needed, mm.
        change_mm: f64,
        /// Thinnest place after it, mm.
        thinnest_mm: f64,
        /// Thickest place after it, mm.
        thickest_mm: f64,
        /// How thin and how thick wood may be.
        limits_mm: [f64; 2],
    },
}

/// The change of thickness, mm, the same everywhere and negative for thinner, that brings the top's wood (no bar) to
/// `mass_g`; [`crate::design::GraduationMeasures::thicker_by`] makes it.
///
/// # Errors
/// [`MassTargetError`] when there is none.
pub fn uniform_change_mm(
    mesh: &PlanMesh,
    surface: &Surface,
    graduation: &Graduation,
    density_kg_m3: f64,
    mass_g: f64,
) -> Result<f64, MassTargetError> {
    if !(mass_g.is_finite() && mass_g > 0.0) {
        return Err(MassTargetError::NotAMass { mass_g });
    }
    let body = |change: f64| {
        Body::over(&mesh.points_mm, &mesh.triangles, |p| surface.at(p), |p| graduation.thickness_mm(p) + change)
    };
    // Mass is all but linear in the change (a layer's area grows by curvature times depth, some per cent): Newton's steps with
    // the outside's area for a slope gain two digits each.
    let mut change_mm = 0.0;
    for _ in 0..6 {
        let now = body(change_mm);
        let slope = now.outside_area_mm2 * density_kg_m3 * 1e-6;
        change_mm += (mass_g - now.mass_g(density_kg_m3)) / slope;
    }
    let thickness = mesh.points_mm.iter().map(|&p| graduation.thickness_mm(p) + change_mm);
    let (thinnest_mm, thickest_mm) =
        thickness.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), t| (low.min(t), high.max(t)));
    // As for any thickness of a design.
    let limits_mm = Measure::of_path("graduation.*.*.thickness_mm").map_or([0.0, f64::INFINITY], |m| [m.least, m.most]);
    if thinnest_mm < limits_mm[0] || thickest_mm > limits_mm[1] {
        return Err(MassTargetError::OutOfReach { mass_g, change_mm, thinnest_mm, thickest_mm, limits_mm });
    }
    Ok(change_mm)
}
