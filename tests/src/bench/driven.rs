//! The driven top in wasm: until it can be driven, and what each frequency and each sheet of curves costs then.

use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result};
use bombatura_serve::build;
use serde::Deserialize;

use super::{Row, median};
use crate::chores::run;

const RUNS: usize = 3;

/// What the timing script prints.
#[derive(Deserialize)]
struct Times {
    ready_ms: Vec<f64>,
    motion_ms: Vec<f64>,
    curves_ms: Vec<f64>,
    modes: usize,
}

pub(super) fn rows(site: &Path) -> Result<Vec<Row>> {
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/bench/drive.mjs");
    let mut command = Command::new("node");
    command.arg(script).arg(build::edition_of(site)?).arg(RUNS.to_string());
    let printed = run::output(&mut command)?;
    let Times { ready_ms, motion_ms, curves_ms, modes } =
        serde_json::from_str(&printed).context("what the timing script printed")?;
    let row = |id, times, what: &str| Row {
        id,
        value: median(times),
        unit: "ms",
        note: format!("{modes} modes, rim hinged, standard mesh, in Node.js: {what}"),
    };
    Ok(vec![
        row(
            "driven_ready_wasm_ms",
            ready_ms,
            "from a design to all modes up to 6 kHz, their losses and residual vectors",
        ),
        row(
            "driven_motion_wasm_ms",
            motion_ms,
            "the motion at a frequency, laid on the picture, with level, shares and phases",
        ),
        row("driven_curves_wasm_ms", curves_ms, "five curves at 500 frequencies, the level at a third of them"),
    ])
}
