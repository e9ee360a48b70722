//! The page without a network, and while another edition takes its place.

use std::path::Path;

use anyhow::{Context, Result, ensure};
use bombatura_serve::{build, serve::Server};
use serde_json::{Value, json};

use super::controls::move_slider;
use super::{Place, Run};
use crate::browser::page::{Page, SMALL};
use crate::browser::site_copy;

/// With either view, of which only the one that draws here is kept.
pub(super) async fn run_views(place: &Place<'_>, run: &mut Run<'_>) {
    let late = works_offline(place);
    run.check("offline: after a visit the page and what it loads later work without a server", late).await;
    run.check("offline: a first visit waits for nothing that is only kept", first_visit_is_spared(place)).await;
}

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("offline: another edition leaves an open design and its page whole", edition_changes(place)).await;
    run.check("offline: the page can be installed in each language", can_be_installed(place)).await;
}

const KEPT: &str = "document.documentElement.dataset.offline === 'ready'";

/// A visit in a small window, waited for until everything is kept.
pub(super) async fn kept_page<'a>(place: &'a Place<'_>, url: &str) -> Result<Page<'a>> {
    place.session.prefer_less_motion(true).await?;
    let page = Page::open(place.session, url, SMALL).await?;
    page.judged().await?;
    page.until("the page is kept", KEPT).await?;
    Ok(page)
}

async fn works_offline(place: &Place<'_>) -> Result<()> {
    let server = Server::start(place.site, 0)?;
    let url = server.url();
    let page = kept_page(place, &url).await?;
    move_slider(&page, "Arch height").await?;
    let (height, hertz) = (page.number("Arch height").await?, page.hertz().await?);
    tokio::time::sleep(std::time::Duration::from_millis(600)).await;
    page.without_errors().await?;
    drop(server);
    // What is loaded late, by the page that is open and by one that begins without a network, in another language too.
    page.open_section("Wood").await?;
    page.session.driver.refresh().await?;
    page.modes_shown().await?;
    page.settle().await?;
    page.drawn().await?;
    ensure!(page.number("Arch height").await? == height, "without a network the design is another");
    ensure!(page.hertz().await? == hertz, "without a network the figures are others");
    page.open_section("Driven at").await?;
    page.until("it is driven", "document.querySelector('.bars tbody tr') !== null").await?;
    page.session.driver.goto(format!("{url}de.html")).await?;
    page.modes_shown().await?;
    ensure!(page.text("return document.documentElement.lang;").await? == "de", "no German page without a network");
    // Pages are asked for over the network first; that it is not there is what this is about.
    page.errors_are_only(&["ERR_CONNECTION_REFUSED", "can't be kept", "service_worker.js"]).await
}

/// The bench counts the bytes; this is about which files, and when.
async fn first_visit_is_spared(place: &Place<'_>) -> Result<()> {
    let server = Server::start(place.site, 0)?;
    place.session.prefer_less_motion(true).await?;
    let page = Page::open(place.session, &server.url(), SMALL).await?;
    page.modes_shown().await?;
    let before: Vec<String> = server.take_served().into_iter().map(|answer| answer.target).collect();
    for late in ["service_worker", "webmanifest", "icons/192", "drive", "sections/", "words/de"] {
        let early = before.iter().find(|target| target.contains(late));
        ensure!(early.is_none(), "a first visit waits for {early:?}");
    }
    page.until("the page is kept", KEPT).await?;
    let after: Vec<String> = server.take_served().into_iter().map(|answer| answer.target).collect();
    ensure!(after.iter().any(|target| target.contains("wasm/drive_bg.wasm")), "what is driven is not kept: {after:?}");
    let other = if place.session.backend().name() == "webgpu" { "webgl2" } else { "webgpu" };
    let other = after.iter().find(|target| target.contains(&format!("view_{other}_bg")));
    ensure!(other.is_none(), "{other:?} is for browsers that draw otherwise");
    let again: Vec<_> = after.iter().filter(|target| target.contains("/edition-") && before.contains(target)).collect();
    ensure!(again.is_empty(), "sent twice: {again:?}");
    page.without_errors().await
}

async fn edition_changes(place: &Place<'_>) -> Result<()> {
    let host = tempfile::tempdir()?;
    site_copy::copy(place.site, host.path())?;
    let server = Server::start(host.path(), 0)?;
    let page = kept_page(place, &server.url()).await?;
    move_slider(&page, "Arch height").await?;
    let (height, hertz) = (page.number("Arch height").await?, page.hertz().await?);
    tokio::time::sleep(std::time::Duration::from_millis(600)).await;

    let old = edition_name(host.path())?;
    let new = "edition-of-tomorrow";
    rename_edition(host.path(), &old, new)?;
    page.run("navigator.serviceWorker.ready.then((one) => one.update()).then(() => arguments[0]());").await?;
    page.until("the page tells of it", "document.body.innerText.includes('newer version of this page')").await?;
    ensure!(page.number("Arch height").await? == height, "another edition changed the design");
    // The server has nothing of the old edition any more.
    page.open_section("Graduation").await?;
    let loaded = resources(&page).await?;
    let all = loaded.iter().filter(|name| name.contains("/edition-"));
    ensure!(all.clone().all(|name| name.contains(&old)), "an open page loads of another edition: {loaded:?}");
    page.type_number("Arch height", &format!("{}", height.parse::<f64>()? + 0.5)).await?;
    page.figures_changed_from(&hertz).await?;
    let changed = page.number("Arch height").await?;
    tokio::time::sleep(std::time::Duration::from_millis(600)).await;
    page.without_errors().await?;

    page.session.driver.refresh().await?;
    page.modes_shown().await?;
    page.settle().await?;
    ensure!(page.number("Arch height").await? == changed, "the reload lost the design");
    let main = page.text("return document.querySelector('script[src]').src;").await?;
    ensure!(main.contains(new), "the reload begins {main}");
    page.until("the new edition is kept", KEPT).await?;
    // Nobody needs the old one now; it goes when the keeper looks the next time.
    let caches = page.run("caches.keys().then(arguments[0]);").await?;
    ensure!(caches.to_string().contains(new), "{caches}");
    drop(server);
    page.session.driver.refresh().await?;
    page.modes_shown().await?;
    page.open_section("Wood").await?;
    page.errors_are_only(&["ERR_CONNECTION_REFUSED", "can't be kept", "service_worker.js"]).await
}

async fn resources(page: &Page<'_>) -> Result<Vec<String>> {
    let names = page.value("return performance.getEntriesByType('resource').map((one) => one.name);").await?;
    Ok(serde_json::from_value(names)?)
}

fn edition_name(site: &Path) -> Result<String> {
    let folder = build::edition_of(site)?;
    Ok(folder.file_name().context("a folder's name")?.to_string_lossy().into_owned())
}

/// As another build would leave the site: the old edition gone, everything under another name.
fn rename_edition(site: &Path, old: &str, new: &str) -> Result<()> {
    std::fs::rename(site.join(old), site.join(new))?;
    for name in ["index.html", "de.html", "service_worker.js"] {
        let path = site.join(name);
        std::fs::write(&path, std::fs::read_to_string(&path)?.replace(old, new))?;
        for form in [".br", ".gz"] {
            std::fs::remove_file(site.join(format!("{name}{form}")))?;
        }
    }
    Ok(())
}

/// What Chromium asks of a page before it offers to install it, by its own word; W3C Web Application Manifest.
async fn can_be_installed(place: &Place<'_>) -> Result<()> {
    for (page_name, language) in [("", "en"), ("de.html", "de")] {
        let url = format!("{}{page_name}", place.url);
        let page = kept_page(place, &url).await?;
        let found = page.session.devtools("Page.getAppManifest", json!({})).await?;
        let errors = found["errors"].as_array().context("errors")?;
        ensure!(errors.is_empty(), "{url}: {errors:?}");
        let manifest: Value = serde_json::from_str(found["data"].as_str().context("a manifest")?)?;
        ensure!(manifest["lang"] == language, "{url} has the manifest of {}", manifest["lang"]);
        let description = "return document.querySelector('meta[name=description]').content;";
        ensure!(
            manifest["description"] == page.text(description).await?,
            "page and manifest describe different things"
        );
        let why_not = page.session.devtools("Page.getInstallabilityErrors", json!({})).await?;
        let why_not = why_not["installabilityErrors"].as_array().context("errors")?;
        // The checks' browser keeps nothing beyond its session.
        let others: Vec<_> = why_not.iter().filter(|error| error["errorId"] != "in-incognito").collect();
        ensure!(others.is_empty(), "{url} can't be installed: {others:?}");
        page.without_errors().await?;
    }
    Ok(())
}
