//! Energies of shapes whose stresses are known.

use super::*;
use crate::shell::{Equations, ShellModel, Supports};
use crate::wood::Species;

/// A flat sheet of 3 × 3 nodes, 3 mm thick.
pub(in crate::shell) fn sheet() -> ShellGeometry {
    let nodes: Vec<[f64; 3]> =
        (0..9).map(|k| [f64::from(k % 3) * 10.0, f64::from(k / 3) * 8.0 + 0.4 * f64::from(k % 3), 0.0]).collect();
    let triangles: Vec<[u32; 3]> = [0, 1, 3, 4].iter().flat_map(|&a| [[a, a + 1, a + 4], [a, a + 4, a + 3]]).collect();
    ShellGeometry::new(&nodes, None, &[3.0; 9], &triangles).unwrap()
}

pub(in crate::shell) fn spruce() -> Wood {
    let record = Species::SitkaSpruce.record();
    Wood { constants: record.constants, density_kg_m3: record.density_kg_m3, ring_angle_deg: 0.0 }
}

/// (node, dof) of the deflection w with constant curvatures, normals upright to it.
pub(in crate::shell) fn bent(geometry: &ShellGeometry, [xx, yy, xy]: [f64; 3]) -> Vec<f64> {
    let at = |p: &nalgebra::Vector3<f64>| {
        let w = -0.5 * (xx * p.x * p.x + yy * p.y * p.y) - xy * p.x * p.y;
        let (slope_x, slope_y) = (-xx * p.x - xy * p.y, -yy * p.y - xy * p.x);
        [0.0, 0.0, w, slope_y, -slope_x, 0.0]
    };
    geometry.nodes_m().iter().flat_map(at).collect()
}

fn slopes(geometry: &ShellGeometry, shapes: &[f64]) -> EnergySlopes {
    EnergySlopes::new(geometry, &spruce(), ElementOptions::default(), shapes).unwrap()
}

fn of(slopes: &EnergySlopes, constant: WoodConstant) -> f64 {
    slopes.by_constant[constant as usize][0] / slopes.stiffness[0]
}

/// Pure twist stores 4 G_LR t³/12 κ² A (any plate theory): all of it by one constant, and by the cube of thickness.
#[test]
fn a_twisted_sheet_feels_the_shear_modulus_alone() {
    let geometry = sheet();
    let slopes = slopes(&geometry, &bent(&geometry, [0.0, 0.0, 1.0]));
    let exact = 4.0 * spruce().constants.g_lr_gpa * 1e9 * 3e-3_f64.powi(3) / 12.0 * 20e-3 * 16e-3;
    assert!((slopes.stiffness[0] / exact - 1.0).abs() < 1e-9);
    for constant in WoodConstant::ALL {
        let expected = if constant == WoodConstant::GLR { 1.0 } else { 0.0 };
        assert!((of(&slopes, constant) - expected).abs() < 1e-6, "{}", constant.symbol());
    }
    assert!((slopes.stiffness_by_thickness[0] / slopes.stiffness[0] - 3.0).abs() < 2e-6);
}

/// Cylindrical bending along the grain stores E_L/(1 − ν_LR² E_R/E_L) t³/12 κ² A (any plate theory); its derivatives follow by
/// calculus, with n = ν_LR² E_R/E_L: 1 − n/(1 − n) by E_L, n/(1 − n) by E_R, 2n/(1 − n) by ν_LR.
#[test]
fn a_cylinder_along_the_grain_feels_modulus_and_poissons_ratio() {
    let geometry = sheet();
    let slopes = slopes(&geometry, &bent(&geometry, [0.0, 1.0, 0.0]));
    let c = spruce().constants;
    let n = c.nu_lr * c.nu_lr * c.e_r_gpa / c.e_l_gpa;
    let rest = n / (1.0 - n);
    for (constant, expected) in [
        (WoodConstant::EL, 1.0 - rest),
        (WoodConstant::ER, rest),
        (WoodConstant::NuLR, 2.0 * rest),
        (WoodConstant::ET, 0.0),
    ] {
        let got = of(&slopes, constant);
        assert!((got - expected).abs() < 1e-6, "{}: {got} against {expected}", constant.symbol());
    }
}

/// The sums over elements against the assembled matrices.
#[test]
fn energies_are_those_of_the_assembled_model() {
    let geometry = sheet();
    let shape: Vec<f64> = (0..54).map(|k| f64::from(k * k % 17) - 8.0).collect();
    let slopes = slopes(&geometry, &shape);
    let equations = Equations::new(geometry.triangles(), &Supports::free(9)).unwrap();
    let model = ShellModel::assemble(&geometry, &spruce(), &equations, ElementOptions::default()).unwrap();
    let energy = |values: &[f64]| equations.pattern.quadratic(values, &equations.gather(&shape));
    assert!((slopes.stiffness[0] / energy(&model.stiffness) - 1.0).abs() < 1e-12);
    assert!((slopes.mass[0] / energy(&model.mass) - 1.0).abs() < 1e-12);
}

#[test]
fn wood_on_the_brink_is_refused_and_not_stepped_over() {
    let geometry = sheet();
    let mut wood = spruce();
    wood.constants.nu_lr = (wood.constants.e_l_gpa / wood.constants.e_r_gpa).sqrt() * 0.9999;
    wood.constants.nu_lt = 0.0;
    wood.constants.nu_rt = 0.0;
    wood.constants.check().unwrap();
    let refused = EnergySlopes::new(&geometry, &wood, ElementOptions::default(), &bent(&geometry, [1.0, 0.0, 0.0]));
    assert!(matches!(refused, Err(ShellError::Wood(_))));
}
