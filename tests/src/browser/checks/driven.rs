//! The driven top: a motion at any frequency, curves, a bowed note, a tap.

use anyhow::{Result, ensure};
use thirtyfour::prelude::*;

use super::closer::CATCH;
use super::{Place, Run};
use crate::browser::find::Role;
use crate::browser::page::Page;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("drive: the top is driven at any frequency", driven_at_any_frequency(place)).await;
    run.check("drive: curves are drawn, kept and saved", curves_are_drawn(place)).await;
    run.check("drive: a bowed note runs on the stage", note_runs(place)).await;
    run.check("drive: a tap is heard", tap_is_heard(place)).await;
}

const TITLE: &str = "document.querySelector('#stage-title').textContent";

async fn driven_at_any_frequency(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.on_ribs().await?;
    let mode = page.picture().await?;
    page.open_section("Driven at any").await?;
    page.until("the top is driven", &format!("{TITLE} === 'Driven at 440 Hz'")).await?;
    page.changed_from(&mode, "the driven motion").await?;
    page.until("regions have their shares", &format!("{ROWS}.length === 12")).await?;
    let shares = format!("return {ROWS}.map((row) => parseFloat(row.cells[1].textContent));");
    let shares: Vec<f64> = serde_json::from_value(page.value(&shares).await?)?;
    // Rounded to a tenth of a percent below ten percent and to one above.
    ensure!((shares.iter().sum::<f64>() - 100.0).abs() < 3.0, "the shares are {shares:?}");
    page.until("the map is there", "document.querySelectorAll('.share-map .band').length === 12").await?;
    page.until("three figures are there", &format!("{FIGURES}.filter((text) => text.includes('±')).length === 3"))
        .await?;
    let scale = page.text("return document.querySelector('#drawn-scale').textContent;").await?;
    ensure!(scale.contains("µm for a newton"), "the scale is not told: {scale}");
    let before = page.picture().await?;
    page.in_sight(Role::Slider, "Frequency").await?.send_keys(Key::PageUp).await?;
    // Three semitones above A4 in equal temperament: 440 Hz · 2^(3/12) (ISO 16), to the slider's sixth of a semitone.
    page.until("it goes up by three semitones", &format!("['523', '524'].some((hz) => {TITLE}.includes(hz))")).await?;
    page.changed_from(&before, "another frequency").await?;
    // A tap off the wood is told in the section, and the page goes on.
    page.choose("A newton", "at a place").await?;
    page.type_number("The force, From the centreline", "180").await?;
    page.until("it says so", &format!("{STATUS}.includes('no wood')")).await?;
    page.type_number("The force, From the centreline", "30").await?;
    page.until("it is driven there", &format!("!{STATUS}.includes('no wood')")).await?;
    // A mode takes the stage back.
    page.choose_lowest().await?;
    page.until("the mode is back", &format!("{TITLE}.startsWith('Mode')")).await?;
    page.without_errors().await
}

const ROWS: &str = "[...document.querySelectorAll('[data-section=drive] .bars tbody tr')]";
const FIGURES: &str =
    "[...document.querySelectorAll('[data-section=drive] .constants td')].map((cell) => cell.textContent)";
const STATUS: &str = "document.querySelector('[data-section=drive] [role=status]').textContent";

async fn curves_are_drawn(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.open_section("Curves").await?;
    page.until("a curve is drawn", "document.querySelector('.curve-sheet .own') !== null").await?;
    page.until("its peaks are told", "document.querySelectorAll('[data-section=curves] .peaks tbody tr').length > 4")
        .await?;
    page.in_sight(Role::Button, "Keep these curves").await?.click().await?;
    page.until("they are kept", "document.querySelector('.curve-sheet .kept') !== null").await?;
    let own = "document.querySelector('[data-section=curves] .own').getAttribute('d')";
    let before = page.text(&format!("return {own};")).await?;
    page.type_number("Thickness", "3.4").await?;
    page.until("the curve follows", &format!("{own} !== {}", serde_json::to_string(&before)?)).await?;
    page.choose("Curve", "Volume velocity").await?;
    page.until("it is drawn", "document.querySelector('[data-section=curves] svg').ariaLabel.includes('Volume')")
        .await?;
    let stiff = page.text(&format!("return {own};")).await?;
    page.choose("The bridge", "rocks on its waist").await?;
    page.until("a rocking bridge moves it otherwise", &format!("{own} !== {}", serde_json::to_string(&stiff)?)).await?;
    page.type_number("The bridge, by itself", "100").await?;
    let told = "document.querySelector('[data-section=curves] [role=status]').textContent";
    page.until("a waist of rubber is refused", &format!("{told}.includes('must be above 500')")).await?;
    page.choose("The bridge", "is stiff").await?;
    page.until("a stiff one is back", &format!("{own} === {}", serde_json::to_string(&stiff)?)).await?;
    page.choose("Curve", "Estimated level").await?;
    page.until("the level is drawn", "document.querySelector('[data-section=curves] svg').ariaLabel.includes('level')")
        .await?;
    page.value(CATCH).await?;
    page.in_sight(Role::Button, "Save the figures").await?.click().await?;
    page.until("a table is saved", "__saved.length === 1").await?;
    let table = page.run("const done = arguments[0]; __saved[0].text().then(done);").await?;
    let lines = table.as_str().unwrap_or_default().lines().count();
    ensure!(lines == 501, "the table has {lines} lines, not a heading and 500 frequencies");
    page.without_errors().await
}

async fn note_runs(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.open_section("A played note").await?;
    let harmonics = "document.querySelectorAll('[data-section=note] .bars tbody tr').length";
    // Of 440 Hz up to some 6 kHz: thirteen, by division.
    page.until("its harmonics are told", &format!("{harmonics} >= 12 && {harmonics} <= 14")).await?;
    page.in_sight(Role::Button, "Show its motion").await?.click().await?;
    page.until("it is on the stage", &format!("{TITLE} === '440 Hz, bowed'")).await?;
    page.see_change("the note moves by itself").await?;
    page.choose_lowest().await?;
    page.until("the mode is back", &format!("!{TITLE}.includes('bowed')")).await?;
    page.without_errors().await
}

async fn tap_is_heard(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.open_section("Tap tone").await?;
    let rows = "document.querySelectorAll('[data-section=tap] .peaks tbody tr').length";
    page.until("its modes are told", &format!("{rows} === 10")).await?;
    let told = "document.querySelector('[data-section=tap] .peaks tbody').textContent";
    let first = page.text(&format!("return {told};")).await?;
    page.value(
        "globalThis.__heard = 0; const start = AudioBufferSourceNode.prototype.start; \
                AudioBufferSourceNode.prototype.start = function () { \
                    __heard = Math.max(...this.buffer.getChannelData(0).map(Math.abs)); start.call(this); };",
    )
    .await?;
    page.in_sight(Role::Button, "Hear the tap").await?.click().await?;
    // As loud as it says it is at most.
    page.until("it is heard", "Math.abs(__heard - 0.4) < 0.01").await?;
    page.type_number("Where it is tapped, From the centreline", "60").await?;
    page.until("elsewhere it sounds otherwise", &format!("{told} !== {}", serde_json::to_string(&first)?)).await?;
    page.without_errors().await
}

impl Page<'_> {
    /// Puts the top on its ribs, as it is when it is played.
    async fn on_ribs(&self) -> Result<()> {
        let free = self.hertz().await?;
        self.open_section("Rim").await?;
        self.choose("The rim is", "on ribs").await?;
        self.figures_changed_from(&free).await
    }
}
