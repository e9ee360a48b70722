//! The stage: something is drawn, it moves, it stops, and it can be seen from elsewhere.

use std::time::Duration;

use anyhow::{Result, ensure};

use super::{Place, Run};
use crate::browser::Backend;
use crate::browser::find::Role;
use crate::browser::page::Page;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("the top is drawn", top_is_drawn(place, run.backend)).await;
    run.check("the top moves, stops and moves again", top_moves(place)).await;
    run.check("the top stands where less motion is wished for", top_stands(place)).await;
    run.check("the inside is another picture", inside_is_another_picture(place)).await;
}

/// A moving top would have moved visibly in this time.
const STILL_FOR: Duration = Duration::from_millis(800);

/// A blank canvas has one colour; a lit, curved surface has dozens.
const COLOURS: usize = 24;

/// The whole top fills more of the stage than this from every set view, and less than all of it.
const LEAST_SHARE: f64 = 0.05;

async fn top_is_drawn(place: &Place<'_>, backend: Backend) -> Result<()> {
    let page = place.still_page().await?;
    ensure_drawn(&page).await?;
    let used = page.text("return document.querySelector('[data-backend]')?.dataset.backend ?? '';").await?;
    ensure!(used == backend.name(), "the page draws with {used}, the browser was started for {}", backend.name());
    page.without_errors().await
}

/// That a top is on the canvas, by its pixels.
pub(super) async fn ensure_drawn(page: &Page<'_>) -> Result<()> {
    let picture = page.picture().await?;
    let (share, colours) = (picture.share_drawn(), picture.colours());
    ensure!(share > LEAST_SHARE && share < 1.0, "{:.1} % of the canvas is drawn on", 100.0 * share);
    ensure!(colours > COLOURS, "the canvas shows {colours} colours, a lit surface has more than {COLOURS}");
    Ok(())
}

async fn top_moves(place: &Place<'_>) -> Result<()> {
    let page = place.moving_page().await?;
    page.see_change("the top moves by itself").await?;
    page.pause().await?;
    let still = page.picture().await?;
    tokio::time::sleep(STILL_FOR).await;
    let share = page.picture().await?.share_changed(&still)?;
    ensure!(share == 0.0, "paused, {:.2} % of the canvas changed", 100.0 * share);
    page.press("Play").await?;
    page.see_change("the top moves after Play").await?;
    page.without_errors().await
}

async fn top_stands(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    // The frequency on the stage is corrected then.
    page.judged().await?;
    page.find(Role::Button, "Play").await?;
    let still = page.picture().await?;
    tokio::time::sleep(STILL_FOR).await;
    let share = page.picture().await?.share_changed(&still)?;
    ensure!(share == 0.0, "{:.2} % of the canvas changed", 100.0 * share);
    page.without_errors().await
}

async fn inside_is_another_picture(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let outside = page.picture().await?;
    page.press("Inside").await?;
    page.changed_from(&outside, "the view from inside").await?;
    ensure_drawn(&page).await?;
    page.without_errors().await
}
