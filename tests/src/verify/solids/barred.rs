//! A free plate of spruce with a bar, against solids.

use anyhow::Result;
use bombatura_core::fittings::{Bar, BarWood, Bare, Fittings, Profile};
use bombatura_core::wood::{Species, Wood};

use super::super::mesh::Mesh;
use super::super::shell::Shell;
use super::super::{Row, Target};
use super::bricks::{BarredPlate, Bricks, M_PER_MM};
use super::calculix::Calculix;
use super::deck;

/// As large as a violin's top, the bar as far off its middle, of the height that a fitted one has on average.
const PLATE: BarredPlate = BarredPlate {
    width_mm: 200.0,
    length_mm: 350.0,
    thickness_mm: 3.0,
    bar_across_mm: 85.0,
    bar_ends_mm: [40.0, 310.0],
    bar_width_mm: 5.5,
    bar: Profile { height_m: 10e-3, end_height_m: 3e-3, highest_share: 0.5 },
};
const MODES: usize = 8;
const RIGID: usize = 6;

/// What a bar has to reach, per cent, on every mesh: as wide as its cells are, the bar must not come loose between them.
const TOLERANCE_PCT: f64 = 1.0;

/// Scooped as bars are, and blunt.
pub(super) fn rows(calculix: &Calculix) -> Result<Vec<Row>> {
    let blunt = BarredPlate { bar: Profile::even(PLATE.bar.height_m), ..PLATE };
    let mut rows = rows_of(calculix, "bar", &PLATE)?;
    rows.extend(rows_of(calculix, "blunt-bar", &blunt)?);
    Ok(rows)
}

fn rows_of(calculix: &Calculix, name: &str, plate: &BarredPlate) -> Result<Vec<Row>> {
    let spruce = Species::SitkaSpruce.record();
    let wood = Wood { constants: spruce.constants, density_kg_m3: spruce.density_kg_m3, ring_angle_deg: 0.0 };
    let deck = deck::of_bricks(&Bricks::new(plate), &wood, RIGID + MODES);
    let solids_hz = calculix.elastic_hz(&format!("a plate with a {name}"), &deck, RIGID, MODES)?;
    let mut rows = Vec::new();
    for (label, columns, along) in [("preview", 26, 45), ("standard", 38, 66), ("fine", 68, 118)] {
        // No line of the mesh follows the bar.
        let mesh = Mesh::grid(columns, along, |a, b| {
            let bulge = 0.1 * (a - a * a) * (b - 0.5);
            [plate.width_mm * (a + bulge), plate.length_mm * b, 0.0]
        });
        let shell =
            Shell { mesh: &mesh, thickness_mm: plate.thickness_mm, material: wood, supports: &|_, _| String::new() };
        let modes = shell.modes_with(MODES, |geometry, equations, options, model| {
            let bare = Bare { geometry, wood: &wood, equations, options };
            Fittings { bar: Some(bar(plate, &wood)), ..Fittings::default() }.fit(&bare, &[], model)
        })?;
        for (mode, (&value, &got)) in solids_hz.iter().zip(&modes.frequencies_hz).enumerate() {
            let target = Target {
                id: format!("SOLID-plate-with-{name}-{label}:{}", mode + 1),
                source: format!("CalculiX {}, C3D20 (computed here)", calculix.version()),
                source_kind: "computed".into(),
                value,
                tolerance_pct: TOLERANCE_PCT,
            };
            rows.push(Row::judge(&target, got, shell.nodes()));
        }
    }
    Ok(rows)
}

/// Of the plate's own wood.
fn bar(plate: &BarredPlate, wood: &Wood) -> Bar {
    Bar {
        ends_m: plate.bar_ends_mm.map(|y| [plate.bar_across_mm, y].map(|mm| mm * M_PER_MM)),
        width_m: plate.bar_width_mm * M_PER_MM,
        profile: plate.bar,
        wood: BarWood::of(wood),
    }
}
