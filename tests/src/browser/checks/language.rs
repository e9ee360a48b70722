//! The page in another language: whole, accessible, and with the design at hand.

use anyhow::{Result, ensure};
use serde_json::Value;
use thirtyfour::prelude::*;

use super::access::{judge, load_axe};
use super::controls::move_slider;
use super::files::{download, open, with};
use super::{Place, Run};
use crate::browser::find::Role;
use crate::browser::page::{DESKTOP, PHONE, Page};

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("the German page is whole in its language", german_is_whole(place)).await;
    run.check("wrong designs are refused in the page's language", refusals_are_german(place)).await;
    run.check("another language keeps the design", language_keeps_the_design(place)).await;
}

/// Short words without which no English sentence of the page does, and which German has not.
const ENGLISH: [&str; 8] = ["the", "of", "and", "from", "with", "to", "by", "are"];

async fn german_page<'a>(place: &'a Place<'_>) -> Result<Page<'a>> {
    place.session.prefer_less_motion(true).await?;
    let page = Page::open(place.session, &format!("{}de.html", place.url), DESKTOP).await?;
    page.modes_shown().await?;
    page.judged().await?;
    Ok(page)
}

async fn german_is_whole(place: &Place<'_>) -> Result<()> {
    let page = german_page(place).await?;
    ensure!(page.text("return document.documentElement.lang;").await? == "de", "the page's language isn't German");
    let title = page.text("return document.title;").await?;
    ensure!(title.contains("gewölbte Decke"), "the title is “{title}”");

    page.find(Role::Table, "Schwingungsformen").await?;
    let lowest = page.text("return document.querySelector('#modes tbody .hertz').textContent;").await?;
    ensure!(lowest.contains(','), "the lowest frequency is written {lowest}");
    let names = page.text("return document.querySelector('#modes tbody').innerText;").await?;
    ensure!(names.contains("Torsion") && names.contains("Mode 4"), "the modes are called {names}");

    page.type_number("Stärke in der Mitte", "0").await?;
    let refusal = page.alert().await?;
    for part in ["Stärke in der Mitte", "0 mm geht nicht", "0,8 bis 12 mm", "Grenzen eingeben"] {
        ensure!(refusal.contains(part), "the refusal doesn't say “{part}”: {refusal}");
    }
    english_words(&page, "a refusal").await?;
    page.press("Schließen").await?;

    page.value("for (const section of document.querySelectorAll('details')) section.open = true;").await?;
    page.until(
        "all sections are loaded",
        "![...document.querySelectorAll('.section')].some((one) => one.textContent.includes('Wird geladen'))",
    )
    .await?;
    page.find(Role::Number, "Stärke der Flanken in mm").await?;
    page.find(Role::Number, "Diskantseite, Durchmesser des oberen Auges").await?;
    english_words(&page, "the open sections").await?;
    load_axe(&page).await?;
    judge(&page, "the German page").await?;
    page.resize(PHONE).await?;
    judge(&page, "the German page on a phone").await?;
    let too_wide = page.value("return document.documentElement.scrollWidth - innerWidth;").await?;
    ensure!(too_wide.as_i64().is_some_and(|px| px <= 0), "the page is {too_wide} px wider than a phone");
    page.without_errors().await
}

/// What the page says to eyes and to screen readers may hold no word that only English has, but for keys of a design and what is marked as
/// English: titles of publications.
async fn english_words(page: &Page<'_>, where_found: &str) -> Result<()> {
    let said = page
        .text(
            "const marked = [...document.querySelectorAll('[lang=en]')]; for (const one of marked) one.style.display = 'none';
            const said = document.body.innerText; for (const one of marked) one.style.display = '';
            return [said, ...[...document.querySelectorAll('[aria-label], [title], option, svg title')]
                .map((element) => `${element.ariaLabel} ${element.title} ${element.textContent}`)].join('\\n');",
        )
        .await?;
    for line in said.lines() {
        let english = line.split(|c: char| !c.is_alphabetic() && c != '_').find(|word| ENGLISH.contains(word));
        ensure!(english.is_none(), "{where_found}: “{line}” is English");
    }
    Ok(())
}

/// Where a design is made wrong, and what its refusal has to say: the numbers from the core's own sentence, in German.
const WRONG: [(&str, &str, &[&str]); 7] = [
    ("/version", "99", &["99", "Version 1"]),
    ("/graduation/flank_mm", "-3.5", &["Stärke der Flanken", "−3,5 mm", "0,8 bis 12 mm"]),
    ("/outline/waist_station_mm", "60.5", &["60,5 mm", "152 mm", "Mitte der unteren Eckenspitze"]),
    ("/arching/apex_height_mm", "4", &["4 mm", "steigt die Wölbung nicht"]),
    ("/outline/upper_corner/reach_mm", "40.5", &["40,5 mm gehen nicht", "mehr als 56 mm", "höchstens 84 mm"]),
    ("/sound_holes/treble/upper_eye_diameter_mm", "3.5", &["3,5 mm", "4,8 mm", "das Auge ist"]),
    (
        "/sound_holes/bass/lower_eye_to_edge_mm",
        "2.5",
        &["Unteres Auge zum Rand (sound_holes.bass", "2,5 mm", "5 bis 40 mm"],
    ),
];

async fn refusals_are_german(place: &Place<'_>) -> Result<()> {
    let page = german_page(place).await?;
    let folder = tempfile::tempdir()?;
    let design: Value = serde_json::from_str(&download(&page, "Speichern", "json", folder.path()).await?)?;
    let path = folder.path().join("wrong.json");
    for (pointer, value, parts) in WRONG {
        std::fs::write(&path, with(&design, pointer, serde_json::from_str(value)?))?;
        open(&page, &path).await?;
        let refusal = page.alert().await?;
        for part in parts {
            ensure!(refusal.contains(part), "{pointer} = {value}: the refusal doesn't say “{part}”: {refusal}");
        }
        ensure!(!refusal.contains("undefined"), "{pointer} = {value}: {refusal}");
        english_words(&page, "the refusal").await?;
        page.press("Schließen").await?;
    }
    page.without_errors().await
}

async fn language_keeps_the_design(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    move_slider(&page, "Arch height").await?;
    let height = page.number("Arch height").await?;
    for (link, label) in [("Deutsch", "Wölbungshöhe"), ("English", "Arch height")] {
        page.session.driver.find(By::LinkText(link)).await?.click().await?;
        page.modes_shown().await?;
        page.settle().await?;
        let now = page.number(label).await?;
        ensure!(now == height, "{label} is {now} mm after a change of language, {height} mm before");
    }
    page.without_errors().await
}
