//! The sections that look closer at a motion: a cut through it, what its regions do, its picture in sand.

use anyhow::{Context, Result, ensure};
use thirtyfour::prelude::*;

use super::{Place, Run};
use crate::browser::find::Role;
use crate::browser::page::Page;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("look closer: a cut moves in step and names what it cuts", cut_is_shown(place)).await;
    run.check("look closer: a mode's energy is shared out among the regions", movement_is_told(place)).await;
    run.check("look closer: a place is read by numbers and by pointing", place_is_read(place)).await;
    run.check("look closer: the wood is grey and lines go", looks_are_changed(place)).await;
    run.check("look closer: sand lies along the nodal lines", sand_is_strewn(place)).await;
}

/// Read from the canvas, which each backend keeps in its own way.
pub(super) async fn run_pictures(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("look closer: pictures and films are saved", pictures_are_saved(place)).await;
}

const CUT: &str = "Cut through";
const MOVING: &str = "document.querySelector('.cut .moving').getAttribute('d')";
const STRETCHES: &str = "[...document.querySelectorAll('.stretches li')].map((item) => item.textContent)";

async fn cut_is_shown(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.open_section(CUT).await?;
    // Across the middle of the demonstration top lie, from bass to treble: flank, hole, island, hole, flank.
    page.until("the stretches are named", &format!("{STRETCHES}.length > 3")).await?;
    let names: Vec<String> = serde_json::from_value(page.value(&format!("return {STRETCHES};")).await?)?;
    for word in ["Flank, bass", "Sound hole", "Island", "Flank, treble"] {
        ensure!(names.iter().any(|name| name.starts_with(word)), "no {word} among {names:?}");
    }
    // It moves with the phase: at a quarter of the period a mode is at rest, and then both lines are one.
    let phase = page.find(Role::Slider, "Phase").await?;
    phase.send_keys(Key::Home).await?;
    page.until("the cut is out", &format!("{MOVING} !== document.querySelector('.cut .rest').getAttribute('d')"))
        .await?;
    let out = page.text(&format!("return {MOVING};")).await?;
    for _ in 0..18 {
        phase.send_keys(Key::Right).await?;
    }
    page.until("the cut is at rest", &format!("{MOVING} === document.querySelector('.cut .rest').getAttribute('d')"))
        .await?;
    let slider = page.in_sight(Role::Slider, "From the bottom edge").await?;
    phase.send_keys(Key::Home).await?;
    slider.send_keys(Key::PageUp).await?;
    page.until("it is cut elsewhere", &format!("{MOVING} !== {}", serde_json::to_string(&out)?)).await?;
    page.choose("Cut", "along").await?;
    page.in_sight(Role::Slider, "From the centreline").await?;
    let named = format!("{STRETCHES}.some((name) => name.startsWith('Upper bout')) && {STRETCHES}[0].includes('y ')");
    page.until("the long arch is named", &named).await?;
    let seen = page.picture().await?;
    page.close_section(CUT).await?;
    page.see_other_than(&seen).await?;
    page.without_errors().await
}

async fn movement_is_told(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.open_section("Island, wings").await?;
    let table = page.in_sight(Role::Table, "Kinetic energy").await?;
    page.until("the shares are there", "document.querySelectorAll('.bars tbody tr').length > 12").await?;
    let shares = |table: WebElement| async move {
        let cells = "return [...arguments[0].tBodies[0].rows].map((row) => parseFloat(row.cells[1].textContent));";
        let shares = page_value(&table, cells).await?;
        Ok::<Vec<f64>, anyhow::Error>(serde_json::from_value(shares)?)
    };
    let ring = shares(table.clone()).await?;
    ensure!(ring.len() == 12, "{} regions", ring.len());
    // Rounded to a tenth of a percent below ten percent and to one above.
    ensure!((ring.iter().sum::<f64>() - 100.0).abs() < 3.0, "the shares are {ring:?}");
    ensure!(ring.is_sorted_by(|more, less| more >= less), "not in falling order: {ring:?}");
    page.choose_lowest().await?;
    page.until(
        "the section goes to the other mode",
        "document.querySelector('.bars').parentElement.innerText.includes('Twist')",
    )
    .await?;
    ensure!(shares(table).await? != ring, "another mode has the same shares");
    page.find(Role::Table, "wings flap").await?;
    page.without_errors().await
}

async fn page_value(element: &WebElement, script: &str) -> Result<serde_json::Value> {
    let answer = element.handle().execute(script, vec![element.to_json()?]).await?;
    Ok(answer.json().clone())
}

/// Grains on the canvas, by their colour.
const GRAINS: &str = "(() => {
    const canvas = document.querySelector('canvas.sand');
    const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
    let light = 0;
    for (let at = 0; at < data.length; at += 4) light += data[at + 3] > 0 && data[at] > 200 ? 1 : 0;
    return light;
})()";

async fn sand_is_strewn(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.open_section("Sand picture").await?;
    page.until("grains lie on the plate", &format!("{GRAINS} > 500")).await?;
    let ring = page.value(&format!("return {GRAINS};")).await?.as_u64().context("a count")?;
    page.choose_lowest().await?;
    page.until("another mode has other grains", &format!("{GRAINS} !== {ring}")).await?;
    let name = page.text("return document.querySelector('canvas.sand').getAttribute('aria-label');").await?;
    ensure!(name.starts_with("Twist"), "{name}");
    page.without_errors().await
}

const PLACE: &str = "document.querySelector('[aria-label=\"Place on the top\"]').innerText";

/// The figures of a place against the design's own measures, by numbers and by pointing.
async fn place_is_read(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.open_section("Read the top").await?;
    // The thickness in the centre is a measure of the design.
    page.type_number("From the bottom edge", "185").await?;
    page.type_number("From the centreline", "0").await?;
    page.until("the centre is read", &format!("{PLACE}.includes('Island') && {PLACE}.includes('3.00 mm')")).await?;
    page.type_number("From the centreline", "500").await?;
    page.until("beside the top there is no wood", &format!("{PLACE}.includes('off the wood')")).await?;
    let at_middle = "const box = document.querySelector('#stage-view').getBoundingClientRect(); \
                     return [box.x + box.width / 2, box.y + box.height / 2];";
    let [x, y]: [f64; 2] = serde_json::from_value(page.value(at_middle).await?)?;
    let hover = serde_json::json!({ "type": "mouseMoved", "x": x, "y": y, "button": "none", "buttons": 0 });
    page.session.devtools("Input.dispatchMouseEvent", hover).await?;
    page.until("the place pointed at is read", &format!("{PLACE}.includes('Thickness')")).await?;
    let across: f64 = page.number("From the centreline").await?.parse()?;
    let along: f64 = page.number("From the bottom edge").await?.parse()?;
    // The middle of the framed top lies on the centreline, between the holes.
    ensure!(across.abs() < 8.0 && (120.0..240.0).contains(&along), "pointed at {across}, {along}");
    page.without_errors().await
}

/// What is saved is caught on its way to the download folder.
pub(super) const CATCH: &str = "globalThis.__saved = []; const make = URL.createObjectURL; \
    URL.createObjectURL = (blob) => { __saved.push(blob); return make.call(URL, blob); };";

async fn pictures_are_saved(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.open_section("Save a picture").await?;
    page.value(CATCH).await?;
    page.choose("Size", "square").await?;
    page.in_sight(Role::Button, "Save picture").await?.click().await?;
    page.until("a picture is saved", "__saved.length === 1").await?;
    let said = page.text("return document.querySelector('#status').textContent;").await?;
    ensure!(said.contains("demonstration-top-ring-mode.png"), "{said}");
    // The picture has the size asked for, a caption at its foot and a top above it.
    let look = "const done = arguments[0]; createImageBitmap(__saved[0]).then((image) => { \
        const sheet = new OffscreenCanvas(image.width, image.height).getContext('2d'); sheet.drawImage(image, 0, 0); \
        const colours = (y, height) => { const { data } = sheet.getImageData(0, y, image.width, height); \
            const seen = new Set(); for (let at = 0; at < data.length; at += 4) seen.add(data[at] >> 4 << 8 | data[at + 2] >> 4); \
            return seen.size; }; \
        done([__saved[0].type, image.width, image.height, colours(0, 900), colours(1000, 80)]); });";
    let (kind, width, height, top, caption): (String, u32, u32, usize, usize) =
        serde_json::from_value(page.run(look).await?)?;
    ensure!(kind == "image/png" && (width, height) == (1080, 1080), "{kind}, {width} by {height}");
    ensure!(top > 24 && (2..40).contains(&caption), "{top} colours above, {caption} in the caption");
    page.choose("Size", "tiny").await?;
    page.in_sight(Role::Button, "Save film").await?.click().await?;
    page.until("a film is saved", "__saved.length === 2").await?;
    let film = "const done = arguments[0]; __saved[1].slice(0, 4).arrayBuffer().then((head) => \
        done([__saved[1].type, __saved[1].size, [...new Uint8Array(head)]]));";
    let (kind, size, head): (String, u64, [u8; 4]) = serde_json::from_value(page.run(film).await?)?;
    // EBML's first four bytes, with which every WebM file begins (RFC 8794, section 11.2.1).
    ensure!(kind == "video/webm" && head == [0x1a, 0x45, 0xdf, 0xa3], "{kind} {head:?}");
    ensure!(size > 20_000, "a film of {size} bytes");
    // The browser's own player takes it: as long as said, as large as asked for, and its middle another picture than its start, once
    // the player has come to it: on a busy machine it says so before it shows it.
    let play = "const done = arguments[0]; const film = document.createElement('video'); film.muted = true; \
        const seek = (time) => new Promise((there) => { film.onseeked = there; film.currentTime = time; }); \
        const sheet = new OffscreenCanvas(64, 36).getContext('2d', { willReadFrequently: true }); \
        const look = async (time) => { await seek(time); sheet.drawImage(film, 0, 0, 64, 36); \
            return sheet.getImageData(0, 0, 64, 36).data; }; \
        film.onerror = () => done([0, 0, 0, 0]); \
        film.onloadedmetadata = async () => { const start = await look(0.02); let other = 0; \
            for (let tries = 0; tries < 50 && other === 0; tries++) { const middle = await look(1.02); \
                other = start.filter((value, at) => Math.abs(value - middle[at]) > 12).length; \
                await new Promise((resolve) => setTimeout(resolve, 100)); } \
            done([film.duration, film.videoWidth, film.videoHeight, other]); }; \
        film.src = URL.createObjectURL(__saved[1]);";
    let (duration_s, width, height, other): (f64, u32, u32, usize) = serde_json::from_value(page.run(play).await?)?;
    ensure!((duration_s - 2.0).abs() < 1e-3 && (width, height) == (640, 360), "{duration_s} s, {width} by {height}");
    ensure!(other > 64, "half a period later only {other} values are others");
    page.without_errors().await
}

async fn looks_are_changed(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.find(Role::Choice, "Colour by").await?.send_keys("nothing").await?;
    page.open_section("Lines and looks").await?;
    let before = page.picture().await?;
    page.tick("Even grey").await?;
    page.changed_from(&before, "even grey").await?;
    let grey = page.picture().await?;
    page.tick("Nodal lines").await?;
    page.see_other_than(&grey).await?;
    page.without_errors().await
}

impl Page<'_> {
    /// Chooses the lowest mode, from the page's top: farther down the stage lies over the table on a narrow window.
    pub(super) async fn choose_lowest(&self) -> Result<()> {
        self.value("scrollTo(0, 0);").await?;
        self.choose_mode(0).await
    }

    pub(super) async fn close_section(&self, heading: &str) -> Result<()> {
        let path = format!("//summary[contains(normalize-space(.), '{heading}')]");
        Ok(self.session.driver.find(By::XPath(path)).await?.click().await?)
    }

    /// Waits until the stage shows anything else than `before`, be it a line.
    async fn see_other_than(&self, before: &crate::browser::pixels::Picture) -> Result<()> {
        for _ in 0..50 {
            if self.picture().await?.share_changed(before)? > 0.0 {
                return Ok(());
            }
            tokio::time::sleep(std::time::Duration::from_millis(100)).await;
        }
        anyhow::bail!("the stage shows the same as before")
    }
}
