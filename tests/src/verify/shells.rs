//! Curved shells: modes.

use std::f64::consts::{PI, TAU};

use anyhow::{Context, Result};
use bombatura_core::modes::Modes;
use bombatura_core::shell::DOFS_PER_NODE;

use super::mesh::{Mesh, on_circle, stands_at};
use super::shell::{Shell, isotropic};
use super::{Row, Target};
use crate::reference;

/// The checks of this subject.
pub(super) fn rows() -> Result<Vec<Row>> {
    let mut rows = panel()?;
    rows.extend(cylinder()?);
    rows.extend(tube()?);
    rows.extend(cap()?);
    Ok(rows)
}

/// Cantilevered cylindrical panel against the converged thin-shell values of its row's note (the row itself holds
/// measurements, which differ by up to 4 %).
fn panel() -> Result<Vec<Row>> {
    const RITZ_HZ: [f64; 7] = [86.5, 139.4, 248.7, 344.9, 389.4, 532.7, 732.5];
    let (radius_mm, length_mm, opening) = (609.6, 304.8, 0.5);
    let mesh = Mesh::grid(32, 32, |round, along| {
        let angle = opening * (round - 0.5);
        [radius_mm * angle.sin(), length_mm * along, radius_mm * angle.cos()]
    });
    let supports = |_: f64, along: f64| String::from(if stands_at(along, 0.0) { "xyzabc" } else { "" });
    let material = isotropic(206.84, 0.3, 7747.73);
    let shell = Shell { mesh: &mesh, thickness_mm: 3.048, material, supports: &supports };
    let line = reference::row("shells", "S-FAN-X")?;
    let modes = shell.modes(RITZ_HZ.len())?;
    let row = |(index, (value, hz)): (usize, (f64, &f64))| {
        let target = Target {
            source: "Ritz solution of Sanders' theory for the same data, in the row's note".into(),
            source_kind: "computed".into(),
            ..Target::from_reference(&line, &(index + 1).to_string(), value, 2.0)
        };
        Row::judge(&target, *hz, shell.nodes())
    };
    Ok(RITZ_HZ.into_iter().zip(&modes.frequencies_hz).enumerate().map(row).collect())
}

/// The lowest mode that a radial `pattern` of the parameters describes: the one most of whose radial motion it is.
fn mode_like(modes: &Modes, mesh: &Mesh, radial: impl Fn(&[f64; 3]) -> [f64; 3], pattern: &[f64]) -> Result<f64> {
    let areas = mesh.areas_mm2();
    let share = |mode: usize| {
        let shape = modes.shape(mode);
        let (mut own, mut both, mut theirs) = (0.0, 0.0, 0.0);
        for (node, place) in mesh.nodes_mm.iter().enumerate() {
            let direction = radial(place);
            let moved = (0..3).map(|k| direction[k] * shape[node * DOFS_PER_NODE + k]).sum::<f64>();
            own += areas[node] * moved * moved;
            both += areas[node] * moved * pattern[node];
            theirs += areas[node] * pattern[node] * pattern[node];
        }
        both * both / (own * theirs)
    };
    // A pair of modes may share a pattern in any proportion, so half of it is enough to know it.
    let found =
        (0..modes.count()).find(|&mode| share(mode) > 0.4).context("no mode has the pattern that was asked for")?;
    Ok(modes.frequencies_hz[found])
}

fn from_axis(place: &[f64; 3]) -> [f64; 3] {
    let radius = place[0].hypot(place[2]);
    [place[0] / radius, 0.0, place[2] / radius]
}

/// cos n(θ − θ₀) with the θ₀ of the pair's first partner unknown: both partners have the same frequency, so the phase is
/// taken at which the mode's own content lies.
fn round_mode(modes: &Modes, mesh: &Mesh, n: u32, along: impl Fn(f64) -> f64) -> Result<f64> {
    let pattern = |phase: f64| -> Vec<f64> {
        mesh.parameters.iter().map(|&[turn, z]| (TAU * (f64::from(n) * turn) + phase).cos() * along(z)).collect()
    };
    let [even, odd] = [0.0, 0.5 * PI].map(|phase| mode_like(modes, mesh, from_axis, &pattern(phase)));
    match (even, odd) {
        (Ok(a), Ok(b)) => Ok(a.min(b)),
        (Ok(one), Err(_)) | (Err(_), Ok(one)) => Ok(one),
        (Err(error), Err(_)) => Err(error),
    }
}

/// Closed cylinder on shear diaphragms, L/R 20, h/R 0.01: one half wave along, one to six waves round; one per cent.
fn cylinder() -> Result<Vec<Row>> {
    let (radius_mm, thickness_mm, e_gpa, nu, density) = (1000.0, 10.0, 200.0, 0.3, 8000.0);
    let mesh = Mesh::closed(72, 60, |turn, along| {
        let (cos, sin) = on_circle(turn);
        [radius_mm * cos, 20.0 * radius_mm * along, radius_mm * sin]
    });
    let supports = |turn: f64, along: f64| {
        let at_end = stands_at(along, 0.0) || stands_at(along, 1.0);
        // One point keeps the whole from sliding along its axis, which the diaphragms leave free.
        let middle = stands_at(along, 0.5) && stands_at(turn, 0.0);
        String::from(match (at_end, middle) {
            (true, _) => "xz",
            (_, true) => "y",
            _ => "",
        })
    };
    let shell = Shell { mesh: &mesh, thickness_mm, material: isotropic(e_gpa, nu, density), supports: &supports };
    let modes = shell.modes(100)?;
    let line = reference::row("shells", "S-CYL-SD")?;
    let per_hz = TAU * 1e-3 * radius_mm * (density * (1.0 - nu * nu) / (e_gpa * 1e9)).sqrt();
    let mut rows = Vec::new();
    for (n, value) in (1..).zip(line.numbers()?) {
        let hz = round_mode(&modes, &mesh, n, |z| (PI * z).sin())?;
        let target = Target::from_reference(&line, &format!("n{n}"), value, 1.0);
        rows.push(Row::judge(&target, hz * per_hz, shell.nodes()));
    }
    Ok(rows)
}

/// Free tube, bending round without stretching; one per cent.
fn tube() -> Result<Vec<Row>> {
    let (radius_mm, length_mm) = (1000.0, 4000.0);
    let mesh = Mesh::closed(84, 30, |turn, along| {
        let (cos, sin) = on_circle(turn);
        [radius_mm * cos, length_mm * along, radius_mm * sin]
    });
    let shell = Shell {
        mesh: &mesh,
        thickness_mm: 10.0,
        material: isotropic(200.0, 0.3, 8000.0),
        supports: &|_, _| String::new(),
    };
    let modes = shell.modes(20)?;
    let line = reference::row("shells", "S-CYL-RAY")?;
    let mut rows = Vec::new();
    for (n, value) in (2..).zip(line.numbers()?) {
        let hz = round_mode(&modes, &mesh, n, |_| 1.0)?;
        rows.push(Row::judge(&Target::from_reference(&line, &format!("n{n}"), value, 1.0), hz, shell.nodes()));
    }
    Ok(rows)
}

/// Clamped shallow cap over the flat plate: how its rise stiffens the first axisymmetric mode; one per cent of the
/// frequency ratio. Targets are the row's one-term law with the coefficients that its note gives for each rise.
fn cap() -> Result<Vec<Row>> {
    const COEFFICIENTS: [(f64, f64); 2] = [(1.0, 0.827), (2.0, 0.813)];
    let (radius_mm, thickness_mm) = (1000.0, 5.0);
    let frequency = |rise_mm: f64| -> Result<(f64, usize)> {
        let mesh = Mesh::disc(28, |r, turn| {
            let (cos, sin) = on_circle(turn);
            [radius_mm * r * cos, radius_mm * r * sin, rise_mm * (1.0 - r * r)]
        });
        let supports = |r: f64, _: f64| String::from(if stands_at(r, 1.0) { "xyzabc" } else { "" });
        let shell = Shell { mesh: &mesh, thickness_mm, material: isotropic(200.0, 0.3, 8000.0), supports: &supports };
        let modes = shell.modes(8)?;
        // The clamped plate's first mode is near (1 − r²)².
        let pattern: Vec<f64> = mesh.parameters.iter().map(|[r, _]| (1.0 - r * r).powi(2)).collect();
        Ok((mode_like(&modes, &mesh, |_| [0.0, 0.0, 1.0], &pattern)?, shell.nodes()))
    };
    let line = reference::row("shells", "S-CAP-C")?;
    let (flat, _) = frequency(0.0)?;
    let mut rows = Vec::new();
    for (rise, coefficient) in COEFFICIENTS {
        let (hz, nodes) = frequency(rise * thickness_mm)?;
        let target = Target {
            source: "Ritz solution (nu 0.3) in the row's note; law of Reissner 1955".into(),
            source_kind: "computed".into(),
            ..Target::from_reference(&line, &format!("rise{rise}"), (1.0 + coefficient * rise * rise).sqrt(), 1.0)
        };
        rows.push(Row::judge(&target, hz / flat, nodes));
    }
    Ok(rows)
}
