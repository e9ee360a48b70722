//! A design handed on: by a link, by a code, on paper.

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};
use thirtyfour::prelude::*;

use super::controls::move_slider;
use super::{Place, Run};
use crate::browser::find::Role;
use crate::browser::page::{DESKTOP, PHONE, Page, SMALL};
use crate::browser::pixels::Picture;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("shared: a link opens to the same design and view, and can be undone", link_opens_alike(place)).await;
    run.check("shared: a link pasted into an open page keeps what was worked on", link_is_pasted(place)).await;
    run.check("shared: wrong links are told by what is wrong and change nothing", wrong_links_are_told(place)).await;
    run.check("shared: the code is read by another program", code_is_read(place)).await;
    run.check("shared: the page for a client is one sheet of A4 and of Letter", sheet_is_one_page(place)).await;
    run.check("shared: the German page for a client is one sheet", german_sheet_is_one_page(place)).await;
}

const SHARE: &str = "Share:";
const LINK: &str = "document.querySelector('.section input.link')?.value ?? ''";
const SUMMARY: &str = "document.querySelector('.client-sheet')";

/// Its letters are drawn anew by fractions of a pixel and lie over the canvas.
const NO_CAPTION: &str = "document.querySelector('.stage-heading').style.visibility = 'hidden';";

/// The link in the section, once it is that of the design and view as they are.
async fn link(page: &Page<'_>) -> Result<String> {
    page.until("the link is there", &format!("({LINK}).includes('#design=1.')")).await?;
    // Longer than the section waits after a change.
    tokio::time::sleep(std::time::Duration::from_millis(800)).await;
    page.text(&format!("return {LINK};")).await
}

/// What is worked on, how it is looked at: the figures, the mode, the colour and the viewpoint.
async fn seen(page: &Page<'_>) -> Result<Value> {
    page.value(
        "return { arch: document.querySelector('#measures input[type=number]').value, \
         mode: document.querySelector('#modes .chosen .number').textContent, \
         colour: document.querySelector('#colour-by').value };",
    )
    .await
}

async fn link_opens_alike(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let demonstration = page.number("Arch height").await?;
    move_slider(&page, "Arch height").await?;
    page.choose_lowest().await?;
    let stage = page.session.driver.find(By::Css("#stage-view")).await?;
    stage.send_keys(Key::Right + Key::Right + Key::Right + Key::Down + "+" + "+").await?;
    let by = page.session.driver.find(By::Css("#colour-by")).await?;
    by.send_keys("thickness").await?;
    page.open_section(SHARE).await?;
    let address = link(&page).await?;
    page.judged().await?;
    // A viewer who is there already stands still while the arch grows; the linked top is framed as it is, as after any change of size.
    page.resize(PHONE).await?;
    page.draw_anew().await?;
    page.resize(SMALL).await?;
    page.draw_anew().await?;
    let (before, hertz) = (seen(&page).await?, page.hertz().await?);
    page.value(NO_CAPTION).await?;
    let picture = page.picture().await?;

    let other = Page::open(place.session, &address, SMALL).await?;
    other.modes_shown().await?;
    other.judged().await?;
    other.drawn().await?;
    ensure!(seen(&other).await? == before, "{} opens from a link of {before}", seen(&other).await?);
    ensure!(other.hertz().await? == hertz, "the linked design has other figures");
    other.until("it is coloured", "!document.querySelector('#colour-scale').hidden").await?;
    other.value(NO_CAPTION).await?;
    other.draw_anew().await?;
    let share = picture.share_changed(&other.picture().await?)?;
    ensure!(share < 0.002, "{share} of the pixels differ from what was shared");
    let hash = other.text("return location.hash;").await?;
    ensure!(hash.is_empty(), "the link stays in the address: {hash}");
    other.press("Undo").await?;
    other.settle().await?;
    ensure!(other.number("Arch height").await? == demonstration, "undone, it is not the demonstration");
    other.without_errors().await
}

async fn link_is_pasted(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.open_section(SHARE).await?;
    let address = link(&page).await?;
    let demonstration = page.number("Arch height").await?;
    move_slider(&page, "Arch height").await?;
    let mine = page.number("Arch height").await?;
    let (_, fragment) = address.split_once('#').context("a fragment")?;
    // As pasting an address of the same page into the address bar does.
    page.value(&format!("location.hash = {};", json!(fragment))).await?;
    let height = format!("document.querySelector('#measures input[type=number]').value === {}", json!(demonstration));
    page.until("the linked design is there", &height).await?;
    page.settle().await?;
    page.until("the page says so", "document.body.innerText.includes('open from the link')").await?;
    page.press("Undo").await?;
    page.settle().await?;
    ensure!(page.number("Arch height").await? == mine, "undone, what was worked on is not back");
    page.press("Redo").await?;
    page.settle().await?;
    // And after a reload, which forgets the steps.
    tokio::time::sleep(std::time::Duration::from_millis(600)).await;
    page.session.driver.refresh().await?;
    page.modes_shown().await?;
    page.settle().await?;
    ensure!(page.number("Arch height").await? == demonstration, "a reload undoes the link");
    page.press("Designs").await?;
    page.find(Role::Button, "before a link was opened” of").await?;
    page.without_errors().await
}

async fn wrong_links_are_told(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.open_section(SHARE).await?;
    let address = link(&page).await?;
    move_slider(&page, "Arch height").await?;
    let (mine, hertz) = (page.number("Arch height").await?, page.hertz().await?);
    let (_, fragment) = address.split_once('#').context("a fragment")?;
    let (head, payload) = fragment.rsplit_once('.').context("a payload")?;
    let changed = payload.replacen(&payload[60..61], if &payload[60..61] == "A" { "B" } else { "A" }, 1);
    let impossible = page.text(&impossible_link()).await?;
    for (what, wrong, told) in [
        ("newer", "design=2.9.abc".to_owned(), "version 2"),
        ("cut", fragment[..fragment.len() - 9].to_owned(), "cut short"),
        ("changed", format!("{head}.{changed}"), "check sum"),
        ("foreign", "design=nonsense".to_owned(), "no design of this page"),
        ("impossible", impossible, "apex_height_mm"),
    ] {
        page.value(&format!("location.hash = {};", json!(wrong))).await?;
        let words = page.alert().await.with_context(|| format!("after a {what} link"))?;
        ensure!(words.contains(told), "a {what} link is told so: {words}");
        ensure!(page.number("Arch height").await? == mine, "a {what} link changed the design");
        ensure!(page.hertz().await? == hertz, "a {what} link changed the figures");
        page.press("Close").await?;
    }
    // A fresh visit by a wrong link begins as any other.
    let fresh = Page::open(place.session, &format!("{}#design=1.900.abc", place.url), SMALL).await?;
    ensure!(fresh.alert().await?.contains("cut short"), "{}", fresh.alert().await?);
    fresh.modes_shown().await?;
    fresh.settle().await?;
    fresh.without_errors().await
}

/// A script that gives a link, whole and of this version, to a design that can't be.
fn impossible_link() -> String {
    "const pack = async () => {
        const design = JSON.parse(await new Promise((resolve) => {
            indexedDB.open('bombatura').onsuccess = ({ target: { result } }) => {
                result.transaction('now').objectStore('now').get('now').onsuccess = (event) => {
                    result.close();
                    resolve(event.target.result);
                };
            };
        }));
        design.arching.apex_height_mm = 999;
        const stream = new Blob([JSON.stringify({ design, look: {} })]).stream().pipeThrough(new CompressionStream('deflate'));
        const bytes = new Uint8Array(await new Response(stream).arrayBuffer());
        const text = btoa(String.fromCharCode(...bytes)).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
        return `design=1.${text.length}.${text}`;
    };
    return pack();"
        .to_owned()
}

/// From the pixels of the screen, as a phone's camera has it, by rqrr; ISO/IEC 18004.
async fn code_is_read(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.open_section(SHARE).await?;
    let address = link(&page).await?;
    page.in_sight(Role::Button, "Show it large").await?.click().await?;
    page.resize(PHONE).await?;
    let code = page.session.driver.find(By::Css("dialog[open] svg")).await?;
    let (width, height, grey) = Picture::decode(&code.screenshot_as_png().await?)?.grey();
    let mut image = rqrr::PreparedImage::prepare_from_greyscale(width, height, |x, y| grey[y * width + x]);
    let grids = image.detect_grids();
    ensure!(grids.len() == 1, "{} codes are found", grids.len());
    let (_, read) = grids[0].decode().context("the code can't be read")?;
    ensure!(read == address, "the code leads to {read}, not to {address}");
    page.press("Close").await?;
    page.until("the dialogue is gone", "document.querySelector('dialog[open]') === null").await?;
    page.without_errors().await
}

async fn sheet_is_one_page(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.resize(DESKTOP).await?;
    page.open_section(SHARE).await?;
    printed(&page, "Print or save").await?;
    let words = page.text(&format!("return {SUMMARY}.textContent;")).await?;
    for part in ["Island", "Wings", "Narrows", "A model is not a top", "restorer", "Mass of the wood", "±", "Twist"] {
        ensure!(words.contains(part), "the sheet says nothing of “{part}”: {words}");
    }
    one_page(&page, "A4", 21.0, 29.7).await?;
    printed(&page, "Print or save").await?;
    one_page(&page, "Letter", 21.59, 27.94).await?;
    page.without_errors().await
}

async fn german_sheet_is_one_page(place: &Place<'_>) -> Result<()> {
    place.session.prefer_less_motion(true).await?;
    let page = Page::open(place.session, &format!("{}de.html", place.url), DESKTOP).await?;
    page.judged().await?;
    page.drawn().await?;
    page.open_section("Teilen:").await?;
    printed(&page, "Drucken oder").await?;
    let words = page.text(&format!("return {SUMMARY}.textContent;")).await?;
    ensure!(words.contains("Insel") && words.contains("Restaurator"), "{words}");
    one_page(&page, "A4", 21.0, 29.7).await?;
    page.without_errors().await
}

/// Presses the button; the browser's dialogue, which a headless one has not, is left out.
async fn printed(page: &Page<'_>, button: &str) -> Result<()> {
    page.value("globalThis.__printed = false; globalThis.print = () => { globalThis.__printed = true; };").await?;
    page.in_sight(Role::Button, button).await?.click().await?;
    page.until("the sheet is to be printed", "globalThis.__printed").await
}

/// One sheet, nothing on it cut off (it hides what doesn't fit), and gone once it is printed.
async fn one_page(page: &Page<'_>, paper: &str, width_cm: f64, height_cm: f64) -> Result<()> {
    page.session.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" })).await?;
    let cut = page
        .value(&format!(
            "const sheet = {SUMMARY}; const end = sheet.getBoundingClientRect().bottom;
            return [...sheet.querySelectorAll('*')].filter((one) => one.getBoundingClientRect().bottom > end + 1)
                .map((one) => one.className || one.tagName);"
        ))
        .await?;
    page.session.devtools("Emulation.setEmulatedMedia", json!({ "media": "" })).await?;
    ensure!(cut == json!([]), "{paper}: beyond the sheet's end: {cut}");
    let inches = |cm: f64| cm / 2.54;
    let settings = json!({ "paperWidth": inches(width_cm), "paperHeight": inches(height_cm), "printBackground": true });
    let pdf = page.session.devtools("Page.printToPDF", settings).await?;
    let pages = page
        .value(&format!(
            "return (atob({}).match(/\\/Type\\s*\\/Page\\b(?!s)/g) ?? []).length;",
            json!(pdf["data"].as_str().context("a PDF")?)
        ))
        .await?;
    ensure!(pages == 1, "{paper}: {pages} pages");
    page.until("the sheet is put away", &format!("{SUMMARY} === null")).await
}
