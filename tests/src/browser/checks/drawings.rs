//! The drawings: handles move the design and the top on the stage, every change can be undone, files are true to scale.

use std::time::Duration;

use anyhow::{Context, Result, ensure};
use serde_json::Value;
use thirtyfour::prelude::*;

use super::files::{download, save};
use super::{Place, Run};
use crate::browser::find::Role;
use crate::browser::page::Page;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("a handle dragged moves its number, the design and the top", handle_is_dragged(place)).await;
    run.check("a handle is moved by keys", handle_is_moved_by_keys(place)).await;
    run.check("a handle stops where no top can be made", handle_stops_at_the_possible(place)).await;
    run.check("changes are undone and done again", changes_are_undone(place)).await;
    run.check("drawings are saved true to scale", drawings_are_true_to_scale(place)).await;
}

const APEX: &str = "Height of the arch's apex";
pub(super) const LOWER_BOUT: &str = "Width of the lower bout";

async fn handle_is_dragged(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let (hertz, top, before) = (page.hertz().await?, page.picture().await?, page.now(APEX).await?);
    let handle = page.in_sight(Role::Slider, APEX).await?;
    let hands = || page.session.driver.action_chain();
    hands()
        .move_to_element_center(&handle)
        .click_and_hold()
        .move_by_offset(5, 0)
        .move_by_offset(4, 3)
        .perform()
        .await?;
    // Before it is let go: the number beside the handle, the number among the controls, the top.
    page.until("the control follows", &format!("Number({ARCH_NUMBER}) > {before}")).await?;
    page.changed_from(&top, "the top follows the handle").await?;
    let moved = page.now(APEX).await?;
    ensure!(moved > before + 1.0, "dragged 9 pixels outwards, the apex went from {before} to {moved}");
    ensure!((moved * 10.0 - (moved * 10.0).round()).abs() < 1e-9, "{moved} is no whole tenth");
    let shown = handle.text().await?;
    ensure!(shown.contains(&format!("{moved:.1} mm")), "the handle at {moved} says “{shown}”");
    hands().release().perform().await?;
    page.figures_changed_from(&hertz).await?;
    let folder = tempfile::tempdir()?;
    let design = save(&page, folder.path()).await?;
    ensure!(design["arching"]["apex_height_mm"] == moved, "the design says {}", design["arching"]["apex_height_mm"]);
    page.press("Undo").await?;
    page.until("one step takes the drag back", &format!("Number({ARCH_NUMBER}) === {before}")).await?;
    page.without_errors().await
}

async fn handle_is_moved_by_keys(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let handle = page.in_sight(Role::Slider, LOWER_BOUT).await?;
    let before = page.now(LOWER_BOUT).await?;
    let unit = handle.attr("aria-valuetext").await?.context("a value in words")?;
    ensure!(unit == format!("{before:.1} mm"), "it is read out as “{unit}”");
    for (keys, by) in
        [(Key::Right + "", 0.1), (Key::Up + "", 0.2), (Key::Shift + "" + Key::Up, 1.2), (Key::Left + "", 1.1)]
    {
        handle.send_keys(keys).await?;
        let wanted = format!("{:.1}", before + by);
        page.until(&format!("the width is {wanted}"), &format!("{}?.ariaValueNow == {wanted}", slider(LOWER_BOUT)))
            .await?;
    }
    page.settle().await?;
    // Tab goes on to the next handle, and what has the focus is to be seen.
    handle.send_keys(Key::Tab + "").await?;
    let next = page.session.driver.active_element().await?;
    ensure!(next.attr("role").await?.as_deref() == Some("slider"), "Tab leaves the handles");
    page.without_errors().await
}

async fn handle_stops_at_the_possible(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let before = page.now(APEX).await?;
    let handle = page.in_sight(Role::Slider, APEX).await?;
    // The least that a measure may be is 4 mm, which is no higher than the edge of this design.
    handle.send_keys(Key::Home + "").await?;
    let words = page.alert().await?;
    ensure!(words.contains("4 mm") && words.contains("edge"), "the message gives no limit: {words}");
    page.until("the handle is back", &format!("{}?.ariaValueNow == {before}", slider(APEX))).await?;
    page.without_errors().await
}

async fn changes_are_undone(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let (first, hertz) = (page.number("Arch height").await?, page.hertz().await?);
    page.type_number("Arch height", "17").await?;
    page.figures_changed_from(&hertz).await?;
    let (higher, width) = (page.hertz().await?, page.now(LOWER_BOUT).await?);
    page.in_sight(Role::Slider, LOWER_BOUT).await?.send_keys(Key::Shift + "" + Key::Up).await?;
    page.figures_changed_from(&higher).await?;
    page.in_sight(Role::Button, "Reset").await?.click().await?;
    page.until("the demonstration is back", &format!("{ARCH_NUMBER} === '{first}'")).await?;
    page.settle().await?;
    let keys = |keys: TypingData| async { page.session.driver.active_element().await?.send_keys(keys).await };
    for (what, arch, lower_bout) in
        [("the reset", "17", width + 1.0), ("the handle", "17", width), ("all", &first, width)]
    {
        keys(Key::Control + "z").await?;
        let there = format!("{ARCH_NUMBER} === '{arch}' && {}?.ariaValueNow == {lower_bout}", slider(LOWER_BOUT));
        page.until(&format!("undo takes back {what}"), &there).await?;
    }
    page.until("undo is announced", "document.querySelector('[role=status]').textContent !== ''").await?;
    page.settle().await?;
    ensure!(page.hertz().await? == hertz, "undone to the first design, the figures are others");
    let undo = page.find(Role::Button, "Undo").await?;
    ensure!(undo.attr("aria-disabled").await?.as_deref() == Some("true"), "there is nothing left to undo");
    page.session.driver.action_chain().key_down(Key::Control).key_down(Key::Shift).send_keys("z").perform().await?;
    page.session.driver.action_chain().key_up(Key::Shift).key_up(Key::Control).perform().await?;
    page.until("redo brings the first step again", &format!("{ARCH_NUMBER} === '17'")).await?;
    page.figures_changed_from(&hertz).await?;
    ensure!(page.hertz().await? == higher, "done again, the figures are others");
    page.without_errors().await
}

async fn drawings_are_true_to_scale(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let design = {
        let folder = tempfile::tempdir()?;
        save(&page, folder.path()).await?
    };
    let outline = &design["outline"];
    let mm = |value: &Value| value.as_f64().context("a length");
    let (length, width) = (mm(&outline["length_mm"])?, mm(&outline["lower_width_mm"])?);
    let apex = mm(&design["arching"]["apex_height_mm"])?;
    // The largest line of a kind, by the browser's own measuring, in mm of the paper.
    for (button, kind, size) in [
        ("Save the plan", "outline", [width, length]),
        ("Save the long arch", "wood", [length, apex]),
        ("Save the cross arches", "wood", [width, 0.0]),
    ] {
        let folder = tempfile::tempdir()?;
        let file = download(&page, button, "svg", folder.path()).await?;
        let measured = page.session.driver.execute(MEASURE, vec![file.into(), kind.into()]).await?;
        let measured = measured.json().as_array().cloned().with_context(|| format!("{button}: no SVG"))?;
        for (found, wanted) in measured.iter().zip(size) {
            let found = mm(found)?;
            // Rounded to hundredths at both ends; a height of no matter is given as 0.
            ensure!(wanted == 0.0 || (found - wanted).abs() < 0.03, "{button}: {found} mm for {wanted} mm");
        }
    }
    page.without_errors().await
}

/// Width and height of the largest line of a kind on the paper, mm; null where the file is not well-formed.
const MEASURE: &str = r"
const [text, kind] = arguments;
const parsed = new DOMParser().parseFromString(text, 'image/svg+xml');
if (parsed.querySelector('parsererror')) return null;
const svg = document.body.appendChild(document.importNode(parsed.documentElement, true));
const [, , width, height] = svg.getAttribute('viewBox').split(' ').map(Number);
const scale = [parseFloat(svg.getAttribute('width')) / width, parseFloat(svg.getAttribute('height')) / height];
const in_mm = /mm$/.test(svg.getAttribute('width')) && /mm$/.test(svg.getAttribute('height'));
const boxes = [...svg.querySelectorAll(`.${kind}`)].map((line) => line.getBBox());
const box = boxes.sort((a, b) => b.width - a.width)[0];
svg.remove();
return in_mm && box ? [box.width * scale[0], box.height * scale[1]] : null;";

/// What stands in the number field of the arch's height.
const ARCH_NUMBER: &str = "document.querySelector('input[aria-label^=\"Arch height\"]')?.value";

/// An expression for the handle with this name.
pub(super) fn slider(name: &str) -> String {
    format!("[...document.querySelectorAll('svg [role=slider]')].find((one) => one.ariaLabel.startsWith({name:?}))")
}

impl Page<'_> {
    /// The number of a handle, as a screen reader gets it.
    pub(super) async fn now(&self, handle: &str) -> Result<f64> {
        let now = self.find(Role::Slider, handle).await?.attr("aria-valuenow").await?.context("a value")?;
        now.parse().with_context(|| format!("the handle's number is {now}"))
    }

    /// Something with the page scrolled so that it stands at the window's lower end, clear of the stage.
    pub(super) async fn in_sight(&self, role: Role, name: &str) -> Result<WebElement> {
        let found = self.find(role, name).await?;
        let scroll = "arguments[0].scrollIntoView({ block: 'end' });";
        self.session.driver.execute(scroll, vec![found.to_json()?]).await?;
        tokio::time::sleep(Duration::from_millis(100)).await;
        Ok(found)
    }
}
