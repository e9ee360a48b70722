//! The page's tools from the npm registry: the wasm optimiser, and for checks the type checker and the linter.

use std::path::Path;
use std::process::{Command, Stdio};

use super::compile::run;
use crate::{Error, Workspace};

/// How much of `www/package.json` is needed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tools {
    /// What a site is built with.
    Optimiser,
    /// That, and what the page's sources are checked with.
    All,
}

/// The oldest Node.js whose WebAssembly the optimiser and the benches were run with.
const OLDEST_NODE: u32 = 18;

/// Installs the versions that `www/package-lock.json` names, unless they are there.
///
/// # Errors
/// [`Error::Missing`] when Node.js or npm aren't there or are too old, [`Error::Command`] when npm fails.
pub fn install(workspace: &Workspace, tools: Tools) -> Result<(), Error> {
    node_is_installed()?;
    let page = workspace.page();
    let lock = page.join("package-lock.json");
    let wanted = std::fs::read_to_string(&lock).map_err(Error::file("read", &lock))?;
    if is_installed(&page, tools, &wanted) {
        return Ok(());
    }
    let mut command = npm();
    command.current_dir(&page).args(["ci", "--no-audit", "--no-fund"]);
    if tools == Tools::Optimiser {
        command.arg("--omit=dev");
    }
    eprintln!("Installing the page's tools with npm");
    run(&mut command)?;
    let stamp = stamp(&page, tools);
    std::fs::write(&stamp, wanted).map_err(Error::file("write", &stamp))
}

/// A copy of the lock file that was installed; `npm ci` empties the folder, so a stamp never outlives its install.
fn stamp(page: &Path, tools: Tools) -> std::path::PathBuf {
    page.join("node_modules").join(match tools {
        Tools::Optimiser => ".installed-for-building",
        Tools::All => ".installed-for-checking",
    })
}

fn is_installed(page: &Path, tools: Tools, wanted: &str) -> bool {
    let holds = |tools| std::fs::read_to_string(stamp(page, tools)).is_ok_and(|installed| installed == wanted);
    holds(Tools::All) || (tools == Tools::Optimiser && holds(Tools::Optimiser))
}

fn npm() -> Command {
    Command::new(if cfg!(windows) { "npm.cmd" } else { "npm" })
}

fn node_is_installed() -> Result<(), Error> {
    let remedy = format!(
        "install Node.js {OLDEST_NODE} or newer with npm: `apt-get install nodejs npm` on Debian, or https://nodejs.org"
    );
    let version = version_of(&mut Command::new("node"));
    match version.as_deref().and_then(major) {
        Some(major) if major >= OLDEST_NODE => {}
        Some(_) => {
            let what = format!("a Node.js new enough (this one is {})", version.unwrap_or_default());
            return Err(Error::Missing { what, remedy });
        }
        None => {
            return Err(Error::Missing { what: "Node.js (node)".into(), remedy });
        }
    }
    match version_of(&mut npm()) {
        Some(_) => Ok(()),
        None => Err(Error::Missing { what: "npm".into(), remedy }),
    }
}

fn version_of(program: &mut Command) -> Option<String> {
    let output = program.arg("--version").stdin(Stdio::null()).stderr(Stdio::null()).output().ok()?;
    output.status.success().then(|| String::from_utf8_lossy(&output.stdout).trim().to_owned())
}

fn major(version: &str) -> Option<u32> {
    version.trim_start_matches('v').split('.').next()?.parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_major_version_is_read_as_node_prints_it() {
        assert_eq!(major("v20.20.2"), Some(20));
        assert_eq!(major("22.1.0"), Some(22));
        assert_eq!(major("none"), None);
    }

    #[test]
    fn tools_for_checking_also_serve_for_building_but_not_the_other_way() {
        let page = tempfile::tempdir().unwrap();
        std::fs::create_dir(page.path().join("node_modules")).unwrap();
        std::fs::write(stamp(page.path(), Tools::Optimiser), "lock").unwrap();
        assert!(is_installed(page.path(), Tools::Optimiser, "lock"));
        assert!(!is_installed(page.path(), Tools::All, "lock"));
        std::fs::write(stamp(page.path(), Tools::All), "lock 2").unwrap();
        assert!(is_installed(page.path(), Tools::Optimiser, "lock 2"));
        assert!(!is_installed(page.path(), Tools::All, "lock 3"));
    }
}
