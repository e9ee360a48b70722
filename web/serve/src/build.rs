//! From the sources to a folder that any static host can serve, at the top of a site or in a sub-folder.
//!
//! Each wasm module passes cargo, the bindings generator and the optimiser; then scripts and style sheets are minified one
//! by one, the page is made in every language, all but the pages is set apart as an edition and everything is compressed. The slow steps (optimiser, minifier, brotli at its highest level) are cached on the
//! content they were given, so that a change to the page costs little there. Modules are made two at a time.

mod bindings;
mod cache;
mod compile;
mod compress;
pub(crate) mod edition;
mod import_names;
mod languages;
mod minify;
mod module;
mod node;
mod optimise;
mod page;
mod publish;
mod report;

use std::path::Path;

pub use edition::edition_of;
pub use module::Module;
pub use node::{Tools, install};
pub use report::{Report, SiteFile};

use crate::{Error, Workspace};

/// Builds the site into `out`. Files there that aren't part of the site stay, except in the checkout's own `dist`.
///
/// # Errors
/// [`Error`], which says what is missing or which step failed.
pub fn build_site(workspace: &Workspace, out: &Path) -> Result<Report, Error> {
    node::install(workspace, Tools::Optimiser)?;
    compile::bring_target()?;
    let modules = std::thread::scope(|scope| {
        let lanes = Module::LANES
            .map(|lane| scope.spawn(move || lane.iter().map(|&module| make(workspace, module)).collect::<Vec<_>>()));
        let join = |lane: std::thread::ScopedJoinHandle<'_, _>| {
            lane.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic))
        };
        lanes.map(join).into_iter().flatten().collect::<Result<Vec<_>, Error>>()
    })?;
    let mut files = page::files(&workspace.page())?;
    files.extend(modules.into_iter().flatten());
    minify::minify(workspace, &mut files)?;
    edition::set_apart(&mut files);
    publish::publish(workspace, files, out)
}

/// The files of one module.
fn make(workspace: &Workspace, module: Module) -> Result<Vec<page::Source>, Error> {
    let compiled = compile::compile(workspace, module)?;
    let bound = bindings::bind(workspace, module, &compiled)?;
    optimise::optimise(workspace, module, bound)
}
