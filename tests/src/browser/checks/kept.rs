//! Designs kept in the browser: the one worked on survives a reload, others come back by name.

use anyhow::{Result, ensure};
use thirtyfour::prelude::*;

use super::controls::move_slider;
use super::{Place, Run};
use crate::browser::find::Role;
use crate::browser::page::Page;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("a reload goes on with the design worked on", reload_goes_on(place)).await;
    run.check("designs are kept by name, opened, removed and brought back", designs_are_kept(place)).await;
    run.check("a kept design that can't be read is not lost", unreadable_is_kept(place)).await;
}

/// What is kept of the design worked on, or nothing.
const KEPT: &str = "return new Promise((resolve) => {
    indexedDB.open('bombatura').onsuccess = ({ target: { result } }) => {
        result.transaction('now').objectStore('now').get('now').onsuccess = (event) => {
            result.close();
            resolve(event.target.result ?? '');
        };
    };
});";

async fn reload(page: &Page<'_>) -> Result<()> {
    page.session.driver.refresh().await?;
    page.modes_shown().await?;
    page.settle().await
}

async fn reload_goes_on(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    ensure!(page.text(KEPT).await?.is_empty(), "a design that nobody changed is kept");
    move_slider(&page, "Arch height").await?;
    let (height, hertz) = (page.number("Arch height").await?, page.hertz().await?);
    reload(&page).await?;
    ensure!(page.number("Arch height").await? == height, "{} mm after a reload", page.number("Arch height").await?);
    ensure!(page.hertz().await? == hertz, "the same design has other figures after a reload");
    page.without_errors().await
}

async fn designs_are_kept(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    move_slider(&page, "Arch height").await?;
    let height = page.number("Arch height").await?;
    page.press("Designs").await?;
    let name = page.find(Role::Text, "Name").await?;
    name.clear().await?;
    name.send_keys("Higher, by a check").await?;
    page.press("Keep this design").await?;
    page.find(Role::Button, "Open “Higher, by a check”").await?;
    page.press("Close").await?;
    ensure!(page.words().await?.contains("Higher, by a check"), "the design hasn't taken the name it is kept under");

    page.press("Reset").await?;
    page.settle().await?;
    ensure!(page.number("Arch height").await? != height, "Reset leaves the arch as it was");
    page.press("Designs").await?;
    page.press("Open “Higher, by a check”").await?;
    page.settle().await?;
    ensure!(page.number("Arch height").await? == height, "the kept design opens with another arch");

    page.press("Designs").await?;
    page.press("Remove “Higher, by a check”").await?;
    page.find(Role::Button, "Bring it back").await?;
    ensure!(page.words().await?.contains("None is kept"), "a removed design is listed still");
    page.press("Bring it back").await?;
    page.find(Role::Button, "Open “Higher, by a check”").await?;
    page.session.driver.active_element().await?.send_keys(Key::Escape).await?;
    page.without_errors().await
}

async fn unreadable_is_kept(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let demonstration = page.number("Arch height").await?;
    move_slider(&page, "Arch height").await?;
    page.text(
        "return new Promise((resolve) => {
            indexedDB.open('bombatura').onsuccess = ({ target: { result } }) => {
                const change = result.transaction('now', 'readwrite');
                change.objectStore('now').put('{\"format\": \"bombatura-design\", \"version\": 99}', 'now');
                change.oncomplete = () => {
                    result.close();
                    resolve('');
                };
            };
        });",
    )
    .await?;
    reload(&page).await?;
    ensure!(page.alert().await?.contains("99"), "the alert doesn't name the version: {}", page.alert().await?);
    ensure!(page.number("Arch height").await? == demonstration, "no demonstration in place of what can't be read");
    page.press("Designs").await?;
    page.find(Role::Button, "Open “Could not be read").await?;
    page.without_errors().await
}
