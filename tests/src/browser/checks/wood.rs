//! Sound holes traced and leaned, regions, and the graduation: zones, paint, measured maps, a mass wished for.

use std::fmt::Write as _;

use anyhow::{Context, Result, ensure};
use serde_json::Value;
use thirtyfour::prelude::*;

use super::files::save;
use super::{Place, Run};
use crate::browser::find::Role;
use crate::browser::page::Page;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("an f-hole leans as asked and a traced one is cut", holes_are_leaned_and_traced(place)).await;
    run.check("regions are named, weighed and laid over the plan", regions_are_shown(place)).await;
    run.check("thickness is shown, wished by mass, painted and measured", thickness_is_shaped(place)).await;
}

const HOLES: &str = "Sound holes";
const LEAN: &str = "Lean of the line through the eyes";

/// The traced hole is a rectangle of 60 by 8 mm, drawn in centimetres: 4.80 cm2 and 136 mm round.
async fn holes_are_leaned_and_traced(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let hertz = page.hertz().await?;
    let folder = tempfile::tempdir()?;
    let before = saved(&page).await?;
    page.open_section(HOLES).await?;
    page.in_sight(Role::Number, LEAN).await?;
    page.until("the lean is known", "document.querySelector('[data-section=sound_holes]').innerText.includes('Opens')")
        .await?;
    let lean: f64 = page.number(LEAN).await?.parse()?;
    page.type_number(LEAN, &format!("{:.1}", lean - 4.0)).await?;
    page.figures_changed_from(&hertz).await?;
    let leaned = saved(&page).await?;
    let eye = |design: &Value, side: &str| design["sound_holes"][side]["upper_eye_to_centreline_mm"].as_f64();
    let moved = eye(&leaned, "treble").zip(eye(&before, "treble")).context("the eyes' places")?;
    ensure!(moved.0 > moved.1 + 0.5, "more upright, the upper eyes are wider apart: {moved:?}");
    ensure!(leaned["sound_holes"]["bass"] == leaned["sound_holes"]["treble"], "both sides lean alike");

    let drawing = folder.path().join("hole.svg");
    let svg = "<svg xmlns='http://www.w3.org/2000/svg' width='20cm' height='20cm' viewBox='0 0 20 20'>\
               <path d='M3 2h0.8v6h-0.8z'/></svg>";
    std::fs::write(&drawing, svg)?;
    let hertz = page.hertz().await?;
    page.give("Its drawing, SVG", &drawing).await?;
    page.figures_changed_from(&hertz).await?;
    let opens =
        "document.querySelector('[data-section=sound_holes]').innerText.includes('Opens 4.80 cm²; 136 mm round')";
    page.until("what the traced hole opens", opens).await?;
    let traced = saved(&page).await?;
    ensure!(traced["sound_holes"]["treble"]["kind"] == "traced", "{}", traced["sound_holes"]);

    // What is no line, and a hole that leaves the wood, are told; the hole that was cut stays.
    for (text, word) in [("<svg xmlns='http://www.w3.org/2000/svg'/>", "no line"), (&svg.replace("cm", "in"), "mm")] {
        std::fs::write(&drawing, text)?;
        page.give("Its drawing, SVG", &drawing).await?;
        let said = page.alert().await?;
        ensure!(said.contains(word), "the message does not say “{word}”: {said}");
        page.press("Close").await?;
    }
    ensure!(saved(&page).await? == traced, "a bad drawing changed the design");
    page.without_errors().await
}

/// Twelve regions; what they weigh together is what the page says that the top weighs.
async fn regions_are_shown(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.open_section("Regions").await?;
    page.until("the regions are there", "document.querySelectorAll('.regions-table tbody tr').length === 12").await?;
    let table = "return [...document.querySelectorAll('.regions-table tbody tr')].map((row) => \
                 [...row.cells].map((cell) => cell.textContent));";
    let rows: Vec<Vec<String>> = serde_json::from_value(page.value(table).await?)?;
    let sum: f64 = rows.iter().filter_map(|row| row[2].parse::<f64>().ok()).sum();
    let mass = page.text("return document.querySelector('#mass').textContent;").await?;
    let whole: f64 = mass.split_whitespace().find_map(|word| word.parse().ok()).context("the top's mass")?;
    ensure!((sum / whole - 1.0).abs() < 0.01, "the regions weigh {sum} g together, the top {whole} g");
    // 12 mm from eye to edge is a measure of the design.
    let narrows = rows.iter().find(|row| row[0] == "Lower narrows, treble").context("the lower narrows")?;
    ensure!(narrows[4] == "12.0", "the lower narrows are {} mm", narrows[4]);
    let named =
        "[...document.querySelectorAll('#plan .regions title')].some((title) => title.textContent === 'Island')";
    page.until("the plan names the island", named).await?;
    page.tick("Show them in the plan").await?;
    page.until(
        "the plan is bare again",
        "getComputedStyle(document.querySelector('#plan .regions')).display === 'none'",
    )
    .await?;
    page.without_errors().await
}

async fn thickness_is_shaped(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let hertz = page.hertz().await?;
    let before = saved(&page).await?;
    page.open_section("Graduation").await?;
    page.until("the map is drawn", "document.querySelectorAll('.thickness .contour').length > 3").await?;
    page.type_number("Mass wished for", "60").await?;
    page.in_sight(Role::Button, "Change every thickness alike").await?.click().await?;
    page.figures_changed_from(&hertz).await?;
    // The shell of flat triangles weighs a little less than the carved wood.
    let weighs = "Math.abs(parseFloat(document.querySelector('#mass').textContent) - 60) < 0.3";
    page.until("the top weighs what was wished", weighs).await?;
    let lighter = saved(&page).await?;
    let change = |zone: &str| {
        let [a, b] = [&lighter, &before].map(|design| design["graduation"][zone].as_f64().unwrap_or_default());
        a - b
    };
    ensure!(
        (change("centre_mm") - change("edge_mm")).abs() < 1e-9 && change("centre_mm") < 0.0,
        "not all alike: {lighter}"
    );
    page.type_number("Mass wished for", "5").await?;
    page.in_sight(Role::Button, "Change every thickness alike").await?.click().await?;
    let said = page.alert().await?;
    ensure!(said.contains("5.0 g"), "{said}");
    page.press("Close").await?;

    let hertz = page.hertz().await?;
    let map = page.session.driver.find(By::Css(".thickness svg")).await?;
    page.session.driver.execute("arguments[0].scrollIntoView({ block: 'center' });", vec![map.to_json()?]).await?;
    map.click().await?;
    page.figures_changed_from(&hertz).await?;
    let painted = saved(&page).await?;
    let points = painted["graduation"]["painted"].as_array().context("a painted point")?;
    let across = points[0]["place"]["across_mm"].as_f64().context("its place")?;
    ensure!(points.len() == 1 && across.abs() < 2.0, "a press in the middle is on the centreline: {points:?}");
    let hertz = page.hertz().await?;
    page.in_sight(Role::Button, "Remove").await?.click().await?;
    page.figures_changed_from(&hertz).await?;
    ensure!(saved(&page).await? == lighter, "removed, the paint left something");

    let folder = tempfile::tempdir()?;
    let file = folder.path().join("thickness.csv");
    let mut table = String::from("x,y,thickness\n");
    for i in 0..24 {
        writeln!(table, "{},{},2.8", f64::from(i % 4) * 40.0 - 60.0, f64::from(i / 4) * 60.0 + 20.0)?;
    }
    std::fs::write(&file, table)?;
    let hertz = page.hertz().await?;
    page.give("Measured thicknesses", &file).await?;
    page.figures_changed_from(&hertz).await?;
    let even = "document.querySelector('.thickness figcaption').textContent === '2.8 mm2.8 mm'";
    page.until("the map is even", even).await?;
    let hertz = page.hertz().await?;
    page.in_sight(Role::Button, "Go back to the zones").await?.click().await?;
    page.figures_changed_from(&hertz).await?;
    std::fs::write(&file, "x,y,thickness\n1,2,3\n")?;
    page.give("Measured thicknesses", &file).await?;
    let said = page.alert().await?;
    ensure!(said.contains("20"), "{said}");
    ensure!(saved(&page).await? == lighter, "a bad table changed the design");
    page.without_errors().await
}

/// The design that the page would save now.
async fn saved(page: &Page<'_>) -> Result<Value> {
    let folder = tempfile::tempdir()?;
    save(page, folder.path()).await
}
