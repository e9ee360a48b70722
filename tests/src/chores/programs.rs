//! The programs that the checks need beside Rust and Node.js: installed on Debian, named elsewhere.

use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, bail};

use super::run;

/// A program, the Debian package that holds it, and what it is needed for.
struct Needed {
    program: &'static str,
    package: &'static str,
    reason: &'static str,
}

const NEEDED: [Needed; 5] = [
    Needed { program: "chromium", package: "chromium", reason: "the page is checked in a real browser" },
    Needed { program: "chromedriver", package: "chromium-driver", reason: "drives that browser" },
    Needed { program: "firefox-esr", package: "firefox-esr", reason: "the stage is compared in a second browser" },
    Needed { program: "Xvfb", package: "xvfb", reason: "that browser draws on its screen" },
    Needed { program: "ccx", package: "calculix-ccx", reason: "the top is checked against solids" },
];

/// Makes sure that every program is there; on Debian missing ones are installed by apt.
///
/// # Errors
/// When one is missing and can't be installed here, with what to install.
pub fn install_missing() -> Result<()> {
    let missing: Vec<&Needed> = NEEDED.iter().filter(|needed| !run::is_there(needed.program)).collect();
    if missing.is_empty() {
        return Ok(());
    }
    let Some(apt) = apt_get() else { bail!(instructions(&missing)) };
    eprintln!("Installing {}", missing.iter().map(|needed| needed.package).collect::<Vec<_>>().join(", "));
    let install = || -> Result<()> {
        run::to_the_end(apt.command().arg("update"))?;
        let packages = missing.iter().map(|needed| needed.package);
        run::to_the_end(apt.command().args(["install", "--yes", "--no-install-recommends"]).args(packages))
    };
    install().with_context(|| instructions(&missing))?;
    match missing.iter().find(|needed| !run::is_there(needed.program)) {
        Some(still) => bail!("{} is installed, but {} can't be started", still.package, still.program),
        None => Ok(()),
    }
}

/// How apt can be run here without asking anybody.
struct AptGet {
    through_sudo: bool,
}

impl AptGet {
    fn command(&self) -> Command {
        let mut command = if self.through_sudo { Command::new("sudo") } else { Command::new("apt-get") };
        if self.through_sudo {
            command.args(["-n", "env", "DEBIAN_FRONTEND=noninteractive", "apt-get"]);
        } else {
            command.env("DEBIAN_FRONTEND", "noninteractive");
        }
        command
    }
}

fn apt_get() -> Option<AptGet> {
    if !Path::new("/etc/debian_version").exists() || !run::is_there("apt-get") {
        return None;
    }
    let user = run::output(Command::new("id").arg("-u")).ok()?;
    if user.trim() == "0" {
        return Some(AptGet { through_sudo: false });
    }
    let may = run::output(Command::new("sudo").args(["-n", "true"])).is_ok();
    may.then_some(AptGet { through_sudo: true })
}

fn instructions(missing: &[&Needed]) -> String {
    let mut text = String::from("programs are missing:\n");
    for Needed { program, package, reason } in missing {
        text.push_str(&format!("  {program}: {reason} (Debian package {package})\n"));
    }
    let packages: Vec<_> = missing.iter().map(|needed| needed.package).collect();
    text.push_str(&format!(
        "install them: `apt-get install {}` as root on Debian; elsewhere Chromium, the chromedriver of the same \
         version, Firefox as `firefox-esr`, Xvfb and CalculiX, all on the search path",
        packages.join(" ")
    ));
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn instructions_name_program_package_and_reason() {
        let text = instructions(&[&NEEDED[1]]);
        for word in ["chromedriver", "chromium-driver", "drives", "apt-get install chromium-driver"] {
            assert!(text.contains(word), "{text}");
        }
    }
}
