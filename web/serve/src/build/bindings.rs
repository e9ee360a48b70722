//! The JavaScript side of a module: what `import` finds, and the declarations the page's type checker reads.

use std::fmt::Display;
use std::path::Path;

use wasm_bindgen_cli_support::Bindgen;

use super::{Module, import_names};
use crate::{Error, Workspace};

/// A module with its bindings, not yet optimised.
pub(super) struct Bound {
    pub(super) javascript: Vec<u8>,
    pub(super) wasm: Vec<u8>,
}

/// Makes the bindings as an ES module that a page or a module worker can import from anywhere.
pub(super) fn bind(workspace: &Workspace, module: Module, compiled: &Path) -> Result<Bound, Error> {
    let folder = workspace.bindings();
    let refused = |reason: &dyn Display| Error::Bindings { module: module.name(), reason: format!("{reason:#}") };
    let mut generator = Bindgen::new();
    generator.input_path(compiled).typescript(true).remove_producers_section(true).out_name(module.name());
    generator.web(true).map_err(|reason| refused(&reason))?;
    let mut output = generator.generate_output().map_err(|reason| refused(&reason))?;
    let names = import_names::short(output.wasm_mut().imports.iter_mut().map(|import| &mut import.name));
    output.emit(&folder).map_err(|reason| refused(&reason))?;
    let path = |ending: &str| folder.join(format!("{}{ending}", module.name()));
    let (script, wasm) = (path(".js"), path("_bg.wasm"));
    let javascript = std::fs::read_to_string(&script).map_err(Error::file("read", &script))?;
    Ok(Bound {
        javascript: import_names::renamed(&javascript, &names).into_bytes(),
        wasm: std::fs::read(&wasm).map_err(Error::file("read", &wasm))?,
    })
}
