//! Flat isotropic plates: modes.
//!
//! Tolerances are those an engineer would ask of about 2 500 nodes: half a per cent.

use std::f64::consts::TAU;

use anyhow::Result;
use bombatura_core::wood::Wood;

use super::mesh::{Mesh, on_circle, stands_at};
use super::shell::{Shell, isotropic};
use super::{Row, Target};
use crate::reference;

const TOLERANCE_PCT: f64 = 0.5;
const E_GPA: f64 = 200.0;
const NU: f64 = 0.3;
const DENSITY: f64 = 8000.0;

/// The checks of this subject.
pub(super) fn rows() -> Result<Vec<Row>> {
    let mut rows = Vec::new();
    for case in cases() {
        let line = reference::row("plates", case.id)?;
        let shell = Shell {
            mesh: &case.mesh,
            thickness_mm: case.thickness_mm,
            material: steel(),
            supports: &|a, b| (case.supports)(a, b).to_owned(),
        };
        let targets = line.numbers()?;
        let modes = shell.modes(1 + case.modes.last().unwrap_or(&(targets.len() - 1)))?;
        for (index, target) in targets.into_iter().enumerate() {
            let hz = modes.frequencies_hz[*case.modes.get(index).unwrap_or(&index)];
            let target = Target::from_reference(&line, &(index + 1).to_string(), target, TOLERANCE_PCT);
            rows.push(Row::judge(&target, hz * case.units_per_hz, shell.nodes()));
        }
    }
    Ok(rows)
}

fn steel() -> Wood {
    isotropic(E_GPA, NU, DENSITY)
}

struct Case {
    id: &'static str,
    mesh: Mesh,
    thickness_mm: f64,
    supports: fn(f64, f64) -> &'static str,
    /// The row's quantity over Hz.
    units_per_hz: f64,
    /// Which mode, counted from zero, each of the row's figures is, where the row lists the pairs of a round plate once.
    modes: &'static [usize],
}

/// ω a² √(ρh/D) per Hz.
fn lambda(side_m: f64, thickness_m: f64) -> f64 {
    let stiffness = E_GPA * 1e9 * thickness_m.powi(2) / (12.0 * (1.0 - NU * NU) * DENSITY);
    TAU * side_m.powi(2) / stiffness.sqrt()
}

/// ω a √(ρ/G) per Hz.
fn shear_wave(side_m: f64) -> f64 {
    TAU * side_m * (DENSITY * 2.0 * (1.0 + NU) / (E_GPA * 1e9)).sqrt()
}

fn rectangle(length_mm: f64, width_mm: f64) -> Mesh {
    let cells = |length: f64| (49.0 * (length / (length_mm * width_mm).sqrt())).round() as usize;
    Mesh::grid(cells(length_mm), cells(width_mm), |x, y| [length_mm * x, width_mm * y, 0.0])
}

fn on_edge(a: f64, b: f64) -> bool {
    [a, b].iter().any(|p| stands_at(*p, 0.0) || stands_at(*p, 1.0))
}

fn free(_: f64, _: f64) -> &'static str {
    "xyc"
}

fn clamped(a: f64, b: f64) -> &'static str {
    if on_edge(a, b) { "xyzabc" } else { "xyc" }
}

/// w and the tangential rotation are zero on each edge, as Navier's solution has it.
fn simply_supported(a: f64, b: f64) -> &'static str {
    let (along_y, along_x) = (stands_at(a, 0.0) || stands_at(a, 1.0), stands_at(b, 0.0) || stands_at(b, 1.0));
    match (along_y, along_x) {
        (true, true) => "xyzabc",
        (true, false) => "xyzac",
        (false, true) => "xyzbc",
        (false, false) => "xyc",
    }
}

/// In-plane motion only.
fn in_plane(_: f64, _: f64) -> &'static str {
    "zab"
}

fn cases() -> Vec<Case> {
    let side = 10_000.0;
    let square = || rectangle(side, side);
    // Thin enough that Kirchhoff's theory, in which the rows hold, is within 0.1 %.
    let thin = 20.0;
    let (side_m, thin_m, thick_m) = (10.0, 0.02, 1.0);
    let case = |id, mesh, thickness_mm, supports, units_per_hz| Case {
        id,
        mesh,
        thickness_mm,
        supports,
        units_per_hz,
        modes: &[],
    };
    let disc = Mesh::disc(28, |r, turn| [side * r * on_circle(turn).0, side * r * on_circle(turn).1, 0.0]);
    let ring = Mesh::closed(112, 22, |turn, across| {
        let radius = side * (1.0 - 0.5 * across);
        [radius * on_circle(turn).0, radius * on_circle(turn).1, 0.0]
    });
    vec![
        case("P-FV12-C", square(), 50.0, free, 1.0),
        case("P-SS-THIN", square(), 50.0, simply_supported, 1.0),
        case("P-FV52", square(), 1000.0, simply_supported, 1.0),
        case("P-FV52-IP", square(), 1000.0, in_plane, 1.0),
        case("P-FFFF-2", rectangle(side, 0.5 * side), thin, free, lambda(side_m, thin_m)),
        case("P-CCCC-1", square(), thin, clamped, lambda(side_m, thin_m)),
        case("P-SSSS-1.5", rectangle(side, side / 1.5), thin, simply_supported, lambda(side_m, thin_m)),
        case("P-MIN-SS", square(), 1000.0, simply_supported, shear_wave(side_m)),
        case("P-MIN-FF", square(), 1000.0, free, lambda(side_m, thick_m)),
        case("P-MIN-FF01", square(), 100.0, free, lambda(side_m, 0.1)),
        Case { modes: &[0, 2, 3, 5, 7, 9, 11, 13], ..case("P-CIRC-F30", disc, thin, free, lambda(side_m, thin_m)) },
        Case { modes: &[0, 2, 3], ..case("P-ANN-05", ring, thin, free, lambda(side_m, thin_m)) },
    ]
}
