//! What breaks under the page: its workers, and the graphics device.

use anyhow::{Result, ensure};

use super::controls::move_slider;
use super::drawing::ensure_drawn;
use super::{Place, Run};
use crate::browser::{Backend, breakage};

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    let restarted = place.session.with_script(breakage::WORKERS, workers_restart(place));
    run.check("crashed workers restart with the same design", restarted).await;
    let replaced = place.session.with_script(breakage::DEVICES, device_is_replaced(place, run.backend));
    run.check("a lost graphics device is replaced", replaced).await;
}

async fn workers_restart(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    move_slider(&page, "Thickness").await?;
    let (hertz, thickness) = (page.hertz().await?, page.number("Thickness").await?);
    page.until("the workers are there", breakage::WORKERS_THERE).await?;
    page.value(breakage::BREAK_WORKERS).await?;
    page.until("all are started again", breakage::WORKERS_AGAIN).await?;
    page.until("the page says so", "document.body.innerText.includes('started again')").await?;
    page.settle().await?;
    ensure!(page.number("Thickness").await? == thickness, "the thickness was lost");
    let after = page.hertz().await?;
    ensure!(after == hertz, "the same design has other figures after the restart: {hertz:?}, then {after:?}");
    move_slider(&page, "Arch height").await?;
    ensure!(page.number("Thickness").await? == thickness, "the new worker computes another design");
    page.errors_are_only(&["broken by a check", "worker failed"]).await
}

async fn device_is_replaced(place: &Place<'_>, backend: Backend) -> Result<()> {
    let page = place.moving_page().await?;
    let hertz = page.hertz().await?;
    page.value("globalThis.__first_canvas = document.querySelector('canvas');").await?;
    page.value(if backend == Backend::WebGpu { breakage::LOSE_WEBGPU } else { breakage::LOSE_WEBGL2 }).await?;
    let replaced = "document.querySelector('canvas') !== null && document.querySelector('canvas') !== __first_canvas";
    page.until("a new canvas takes the lost one's place", replaced).await?;
    page.see_change("the top moves on the new canvas").await?;
    ensure_drawn(&page).await?;
    ensure!(page.hertz().await? == hertz, "the figures changed with the device");
    page.errors_are_only(&["lost", "CONTEXT_LOST"]).await
}
