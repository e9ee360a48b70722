//! The sections below the main measures: designs to start from, outline and arching in numbers.

use std::path::Path;
use std::time::Duration;

use anyhow::{Context, Result, ensure};
use thirtyfour::prelude::*;

use super::drawings::{LOWER_BOUT, slider};
use super::files::save;
use super::{Place, Run};
use crate::browser::find::Role;
use crate::browser::page::Page;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("another size is started from and undone", another_size_is_started_from(place)).await;
    run.check("the outline is changed by its numbers", outline_is_changed_by_numbers(place)).await;
    run.check("another pattern of sound holes opens as much and goes back", holes_are_exchanged(place)).await;
    run.check("an arch turns where it is told to and changes its family", arch_is_changed_by_numbers(place)).await;
}

async fn another_size_is_started_from(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let hertz = page.hertz().await?;
    page.open_section("Another size").await?;
    page.choose("Design to start from", "Invented viola, l").await?;
    page.in_sight(Role::Button, "Start from it").await?.click().await?;
    page.figures_changed_from(&hertz).await?;
    let folder = tempfile::tempdir()?;
    let viola = save(&page, folder.path()).await?;
    ensure!(viola["outline"]["length_mm"] == 425.0, "the length is {}", viola["outline"]["length_mm"]);
    let violas = page.hertz().await?;
    page.press("Undo").await?;
    page.figures_changed_from(&violas).await?;
    ensure!(page.hertz().await? == hertz, "undone, the figures are others");
    page.without_errors().await
}

/// What opens by the same area follows from the design alone: the saved slot's area is that of the f-holes (closed form:
/// length times width less the corners that half-round ends leave).
async fn holes_are_exchanged(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let f_holes = page.hertz().await?;
    page.open_section("Sound holes").await?;
    page.in_sight(Role::Number, "Stop, from the neck-end edge to the nicks").await?;
    page.choose("Treble side, Pattern", "straight slot").await?;
    page.figures_changed_from(&f_holes).await?;
    let folder = tempfile::tempdir()?;
    let slots = save(&page, folder.path()).await?;
    let hole = &slots["sound_holes"]["treble"];
    ensure!(hole["kind"] == "slot" && slots["sound_holes"]["bass"] == *hole, "both sides are to be slots: {slots}");
    let [length, width] = ["length_mm", "width_mm"].map(|key| hole[key].as_f64().unwrap_or_default());
    let diameter =
        2.0 * ((length * width - (1.0 - std::f64::consts::FRAC_PI_4) * width * width) / std::f64::consts::PI).sqrt();
    page.choose("Treble side, Pattern", "round").await?;
    page.settle().await?;
    let other = tempfile::tempdir()?;
    let rounds = save(&page, other.path()).await?;
    let round = rounds["sound_holes"]["treble"]["diameter_mm"].as_f64().unwrap_or_default();
    ensure!((round / diameter - 1.0).abs() < 1e-9, "the slot opens as a round hole of {diameter} mm, not {round} mm");
    let before = page.hertz().await?;
    page.choose("Treble side, Pattern", "f-hole").await?;
    page.figures_changed_from(&before).await?;
    ensure!(page.hertz().await? == f_holes, "the f-holes did not come back");
    page.without_errors().await
}

async fn outline_is_changed_by_numbers(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.open_section("Outline in numbers").await?;
    page.in_sight(Role::Number, LOWER_BOUT).await?;
    page.type_number(LOWER_BOUT, "208.4").await?;
    page.until("the drawing follows", &format!("{}?.ariaValueNow == 208.4", slider(LOWER_BOUT))).await?;
    page.settle().await?;
    // A number that no top has is refused by name and the field shows the design's again.
    page.type_number(LOWER_BOUT, "90").await?;
    let words = page.alert().await?;
    ensure!(words.contains("mm"), "the message gives no value: {words}");
    page.session.driver.active_element().await?.send_keys(Key::Tab).await?;
    page.until("the field is back", &format!("{} == 208.4", field(LOWER_BOUT))).await?;
    page.press("Close").await?;
    page.settle().await?;
    // The bass side's numbers come with its tick and go with undo.
    page.tick("The bass side differs").await?;
    page.in_sight(Role::Number, "Half width of the lower bout on the bass side").await?;
    page.type_number("Half width of the lower bout on the bass side", "103").await?;
    page.settle().await?;
    let folder = tempfile::tempdir()?;
    let design = save(&page, folder.path()).await?;
    ensure!(design["outline"]["bass"]["lower_half_width_mm"] == 103.0, "{}", design["outline"]["bass"]);
    for _ in 0..3 {
        page.press("Undo").await?;
    }
    page.until("undone", &format!("{} == 206", field(LOWER_BOUT))).await?;
    page.without_errors().await
}

async fn arch_is_changed_by_numbers(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.open_section("Arching in numbers").await?;
    page.in_sight(Role::Number, "Waist, Turns hollow").await?;
    let before = page.number("Waist, Fullness").await?;
    page.type_number("Waist, Turns hollow", "30").await?;
    page.until("the fullness follows the turn", &format!("{} !== '{before}'", field("Waist, Fullness"))).await?;
    page.until("it turns there", &format!("{} === '30'", field("Waist, Turns hollow"))).await?;
    page.settle().await?;
    page.choose("Waist, Drawn as", "spline through points").await?;
    page.in_sight(Role::Number, "Waist, point 3, above the channel").await?;
    let height: f64 = page.number("Waist, point 3, above the channel").await?.parse()?;
    page.type_number("Waist, point 3, above the channel", &format!("{:.2}", height + 0.3)).await?;
    page.settle().await?;
    page.choose("Long arch, Drawn as", "arc with reverse arc").await?;
    page.settle().await?;
    let folder = tempfile::tempdir()?;
    let design = save(&page, folder.path()).await?;
    let arching = &design["arching"];
    ensure!(arching["long_arch"]["family"] == "arc_with_reverse_arc", "{}", arching["long_arch"]);
    let waist = &arching["cross_arches"]["waist"];
    let points = waist["curve"]["points"].as_array().context("the waist's points")?;
    ensure!(points.len() == 8, "the waist has {} points", points.len());
    for _ in 0..4 {
        page.press("Undo").await?;
    }
    page.until("undone", &format!("{} === '{before}'", field("Waist, Fullness"))).await?;
    page.without_errors().await
}

/// An expression for what stands in the number field with this name.
pub(super) fn field(name: &str) -> String {
    format!(
        "[...document.querySelectorAll('input[type=number]')].find((one) => one.ariaLabel.startsWith({name:?}))?.value"
    )
}

impl Page<'_> {
    /// Opens the section with this heading, and waits until its part of the page is there.
    ///
    /// # Errors
    /// When there is none or it can't be loaded.
    pub async fn open_section(&self, heading: &str) -> Result<()> {
        let path = format!("//summary[contains(normalize-space(.), '{heading}')]");
        let summary = self.session.driver.find(By::XPath(path)).await?;
        let scroll = "arguments[0].scrollIntoView({ block: 'end' });";
        self.session.driver.execute(scroll, vec![summary.to_json()?]).await?;
        tokio::time::sleep(Duration::from_millis(100)).await;
        summary.click().await?;
        let there = "[...document.querySelectorAll('details[open].section')].every((one) => \
                     one.querySelector('fieldset, button, select, table') !== null)";
        self.until("the section is loaded", there).await
    }

    /// Chooses one of a list by its text.
    pub(super) async fn choose(&self, list: &str, text: &str) -> Result<()> {
        let lists = format!("//select[contains(@aria-label, '{list}')]");
        let select = self.session.driver.query(By::XPath(lists)).first().await?;
        Ok(select.send_keys(text).await?)
    }

    /// Gives the file chooser with this label a file, as picking it in the dialogue does.
    pub(super) async fn give(&self, chooser: &str, file: &Path) -> Result<()> {
        let labelled = format!("//label[contains(normalize-space(.), '{chooser}')]/input[@type='file']");
        let chooser = self.session.driver.find(By::XPath(labelled)).await?;
        Ok(chooser.send_keys(file.to_string_lossy()).await?)
    }

    /// Ticks or unticks the first shown box with this label.
    pub(super) async fn tick(&self, label: &str) -> Result<()> {
        let boxes = format!("//label[contains(normalize-space(.), '{label}')]/input[@type='checkbox']");
        for found in self.session.driver.find_all(By::XPath(boxes)).await? {
            if found.is_displayed().await? {
                let scroll = "arguments[0].scrollIntoView({ block: 'end' });";
                self.session.driver.execute(scroll, vec![found.to_json()?]).await?;
                return Ok(found.click().await?);
            }
        }
        anyhow::bail!("the page shows no box labelled “{label}”")
    }
}
