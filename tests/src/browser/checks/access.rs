//! What WCAG 2.2 asks at levels A and AA, as far as a program can judge it.

use std::path::Path;

use anyhow::{Context, Result, ensure};
use serde::Deserialize;

use super::{Place, Run};
use crate::browser::page::{DESKTOP, PHONE, Page};

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("everything on the page is accessible by axe's rules", everything_is_accessible(place)).await;
}

/// axe-core, of the page's tools.
const AXE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../www/node_modules/axe-core/axe.min.js");

const JUDGE: &str = "const done = arguments[arguments.length - 1];
axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then(({ violations, passes }) => done({
    rules: passes.length,
    violations: violations.map(({ id, help, nodes }) => ({ id, help, at: nodes.map(({ target }) => target.join(' ')) })),
}));";

#[derive(Deserialize)]
struct Judgement {
    /// Rules that something on the page came under and kept.
    rules: usize,
    violations: Vec<Violation>,
}

#[derive(Debug, Deserialize)]
#[expect(dead_code, reason = "shown when there is one")]
struct Violation {
    id: String,
    help: String,
    at: Vec<String>,
}

/// Judges a page that axe is loaded on.
pub(super) async fn judge(page: &Page<'_>, what: &str) -> Result<()> {
    let Judgement { rules, violations } = serde_json::from_value(page.run(JUDGE).await?).context("what axe found")?;
    ensure!(rules > 10, "axe found only {rules} of its rules to apply to {what}");
    ensure!(violations.is_empty(), "{what}: {violations:#?}");
    Ok(())
}

/// Makes axe known to the page.
pub(super) async fn load_axe(page: &Page<'_>) -> Result<()> {
    let axe = std::fs::read_to_string(Path::new(AXE)).with_context(|| format!("reading {AXE}"))?;
    page.value(&axe).await?;
    Ok(())
}

async fn everything_is_accessible(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.judged().await?;
    load_axe(&page).await?;
    page.resize(DESKTOP).await?;
    judge(&page, "the first screen").await?;
    page.value("for (const section of document.querySelectorAll('details')) section.open = true;").await?;
    page.until(
        "all sections are loaded",
        "![...document.querySelectorAll('.section')].some((one) => one.textContent.includes('Loading…'))",
    )
    .await?;
    judge(&page, "the open sections").await?;
    page.resize(PHONE).await?;
    judge(&page, "the open sections on a phone").await?;
    page.prefer_dark(true).await?;
    let dark = judge(&page, "dark colours").await;
    page.prefer_dark(false).await?;
    dark?;
    page.press("Designs").await?;
    page.until("the dialogue is open", "document.querySelector('dialog[open]') !== null").await?;
    judge(&page, "the designs' dialogue").await?;
    page.value("document.querySelector('dialog').close();").await?;
    page.without_errors().await
}
