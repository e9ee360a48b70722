//! The mode table: a real table, and choosing in it by mouse and by keyboard.

use anyhow::{Result, ensure};
use thirtyfour::prelude::*;

use super::{Place, Run};
use crate::browser::find::Role;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("the modes are a real table in rising order", modes_are_a_table(place)).await;
    run.check("each frequency says how sure it is", frequencies_are_judged(place)).await;
    run.check("a click and the arrow keys choose a mode", modes_are_chosen(place)).await;
}

/// As many elastic modes as the page promises.
const MODES: usize = 20;

/// Whether frequencies rise. The modes stand in the order of the standard mesh: two that lie half a per cent apart there may
/// change places when both are corrected for it.
pub(super) fn rising(hertz: &[f64]) -> bool {
    hertz.is_sorted_by(|low, high| *high >= 0.995 * low)
}

async fn modes_are_a_table(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let table = page.find(Role::Table, "Modes").await?;
    ensure!(table.find_all(By::Css("thead th[scope=col]")).await?.len() >= 3, "columns without headings");
    let hertz = page.hertz().await?;
    ensure!(hertz.len() >= MODES, "{} modes in the table", hertz.len());
    ensure!(hertz[0] > 1.0, "the lowest elastic mode is at {} Hz: a rigid motion", hertz[0]);
    ensure!(rising(&hertz), "frequencies out of order: {hertz:?}");
    page.without_errors().await
}

/// Boards of one species differ by some 10 % in density and 20 % in stiffness (coefficients of variation, Wood Handbook, chapter 5), and
/// f follows the root of either: a spread outside these bounds forgets one of them or counts it twice.
const SPREAD: std::ops::Range<f64> = 0.03..0.25;

/// A mode loses a mean of what the wood loses along the grain (0.0051), across it (0.0216) and in shear, and Q is one over that
/// (McIntyre & Woodhouse 1988, Acta Metallurgica 36, 1397, from memory).
const QUALITY: std::ops::Range<f64> = 45.0..200.0;

async fn frequencies_are_judged(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.judged().await?;
    let hertz = page.hertz().await?;
    for (index, (hertz, [spread, quality])) in hertz.iter().zip(page.sureties().await?).enumerate() {
        let number = index + 1;
        ensure!(SPREAD.contains(&(spread / hertz)), "mode {number}: {hertz} ± {spread} Hz");
        ensure!(QUALITY.contains(&quality), "mode {number}: Q {quality}");
    }
    let caption = page.text("return document.querySelector('#stage-mesh').textContent;").await?;
    ensure!(caption.ends_with("corrected for the mesh"), "the stage's figure comes from `{caption}`");
    let figure = page.text("return document.querySelector('.chosen .hertz').textContent;").await?;
    let bare = page.text("return document.querySelector('.chosen .hertz').title;").await?;
    ensure!(!bare.starts_with(&format!("{figure} ")), "nothing was corrected: {bare}");
    let said = page.text("return document.querySelector('#status').textContent;").await?;
    ensure!(said.ends_with(&format!(": {figure} Hz.")), "the table has {figure} Hz, the status line says “{said}”");
    let stage = page.text("return document.querySelector('#stage-hertz').textContent;").await?;
    ensure!(stage.starts_with(&format!("{figure} ")), "the table has {figure} Hz, the stage {stage}");
    page.without_errors().await
}

async fn modes_are_chosen(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let chosen = || {
        page.value("return [...document.querySelectorAll('tbody button')].findIndex(b => b.ariaPressed === 'true');")
    };
    ensure!(chosen().await?.as_i64().is_some_and(|at| at >= 0), "no mode is chosen at first");

    let before = page.picture().await?;
    let wanted = usize::from(chosen().await? == 0);
    page.choose_mode(wanted).await?;
    ensure!(chosen().await? == wanted, "a click on row {wanted} chose row {}", chosen().await?);
    page.changed_from(&before, "the clicked mode").await?;

    let before = page.picture().await?;
    page.session.driver.active_element().await?.send_keys(Key::Down).await?;
    ensure!(chosen().await? == wanted + 1, "arrow down chose row {}", chosen().await?);
    page.changed_from(&before, "the mode below").await?;

    page.session.driver.active_element().await?.send_keys(Key::Up).await?;
    ensure!(chosen().await? == wanted, "arrow up chose row {}", chosen().await?);
    page.without_errors().await
}
