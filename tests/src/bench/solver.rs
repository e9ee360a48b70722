//! Twenty elastic modes of the demonstration top on its standard mesh, from the design to the shapes.

use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result};
use serde::Deserialize;

use super::{Row, median};
use crate::chores::run;

const MODES: usize = 20;

/// Runs after the first one, which warms up. Odd, for the median.
const RUNS: usize = 7;

pub(super) fn rows(site: &Path) -> Result<Vec<Row>> {
    Ok(vec![in_wasm(site)?])
}

fn in_wasm(site: &Path) -> Result<Row> {
    #[derive(Deserialize)]
    struct Timed {
        times_ms: Vec<f64>,
        nodes: usize,
    }
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/bench/solve.mjs");
    let mut command = Command::new("node");
    command.arg(script).arg(site).arg(MODES.to_string()).arg(RUNS.to_string());
    let timed: Timed = serde_json::from_str(&run::output(&mut command)?).context("what the timing script printed")?;
    let note = format!("{} nodes, one thread, in Node.js, design to shapes, median of {RUNS}", timed.nodes);
    Ok(Row { id: "wasm_20_modes_ms", value: median(timed.times_ms), unit: "ms", note })
}
