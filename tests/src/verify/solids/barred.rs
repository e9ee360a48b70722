//! A free plate of spruce with a bar, against solids.

use anyhow::Result;
use bombatura_core::fittings::{Bar, BarWood, Bare, Fittings, Profile};
use bombatura_core::wood::{Species, Wood};

use super::super::mesh::Mesh;
use super::super::shell::Shell;
use super::super::{Row, Target};
use super::bricks::{BarredPlate, Bricks};
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
    bar_height_mm: 10.0,
};
const MODES: usize = 8;
const RIGID: usize = 6;
const M_PER_MM: f64 = 1e-3;

/// What a bar has to reach, per cent, on every mesh: as wide as its cells are, the bar must not come loose between them.
const TOLERANCE_PCT: f64 = 1.0;

pub(super) fn rows(calculix: &Calculix) -> Result<Vec<Row>> {
    let spruce = Species::SitkaSpruce.record();
    let wood = Wood { constants: spruce.constants, density_kg_m3: spruce.density_kg_m3, ring_angle_deg: 0.0 };
    let bricks = Bricks::new(&PLATE);
    let deck = deck::of_bricks(&bricks, &wood, RIGID + MODES);
    let solids_hz = calculix.elastic_hz("a plate with a bar", &deck, RIGID, MODES)?;
    let mut rows = Vec::new();
    for (label, columns, along) in [("preview", 26, 45), ("standard", 38, 66), ("fine", 68, 118)] {
        // No line of the mesh follows the bar.
        let mesh = Mesh::grid(columns, along, |a, b| {
            let bulge = 0.1 * (a - a * a) * (b - 0.5);
            [PLATE.width_mm * (a + bulge), PLATE.length_mm * b, 0.0]
        });
        let shell =
            Shell { mesh: &mesh, thickness_mm: PLATE.thickness_mm, material: wood, supports: &|_, _| String::new() };
        let modes = shell.modes_with(MODES, |geometry, equations, options, model| {
            let bare = Bare { geometry, wood: &wood, equations, options };
            Fittings { bar: Some(bar(&wood)), ..Fittings::default() }.fit(&bare, &[], model)
        })?;
        for (mode, (&value, &got)) in solids_hz.iter().zip(&modes.frequencies_hz).enumerate() {
            let target = Target {
                id: format!("SOLID-plate-with-bar-{label}:{}", mode + 1),
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
fn bar(wood: &Wood) -> Bar {
    Bar {
        ends_m: PLATE.bar_ends_mm.map(|y| [PLATE.bar_across_mm, y].map(|mm| mm * M_PER_MM)),
        width_m: PLATE.bar_width_mm * M_PER_MM,
        profile: Profile::even(PLATE.bar_height_mm * M_PER_MM),
        wood: BarWood::of(wood),
    }
}
