//! How a round hole gathers the force in a plate under tension.

use std::f64::consts::TAU;

use anyhow::{Result, ensure};
use bombatura_core::wood::{Species, Wood, WoodChoice};

use super::mesh::{Mesh, on_circle, stands_at};
use super::shell::{Shell, isotropic};
use super::{Row, Target};
use crate::reference;

/// Asked for at the fine mesh's number of nodes.
const TOLERANCE_PCT: f64 = 3.0;
const AROUND: usize = 80;
const OUTWARDS: usize = 110;
/// The plate's radius over the hole's. An endless plate's stress falls as the square of the distance: what the edge at 25
/// radii leaves is 2.5/625 of it.
const PLATE: f64 = 25.0;
const HOLE_MM: f64 = 10.0;

/// The checks of this subject.
pub(super) fn rows() -> Result<Vec<Row>> {
    let metal = isotropic(200.0, 0.3, 1.0);
    let spruce = WoodChoice { species: Species::SitkaSpruce, ring_angle_deg: 0.0, measured: None }.wood()?;
    [("P-HOLE-ISO", metal, true), ("P-HOLE-ALONG", spruce, true), ("P-HOLE-ACROSS", spruce, false)]
        .into_iter()
        .map(|(id, wood, along)| {
            let line = reference::row("plates", id)?;
            if id != "P-HOLE-ISO" {
                let closed = closed_form(&wood, along);
                ensure!((closed / line.number()? - 1.0).abs() < 1e-3, "{id} says {}, its formula {closed}", line.value);
            }
            let mesh = plate();
            let got = peak(&mesh, wood, along)?;
            Ok(Row::judge(&Target::from_reference(&line, "", line.number()?, TOLERANCE_PCT), got, mesh.nodes_mm.len()))
        })
        .collect()
}

/// A quarter of a ring whose cells grow outwards with the radius; parameters are the share of the quarter turn from
/// the y axis and of the way out.
fn plate() -> Mesh {
    Mesh::grid(AROUND, OUTWARDS, |turn, out| {
        let ((cos, sin), radius) = (on_circle(0.25 * turn), HOLE_MM * PLATE.powf(out));
        [radius * sin, radius * cos, 0.0]
    })
}

/// Stress along the hole's edge where it is greatest, over the tension far away.
fn peak(mesh: &Mesh, wood: Wood, along: bool) -> Result<f64> {
    let thickness_mm = 3.0;
    let axis = usize::from(along);
    // 1 MPa on the plate's edge: force a unit of length times the edge's part that faces the pull; the nodes on the mirrors
    // carry half an edge.
    let radius_m = HOLE_MM * PLATE * 1e-3;
    let chord_m = 2.0 * radius_m * (0.125 * TAU / AROUND as f64).sin();
    let node = |i: usize, out: f64| mesh.at(i as f64 / AROUND as f64, out);
    let forces: Vec<(usize, [f64; 3])> = (0..=AROUND)
        .map(|i| {
            let at = node(i, 1.0);
            let facing = mesh.nodes_mm[at][axis] / (HOLE_MM * PLATE);
            let edges = if i == 0 || i == AROUND { 0.5 } else { 1.0 };
            let mut force = [0.0; 3];
            force[axis] = 1e6 * thickness_mm * 1e-3 * chord_m * edges * facing;
            (at, force)
        })
        .collect();
    // What the quarter's mirrors ask for; nothing leaves the plane.
    let supports = |turn: f64, _: f64| {
        let on = |value: f64| stands_at(turn, value);
        format!("zab{}{}", if on(0.0) { "xc" } else { "" }, if on(1.0) { "yc" } else { "" })
    };
    let shell = Shell { mesh, thickness_mm, material: wood, supports: &supports };
    let edge: Vec<u32> = (0..=AROUND).map(|i| node(i, 0.0) as u32).collect();
    let stresses = shell.edge_stresses(&edge, &forces)?;
    // Beside the mirror that the pull leaves in its place; 1 MPa is pulled with.
    let beside = if along { AROUND - 1 } else { 0 };
    Ok(stresses[beside].faces_mpa[0])
}

/// Lekhnitskii's formula, as in the reference lines.
fn closed_form(wood: &Wood, along: bool) -> f64 {
    let c = &wood.constants;
    let (pulled, other, nu) =
        if along { (c.e_l_gpa, c.e_r_gpa, c.nu_lr) } else { (c.e_r_gpa, c.e_l_gpa, c.nu_lr * c.e_r_gpa / c.e_l_gpa) };
    1.0 + (2.0 * ((pulled / other).sqrt() - nu) + pulled / c.g_lr_gpa).sqrt()
}
