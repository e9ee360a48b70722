//! The bar on a free strip, against the composite beam.

use std::f64::consts::TAU;

use anyhow::{Context, Result};
use bombatura_core::fittings::{Bar, BarWood, Bare, Fittings, Profile};
use bombatura_core::modes::Modes;
use bombatura_core::shell::DOFS_PER_NODE;
use bombatura_core::wood::{Species, Wood};

use super::mesh::Mesh;
use super::shell::{Shell, isotropic};
use super::{Row, Target};

const WIDTH_MM: f64 = 12.0;
const THICKNESS_MM: f64 = 3.0;
const BAR_WIDTH_MM: f64 = 5.5;
const BAR_HEIGHT_MM: f64 = 6.0;
const MM: f64 = 1e-3;

/// Spruce for bars.
const BAR_WOOD: BarWood = BarWood { modulus_pa: 12e9, shear_pa: 12e9 / 2.6, density_kg_m3: 430.0 };

/// First bending of a free strip with a bar along its middle. Slender enough for shear and rotary inertia, which the
/// formula leaves out, to cost less than half of the per cent that the bar has to reach.
pub(super) fn rows() -> Result<Vec<Row>> {
    let spruce = Species::SitkaSpruce.record();
    let along_grain = Wood { constants: spruce.constants, density_kg_m3: spruce.density_kg_m3, ring_angle_deg: 0.0 };
    [("isotropic", isotropic(10.0, 0.3, 400.0), 400.0), ("spruce", along_grain, 600.0)]
        .into_iter()
        .map(|(name, wood, length_mm)| row(name, wood, length_mm))
        .collect()
}

fn row(name: &str, wood: Wood, length_mm: f64) -> Result<Row> {
    // Along y, which is the grain.
    let mesh = Mesh::grid(3, (length_mm / 5.0) as usize, |a, b| [WIDTH_MM * a, length_mm * b, 0.0]);
    let shell = Shell { mesh: &mesh, thickness_mm: THICKNESS_MM, material: wood, supports: &|_, _| String::new() };
    let bar = Bar {
        ends_m: [0.0, length_mm].map(|y| [0.5 * WIDTH_MM * MM, y * MM]),
        width_m: BAR_WIDTH_MM * MM,
        profile: Profile::even(BAR_HEIGHT_MM * MM),
        wood: BAR_WOOD,
    };
    let modes = shell.modes_with(8, |geometry, equations, options, model| {
        let bare = Bare { geometry, wood: &wood, equations, options };
        Fittings { bar: Some(bar), ..Fittings::default() }.fit(&bare, &[], model)
    })?;
    let first = first_bending(&mesh, &modes).context("a strip has modes")?;
    let (bending, mass) = composite(&wood);
    let exact = 4.730_04_f64.powi(2) / (TAU * (length_mm * MM).powi(2)) * (bending / mass).sqrt();
    let target = Target {
        id: format!("BAR-STRIP-FREE:{name}"),
        source: "free beam of two woods: transformed section and first mode, Timoshenko, Strength of Materials, part I, and \
                 Vibration Problems in Engineering"
            .into(),
        source_kind: "memory".into(),
        value: exact,
        tolerance_pct: 1.0,
    };
    Ok(Row::judge(&target, modes.frequencies_hz[first], shell.nodes()))
}

/// The mode that looks most like a beam's first, bent along z over the strip's length.
fn first_bending(mesh: &Mesh, modes: &Modes) -> Option<usize> {
    let likeness = |mode: usize| -> f64 {
        let shape = modes.shape(mode);
        let bent = |along: f64| (2.0 * along - 1.0).powi(2) - 1.0 / 3.0;
        let up = |node: usize| shape[DOFS_PER_NODE * node + 2];
        mesh.parameters.iter().enumerate().map(|(node, &[_, along])| up(node) * bent(along)).sum::<f64>().abs()
    };
    (0..modes.count()).max_by(|&a, &b| likeness(a).total_cmp(&likeness(b)))
}

/// Bending stiffness (N·m²) about the common neutral axis and mass per length (kg/m).
fn composite(wood: &Wood) -> (f64, f64) {
    let (thickness, height) = (THICKNESS_MM * MM, BAR_HEIGHT_MM * MM);
    let (strip_area, bar_area) = (WIDTH_MM * MM * thickness, BAR_WIDTH_MM * MM * height);
    let (strip, bar) = (wood.constants.e_l_gpa * 1e9 * strip_area, BAR_WOOD.modulus_pa * bar_area);
    let own = strip * thickness.powi(2) / 12.0 + bar * height.powi(2) / 12.0;
    let apart = 0.5 * (thickness + height);
    let bending = own + strip * bar / (strip + bar) * apart.powi(2);
    (bending, wood.density_kg_m3 * strip_area + BAR_WOOD.density_kg_m3 * bar_area)
}
