//! `cargo xtask shots DIR`: pictures of the page's main states, on both backends, at a laptop's and a phone's size.

use std::path::Path;

use anyhow::{Context, Result};
use bombatura_serve::serve::Server;
use bombatura_serve::{Workspace, build};

use crate::browser::{Backend, Chromedriver, DESKTOP, PHONE, Page, Screen, Session};
use crate::chores::programs;

/// Builds the site and writes `BACKEND-SCREEN-STATE.png` files into `folder`.
///
/// # Errors
/// When a program is missing, the site can't be built, or a state isn't reached.
pub fn take(workspace: &Workspace, folder: &Path) -> Result<()> {
    programs::install_missing()?;
    let site = workspace.site();
    build::build_site(workspace, &site)?;
    std::fs::create_dir_all(folder).with_context(|| format!("creating {}", folder.display()))?;
    tokio::runtime::Builder::new_current_thread().enable_all().build()?.block_on(async {
        let server = Server::start(&site, 0)?;
        let chromedriver = Chromedriver::start()?;
        for backend in [Backend::WebGpu, Backend::WebGl2, Backend::Nothing] {
            let session = Session::start(&chromedriver, backend).await?;
            for screen in [DESKTOP, PHONE] {
                Shooting { session: &session, screen, folder }.states(&server.url()).await?;
            }
            session.end().await?;
        }
        Ok(())
    })
}

struct Shooting<'a> {
    session: &'a Session,
    screen: Screen,
    folder: &'a Path,
}

impl Shooting<'_> {
    async fn states(&self, url: &str) -> Result<()> {
        let page = Page::open(self.session, url, self.screen).await?;
        page.judged().await?;
        if self.session.backend() == Backend::Nothing {
            return self.shoot(&page, "first").await;
        }
        page.drawn().await?;
        self.shoot(&page, "first").await?;
        // At rest every pixel of the screen is drawn; a moving picture gives some up where drawing is slow.
        page.press("Pause").await?;
        self.shoot(&page, "paused").await?;
        page.choose_mode(0).await?;
        self.shoot(&page, "lowest-mode").await?;
        page.press("Inside").await?;
        self.shoot(&page, "from-inside").await?;
        page.press("End on").await?;
        self.shoot(&page, "end-on").await?;
        page.press("Outside").await?;
        page.type_number("Thickness", "0").await?;
        page.alert().await?;
        self.shoot(&page, "impossible-value").await?;
        page.press("Close").await?;
        self.sections(&page).await?;
        self.shoot_whole_page(&page).await?;
        page.prefer_dark(true).await?;
        self.shoot(&page, "dark-whole-page").await?;
        page.prefer_dark(false).await?;
        let page = Page::open(self.session, &format!("{url}de.html"), self.screen).await?;
        page.judged().await?;
        page.drawn().await?;
        self.shoot(&page, "german").await
    }

    /// Each section by itself, once what it shows is worked out.
    async fn sections(&self, page: &Page<'_>) -> Result<()> {
        const ALL: &str = "document.querySelectorAll('details[data-section]')";
        let keys = page.run(&format!("arguments[0]([...{ALL}].map((one) => one.dataset.section));")).await?;
        let keys: Vec<String> = serde_json::from_value(keys)?;
        let open_only =
            |key: &str| format!("for (const one of {ALL}) one.open = one.dataset.section === {key:?}; arguments[0]();");
        for key in keys {
            page.run(&open_only(&key)).await?;
            let own = format!("document.querySelector('[data-section={key}]')");
            let there = format!(
                "{own}.querySelector('fieldset, button, select, table') !== null && \
                 [...{own}.querySelectorAll('progress')].every((bar) => bar.hidden)"
            );
            page.until("the section is there", &there).await?;
            page.run(&format!("{own}.scrollIntoView(); arguments[0]();")).await?;
            self.shoot(page, &format!("section-{key}")).await?;
        }
        page.run(&open_only("none")).await?;
        Ok(())
    }

    /// One picture, after the stage has had time to draw what was asked for.
    async fn shoot(&self, page: &Page<'_>, state: &str) -> Result<()> {
        page.draw_anew().await?;
        let name = format!("{}-{}-{state}.png", self.session.backend().name(), self.screen.name);
        let path = self.folder.join(name);
        std::fs::write(&path, page.screenshot().await?).with_context(|| format!("writing {}", path.display()))?;
        println!("{}", path.display());
        Ok(())
    }

    /// On a phone most of the page lies below the first screen.
    async fn shoot_whole_page(&self, page: &Page<'_>) -> Result<()> {
        page.show_whole(self.screen).await?;
        self.shoot(page, "whole-page").await
    }
}
