//! What the page has to do in a browser, one file for each part of it.

mod access;
mod closer;
mod compare;
mod controls;
mod drawing;
mod drawings;
mod driven;
mod fallback;
mod files;
mod fittings;
mod folder;
mod kept;
mod language;
mod lessons;
mod live;
mod measured;
mod motion;
mod offline;
mod pointers;
mod recovery;
mod responsiveness;
pub(super) mod scenes;
mod sections;
mod shared;
mod steps;
mod table;
mod wood;

use std::path::Path;
use std::time::Instant;

use anyhow::Result;
use bombatura_serve::serve::Server;

use super::page::SMALL;
use super::{Backend, Chromedriver, Page, Session};
use crate::outcome::Outcome;

/// Runs every check of the site in `site` on every backend; `only` limits them to those whose name contains it.
///
/// # Errors
/// When the server, chromedriver or Chromium can't be started; what a check finds is in the outcomes.
pub async fn run(site: &Path, only: Option<&str>) -> Result<Vec<Outcome>> {
    let server = Server::start(site, 0)?;
    let chromedriver = Chromedriver::start()?;
    let mut outcomes = Vec::new();
    for backend in [Backend::WebGpu, Backend::WebGl2, Backend::Nothing] {
        let session = Session::start(&chromedriver, backend).await?;
        let place = Place { session: &session, url: server.url(), site };
        let mut run = Run { backend, only, outcomes: &mut outcomes };
        if backend == Backend::Nothing {
            fallback::run(&place, &mut run).await;
            live::run(&place, &mut run).await;
        } else {
            drawing::run(&place, &mut run).await;
            scenes::run(&place, &mut run).await;
            closer::run_pictures(&place, &mut run).await;
            compare::run_pictures(&place, &mut run).await;
            if backend == Backend::WebGpu {
                whatever_draws(&place, &mut run).await;
            }
            recovery::run(&place, &mut run).await;
            responsiveness::run(&place, &mut run).await;
            folder::run(&place, &mut run).await;
            offline::run_views(&place, &mut run).await;
        }
        session.end().await?;
    }
    scenes::run_in_firefox(site, only, &mut outcomes);
    Ok(outcomes)
}

/// What is typed, read and written beside the stage, and what the stage is told, the same whatever draws there; that both draw alike the
/// scenes show.
async fn whatever_draws(place: &Place<'_>, run: &mut Run<'_>) {
    access::run(place, run).await;
    motion::run(place, run).await;
    table::run(place, run).await;
    pointers::run(place, run).await;
    closer::run(place, run).await;
    compare::run(place, run).await;
    controls::run(place, run).await;
    drawings::run(place, run).await;
    files::run(place, run).await;
    kept::run(place, run).await;
    language::run(place, run).await;
    sections::run(place, run).await;
    shared::run(place, run).await;
    offline::run(place, run).await;
    fittings::run(place, run).await;
    driven::run(place, run).await;
    lessons::run(place, run).await;
    steps::run(place, run).await;
    wood::run(place, run).await;
    measured::run(place, run).await;
    live::run(place, run).await;
}

/// Where a check finds the page.
struct Place<'a> {
    session: &'a Session,
    url: String,
    site: &'a Path,
}

impl Place<'_> {
    /// A first visit in a small window, waited for until the top is drawn and all is worked out, so that nothing but the motion
    /// changes on its own any more, nor takes the time to draw it.
    async fn moving_page(&self) -> Result<Page<'_>> {
        self.session.prefer_less_motion(false).await?;
        let page = self.settled_page().await?;
        page.judged().await?;
        Ok(page)
    }

    /// The same without waiting for how sure the figures are, and with the system's wish for less motion, which leaves drawing in
    /// software more time for everything else.
    async fn still_page(&self) -> Result<Page<'_>> {
        self.session.prefer_less_motion(true).await?;
        self.settled_page().await
    }

    async fn settled_page(&self) -> Result<Page<'_>> {
        let page = Page::open(self.session, &self.url, SMALL).await?;
        page.modes_shown().await?;
        page.settle().await?;
        if self.session.backend() != Backend::Nothing {
            page.drawn().await?;
            // Purfling and shade come after the first picture, and are another picture.
            page.until("the top is dressed", "performance.getEntriesByName('bombatura:dressed').length > 0").await?;
        }
        Ok(page)
    }
}

/// Runs checks one after the other and takes down how they came out.
struct Run<'a> {
    backend: Backend,
    only: Option<&'a str>,
    outcomes: &'a mut Vec<Outcome>,
}

impl Run<'_> {
    async fn check(&mut self, name: &str, check: impl Future<Output = Result<()>>) {
        let name = format!("{} on {}", name, self.backend.name());
        if self.only.is_none_or(|only| name.contains(only)) {
            let begun = Instant::now();
            let result = check.await;
            self.outcomes.push(Outcome::record(name, begun, result));
        }
    }
}
