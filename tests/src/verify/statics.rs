//! Static deflections: flat plates, and the curved shells of the usual obstacle course.

use anyhow::Result;

use super::mesh::{Mesh, on_circle, stands_at};
use super::shell::{Shell, isotropic};
use super::{Row, Target};
use crate::reference;

/// The checks of this subject.
pub(super) fn rows() -> Result<Vec<Row>> {
    let mut rows = plates()?;
    rows.push(roof()?);
    rows.push(pinched_cylinder()?);
    rows.push(hemisphere_with_hole()?);
    rows.push(closed_hemisphere()?);
    Ok(rows)
}

const MM_PER_M: f64 = 1e3;

/// Central deflection of a thin square plate, in the row's dimensionless form; one per cent at 2 500 nodes.
fn plates() -> Result<Vec<Row>> {
    let (side_m, thickness_m, e_gpa, nu) = (1.0, 0.002_f64, 200.0, 0.3);
    let stiffness = e_gpa * 1e9 * thickness_m.powi(3) / (12.0 * (1.0 - nu * nu));
    let mesh = Mesh::grid(48, 48, |x, y| [side_m * MM_PER_M * x, side_m * MM_PER_M * y, 0.0]);
    let centre = mesh.at(0.5, 0.5);
    let uniform: Vec<_> =
        mesh.areas_mm2().iter().enumerate().map(|(node, mm2)| (node, [0.0, 0.0, mm2 * 1e-6])).collect();
    let point = vec![(centre, [0.0, 0.0, 1.0])];
    let mut rows = Vec::new();
    for (id, clamped, loads) in [
        ("P-STAT-SSU", false, &uniform),
        ("P-STAT-SSP", false, &point),
        ("P-STAT-CU", true, &uniform),
        ("P-STAT-CP", true, &point),
    ] {
        let supports = |a: f64, b: f64| {
            let (left_right, up_down) =
                (stands_at(a, 0.0) || stands_at(a, 1.0), stands_at(b, 0.0) || stands_at(b, 1.0));
            let letters = match (clamped, left_right, up_down) {
                (true, true, _) | (true, _, true) => "xyzabc",
                (false, true, true) => "xyzabc",
                (false, true, false) => "xyzac",
                (false, false, true) => "xyzbc",
                _ => "xyc",
            };
            letters.to_owned()
        };
        let shell = Shell {
            mesh: &mesh,
            thickness_mm: thickness_m * MM_PER_M,
            material: isotropic(e_gpa, nu, 1.0),
            supports: &supports,
        };
        let line = reference::row("plates", id)?;
        let target = Target::from_reference(&line, "", line.number()?, 1.0);
        // q a⁴ = P a² = 1 here.
        let got = shell.displacements(loads)?[centre][2] * stiffness / side_m.powi(4);
        rows.push(Row::judge(&target, got, shell.nodes()));
    }
    Ok(rows)
}

/// Scordelis-Lo roof, a quarter of it with 32 elements a side: dead weight, diaphragm at the curved end.
fn roof() -> Result<Row> {
    let (radius, half_length, half_angle_deg) = (25.0, 25.0, 40.0);
    // Feet stand for metres: the deflection is a length in the same unit.
    let mesh = Mesh::grid(32, 32, |round, along| {
        let angle = (half_angle_deg * round).to_radians();
        [MM_PER_M * radius * angle.sin(), MM_PER_M * half_length * along, MM_PER_M * radius * angle.cos()]
    });
    let supports = |round: f64, along: f64| {
        let mut letters = String::new();
        letters.push_str(if stands_at(round, 0.0) { "xbc" } else { "" });
        letters.push_str(if stands_at(along, 0.0) { "yac" } else { "" });
        letters.push_str(if stands_at(along, 1.0) { "xz" } else { "" });
        letters
    };
    let weight = 90.0;
    let loads: Vec<_> =
        mesh.areas_mm2().iter().enumerate().map(|(node, mm2)| (node, [0.0, 0.0, -weight * mm2 * 1e-6])).collect();
    let shell =
        Shell { mesh: &mesh, thickness_mm: 250.0, material: isotropic(4.32e8 * 1e-9, 0.0, 1.0), supports: &supports };
    let line = reference::row("shells", "S-SLR")?;
    let got = -shell.displacements(&loads)?[mesh.at(1.0, 0.0)][2];
    Ok(Row::judge(&Target::from_reference(&line, "", line.number()?, 1.0), got, shell.nodes()))
}

/// Pinched cylinder with end diaphragms, an eighth of it with 32 elements a side.
fn pinched_cylinder() -> Result<Row> {
    let (radius, half_length) = (300.0, 300.0);
    let mesh = Mesh::grid(32, 32, |round, along| {
        let (cos, sin) = on_circle(0.25 * round);
        [MM_PER_M * radius * sin, MM_PER_M * half_length * along, MM_PER_M * radius * cos]
    });
    let supports = |round: f64, along: f64| {
        let mut letters = String::new();
        letters.push_str(if stands_at(round, 0.0) { "xbc" } else { "" });
        letters.push_str(if stands_at(round, 1.0) { "zab" } else { "" });
        letters.push_str(if stands_at(along, 0.0) { "yac" } else { "" });
        letters.push_str(if stands_at(along, 1.0) { "xz" } else { "" });
        letters
    };
    let shell = Shell {
        mesh: &mesh,
        thickness_mm: 3.0 * MM_PER_M,
        material: isotropic(3e6 * 1e-9, 0.3, 1.0),
        supports: &supports,
    };
    let loaded = mesh.at(0.0, 0.0);
    let line = reference::row("shells", "S-PIN")?;
    let got = -shell.displacements(&[(loaded, [0.0, 0.0, -0.25])])?[loaded][2];
    Ok(Row::judge(&Target::from_reference(&line, "", line.number()?, 2.0), got, shell.nodes()))
}

const HEMISPHERE_RADIUS: f64 = 10.0;
const HEMISPHERE_THICKNESS: f64 = 0.04;
const HEMISPHERE_E_PA: f64 = 6.825e7;

/// Supports of a quarter of a hemisphere between the planes x = 0 and y = 0; `node` is held against rigid motion along z.
fn quarter(on_x_zero: bool, on_y_zero: bool, hold_z: bool) -> String {
    let mut letters = String::new();
    letters.push_str(if on_x_zero { "xbc" } else { "" });
    letters.push_str(if on_y_zero { "yac" } else { "" });
    letters.push_str(if hold_z { "z" } else { "" });
    letters
}

fn hemisphere_row(
    id: &str,
    mesh: &Mesh,
    on_x: usize,
    on_y: usize,
    supports: &dyn Fn(f64, f64) -> String,
) -> Result<Row> {
    let shell = Shell {
        mesh,
        thickness_mm: MM_PER_M * HEMISPHERE_THICKNESS,
        material: isotropic(HEMISPHERE_E_PA * 1e-9, 0.3, 1.0),
        supports,
    };
    let line = reference::row("shells", id)?;
    let moved = shell.displacements(&[(on_x, [1.0, 0.0, 0.0]), (on_y, [0.0, -1.0, 0.0])])?;
    Ok(Row::judge(&Target::from_reference(&line, "", line.number()?, 2.0), moved[on_x][0], shell.nodes()))
}

/// Hemisphere with an 18° hole, a quarter of it with 32 elements a side, pulled and pushed at the equator.
fn hemisphere_with_hole() -> Result<Row> {
    let mesh = Mesh::grid(32, 32, |round, up| {
        let ((cos, sin), latitude) = (on_circle(0.25 * round), (72.0 * up).to_radians());
        let radius = MM_PER_M * HEMISPHERE_RADIUS;
        [radius * latitude.cos() * cos, radius * latitude.cos() * sin, radius * latitude.sin()]
    });
    let supports = |round: f64, up: f64| {
        let hold_z = stands_at(round, 0.0) && stands_at(up, 0.0);
        quarter(stands_at(round, 1.0), stands_at(round, 0.0), hold_z)
    };
    hemisphere_row("S-HEM-18", &mesh, mesh.at(0.0, 0.0), mesh.at(1.0, 0.0), &supports)
}

/// The closed hemisphere: an octant of the sphere with as many nodes as a square of 32 elements a side has.
fn closed_hemisphere() -> Result<Row> {
    let mesh = Mesh::triangle(45, |a, b| {
        // Great-circle steps keep the triangles alike from corner to corner.
        let weights = [1.0 - a - b, a, b].map(|w: f64| (w * std::f64::consts::FRAC_PI_2).sin());
        let length = weights.iter().map(|w| w * w).sum::<f64>().sqrt();
        weights.map(|w| MM_PER_M * HEMISPHERE_RADIUS * w / length)
    });
    // Corner 0 on x, corner 1 (a = 1) on y, corner 2 (b = 1) the pole.
    let supports = |a: f64, b: f64| {
        let on_x_zero = stands_at(a + b, 1.0);
        let on_y_zero = stands_at(a, 0.0);
        quarter(on_x_zero, on_y_zero, stands_at(a, 0.0) && stands_at(b, 0.0))
    };
    hemisphere_row("S-HEM-0", &mesh, mesh.at(0.0, 0.0), mesh.at(1.0, 0.0), &supports)
}
