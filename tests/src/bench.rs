//! `cargo xtask bench`: what a user waits for, measured now on this machine.

mod accuracy;
mod drag;
mod driven;
mod frame;
mod machine;
mod others;
mod page_load;
mod print;
mod solver;
mod sweep;
mod transfer;

use anyhow::Result;
use bombatura_serve::serve::Server;
use bombatura_serve::{Workspace, build};

use crate::browser::Chromedriver;
use crate::chores::programs;

pub use print::{Bench, Row};

/// Runs every bench, one after the other.
///
/// # Errors
/// When a program is missing, the site can't be built or the page fails.
pub fn run(workspace: &Workspace) -> Result<Bench> {
    programs::install_missing()?;
    let site = workspace.site();
    build::build_site(workspace, &site)?;
    let mut rows = tokio::runtime::Builder::new_current_thread().enable_all().build()?.block_on(async {
        let server = Server::start(&site, 0)?;
        let chromedriver = Chromedriver::start()?;
        let mut rows = transfer::rows(&server, &chromedriver).await?;
        rows.extend(page_load::rows(&server, &chromedriver).await?);
        rows.extend(drag::rows(&server, &chromedriver).await?);
        rows.extend(frame::rows(&server, &chromedriver).await?);
        rows.extend(sweep::rows(&server, &chromedriver).await?);
        Ok::<_, anyhow::Error>(rows)
    })?;
    rows.extend(solver::rows(&site)?);
    rows.extend(driven::rows(&site)?);
    rows.extend(accuracy::rows()?);
    rows.extend(others::rows(workspace)?);
    Ok(Bench { machine: machine::describe(), date: machine::today(), rows })
}

/// The middle one of the times; one hiccup of the machine doesn't reach it.
fn median(values: Vec<f64>) -> f64 {
    percentile(values, 50)
}

/// The least time that `percent` of all don't exceed.
fn percentile(mut values: Vec<f64>, percent: usize) -> f64 {
    values.sort_by(f64::total_cmp);
    values[(values.len() * percent / 100).min(values.len() - 1)]
}
