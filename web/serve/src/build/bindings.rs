//! The JavaScript side of a module: what `import` finds, and the declarations the page's type checker reads.

use std::path::Path;

use wasm_bindgen_cli_support::Bindgen;

use super::Module;
use crate::{Error, Workspace};

/// A module with its bindings, not yet optimised.
pub(super) struct Bound {
    pub(super) javascript: Vec<u8>,
    pub(super) wasm: Vec<u8>,
}

/// Makes the bindings as an ES module that a page or a module worker can import from anywhere.
pub(super) fn bind(workspace: &Workspace, module: Module, compiled: &Path) -> Result<Bound, Error> {
    let folder = workspace.bindings();
    let generate = || {
        Bindgen::new()
            .input_path(compiled)
            .web(true)?
            .typescript(true)
            .remove_producers_section(true)
            .out_name(module.name())
            .generate(&folder)
    };
    generate().map_err(|reason| Error::Bindings { module: module.name(), reason: format!("{reason:#}") })?;
    let read = |ending: &str| {
        let path = folder.join(format!("{}{ending}", module.name()));
        std::fs::read(&path).map_err(Error::file("read", &path))
    };
    Ok(Bound { javascript: read(".js")?, wasm: read("_bg.wasm")? })
}
