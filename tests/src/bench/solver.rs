//! Twenty elastic modes, and the twenty-six that the page asks for, of the demonstration top on its standard mesh, natively and as the page's module.
//!
//! The figure is the wait after a change of thickness: surface, assembly, factorisation and modes on a mesh that is there
//! already. The note tells the wait for the first figures, mesh and all.

use std::path::Path;
use std::process::Command;
use std::time::Instant;

use anyhow::{Context, Result, ensure};
use bombatura_core::design::Design;
use bombatura_core::mesh::MeshSize;
use bombatura_core::modes::ModesRequest;
use bombatura_core::top::Stages;
use bombatura_serve::build;
use serde::Deserialize;

use super::{Row, median};
use crate::chores::run;

const MODES: usize = 20;
const MODES_ON_PAGE: usize = 26;

/// Runs after the first one, which warms up. Odd, for the median.
const RUNS: usize = 7;

pub(super) fn rows(site: &Path) -> Result<Vec<Row>> {
    let (native, wasm) = (native(MODES)?, in_wasm(site, MODES)?);
    let ratio = median(wasm.again_ms.clone()) / median(native.again_ms.clone());
    let (on_page_native, on_page) = (self::native(MODES_ON_PAGE)?, in_wasm(site, MODES_ON_PAGE)?);
    let on_page_ms = [&on_page_native, &on_page].map(|times| median(times.again_ms.clone()));
    let nodes = on_page.nodes;
    Ok(vec![
        native.row("native_20_modes_ms", "one thread"),
        wasm.row("wasm_20_modes_ms", &format!("in Node.js, {ratio:.1} times native")),
        Row {
            id: "wasm_over_native_26",
            value: on_page_ms[1] / on_page_ms[0],
            unit: "",
            note: format!("{nodes} nodes, {:.0} ms natively, {:.0} ms in Node.js", on_page_ms[0], on_page_ms[1]),
        },
        Row {
            id: "wasm_memory_standard_mb",
            value: on_page.memory_mb,
            unit: "MB",
            note: format!("{nodes} nodes, {MODES_ON_PAGE} modes: the solving worker's memory, which never shrinks"),
        },
    ])
}

/// What the timing script prints, and what its native twin gives.
#[derive(Deserialize)]
struct Times {
    whole_ms: Vec<f64>,
    again_ms: Vec<f64>,
    nodes: usize,
    #[serde(default)]
    memory_mb: f64,
}

impl Times {
    fn row(self, id: &'static str, how: &str) -> Row {
        let whole_ms = median(self.whole_ms);
        let note = format!("{} nodes, {how}, median of {RUNS}; {whole_ms:.0} ms with the mesh", self.nodes);
        Row { id, value: median(self.again_ms), unit: "ms", note }
    }
}

fn in_wasm(site: &Path, modes: usize) -> Result<Times> {
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/bench/solve.mjs");
    let mut command = Command::new("node");
    command.arg(script).arg(build::edition_of(site)?).arg(modes.to_string()).arg(RUNS.to_string());
    serde_json::from_str(&run::output(&mut command)?).context("what the timing script printed")
}

fn native(modes: usize) -> Result<Times> {
    let mut times = Times { whole_ms: Vec::new(), again_ms: Vec::new(), nodes: 0, memory_mb: 0.0 };
    for _ in 0..=RUNS {
        let mut stages = Stages::new(Design::demo());
        times.whole_ms.push(timed_solve(&mut stages, modes)?);
        let mut design = Design::demo();
        design.graduation.centre_mm += 0.1;
        stages.set_design(design)?;
        times.again_ms.push(timed_solve(&mut stages, modes)?);
        times.nodes = stages.carved(MeshSize::Standard)?.0.mesh.points_mm.len();
    }
    times.whole_ms.remove(0);
    times.again_ms.remove(0);
    Ok(times)
}

fn timed_solve(stages: &mut Stages, modes: usize) -> Result<f64> {
    let begun = Instant::now();
    let count = stages.modes(MeshSize::Standard, &ModesRequest::lowest(modes))?.count();
    let took_ms = 1e3 * begun.elapsed().as_secs_f64();
    ensure!(count >= modes, "{count} modes instead of {modes}");
    Ok(took_ms)
}
