//! Every crate and npm package in the lock files has a licence that goes with MIT or Apache-2.0.

use std::collections::BTreeMap;

use anyhow::{Context, Result, ensure};
use bombatura_serve::Workspace;
use serde::Deserialize;

use super::run;

/// Licences that ask for no more than their text being kept, and MPL-2.0, whose source stays its own file.
const ALLOWED: [&str; 14] = [
    "0BSD",
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "CC0-1.0",
    "ISC",
    "MIT",
    "MIT-0",
    "MPL-2.0",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// Checks both lock files.
///
/// # Errors
/// Names every package with another licence or without one.
pub fn check(workspace: &Workspace) -> Result<()> {
    let mut refused = refused_crates(workspace)?;
    refused.extend(refused_npm_packages(workspace)?);
    ensure!(refused.is_empty(), "licences that are not on the list:\n{}", refused.join("\n"));
    Ok(())
}

fn refused_crates(workspace: &Workspace) -> Result<Vec<String>> {
    #[derive(Deserialize)]
    struct Metadata {
        packages: Vec<Package>,
    }
    #[derive(Deserialize)]
    struct Package {
        name: String,
        version: String,
        license: Option<String>,
    }
    let mut command = run::cargo();
    command.current_dir(workspace.root()).args(["metadata", "--format-version", "1", "--locked"]);
    let metadata: Metadata = serde_json::from_str(&run::output(&mut command)?).context("cargo's metadata")?;
    ensure!(metadata.packages.len() > 1, "cargo lists no dependencies");
    let refused = metadata.packages.into_iter().filter(|package| !is_allowed(package.license.as_deref()));
    Ok(refused.map(|package| describe(&package.name, &package.version, package.license.as_deref())).collect())
}

fn refused_npm_packages(workspace: &Workspace) -> Result<Vec<String>> {
    #[derive(Deserialize)]
    struct Lock {
        packages: BTreeMap<String, Package>,
    }
    #[derive(Deserialize)]
    struct Package {
        version: Option<String>,
        license: Option<String>,
    }
    let path = workspace.page().join("package-lock.json");
    let lock: Lock =
        serde_json::from_str(&std::fs::read_to_string(&path)?).with_context(|| path.display().to_string())?;
    // The package without a name is the page itself.
    let packages = lock.packages.iter().filter(|(path, _)| !path.is_empty());
    let refused = packages.filter(|(_, package)| !is_allowed(package.license.as_deref()));
    Ok(refused
        .map(|(path, package)| describe(path, package.version.as_deref().unwrap_or("?"), package.license.as_deref()))
        .collect())
}

fn describe(name: &str, version: &str, licence: Option<&str>) -> String {
    format!("  {name} {version}: {}", licence.unwrap_or("no licence"))
}

/// Whether an SPDX expression can be fulfilled with allowed licences alone.
fn is_allowed(licence: Option<&str>) -> bool {
    // Old manifests separate alternatives by a slash.
    licence.is_some_and(|expression| any_of(&expression.replace('/', " OR ")))
}

/// `a OR b`, each side perhaps with AND or in brackets; OR binds weaker than AND in SPDX 2.1, annex D.4.
fn any_of(expression: &str) -> bool {
    split(expression, " OR ").into_iter().any(|side| split(side, " AND ").into_iter().all(is_one_allowed))
}

fn is_one_allowed(term: &str) -> bool {
    let term = term.trim();
    match term.strip_prefix('(').and_then(|rest| rest.strip_suffix(')')) {
        Some(inner) => any_of(inner),
        None => ALLOWED.contains(&term),
    }
}

/// Splits at `separator` outside of brackets.
fn split<'a>(expression: &'a str, separator: &str) -> Vec<&'a str> {
    let mut parts = Vec::new();
    let (mut depth, mut start) = (0_i32, 0);
    for (at, letter) in expression.char_indices() {
        match letter {
            '(' => depth += 1,
            ')' => depth -= 1,
            _ if depth == 0 && at >= start && expression[at..].starts_with(separator) => {
                parts.push(&expression[start..at]);
                start = at + separator.len();
            }
            _ => {}
        }
    }
    parts.push(&expression[start..]);
    parts
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_allowed_alternative_is_enough_and_every_part_of_a_sum_is_needed() {
        assert!(is_allowed(Some("MIT OR Apache-2.0")));
        assert!(is_allowed(Some("MIT/Apache-2.0")));
        assert!(is_allowed(Some("GPL-3.0-only OR MIT")));
        assert!(is_allowed(Some("(MIT OR Apache-2.0) AND Unicode-3.0")));
        assert!(is_allowed(Some("Apache-2.0 WITH LLVM-exception OR Apache-2.0 OR MIT")));
        assert!(!is_allowed(Some("MIT AND GPL-3.0-only")));
        assert!(!is_allowed(Some("(MIT OR GPL-3.0-only) AND GPL-2.0-only")));
        assert!(!is_allowed(Some("GPL-3.0-only")));
        assert!(!is_allowed(Some("")));
        assert!(!is_allowed(None));
    }
}
