//! Flat spruce plates: modes, and the closed form behind them.

use anyhow::Result;
use bombatura_core::wood::{Species, WoodChoice};

use super::mesh::{Mesh, stands_at};
use super::shell::{Shell, without_transverse_shear};
use super::{Row, Target};
use crate::reference;

const TOLERANCE_PCT: f64 = 0.5;
const THICKNESS_MM: f64 = 3.0;

/// The checks of this subject.
pub(super) fn rows() -> Result<Vec<Row>> {
    let mut rows = closed_form()?;
    for (id, length_mm, width_mm, simply_supported) in
        [("P-ORTHO-A", 400.0, 200.0, false), ("P-ORTHO-B", 300.0, 300.0, false), ("P-ORTHO-SS-A", 400.0, 200.0, true)]
    {
        rows.extend(plate(id, length_mm, width_mm, simply_supported)?);
    }
    Ok(rows)
}

/// A plate of handbook spruce with the grain along its length. The rows hold in Kirchhoff's theory; real spruce yields to
/// transverse shear at its free edges and lies 0.1 to 1.6 % lower (converged, same plate with its own shear moduli), so the
/// check is made without it.
fn plate(id: &str, length_mm: f64, width_mm: f64, simply_supported: bool) -> Result<Vec<Row>> {
    let line = reference::row("plates", id)?;
    let cells = |side: f64| (49.0 * side / (length_mm * width_mm).sqrt()).round() as usize;
    let mesh = Mesh::grid(cells(width_mm), cells(length_mm), |x, y| [width_mm * x, length_mm * y, 0.0]);
    let wood = WoodChoice { species: Species::SitkaSpruce, ring_angle_deg: 0.0, measured: None }.wood()?;
    let supports = |a: f64, b: f64| {
        let across = stands_at(a, 0.0) || stands_at(a, 1.0);
        let along = stands_at(b, 0.0) || stands_at(b, 1.0);
        let mut letters = String::from("xyc");
        if simply_supported {
            letters.push_str(if across { "za" } else { "" });
            letters.push_str(if along { "zb" } else { "" });
        }
        letters
    };
    let material = without_transverse_shear(wood);
    let shell = Shell { mesh: &mesh, thickness_mm: THICKNESS_MM, material, supports: &supports };
    let targets = line.numbers()?;
    let modes = shell.modes(targets.len())?;
    let row = |(index, (target, hz)): (usize, (f64, &f64))| {
        let target = Target::from_reference(&line, &(index + 1).to_string(), target, TOLERANCE_PCT);
        Row::judge(&target, *hz, shell.nodes())
    };
    Ok(targets.into_iter().zip(&modes.frequencies_hz).enumerate().map(row).collect())
}

/// The closed form of row P-ORTHO-SS (Leissa 1969, NASA SP-160, ch. 9) against its evaluation in row P-ORTHO-SS-A, so
/// that both lines of the reference mean the same plate. The evaluation has five digits, hence 0.001 %.
fn closed_form() -> Result<Vec<Row>> {
    let evaluated = reference::row("plates", "P-ORTHO-SS-A")?;
    let half_waves = [(1, 1), (2, 1), (1, 2), (2, 2), (3, 1), (1, 3)];
    let row = |((along, across), value): (_, f64)| {
        let target = Target::from_reference(&evaluated, &format!("closed-form({along},{across})"), value, 0.001);
        Row::judge(&target, simply_supported_hz(along, across), 0)
    };
    Ok(half_waves.into_iter().zip(evaluated.numbers()?).map(row).collect())
}

/// Frequency of a simply supported 400 x 200 x 3 mm spruce plate with `along` half waves along the grain and `across`
/// half waves across it.
fn simply_supported_hz(along: u32, across: u32) -> f64 {
    let (length_m, width_m, thickness_m, density) = (0.4, 0.2, 0.003_f64, 448.0);
    let (e_l, nu_lr) = (11.88e9, 0.372);
    let (e_r, g_lr) = (0.078 * e_l, 0.064 * e_l);
    let nu_rl = nu_lr * e_r / e_l;
    let cube = thickness_m.powi(3) / 12.0;
    let d_l = e_l * cube / (1.0 - nu_lr * nu_rl);
    let d_r = e_r * cube / (1.0 - nu_lr * nu_rl);
    let (d_lr, d_66) = (nu_lr * d_r, g_lr * cube);
    let (m, n) = (f64::from(along) / length_m, f64::from(across) / width_m);
    let stiffness = d_l * m.powi(4) + 2.0 * (d_lr + 2.0 * d_66) * (m * n).powi(2) + d_r * n.powi(4);
    std::f64::consts::FRAC_PI_2 * (stiffness / (density * thickness_m)).sqrt()
}
