//! The page's sources: types, style and their own unit tests, all by Node.js.

use std::path::Path;
use std::process::Command;

use anyhow::Result;
use bombatura_serve::{Workspace, build};

use super::run;
use crate::outcome::Outcome;

/// Installs the tools that `www/package-lock.json` names and runs them.
///
/// # Errors
/// When the tools can't be installed; what they find is in the outcomes.
pub fn check(workspace: &Workspace) -> Result<Vec<Outcome>> {
    build::install(workspace, build::Tools::All)?;
    let page = workspace.page();
    let run_tool = |script: &str, arguments: &[&str]| {
        run::to_the_end(
            Command::new("node").current_dir(&page).arg(Path::new("node_modules").join(script)).args(arguments),
        )
    };
    Ok(vec![
        Outcome::of("types of the page's scripts", || run_tool("typescript/bin/tsc", &["--project", "."])),
        Outcome::of("style of the page's sources", || run_tool("@biomejs/biome/bin/biome", &["check", "."])),
        Outcome::of("unit tests of the page's scripts", || {
            run::to_the_end(Command::new("node").current_dir(&page).args(["--test", "js/"]))
        }),
    ])
}
