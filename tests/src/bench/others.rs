//! The same modes by other programs, in the same run: the demonstration top on a hinged rim, standard mesh, 26 modes.
//!
//! Ours is all that follows a change of thickness or wood: assembly, factorisation, modes and the proof that none is missed; against scipy,
//! which proves nothing, without the proof too. scipy gets the assembled matrices and solves them; CalculiX gets the mid-surface's mesh as
//! one layer of quadratic wedges. The others know nothing of the top's sides being alike, so that ours is the whole top too, and by one
//! side only in a row of its own.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Instant;

use anyhow::{Context, Result, ensure};
use bombatura_core::design::{Design, Rim};
use bombatura_core::fittings::Fittings;
use bombatura_core::mesh::MeshSize;
use bombatura_core::modes::ModesRequest;
use bombatura_core::top::{Carved, Held, Plan, Shape};
use bombatura_serve::Workspace;
use serde::Deserialize;

use super::{Row, median};
use crate::chores::run;
use crate::verify::one_layer_of_solids_s;

const MODES: usize = 26;

/// Runs after the first one, which warms up. Odd, for the median.
const RUNS: usize = 5;

/// What both must agree to: the matrices are the same.
const SAME: f64 = 1e-6;

pub(super) fn rows(workspace: &Workspace) -> Result<Vec<Row>> {
    let design = Design { rim: Rim::Hinged, ..Design::demo() };
    let shape = Shape::new(&design)?;
    let plan = Plan::new(&shape, Held::by(&design.rim), MeshSize::Standard)?;
    let wood = design.wood.wood()?;
    let whole = Plan { one_side: None, ..Plan::new(&shape, Held::by(&design.rim), MeshSize::Standard)? };
    let timed = |plan: &Plan, request: &ModesRequest| -> Result<_> {
        let begun = Instant::now();
        let carved = Carved::new(plan, &shape, &wood, &Fittings::default())?;
        let modes = carved.modes(plan, request)?;
        Ok((begun.elapsed().as_secs_f64(), carved, modes))
    };
    let proven = ModesRequest::lowest(MODES);
    let unproven = ModesRequest { prove: false, ..proven };
    let (_, carved, modes) = timed(&whole, &proven)?;
    let mut times_s: [Vec<f64>; 3] = Default::default();
    for _ in 0..RUNS {
        for (times_s, (plan, request)) in
            times_s.iter_mut().zip([(&whole, &proven), (&whole, &unproven), (&plan, &proven)])
        {
            times_s.push(timed(plan, request)?.0);
        }
    }
    let [native_s, unproven_s, one_side_s] = times_s.map(median);
    let dof = plan.equations.count();

    let python = python(&workspace.root().join("target/bench-python"))?;
    let scipy = scipy(&python, &plan, &carved)?;
    for (own_hz, lambda) in modes.frequencies_hz.iter().zip(&scipy.values) {
        let hz = lambda.sqrt() / std::f64::consts::TAU;
        ensure!((own_hz / hz - 1.0).abs() < SAME, "scipy finds {hz} Hz where we find {own_hz}");
    }
    let scipy_s = median(scipy.times_s);
    let (calculix_s, wedges) = one_layer_of_solids_s(MODES)?;
    let note = |own_s: f64, other: &str, other_s: f64| {
        format!("{:.0} ms over {:.0} ms {other}; {dof} equations", 1e3 * own_s, 1e3 * other_s)
    };
    const SCIPY: &str = "of scipy's eigsh with splu, one thread";
    Ok(vec![
        Row {
            id: "native_over_scipy_26",
            value: native_s / scipy_s,
            unit: "ratio",
            note: note(native_s, &format!("{SCIPY}; ours with the proof that none is missed"), scipy_s),
        },
        Row {
            id: "native_unproven_over_scipy_26",
            value: unproven_s / scipy_s,
            unit: "ratio",
            note: note(unproven_s, &format!("{SCIPY}; ours without the proof, as scipy"), scipy_s),
        },
        Row {
            id: "native_one_side_over_scipy_26",
            value: one_side_s / scipy_s,
            unit: "ratio",
            note: note(one_side_s, &format!("{SCIPY}; ours by one side of the top, with the proof"), scipy_s),
        },
        Row {
            id: "native_over_ccx_26",
            value: native_s / calculix_s,
            unit: "ratio",
            note: note(native_s, &format!("of CalculiX, {wedges} C3D15, two threads"), calculix_s),
        },
    ])
}

/// A Python with scipy, in `folder`.
fn python(folder: &Path) -> Result<PathBuf> {
    let python = folder.join("bin/python");
    if !run::is_there(&python.to_string_lossy()) {
        let made = run::to_the_end(Command::new("python3").args(["-m", "venv"]).arg(folder));
        made.context(
            "scipy is measured against in an environment of Python's module venv (Debian package python3-venv)",
        )?;
    }
    let has_scipy =
        Command::new(&python).args(["-c", "import scipy"]).output().is_ok_and(|output| output.status.success());
    if !has_scipy {
        let got = run::to_the_end(Command::new(&python).args(["-m", "pip", "install", "--quiet", "scipy"]));
        got.context("pip can't install scipy: it needs the network or a package index of its own settings")?;
    }
    Ok(python)
}

/// What the timing script prints.
#[derive(Deserialize)]
struct Timed {
    times_s: Vec<f64>,
    values: Vec<f64>,
}

fn scipy(python: &Path, plan: &Plan, carved: &Carved) -> Result<Timed> {
    let folder = tempfile::tempdir().context("making a folder for the matrices")?;
    let starts = |list: &[usize]| list.iter().flat_map(|&start| (start as u64).to_le_bytes()).collect::<Vec<u8>>();
    let rows = |list: &[u32]| list.iter().flat_map(|&row| u64::from(row).to_le_bytes()).collect::<Vec<u8>>();
    let values = |list: &[f64]| list.iter().flat_map(|value| value.to_le_bytes()).collect::<Vec<u8>>();
    let (pattern, model) = (&plan.equations.pattern, carved.whole_model(plan));
    for (name, bytes) in [
        ("starts", starts(&pattern.column_starts)),
        ("rows", rows(&pattern.row_indices)),
        ("stiffness", values(&model.stiffness)),
        ("mass", values(&model.mass)),
    ] {
        std::fs::write(folder.path().join(name), bytes)?;
    }
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/bench/eigsh.py");
    let mut command = Command::new(python);
    command.arg(script).arg(folder.path()).arg(MODES.to_string()).arg(RUNS.to_string());
    for threads in ["OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"] {
        command.env(threads, "1");
    }
    serde_json::from_str(&run::output(&mut command)?).context("what the timing script printed")
}
