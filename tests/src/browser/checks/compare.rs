//! Two designs beside each other: in step on the stage, their modes paired by shape, and how they differ.

use std::time::Duration;

use anyhow::{Context, Result, ensure};
use serde_json::json;
use thirtyfour::prelude::*;

use super::access::{judge, load_axe};
use super::files::{save, with};
use super::{Place, Run};
use crate::browser::find::Role;
use crate::browser::page::{Page, SMALL, Screen};
use crate::browser::pixels::Picture;
use crate::browser::{Backend, breakage};

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("compare: modes that trade places are paired by shape, and told in figures", modes_are_paired(place))
        .await;
    run.check("compare: the other design is worked on in exchange", designs_are_exchanged(place)).await;
    run.check("compare: a divider between the two goes by keys", divider_goes_by_keys(place)).await;
    run.check("compare: differences have colours only while there are two", differences_are_coloured(place)).await;
    run.check("compare: a file that is no design leaves all as it was", wrong_file_is_told(place)).await;
}

/// What each backend has to draw by itself.
pub(super) async fn run_pictures(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("compare: two tops move in step", tops_move_in_step(place)).await;
    run.check("compare: a saved picture shows both", picture_shows_both(place)).await;
    let replaced = place.session.with_script(breakage::DEVICES, both_are_replaced(place, run.backend));
    run.check("compare: a lost graphics device is replaced for both", replaced).await;
}

const SECTION: &str = "Compare two designs";
const WITH: &str = "Compare with";
const PAIRS: &str = "[...document.querySelectorAll('.pair-table tbody tr')].map((row) => \
                     [...row.cells].map((cell) => cell.textContent.replace(/\\s/g, ' ')))";

/// Opens the section and compares with the design that the visit began with.
async fn compared_with_first<'a>(place: &'a Place<'a>) -> Result<Page<'a>> {
    let page = place.still_page().await?;
    // Beside its scrollbar the page is even in width, so that both canvases begin at a whole pixel.
    page.resize(Screen { width: SMALL.width + 1, ..SMALL }).await?;
    page.open_section(SECTION).await?;
    page.choose(WITH, "as it was").await?;
    page.until("the modes are paired", &format!("{PAIRS}.length > 10")).await?;
    page.until("both are drawn", "document.querySelectorAll('#stage-view canvas').length === 2").await?;
    Ok(page)
}

/// Both canvases without what is laid over them.
async fn both(page: &Page<'_>) -> Result<[Picture; 2]> {
    page.value(
        "if (!document.querySelector('#bare')) { const style = document.createElement('style'); style.id = 'bare'; \
         style.textContent = '.top-caption, .colour-key, .set-views, .divider { visibility: hidden } .second-top { box-shadow: none ! important }'; \
         document.head.append(style); } scrollTo(0, 0);",
    )
    .await?;
    page.draw_anew().await?;
    let mut canvases = page.session.driver.find_all(By::Css("#stage-view canvas")).await?.into_iter();
    let mut next = async || {
        let canvas = canvases.next().context("a canvas for each top")?;
        Picture::decode(&canvas.screenshot_as_png().await?)
    };
    Ok([next().await?, next().await?])
}

/// One design twice must look the same on both canvases, at any phase and from anywhere.
async fn tops_move_in_step(place: &Place<'_>) -> Result<()> {
    let page = compared_with_first(place).await?;
    let alike = async |what: &str| {
        let [own, other] = both(&page).await?;
        let share = own.share_changed(&other)?;
        // Two canvases of a fraction of a pixel may round an edge otherwise.
        ensure!(share < 0.002, "{what}: {:.2} % of one canvas is another than on the other", 100.0 * share);
        ensure!(own.share_drawn() > 0.05, "{what}: nothing is drawn");
        Ok(own)
    };
    // The shade in hollows comes a little later than the top.
    tokio::time::sleep(Duration::from_secs(2)).await;
    alike("at the start").await?;
    page.press("Play").await?;
    page.until("it has moved on", "Number(document.querySelector('#phase').value) > 20").await?;
    page.press("Pause").await?;
    page.until("it stands", "document.querySelector('#play').dataset.playing === 'false'").await?;
    let paused = alike("paused").await?;
    let stage = page.session.driver.find(By::Css("#stage-view")).await?;
    stage.send_keys("++").await?;
    stage.send_keys(Key::Left + Key::Left + Key::Up).await?;
    let turned = alike("turned").await?;
    ensure!(turned.share_changed(&paused)? > 0.05, "the keys turned nothing");
    page.type_number("Arch height", "19").await?;
    page.settle().await?;
    let [own, other] = both(&page).await?;
    ensure!(own.share_changed(&other)? > 0.01, "another arch looks the same");
    page.close_section(SECTION).await?;
    page.until("one canvas is left", "document.querySelectorAll('#stage-view canvas').length === 1").await?;
    page.without_errors().await
}

/// Saves a picture and gives it as it is above its caption.
async fn saved(page: &Page<'_>) -> Result<Picture> {
    const SIZE_PX: u32 = 1080;
    page.value("__saved.length = 0;").await?;
    page.in_sight(Role::Button, "Save picture").await?.click().await?;
    page.until("a picture is saved", "__saved.length === 1").await?;
    let bytes = page
        .run("const done = arguments[0]; __saved[0].arrayBuffer().then((all) => done([...new Uint8Array(all)]));")
        .await?;
    let bytes: Vec<u8> = serde_json::from_value(bytes)?;
    Picture::decode(&bytes)?.corner(SIZE_PX, SIZE_PX * 9 / 10)
}

async fn picture_shows_both(place: &Place<'_>) -> Result<()> {
    let page = compared_with_first(place).await?;
    page.open_section("Save a picture").await?;
    page.value(super::closer::CATCH).await?;
    page.choose("Size", "square").await?;
    // The shade in hollows comes a little later than the top.
    tokio::time::sleep(Duration::from_secs(2)).await;
    let [other, own] = saved(&page).await?.halves();
    ensure!(other.share_drawn() > 0.05, "nothing is drawn");
    // The line between them is 0.4 % of either.
    ensure!(own.share_changed(&other)? < 0.006, "one design twice doesn't look the same");
    page.type_number("Arch height", "19").await?;
    page.settle().await?;
    let [other, own] = saved(&page).await?.halves();
    ensure!(own.share_changed(&other)? > 0.01, "the other's arch looks the same");
    page.choose("Two tops", "one over").await?;
    let divided = async |key: Key| {
        page.find(Role::Slider, "Divider").await?.send_keys(key).await?;
        saved(&page).await
    };
    let (own, other) = (divided(Key::Home).await?, divided(Key::End).await?);
    ensure!(own.share_changed(&other)? > 0.01, "the divider uncovers nothing");
    page.without_errors().await
}

async fn both_are_replaced(place: &Place<'_>, backend: Backend) -> Result<()> {
    let page = compared_with_first(place).await?;
    page.draw_anew().await?;
    page.value("globalThis.__canvases = [...document.querySelectorAll('#stage-view canvas')];").await?;
    page.value(if backend == Backend::WebGpu { breakage::LOSE_WEBGPU } else { breakage::LOSE_WEBGL2 }).await?;
    let replaced =
        "[...document.querySelectorAll('#stage-view canvas')].filter((one) => !__canvases.includes(one)).length === 2";
    page.until("two new canvases take the lost ones' places", replaced).await?;
    tokio::time::sleep(Duration::from_secs(2)).await;
    let [own, other] = both(&page).await?;
    ensure!(own.share_changed(&other)? < 0.002 && own.share_drawn() > 0.05, "the tops aren't both there again");
    page.errors_are_only(&["lost", "CONTEXT_LOST"]).await
}

/// Pairs that the table shows with another number in b than in a.
const MOVED: &str = "[...document.querySelectorAll('.pair-table th button')].map((one) => one.textContent.replace(/\\s/g, '')) \
                     .filter((name) => name.includes('→')).join()";

/// A flatter arch lets the twelfth mode fall below the eleventh: one is even across the centreline, the other odd, so that they pass
/// each other unmixed. The names of three are told from their shapes by other means (`core`, `modes::names`).
async fn modes_are_paired(place: &Place<'_>) -> Result<()> {
    let page = compared_with_first(place).await?;
    let same: Vec<Vec<String>> = serde_json::from_value(page.value(&format!("return {PAIRS};")).await?)?;
    ensure!(same.iter().all(|row| row[5] == "1.00" && row[4] == "0"), "a design differs from itself: {same:?}");
    page.type_number("Arch height", "12").await?;
    page.until("two modes have traded places", &format!("{MOVED}.startsWith('Mode11(12→11),Mode12(11→12)')")).await?;
    page.settle().await?;
    let pairs: Vec<Vec<String>> = serde_json::from_value(page.value(&format!("return {PAIRS};")).await?)?;
    for name in ["Twist", "X", "Ring"] {
        let row = pairs.iter().find(|row| row[0].starts_with(name)).with_context(|| format!("no {name}: {pairs:?}"))?;
        let number = |at: usize| row[at].replace('−', "-").replace([' ', '+'], "").parse::<f64>();
        // Hertz are shown in three figures, so that either may be half a unit of its last one off.
        let half = |at: usize| 0.5 * 0.1_f64.powi(row[at].split_once('.').map_or(0, |(_, after)| after.len() as i32));
        let (a, b, cents) = (number(1)?, number(2)?, number(4)?);
        // 1200 cents to the octave: Ellis 1885, "On the musical scales of various nations"; from memory.
        let least = 1200.0 * ((b - half(2)) / (a + half(1))).log2();
        let most = 1200.0 * ((b + half(2)) / (a - half(1))).log2();
        ensure!((least - 0.5..=most + 0.5).contains(&cents), "{row:?} isn't {least}..{most} cents");
        ensure!(number(5)? > 0.5, "{row:?}");
    }
    let words = page.text("return document.querySelector('.top-caption.other').textContent;").await?;
    ensure!(words.starts_with("a:") && words.contains("Ring"), "the other top's caption is “{words}”");
    // Another pair by the matrix: its own shape's row is not asked for.
    let cell = page.session.driver.find(By::Css(".assurance tbody tr:first-child td button")).await?;
    cell.click().await?;
    page.until("the pair is shown", "document.querySelector('.top-caption.own').textContent.includes('Twist')").await?;
    ensure!(cell.attr("aria-pressed").await?.as_deref() == Some("true"), "the cell doesn't say that it is pressed");
    cell.send_keys(Key::Right + Key::Enter).await?;
    page.until(
        "a pair of two shapes is shown",
        "document.querySelector('.top-caption.own').textContent.includes('X') && \
         document.querySelector('.top-caption.other').textContent.includes('Twist')",
    )
    .await?;
    page.until("the figures are there", "document.querySelectorAll('.figure-table tbody tr').length >= 5").await?;
    page.value(super::closer::CATCH).await?;
    page.in_sight(Role::Button, "Save as CSV").await?.click().await?;
    page.until("a file is saved", "__saved.length === 1").await?;
    let file = page.run("const done = arguments[0]; __saved[0].text().then(done);").await?;
    let file = file.as_str().context("text")?;
    ensure!(file.lines().any(|line| line.starts_with("\"\",12,11,")), "{file}");
    ensure!(file.contains("\"Mass of the wood\",\"g\","), "{file}");
    page.judged().await?;
    page.until("it is told how sure the shifts are", &format!("{PAIRS}.some((row) => row[3].includes('±'))")).await?;
    let figure = page.text("return document.querySelector('.chosen .hertz').textContent;").await?;
    let words = page.text("return document.querySelector('.top-caption.own').textContent;").await?;
    ensure!(words.contains(&format!(", {figure}\u{202f}Hz")), "the table has {figure} Hz, the stage {words}");
    page.without_errors().await
}

/// Holds when the ring mode's shift in cents is as asked for.
fn ring(cents: &str) -> String {
    format!("{PAIRS}.some(([name, , , , cents]) => name.startsWith('Ring') && Number(cents.replace('−', '-')) {cents})")
}

async fn designs_are_exchanged(place: &Place<'_>) -> Result<()> {
    let page = compared_with_first(place).await?;
    let first = page.number("Arch height").await?;
    page.type_number("Arch height", "12").await?;
    page.until("a flatter arch lowers the ring", &ring("< -100")).await?;
    page.settle().await?;
    page.in_sight(Role::Button, "Work on the other").await?.click().await?;
    page.settle().await?;
    ensure!(page.number("Arch height").await? == first, "the other design isn't worked on");
    page.until("the ring goes up again", &ring("> 100")).await?;
    page.press("Undo").await?;
    page.settle().await?;
    ensure!(page.number("Arch height").await? == "12", "undo doesn't bring the design back");
    page.without_errors().await
}

async fn divider_goes_by_keys(place: &Place<'_>) -> Result<()> {
    let page = compared_with_first(place).await?;
    page.type_number("Arch height", "19").await?;
    page.settle().await?;
    page.choose("Two tops", "one over").await?;
    let divider = page.find(Role::Slider, "Divider").await?;
    let stage = page.session.driver.find(By::Css("#stage-view")).await?;
    let seen = async || {
        page.draw_anew().await?;
        Picture::decode(&stage.screenshot_as_png().await?)
    };
    divider.send_keys(Key::Home).await?;
    let own = seen().await?;
    divider.send_keys(Key::End).await?;
    ensure!(divider.attr("aria-valuenow").await?.as_deref() == Some("100"), "End doesn't show all of the other");
    let other = seen().await?;
    ensure!(own.share_changed(&other)? > 0.01, "the other top isn't uncovered");
    divider.send_keys(Key::Left).await?;
    ensure!(divider.attr("aria-valuenow").await?.as_deref() == Some("98"), "an arrow key doesn't move the divider");
    page.until("the figures are there", "document.querySelectorAll('.figure-table tbody tr').length >= 5").await?;
    load_axe(&page).await?;
    judge(&page, "two tops with all that is told of them").await?;
    page.without_errors().await
}

async fn differences_are_coloured(place: &Place<'_>) -> Result<()> {
    const SCALE: &str = "document.querySelector('#colour-scale').textContent.replace(/\\s/g, ' ')";
    const OFFERED: &str = "[...document.querySelector('#colour-by').options].filter(({ value }) => value.startsWith('difference')).length";
    let page = compared_with_first(place).await?;
    page.until("differences are offered", &format!("{OFFERED} === 3")).await?;
    page.type_number("Arch height", "17.5").await?;
    page.settle().await?;
    // The apex is two millimetres higher, and nowhere is the change larger.
    page.colour_by("height: b").await?;
    page.until(
        "heights differ by what was changed",
        &format!("{SCALE}.includes('+') || {SCALE}.includes('2.00 mm b higher')"),
    )
    .await?;
    page.colour_by("motion: b").await?;
    page.until("motions differ", &format!("{SCALE}.includes('% b outward')")).await?;
    page.colour_by("thickness: b").await?;
    page.until("thickness is the same: the scale is a least one", &format!("{SCALE}.includes('0.05 mm b thicker')"))
        .await?;
    page.close_section(SECTION).await?;
    page.until(
        "nothing is left to differ",
        &format!("{OFFERED} === 0 && document.querySelector('#colour-by').value === 'motion'"),
    )
    .await?;
    page.without_errors().await
}

async fn wrong_file_is_told(place: &Place<'_>) -> Result<()> {
    let page = compared_with_first(place).await?;
    let hertz = page.hertz().await?;
    let folder = tempfile::tempdir()?;
    let design = save(&page, folder.path()).await?;
    let wrong = folder.path().join("wrong.json");
    std::fs::write(&wrong, with(&design, "/graduation/centre_mm", json!(-3)))?;
    page.give("design’s file", &wrong).await?;
    let said =
        "[...document.querySelectorAll('[data-section=compare] [role=status]')].map((one) => one.textContent).join('')";
    page.until("what is wrong is told", &format!("{said}.includes('-3')")).await?;
    let chosen = page.text("return document.querySelector('[data-section=compare] select').value;").await?;
    ensure!(chosen == "first", "what was compared with before isn't any more: {chosen}");
    ensure!(page.hertz().await? == hertz, "the design worked on was touched");
    page.type_number("Arch height", "16").await?;
    page.settle().await?;
    ensure!(page.text(&format!("return {said};")).await?.contains("-3"), "new figures took the refusal's place");
    let right = folder.path().join("right.json");
    std::fs::write(&right, with(&design, "/arching/apex_height_mm", json!(12.0)))?;
    page.give("design’s file", &right).await?;
    page.until("a right one is compared with", &ring("> 100")).await?;
    page.without_errors().await
}
