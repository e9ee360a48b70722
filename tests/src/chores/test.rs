//! `cargo xtask test`: everything, from the unit tests to the page in a browser.

use anyhow::{Result, anyhow, bail, ensure};
use bombatura_serve::{Workspace, build};

use super::{licences, page_sources, programs, run};
use crate::browser;
use crate::lessons;
use crate::outcome::Outcome;
use crate::studies;
use crate::verify::{self, Row};

/// Runs every check. What keeps later checks from running (a missing program, a site that can't be built) is an error;
/// everything else is an outcome.
///
/// # Errors
/// As said.
pub fn everything(workspace: &Workspace) -> Result<Vec<Outcome>> {
    programs::install_missing()?;
    let mut outcomes = vec![
        Outcome::of("cargo's tests", || cargo_tests(workspace)),
        Outcome::of("licences", || licences::check(workspace)),
    ];
    outcomes.extend(page_sources::check(workspace)?);
    // The values keep one core busy for minutes, the site's modules the other.
    let built = std::thread::scope(|scope| {
        let site = scope.spawn(|| build::build_site(workspace, &workspace.site()));
        outcomes.extend(published_values()?);
        outcomes.push(Outcome::of("makers' sayings computed", makers_sayings));
        outcomes.extend(lessons::outcomes(workspace)?);
        site.join().map_err(|_| anyhow!("building the site panicked"))
    })?;
    built?;
    outcomes.extend(in_browsers(workspace, None)?);
    Ok(outcomes)
}

/// The built site in Chromium; `only` limits it to checks whose name contains it.
///
/// # Errors
/// When a program is missing, or the site can't be built or opened.
pub fn in_browsers(workspace: &Workspace, only: Option<&str>) -> Result<Vec<Outcome>> {
    programs::install_missing()?;
    build::install(workspace, build::Tools::All)?;
    let site = workspace.site();
    build::build_site(workspace, &site)?;
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build()?;
    runtime.block_on(browser::checks::run(&site, only))
}

/// What of the web package can be compiled without a browser. Nothing of it is on by default, and its tests would not be
/// there.
const WEB: &str = "bombatura-web/compute,bombatura-web/board,bombatura-web/drive,bombatura-web/view";

/// Unit, property and doc tests of every package.
fn cargo_tests(workspace: &Workspace) -> Result<()> {
    let arguments = ["test", "--release", "--workspace", "--locked", "--features", WEB];
    run::to_the_end(run::cargo().current_dir(workspace.root()).args(arguments))
}

/// Whether a saying comes out is reported, not judged; that it can be computed is checked.
fn makers_sayings() -> Result<()> {
    let studies = studies::all()?;
    print!("{}", studies::table(&studies));
    for study in &studies {
        ensure!(study.figures.iter().all(|figure| figure.value.is_finite()), "{}: a figure is not a number", study.id);
    }
    Ok(())
}

fn published_values() -> Result<Vec<Outcome>> {
    let rows = verify::rows()?;
    print!("{}", verify::table(&rows));
    let surprises = verify::surprises(&rows);
    let outcome = |row: &Row| {
        Outcome::of(format!("published value {}", row.id), || {
            let verdict = if row.pass { "a known miss that passes" } else { "a miss" };
            let Row { got, target, source, error_pct, .. } = row;
            ensure!(!surprises.contains(&row.id), "{verdict}: {got} against {target} from {source}: {error_pct:.3} %");
            Ok(())
        })
    };
    let mut outcomes: Vec<Outcome> = rows.iter().map(outcome).collect();
    ensure!(!outcomes.is_empty(), "no published value was checked");
    let gone = surprises.iter().filter(|id| rows.iter().all(|row| row.id != **id));
    outcomes.extend(
        gone.map(|id| Outcome::of(format!("published value {id}"), || bail!("a known miss that is not there"))),
    );
    Ok(outcomes)
}
