//! Running other programs.

use std::process::{Command, Stdio};

use anyhow::{Context, Result, bail};

/// Runs a command whose output goes to the person at the terminal; it gets no input.
///
/// # Errors
/// When it can't be started or reports failure.
pub fn to_the_end(command: &mut Command) -> Result<()> {
    let shown = format!("{command:?}");
    let status = command.stdin(Stdio::null()).status().with_context(|| format!("can't run {shown}"))?;
    if !status.success() {
        bail!("{shown} failed ({status})");
    }
    Ok(())
}

/// What a command prints on its standard output.
///
/// # Errors
/// As [`to_the_end`].
pub fn output(command: &mut Command) -> Result<String> {
    let shown = format!("{command:?}");
    let output = command.stdin(Stdio::null()).output().with_context(|| format!("can't run {shown}"))?;
    if !output.status.success() {
        bail!("{shown} failed ({}): {}", output.status, String::from_utf8_lossy(&output.stderr));
    }
    Ok(String::from_utf8(output.stdout)?)
}

/// Whether a program can be started. It is in a folder of its own: CalculiX takes any argument for the name of its files.
#[must_use]
pub fn is_there(program: &str) -> bool {
    let Ok(folder) = tempfile::tempdir() else { return false };
    let started = Command::new(program)
        .arg("--version")
        .current_dir(folder.path())
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status();
    started.is_ok()
}

/// The cargo that runs this program.
#[must_use]
pub fn cargo() -> Command {
    Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()))
}
