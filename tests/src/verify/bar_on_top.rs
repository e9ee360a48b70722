//! What fitting the bar does to the free demonstration top.
//!
//! The named modes are matched by their names, which are told from their shapes. The published finding is an order without numbers, so
//! what is counted is how many of its statements hold.

use anyhow::{Context, Result};
use bombatura_core::design::{BarMeasures, Design, PlanPlace, StickWood};
use bombatura_core::mesh::MeshSize;
use bombatura_core::modes::{ModeName, ModesRequest};
use bombatura_core::top::Stages;
use bombatura_core::wood::Species;

use super::{Row, Target};
use crate::reference;

/// Enough for the three named modes with and without the bar.
const MODES: usize = 8;

/// Rows `V-BAR-MCC` and `V-BAR-POS` of `tests/reference/violin.csv`, on a body of 355 mm; highest at the bridge (common
/// practice, no source).
const BAR: BarMeasures = BarMeasures {
    lower_end: PlanPlace { across_mm: -15.0, station_mm: 40.0 },
    upper_end: PlanPlace { across_mm: -12.0, station_mm: 310.0 },
    width_mm: 5.5,
    height_mm: 13.0,
    highest_station_mm: 160.0,
    end_height_mm: 3.0,
    wood: StickWood { species: Species::SitkaSpruce, measured: None },
};

/// Rises of twist, X and ring: all three there, and their order, ring before X before twist.
pub(super) fn rows() -> Result<Vec<Row>> {
    let line = reference::row("violin", "V-EFF-BAR")?;
    let (bare, nodes) = named_hz(Design::demo())?;
    let (fitted, _) = named_hz(Design { bar: Some(BAR), ..Design::demo() })?;
    let [twist, x, ring] = [0, 1, 2].map(|mode| fitted[mode] / bare[mode] - 1.0);
    let hold = |statements: &[bool]| statements.iter().filter(|holds| **holds).count() as f64;
    let row = |suffix, statements: &[bool]| {
        // Counts: nothing but all of them will do.
        Row::judge(&Target::from_reference(&line, suffix, statements.len() as f64, 0.0), hold(statements), nodes)
    };
    Ok(vec![row("raised", &[twist > 0.0, x > 0.0, ring > 0.0]), row("order", &[ring > x, x > twist])])
}

/// Twist, X and ring, Hz, and the mesh's nodes.
fn named_hz(design: Design) -> Result<([f64; 3], usize)> {
    let mut stages = Stages::new(design);
    let modes = stages.modes(MeshSize::Standard, &ModesRequest::lowest(MODES))?;
    let mut hz = [0.0; 3];
    for (hz, name) in hz.iter_mut().zip(ModeName::ALL) {
        let mode = modes.names.iter().position(|own| *own == Some(name));
        *hz = modes.frequencies_hz[mode.with_context(|| format!("no mode has the shape of the {}", name.word()))?];
    }
    Ok((hz, modes.nodes))
}
