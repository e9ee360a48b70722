//! The site in a sub-folder of a host, as on a page of somebody's project.

use anyhow::Result;
use bombatura_serve::serve::Server;
use thirtyfour::prelude::*;

use super::drawing::ensure_drawn;
use super::{Place, Run};
use crate::browser::page::{Page, SMALL};
use crate::browser::site_copy;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("the site works from a sub-folder", works_from_a_sub_folder(place)).await;
}

async fn works_from_a_sub_folder(place: &Place<'_>) -> Result<()> {
    let host = tempfile::tempdir()?;
    site_copy::copy(place.site, &host.path().join("tools/tops"))?;
    let server = Server::start(host.path(), 0)?;
    let page = Page::open(place.session, &format!("{}tools/tops/", server.url()), SMALL).await?;
    page.modes_shown().await?;
    page.drawn().await?;
    ensure_drawn(&page).await?;
    page.session.driver.find(By::LinkText("Deutsch")).await?.click().await?;
    page.until("the German page is there", "document.documentElement.lang === 'de'").await?;
    page.modes_shown().await?;
    page.without_errors().await
}
