//! The motion's controls and colours: phase, ghosts, how large it is drawn, what the top is coloured by.

use std::time::Duration;

use anyhow::{Result, ensure};
use thirtyfour::prelude::*;

use super::{Place, Run};
use crate::browser::find::Role;
use crate::browser::page::Page;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("the phase is stepped by arrow keys and holds", phase_is_stepped(place)).await;
    run.check("ghosts are drawn beside the top", ghosts_are_drawn(place)).await;
    run.check("the drawn size is said as it is", drawn_size_is_said(place)).await;
    run.check("the top is coloured by numbers with their scale", colours_have_a_scale(place)).await;
}

/// A moving top would have moved visibly in this time.
const STILL_FOR: Duration = Duration::from_millis(600);

async fn phase_is_stepped(place: &Place<'_>) -> Result<()> {
    let page = place.moving_page().await?;
    let phase = page.find(Role::Slider, "Phase").await?;
    phase.send_keys(Key::Home).await?;
    page.find(Role::Button, "Play").await?;
    page.until("the motion stands at its start", "document.querySelector('#phase').value === '0'").await?;
    tokio::time::sleep(STILL_FOR).await;
    let start = page.picture().await?;
    tokio::time::sleep(STILL_FOR).await;
    ensure!(page.picture().await?.share_changed(&start)? == 0.0, "the motion went on after a step of the phase");
    // A step is five degrees; the motion at a half of the period is the opposite of that at its start.
    for _ in 0..36 {
        phase.send_keys(Key::Right).await?;
    }
    page.until("the phase is half a period", "document.querySelector('#phase').value === '180'").await?;
    page.changed_from(&start, "the phase").await?;
    for _ in 0..36 {
        phase.send_keys(Key::Left).await?;
    }
    tokio::time::sleep(STILL_FOR).await;
    let share = page.picture().await?.share_changed(&start)?;
    ensure!(share == 0.0, "back at the start, {:.2} % of the canvas is another", 100.0 * share);
    page.without_errors().await
}

async fn ghosts_are_drawn(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    // The frequency on the stage is corrected then.
    page.judged().await?;
    let alone = page.picture().await?;
    page.find(Role::Checkbox, "Ghosts").await?.click().await?;
    page.changed_from(&alone, "the ghosts").await?;
    ensure!(
        page.picture().await?.share_drawn() > alone.share_drawn(),
        "ghosts stand beside the top, but no more of the canvas is drawn on"
    );
    page.find(Role::Checkbox, "Ghosts").await?.click().await?;
    tokio::time::sleep(STILL_FOR).await;
    ensure!(page.picture().await?.share_changed(&alone)? == 0.0, "the ghosts did not go");
    page.without_errors().await
}

/// A mode has no amplitude, so what is said must be what the slider says, and that there is no true size.
async fn drawn_size_is_said(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let slider = page.find(Role::Slider, "Exaggeration").await?;
    slider.send_keys(Key::End).await?;
    let said = page.text("return document.querySelector('#drawn-scale').textContent;").await?;
    ensure!(said.contains("30 mm") && said.contains("no true size"), "{said}");
    slider.send_keys(Key::Home).await?;
    let said = page.text("return document.querySelector('#drawn-scale').textContent;").await?;
    ensure!(said.contains("at rest") && !said.contains("mm"), "{said}");
    page.without_errors().await
}

const SCALE: &str = "document.querySelector('#colour-scale').textContent";

async fn colours_have_a_scale(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    for (by, words) in [
        ("thickness", " mm"),
        ("height", " mm"),
        ("slope", " °"),
        ("curvature", "hollow"),
        ("strain energy", "mean"),
        ("motion", "outward"),
    ] {
        let before = page.picture().await?;
        page.colour_by(by).await?;
        page.until(by, &format!("{SCALE}.replace(/\\s/g, ' ').includes('{words}')")).await?;
        page.changed_from(&before, by).await?;
    }
    page.colour_by("nothing").await?;
    page.until("bare wood has no scale", "document.querySelector('#colour-scale').hidden").await?;
    // Thickness goes with the design: its thickest wood is what the maker asks for in the centre.
    page.colour_by("thickness").await?;
    page.type_number("Thickness", "4.2").await?;
    page.until("the scale follows the design", &format!("{SCALE}.includes('4.2')")).await?;
    page.settle().await?;
    page.without_errors().await
}

impl Page<'_> {
    /// Chooses by typing. Letters that come within a second of others are taken for the same word.
    pub(super) async fn colour_by(&self, what: &str) -> Result<()> {
        tokio::time::sleep(Duration::from_millis(1100)).await;
        Ok(self.find(Role::Choice, "Colour by").await?.send_keys(what).await?)
    }
}
