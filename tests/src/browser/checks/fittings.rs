//! Bar, post, masses, wood and rim: what is fixed to the top is added, moved and taken away, and the figures follow.

use anyhow::{Result, ensure};
use thirtyfour::prelude::*;

use super::files::save;
use super::{Place, Run};
use crate::browser::find::Role;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("bar, post and masses are added and taken away", fittings_come_and_go(place)).await;
    run.check("a measure's slider lies round its value and moves the top", slider_moves_the_top(place)).await;
    run.check("the rim is put on ribs and the board measured", rim_and_board(place)).await;
}

/// Feet of fittings drawn in the plan.
const DRAWN: &str = "document.querySelectorAll('#plan .fitting').length";

async fn fittings_come_and_go(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let bare = page.hertz().await?;
    page.open_section("Bar, post").await?;
    page.tick("With a bar").await?;
    page.figures_changed_from(&bare).await?;
    page.until("the bar is drawn", &format!("{DRAWN} === 1")).await?;
    let with_bar = page.hertz().await?;
    // A mass raises no mode (Rayleigh's principle).
    page.tick("With a post").await?;
    page.figures_changed_from(&with_bar).await?;
    page.until("the post is drawn", &format!("{DRAWN} === 2")).await?;
    let with_post = page.hertz().await?;
    page.in_sight(Role::Button, "Add a mass").await?.click().await?;
    page.figures_changed_from(&with_post).await?;
    page.type_number("Mass 1, An added mass in g", "40").await?;
    page.settle().await?;
    let folder = tempfile::tempdir()?;
    let design = save(&page, folder.path()).await?;
    ensure!(design["bar"]["width_mm"] == 5.5 && design["post"]["diameter_mm"] == 6.2, "{design}");
    ensure!(design["masses"][0]["mass_g"] == 40.0, "{}", design["masses"]);
    let heavy = page.hertz().await?;
    ensure!(heavy.iter().zip(&with_post).all(|(heavy, light)| heavy <= light), "40 g raise a mode: {heavy:?}");
    page.in_sight(Role::Button, "Mass 1: Remove").await?.click().await?;
    page.figures_changed_from(&heavy).await?;
    page.tick("With a post").await?;
    page.tick("With a bar").await?;
    page.until("nothing is drawn", &format!("{DRAWN} === 0")).await?;
    page.settle().await?;
    ensure!(page.hertz().await? == bare, "without bar, post and mass the figures are others than before");
    page.without_errors().await
}

async fn slider_moves_the_top(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let before = page.hertz().await?;
    page.open_section("Graduation").await?;
    // The number's focus opens the slider, the next stop of the Tab key.
    page.in_sight(Role::Number, "Thickness of the flanks").await?.send_keys(Key::Tab).await?;
    page.session.driver.active_element().await?.send_keys(Key::PageUp).await?;
    page.figures_changed_from(&before).await?;
    let folder = tempfile::tempdir()?;
    let design = save(&page, folder.path()).await?;
    let flank = design["graduation"]["flank_mm"].as_f64().unwrap_or_default();
    // From 2.6 mm by a tenth of a way of 4 mm, more or less.
    ensure!((2.7..3.3).contains(&flank), "the flanks are {flank} mm thick");
    page.press("Undo").await?;
    page.settle().await?;
    ensure!(page.hertz().await? == before, "undone, the figures are others");
    page.without_errors().await
}

async fn rim_and_board(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let free = page.hertz().await?;
    page.open_section("Rim").await?;
    page.choose("The rim is", "on ribs").await?;
    page.figures_changed_from(&free).await?;
    let on_ribs = page.hertz().await?;
    // Lowest modes of tops on their ribs: 400 to 1 300 Hz (row V-RIM-RANGE of the published values), here without a bar.
    ensure!((300.0..1300.0).contains(&on_ribs[0]), "the lowest mode on ribs is at {} Hz", on_ribs[0]);
    page.choose("The rim is", "free").await?;
    page.figures_changed_from(&on_ribs).await?;
    page.open_section("Wood").await?;
    page.tick("This board was measured").await?;
    page.in_sight(Role::Number, "The board, Density").await?;
    let before = page.hertz().await?;
    page.type_number("The board, Density", "400").await?;
    page.type_number("The board, Speed of sound along the grain", "5500").await?;
    page.figures_changed_from(&before).await?;
    // E = ρc²: 400 kg/m³ at 5 500 m/s is 12.1 GPa (any acoustics textbook).
    let constant = "[...document.querySelectorAll('.constants tr')].some((row) => \
                    row.textContent.startsWith('Stiffness along the grain, GPa12.1'))";
    page.until("the stiffness follows", constant).await?;
    page.without_errors().await
}
