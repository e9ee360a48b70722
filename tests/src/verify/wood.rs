//! Wood: the built-in presets against the handbook's rows.

use anyhow::Result;
use bombatura_core::wood::Species;

use super::{Row, Target};
use crate::reference;

/// The presets are copied figures: any difference beyond rounding is a slip.
const TOLERANCE_PCT: f64 = 0.01;

/// The checks of this subject.
pub(super) fn rows() -> Result<Vec<Row>> {
    let mut rows = Vec::new();
    for (code, species) in
        [("SIT", Species::SitkaSpruce), ("ENG", Species::EngelmannSpruce), ("WRC", Species::WesternRedcedar)]
    {
        let record = species.record();
        let c = record.constants;
        for (quantity, got) in [
            ("EL", c.e_l_gpa),
            ("ER", c.e_r_gpa / c.e_l_gpa),
            ("ET", c.e_t_gpa / c.e_l_gpa),
            ("GLR", c.g_lr_gpa / c.e_l_gpa),
            ("GLT", c.g_lt_gpa / c.e_l_gpa),
            ("GRT", c.g_rt_gpa / c.e_l_gpa),
            ("NULR", c.nu_lr),
            ("NULT", c.nu_lt),
            ("NURT", c.nu_rt),
            // Mass at 12 % moisture over the oven-dry mass that specific gravity counts.
            ("SG", record.density_kg_m3 / 1120.0),
        ] {
            let line = reference::row("wood", &format!("W-{code}-{quantity}"))?;
            rows.push(Row::judge(&Target::from_reference(&line, "", line.number()?, TOLERANCE_PCT), got, 0));
        }
    }
    Ok(rows)
}
