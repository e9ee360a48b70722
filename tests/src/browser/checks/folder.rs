//! The site in a sub-folder of a host that knows nothing of it, as on a page of somebody's project.

use anyhow::{Result, ensure};
use bombatura_serve::serve::Server;
use thirtyfour::prelude::*;

use super::controls::move_slider;
use super::drawing::ensure_drawn;
use super::offline::kept_page;
use super::{Place, Run};
use crate::browser::page::{Page, SMALL};
use crate::browser::site_copy;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("the site works from a sub-folder", works_from_a_sub_folder(place)).await;
    run.check("a host of files alone serves an isolated page from the second visit", is_isolated(place)).await;
}

async fn works_from_a_sub_folder(place: &Place<'_>) -> Result<()> {
    let host = tempfile::tempdir()?;
    site_copy::copy(place.site, &host.path().join("tools/tops"))?;
    let server = Server::start_plain(host.path(), 0)?;
    let page = Page::open(place.session, &format!("{}tools/tops/", server.url()), SMALL).await?;
    page.modes_shown().await?;
    page.drawn().await?;
    ensure_drawn(&page).await?;
    page.session.driver.find(By::LinkText("Deutsch")).await?.click().await?;
    page.until("the German page is there", "document.documentElement.lang === 'de'").await?;
    page.modes_shown().await?;
    page.without_errors().await
}

/// Without the headers of an isolated page no memory is shared, and what is given up is stopped by stopping its worker; the page's own keeper
/// sends them.
async fn is_isolated(place: &Place<'_>) -> Result<()> {
    let server = Server::start_plain(place.site, 0)?;
    let page = kept_page(place, &server.url()).await?;
    for isolated in [false, true] {
        ensure!(page.value("return crossOriginIsolated;").await? == isolated, "isolated on this visit: {}", !isolated);
        page.press("Fine mesh").await?;
        page.press("Cancel the fine mesh").await?;
        move_slider(&page, "Arch height").await?;
        page.judged().await?;
        page.session.driver.refresh().await?;
        page.judged().await?;
    }
    page.without_errors().await
}
