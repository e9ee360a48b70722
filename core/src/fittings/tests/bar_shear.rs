//! A bar so deep and so short that it shears.

use super::super::{Bar, BarWood, Fittings, Profile};
use super::sheet::{Sheet, spruce};
use crate::shell::Supports;
use crate::statics::PointLoad;

const LENGTH: f64 = 0.27;
const ROWS: usize = 3;
/// Strip and bar: width and thickness or height, m.
const STRIP: [f64; 2] = [12e-3, 3e-3];
const STICK: [f64; 2] = [5.5e-3, 12e-3];

/// Second moment of the T section (m⁴), and its shear area (m²) from the shear flow: a force V shears with the energy ½V²/G ·
/// ∫S²/(I²b) dz, S the static moment of what lies beyond z (Timoshenko, Strength of Materials, part I; from memory).
fn section() -> (f64, f64) {
    let ([b, t], [w, h]) = (STRIP, STICK);
    let middle = (b * t * (h + 0.5 * t) + 0.5 * w * h * h) / (b * t + w * h);
    let steps = 4000;
    let dz = (t + h) / f64::from(steps);
    let (mut second, mut flow, mut beyond) = (0.0, 0.0, 0.0);
    for step in 0..steps {
        let z = (f64::from(step) + 0.5) * dz;
        let width = if z < h { w } else { b };
        second += width * (z - middle).powi(2) * dz;
        beyond += width * (middle - z) * dz;
        flow += beyond * beyond / width * dz;
    }
    (second, second * second / flow)
}

/// w = P L³/(3 E I) + P L/(G A_s) at the tip of a clamped strip of spruce with a bar of spruce, where shear takes 2 %. Without the
/// bar's own shear stiffness, the strip's alone carrying the shear, it is 7 % out. Tolerance as for the other static figures: 1 %.
#[test]
fn a_deep_bar_shears_as_its_section_does() {
    let sheet = Sheet {
        columns: 54,
        rows: ROWS,
        length_mm: LENGTH * 1e3,
        width_mm: STRIP[0] * 1e3,
        thickness_mm: STRIP[1] * 1e3,
        turn_deg: 90.0,
        disorder: 0.0,
        wood: spruce(),
    };
    let constants = sheet.wood.constants;
    let (modulus_pa, shear_pa) = (constants.e_l_gpa * 1e9, constants.g_lt_gpa * 1e9);
    let bar = Bar {
        ends_m: [sheet.plan_m([0.0, 6.0]), sheet.plan_m([LENGTH * 1e3, 6.0])],
        width_m: STICK[0],
        profile: Profile::even(STICK[1]),
        wood: BarWood { modulus_pa, shear_pa, density_kg_m3: 448.0 },
    };
    let root: Vec<u32> = (0..=ROWS).map(|j| sheet.node(0, j)).collect();
    let supports = Supports::clamped(sheet.nodes(), &root);
    let fitted = sheet.with(&Fittings { bar: Some(bar), ..Fittings::default() }, supports);
    let tip: Vec<usize> = (0..=ROWS).map(|j| sheet.node(sheet.columns, j) as usize).collect();
    let share = 1.0 / tip.len() as f64;
    let loads: Vec<_> = tip.iter().map(|&node| PointLoad { node, force_n: [0.0, 0.0, share] }).collect();
    let moved = fitted.under(&loads);
    let got = tip.iter().map(|&node| moved[node][2]).sum::<f64>() * share;
    let (second, sheared) = section();
    let exact = LENGTH.powi(3) / (3.0 * modulus_pa * second) + LENGTH / (shear_pa * sheared);
    assert!((got / exact - 1.0).abs() < 0.01, "{:+.3} %", 100.0 * (got / exact - 1.0));
}
