//! An opened page: how far it is, what it shows, and whether anything went wrong on it.

use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail, ensure};
use serde_json::{Value, json};
use thirtyfour::prelude::*;

use super::Session;
use super::find::{self, Role};
use super::pixels::Picture;

/// How long the page may take to reach a state, on a loaded machine without a graphics card.
const PATIENCE: Duration = Duration::from_secs(90);

/// How long a script may take that solves many tops.
const PATIENCE_WITH_SCRIPTS: Duration = Duration::from_secs(300);

/// A window's inside.
#[derive(Debug, Clone, Copy)]
pub struct Screen {
    /// The word for it in file names.
    pub name: &'static str,
    pub(super) width: u32,
    pub(super) height: u32,
    pub(super) phone: bool,
}

/// A laptop's screen.
pub const DESKTOP: Screen = Screen { name: "desktop", width: 1440, height: 900, phone: false };

/// A phone held upright.
pub const PHONE: Screen = Screen { name: "phone", width: 390, height: 844, phone: true };

/// Small, so that drawing in software leaves time for everything else.
pub const SMALL: Screen = Screen { name: "small", width: 640, height: 480, phone: false };

/// A page in a browser window. What a person does on it is in `hands`, what it shows in `figures` and `motion`.
pub struct Page<'a> {
    pub(super) session: &'a Session,
}

impl<'a> Page<'a> {
    /// Opens `url` as a first visit: nothing cached, nothing stored.
    ///
    /// # Errors
    /// When the browser doesn't answer.
    pub async fn open(session: &'a Session, url: &str, screen: Screen) -> Result<Page<'a>> {
        session.driver.goto("about:blank").await?;
        session.devtools("Network.clearBrowserCache", json!({})).await?;
        let everything = json!({ "origin": url.trim_end_matches('/'), "storageTypes": "all" });
        session.devtools("Storage.clearDataForOrigin", everything).await?;
        let page = Page { session };
        page.resize(screen).await?;
        // What the blank page logged is not this page's.
        session.errors().await?;
        session.driver.goto(url).await.with_context(|| format!("opening {url}"))?;
        Ok(page)
    }

    pub(super) async fn resize(&self, screen: Screen) -> Result<()> {
        let Screen { width, height, phone, .. } = screen;
        let metrics = json!({ "width": width, "height": height, "mobile": phone, "deviceScaleFactor": 1 });
        self.session.devtools("Emulation.setDeviceMetricsOverride", metrics).await?;
        Ok(())
    }

    /// Waits until the mode table is filled.
    ///
    /// # Errors
    /// When the page says that it can't compute, or takes too long.
    pub async fn modes_shown(&self) -> Result<()> {
        let begun = Instant::now();
        loop {
            let state = self.text("return document.documentElement.dataset.state ?? '';").await?;
            match state.as_str() {
                "modes" => return Ok(()),
                "error" => bail!("the page is in its error state; it says: {}", self.words().await?),
                _ => {}
            }
            if begun.elapsed() > PATIENCE {
                let errors = self.session.errors().await?;
                bail!("the page is still at “{state}” after {PATIENCE:?}, waiting for modes; errors: {errors:?}");
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
    }

    /// Waits until a picture of the top was drawn; the modes may be there before or after it.
    ///
    /// # Errors
    /// When that takes too long.
    pub async fn drawn(&self) -> Result<()> {
        self.until("the top is drawn", "performance.getEntriesByName('bombatura:first-top').length > 0").await
    }

    /// Waits until `condition`, a JavaScript expression, holds.
    ///
    /// # Errors
    /// When that takes too long.
    pub async fn until(&self, what: &str, condition: &str) -> Result<()> {
        let begun = Instant::now();
        while !self.value(&format!("return Boolean({condition});")).await?.as_bool().unwrap_or(false) {
            ensure!(
                begun.elapsed() < PATIENCE,
                "waited {PATIENCE:?} in vain until {what}; page: {}",
                self.words().await?
            );
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        Ok(())
    }

    /// Fails with everything that went wrong since the page was opened.
    ///
    /// # Errors
    /// When something did.
    pub async fn without_errors(&self) -> Result<()> {
        self.errors_are_only(&[]).await
    }

    /// The same for a check that breaks something itself: errors that contain one of `expected` are its own.
    pub(super) async fn errors_are_only(&self, expected: &[&str]) -> Result<()> {
        let mut errors = self.session.errors().await?;
        errors.retain(|error| !expected.iter().any(|words| error.contains(words)));
        ensure!(errors.is_empty(), "errors on the page:\n{}", errors.join("\n"));
        Ok(())
    }

    /// The time of a `performance.mark` after navigation began, in ms.
    ///
    /// # Errors
    /// When the page set no such mark.
    pub async fn mark_ms(&self, name: &str) -> Result<f64> {
        let script = format!("return performance.getEntriesByName({name:?})[0]?.startTime ?? null;");
        self.value(&script).await?.as_f64().with_context(|| format!("the page set no mark {name}"))
    }

    pub(super) async fn find(&self, role: Role, name: &str) -> Result<WebElement> {
        find::find(&self.session.driver, role, name).await
    }

    /// Everything a person can read on the page.
    pub(super) async fn words(&self) -> Result<String> {
        self.text("return document.body.innerText;").await
    }

    pub(super) async fn text(&self, script: &str) -> Result<String> {
        Ok(self.session.driver.execute(script, vec![]).await?.convert()?)
    }

    pub(crate) async fn value(&self, script: &str) -> Result<Value> {
        Ok(self.session.driver.execute(script, vec![]).await?.json().clone())
    }

    /// Runs a script that calls the last of its arguments with its result when it is done.
    ///
    /// # Errors
    /// When it takes longer than five minutes or fails.
    pub async fn run(&self, script: &str) -> Result<Value> {
        self.session.driver.set_script_timeout(PATIENCE_WITH_SCRIPTS).await?;
        Ok(self.session.driver.execute_async(script, vec![]).await?.json().clone())
    }

    /// The drawn top as it is now.
    pub(super) async fn picture(&self) -> Result<Picture> {
        Picture::take(self.session).await
    }

    /// The window as a PNG.
    ///
    /// # Errors
    /// When the browser doesn't answer.
    pub async fn screenshot(&self) -> Result<Vec<u8>> {
        Ok(self.session.driver.screenshot_as_png().await?)
    }
}
