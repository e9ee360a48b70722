//! How frequencies must scale with modulus, density and thickness.

use anyhow::Result;
use bombatura_core::design::Design;
use bombatura_core::fittings::Fittings;
use bombatura_core::mesh::MeshSize;
use bombatura_core::modes::ModesRequest;
use bombatura_core::top::{Carved, Held, Plan, Shape};
use bombatura_core::wood::{OrthotropicConstants, Wood};

use super::mesh::Mesh;
use super::shell::{Shell, isotropic};
use super::{Row, Target};
use crate::reference;

/// Exact laws; what is left is the eigensolver's rounding.
const EXACT_PCT: f64 = 1e-4;

/// The checks of this subject.
pub(super) fn rows() -> Result<Vec<Row>> {
    let mut rows = top()?;
    rows.push(flat_thickness()?);
    rows.push(bar()?);
    Ok(rows)
}

fn scaled(wood: &Wood, moduli: f64, density: f64) -> Wood {
    let c = wood.constants;
    let constants = OrthotropicConstants {
        e_l_gpa: moduli * c.e_l_gpa,
        e_r_gpa: moduli * c.e_r_gpa,
        e_t_gpa: moduli * c.e_t_gpa,
        g_lr_gpa: moduli * c.g_lr_gpa,
        g_lt_gpa: moduli * c.g_lt_gpa,
        g_rt_gpa: moduli * c.g_rt_gpa,
        ..c
    };
    Wood { constants, density_kg_m3: density * wood.density_kg_m3, ..*wood }
}

/// d ln f over d ln of all moduli and of density, on the demonstration top's fifth mode.
fn top() -> Result<Vec<Row>> {
    const FACTOR: f64 = 1.21;
    let design = Design::demo();
    let shape = Shape::new(&design)?;
    let plan = Plan::new(&shape, Held::by(&design.rim), MeshSize::Preview)?;
    let wood = design.wood.wood()?;
    let fifth = |wood: &Wood| -> Result<f64> {
        let carved = Carved::new(&plan, &shape, wood, &Fittings::default())?;
        Ok(carved.modes(&plan, &ModesRequest::lowest(5))?.frequencies_hz[4])
    };
    let base = fifth(&wood)?;
    let nodes = plan.mesh.points_mm.len();
    let mut rows = Vec::new();
    for (id, changed) in [("V-EFF-E", scaled(&wood, FACTOR, 1.0)), ("V-EFF-DENS", scaled(&wood, 1.0, FACTOR))] {
        let line = reference::row("violin", id)?;
        let exponent = (fifth(&changed)? / base).ln() / FACTOR.ln();
        rows.push(Row::judge(&Target::from_reference(&line, "", line.number()?, EXACT_PCT), exponent, nodes));
    }
    Ok(rows)
}

fn strip(thickness_mm: f64) -> Result<(f64, usize)> {
    let mesh = Mesh::grid(80, 4, |along, across| [300.0 * along, 15.0 * across, 0.0]);
    // Poisson's ratio zero: a beam, not a plate, and no anticlastic bending between the two.
    let material = isotropic(10.0, 0.0, 400.0);
    let shell = Shell { mesh: &mesh, thickness_mm, material, supports: &|_, _| String::from("xyc") };
    Ok((shell.modes(1)?.frequencies_hz[0], shell.nodes()))
}

/// d ln f over d ln thickness of a flat free plate; exact in the thin limit, which this strip is within 0.05 %.
fn flat_thickness() -> Result<Row> {
    let line = reference::row("violin", "V-EFF-THICK")?;
    let ((thin, nodes), (thick, _)) = (strip(1.0)?, strip(1.1)?);
    let exponent = (thick / thin).ln() / 1.1_f64.ln();
    Ok(Row::judge(&Target::from_reference(&line, "", line.number()?, 0.05), exponent, nodes))
}

/// The tap-tone formula of a free slender bar, half a per cent.
fn bar() -> Result<Row> {
    let line = reference::row("plates", "P-BAR")?;
    let (hz, nodes) = strip(1.0)?;
    let speed = (10e9_f64 / 400.0).sqrt();
    let got = hz * 0.3_f64.powi(2) / (0.001 * speed);
    Ok(Row::judge(&Target::from_reference(&line, "", line.number()?, 0.5), got, nodes))
}
