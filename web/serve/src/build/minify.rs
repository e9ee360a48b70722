//! Scripts and style sheets without what only their writers need: two fifths less to download.
//!
//! This is done to the site's copies only, file by file, by esbuild from npm, which also lays in what a file takes from a package.

use std::io::Write;
use std::process::{Command, Stdio};

use super::cache::Cache;
use super::page::Source;
use crate::{Error, Workspace};

const SCRIPT: &str = include_str!("minify.mjs");

/// Minifies the scripts and style sheets among `files` in place.
pub(super) fn minify(workspace: &Workspace, files: &mut [Source]) -> Result<(), Error> {
    let page = workspace.page();
    // Names esbuild and every package by version.
    let lock = page.join("package-lock.json");
    let versions = std::fs::read_to_string(&lock).map_err(Error::file("read", &lock))?;
    let mut chosen: Vec<&mut Source> = files.iter_mut().filter(|file| is_minified(&file.path)).collect();
    let texts: Vec<(&str, String)> =
        chosen.iter().map(|file| (file.path.as_str(), String::from_utf8_lossy(&file.content).into_owned())).collect();
    let request = serde_json::to_vec(&texts).map_err(|reason| not_understood(&reason))?;
    let answer = Cache::new(workspace.cache())
        .get_or_make(&format!("{SCRIPT} {versions}"), &request, || run_script(&page, &request))?;
    let minified: Vec<String> = serde_json::from_slice(&answer).map_err(|reason| not_understood(&reason))?;
    for (file, text) in chosen.iter_mut().zip(minified) {
        file.content = text.into_bytes();
    }
    Ok(())
}

fn is_minified(path: &str) -> bool {
    [".js", ".css"].iter().any(|ending| path.ends_with(ending))
}

/// Runs the script in the page's folder, where its import is found.
fn run_script(page: &std::path::Path, request: &[u8]) -> Result<Vec<u8>, Error> {
    let mut command = Command::new("node");
    command.current_dir(page).args(["--input-type=module", "--eval", SCRIPT]);
    let failed = |status: String| Error::Command { command: "node (minify.mjs with esbuild)".into(), status };
    let mut child =
        command.stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().map_err(|reason| failed(reason.to_string()))?;
    // The script answers only once it has read everything, so writing all of it first can't block.
    child
        .stdin
        .take()
        .map_or(Ok(()), |mut stdin| stdin.write_all(request))
        .map_err(|reason| failed(reason.to_string()))?;
    let output = child.wait_with_output().map_err(|reason| failed(reason.to_string()))?;
    if output.status.success() { Ok(output.stdout) } else { Err(failed(output.status.to_string())) }
}

fn not_understood(reason: &serde_json::Error) -> Error {
    Error::Command { command: "node (minify.mjs with esbuild)".into(), status: reason.to_string() }
}
