//! A browser that can't draw: the page says so, and the numbers still work.

use anyhow::{Result, ensure};

use super::controls::move_slider;
use super::{Place, Run};

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("the page says that it can't draw, and still computes", computes_without_drawing(place)).await;
    run.check("look closer: a cut moves where the top can't be drawn", cut_moves(place)).await;
}

async fn computes_without_drawing(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let words = page.words().await?;
    ensure!(words.contains("WebGPU") && words.contains("WebGL"), "nothing is said of WebGPU and WebGL: {words}");
    ensure!(page.hertz().await?.len() >= 20, "{} modes in the table", page.hertz().await?.len());
    move_slider(&page, "Thickness").await?;
    page.without_errors().await
}

async fn cut_moves(place: &Place<'_>) -> Result<()> {
    let page = place.moving_page().await?;
    page.open_section("Cut through").await?;
    page.until("the cut is drawn", "document.querySelector('.cut .moving')?.getAttribute('d')").await?;
    let drawn = page.text("return document.querySelector('.cut .moving').getAttribute('d');").await?;
    let moved =
        format!("document.querySelector('.cut .moving').getAttribute('d') !== {}", serde_json::to_string(&drawn)?);
    page.until("the cut moves", &moved).await?;
    page.without_errors().await
}
