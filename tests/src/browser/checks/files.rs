//! Designs as files: saved, opened again, and refused when they are wrong.

use std::path::{Path, PathBuf};
use std::time::Duration;

use anyhow::{Context, Result, bail, ensure};
use serde_json::{Value, json};
use thirtyfour::prelude::*;

use super::controls::move_slider;
use super::{Place, Run};
use crate::browser::page::Page;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("a saved design opens again", saved_design_opens(place)).await;
    run.check("wrong files are refused by the value and the design stays", wrong_files_are_refused(place)).await;
}

async fn saved_design_opens(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let original_hertz = page.hertz().await?;
    move_slider(&page, "Arch height").await?;
    let (hertz, height) = (page.hertz().await?, page.number("Arch height").await?);
    let folder = tempfile::tempdir()?;
    let mut design = save(&page, folder.path()).await?;
    let saved = design["arching"]["apex_height_mm"].as_f64().context("an arch height in the saved file")?;
    ensure!(saved.to_string() == height, "the page shows {height} mm and saved {saved}");

    design["name"] = "A top saved by a check".into();
    let changed = folder.path().join("renamed.json");
    std::fs::write(&changed, design.to_string())?;
    let page = place.still_page().await?;
    ensure!(page.hertz().await? == original_hertz, "a first visit doesn't begin with the demonstration");
    open(&page, &changed).await?;
    page.figures_changed_from(&original_hertz).await?;
    ensure!(page.words().await?.contains("A top saved by a check"), "the opened design's name isn't shown");
    ensure!(page.number("Arch height").await? == height, "the opened design has another arch height");
    let again = page.hertz().await?;
    ensure!(again == hertz, "the same design gave other figures: {hertz:?}, then {again:?}");
    page.without_errors().await
}

/// What is done to a good file, and what the message has to name.
type Damage = (&'static str, fn(&Value) -> String, &'static [&'static str]);

const DAMAGES: [Damage; 7] = [
    ("cut short", |design| design.to_string()[..200].to_owned(), &[]),
    ("of another version", |design| with(design, "/version", json!(99)), &["version", "99"]),
    ("with a negative thickness", |design| with(design, "/graduation/centre_mm", json!(-3)), &["centre_mm", "-3"]),
    ("with a word for a number", |design| with(design, "/arching/apex_height_mm", json!("high")), &["apex_height_mm"]),
    ("with NaN", |design| with(design, "/arching/apex_height_mm", json!("?")).replace("\"?\"", "NaN"), &[]),
    ("with an unknown key", |design| with_key(design, "varnish"), &["varnish"]),
    ("of 10 MB", |_| format!("[{}1]", "1,".repeat(5_000_000)), &["MB"]),
];

/// A design with another value at a JSON pointer, as text.
pub(super) fn with(design: &Value, pointer: &str, value: Value) -> String {
    let mut design = design.clone();
    if let Some(place) = design.pointer_mut(pointer) {
        *place = value;
    }
    design.to_string()
}

fn with_key(design: &Value, key: &str) -> String {
    let mut design = design.clone();
    design[key] = json!(1);
    design.to_string()
}

async fn wrong_files_are_refused(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let folder = tempfile::tempdir()?;
    let design = save(&page, folder.path()).await?;
    let (hertz, height) = (page.hertz().await?, page.number("Arch height").await?);
    let undamaged = design.to_string();
    for (what, damage, named) in DAMAGES {
        let path = folder.path().join("wrong.json");
        let wrong = damage(&design);
        ensure!(wrong != undamaged, "{what}: the file was not damaged; has the format changed?");
        std::fs::write(&path, wrong)?;
        open(&page, &path).await?;
        let words = page.alert().await.with_context(|| format!("after a file {what}"))?;
        for name in named {
            ensure!(words.contains(name), "a file {what}: the message doesn't name “{name}”: {words}");
        }
        ensure!(page.number("Arch height").await? == height, "a file {what} changed the design");
        ensure!(page.hertz().await? == hertz, "a file {what} changed the figures");
        page.press("Close").await?;
    }
    page.without_errors().await
}

/// Saves the design and reads the file.
pub(super) async fn save(page: &Page<'_>, folder: &Path) -> Result<Value> {
    serde_json::from_str(&download(page, "Save design", "json", folder).await?).context("the saved file")
}

/// Presses a button and reads the file with this ending that the browser downloads.
pub(super) async fn download(page: &Page<'_>, button: &str, ending: &str, folder: &Path) -> Result<String> {
    let behaviour = json!({ "behavior": "allow", "downloadPath": folder.to_string_lossy() });
    page.session.devtools("Page.setDownloadBehavior", behaviour).await?;
    page.press(button).await?;
    for _ in 0..200 {
        tokio::time::sleep(Duration::from_millis(50)).await;
        if let Some(path) = saved_file(folder, ending)? {
            return Ok(std::fs::read_to_string(&path)?);
        }
    }
    bail!("the page saved nothing");
}

/// The finished download; while it runs it has another ending.
fn saved_file(folder: &Path, ending: &str) -> Result<Option<PathBuf>> {
    let paths = std::fs::read_dir(folder)?.map(|entry| Ok(entry?.path())).collect::<Result<Vec<_>>>()?;
    Ok(paths.into_iter().find(|path| path.extension().is_some_and(|found| found == ending)))
}

/// Gives the page's file chooser a file, as picking it in the dialogue does.
pub(super) async fn open(page: &Page<'_>, path: &Path) -> Result<()> {
    let chooser = page.session.driver.find(By::Css("input[type=file]")).await?;
    Ok(chooser.send_keys(path.to_string_lossy()).await?)
}
