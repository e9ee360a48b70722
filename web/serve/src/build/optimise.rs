//! The optimiser's part: smaller and faster wasm from the same wasm.
//!
//! Binaryen's `wasm-opt` reads which features a module uses from the module itself. Naming features on its command
//! line is not done: with `--all-features` it writes encodings that browsers refuse at start-up.

use std::process::Command;

use super::bindings::Bound;
use super::cache::Cache;
use super::compile::run;
use super::{Module, page::Source};
use crate::{Error, Workspace};

/// The module's two files as they belong in the site.
pub(super) fn optimise(workspace: &Workspace, module: Module, bound: Bound) -> Result<Vec<Source>, Error> {
    let flags = module.optimiser_flags();
    let shown = flags.join(" ");
    let program = workspace.page().join("node_modules/binaryen");
    let manifest = program.join("package.json");
    let version = std::fs::read_to_string(&manifest).map_err(Error::file("read", &manifest))?;
    let recipe = format!("wasm-opt {shown} {version}");
    let wasm = Cache::new(workspace.cache()).get_or_make(&recipe, &bound.wasm, || {
        eprintln!("Optimising the module {} ({shown})", module.name());
        let input = workspace.bindings().join(format!("{}_bg.wasm", module.name()));
        let output = workspace.bindings().join(format!("{}_optimised.wasm", module.name()));
        let mut command = Command::new("node");
        command.arg(program.join("bin/wasm-opt")).args(flags).arg(&input).arg("-o").arg(&output);
        run(&mut command)?;
        std::fs::read(&output).map_err(Error::file("read", &output))
    })?;
    let source = |ending: &str, content| Source { path: format!("wasm/{}{ending}", module.name()), content };
    Ok(vec![source(".js", bound.javascript), source("_bg.wasm", wasm)])
}
