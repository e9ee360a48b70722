//! Cargo's part: the web crate as wasm, once for each module.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use super::Module;
use crate::{Error, Workspace};

const TARGET: &str = "wasm32-unknown-unknown";

/// Makes sure that the compiler can make wasm: rustup brings the target by itself where it may
/// (`rust-toolchain.toml`), and is asked to where that is switched off. Cargo's own message (it can't find `core`)
/// doesn't say what to do.
pub(super) fn bring_target() -> Result<(), Error> {
    if target_is_installed()? {
        return Ok(());
    }
    let mut rustup = Command::new("rustup");
    let added = run(rustup.args(["target", "add", TARGET]));
    if added.is_ok() && target_is_installed()? {
        return Ok(());
    }
    Err(missing(&format!("Rust's {TARGET} target"), &format!("run `rustup target add {TARGET}`")))
}

fn target_is_installed() -> Result<bool, Error> {
    let listing = Command::new(std::env::var_os("RUSTC").unwrap_or_else(|| "rustc".into()))
        .args(["--print", "target-libdir", "--target", TARGET])
        .stderr(Stdio::null())
        .output()
        .map_err(|_| missing("the Rust compiler (rustc)", "install Rust from https://rustup.rs"))?;
    Ok(PathBuf::from(String::from_utf8_lossy(&listing.stdout).trim()).is_dir())
}

/// Compiles `module` and gives the path of the wasm file.
///
/// Each module has a target folder of its own: cargo names a library's wasm file without its features, so in one
/// folder a build that cargo holds for fresh could hand over another module's file.
pub(super) fn compile(workspace: &Workspace, module: Module) -> Result<PathBuf, Error> {
    let target_dir = workspace.root().join("target/wasm").join(module.name());
    let mut command = Command::new(cargo());
    command
        .current_dir(workspace.root())
        .args(["build", "--package", "bombatura-web", "--lib", "--profile", module.profile(), "--target", TARGET])
        .args(["--no-default-features", "--features", module.feature()])
        .arg("--target-dir")
        .arg(&target_dir)
        .arg("--config")
        .arg(without_machine_paths(workspace.root()))
        // Flags from the environment would replace those of .cargo/config.toml, and with them simd128.
        .env_remove("RUSTFLAGS")
        .env_remove("CARGO_ENCODED_RUSTFLAGS");
    eprintln!("Compiling the module {}", module.name());
    run(&mut command)?;
    Ok(target_dir.join(TARGET).join(module.profile()).join("bombatura_web.wasm"))
}

/// Cargo configuration that keeps this machine's folder names out of the module's panic messages.
fn without_machine_paths(root: &Path) -> String {
    let home = std::env::var_os("CARGO_HOME")
        .map(PathBuf::from)
        .or_else(|| std::env::home_dir().map(|home| home.join(".cargo")))
        .unwrap_or_else(|| PathBuf::from(".cargo"));
    let remap = |from: &Path, to: &str| format!("{:?}", format!("--remap-path-prefix={}={to}", from.display()));
    format!("target.{TARGET}.rustflags=[{}, {}]", remap(&home, "cargo"), remap(root, "bombatura"))
}

/// The cargo that runs this program, or the one on the search path.
fn cargo() -> std::ffi::OsString {
    std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into())
}

/// Runs a command whose output goes to the person at the terminal.
pub(super) fn run(command: &mut Command) -> Result<(), Error> {
    let shown = shown(command);
    let status = command.stdin(Stdio::null()).status().map_err(|reason| {
        missing(&format!("`{}`", command.get_program().display()), &format!("install it ({reason})"))
    })?;
    if status.success() { Ok(()) } else { Err(Error::Command { command: shown, status: status.to_string() }) }
}

fn shown(command: &Command) -> String {
    let mut line = command.get_program().display().to_string();
    for argument in command.get_args() {
        line.push(' ');
        line.push_str(&argument.to_string_lossy());
    }
    line
}

fn missing(what: &str, remedy: &str) -> Error {
    Error::Missing { what: what.into(), remedy: remedy.into() }
}
