//! One browser window: started for a backend, with an eye on errors.

use anyhow::{Context, Result};
use http::Method;
use serde_json::{Value, json};
use thirtyfour::SessionId;
use thirtyfour::common::command::FormatRequestData;
use thirtyfour::common::requestdata::RequestData;
use thirtyfour::prelude::*;

use super::page_errors;
use super::{Backend, Chromedriver};

/// A browser with one window and a fresh profile; the profile goes when the session ends.
pub struct Session {
    pub(super) driver: WebDriver,
    backend: Backend,
}

impl Session {
    /// Starts Chromium for `backend`.
    ///
    /// # Errors
    /// When Chromium isn't installed or refuses to start.
    pub async fn start(chromedriver: &Chromedriver, backend: Backend) -> Result<Session> {
        let mut capabilities = DesiredCapabilities::chrome();
        for switch in backend.switches() {
            capabilities.add_arg(switch)?;
        }
        // Everything that the console shows, errors of workers and of downloads among it.
        capabilities.set("goog:loggingPrefs", json!({ "browser": "ALL" }))?;
        let driver = WebDriver::new(chromedriver.url(), capabilities).await.context("can't start Chromium")?;
        let session = Session { driver, backend };
        session.run_before_every_page(page_errors::COLLECT).await?;
        Ok(session)
    }

    /// What it draws with.
    #[must_use]
    pub fn backend(&self) -> Backend {
        self.backend
    }

    /// Runs `script` in every document opened from now on, before the document's own scripts; gives what it is known by.
    async fn run_before_every_page(&self, script: &str) -> Result<Value> {
        let answer = self.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": script })).await?;
        Ok(answer["identifier"].clone())
    }

    /// Does `work` while every document that it opens begins with `script`.
    pub(super) async fn with_script(&self, script: &str, work: impl Future<Output = Result<()>>) -> Result<()> {
        let identifier = self.run_before_every_page(script).await?;
        let result = work.await;
        self.devtools("Page.removeScriptToEvaluateOnNewDocument", json!({ "identifier": identifier })).await?;
        result
    }

    /// A command of the DevTools protocol.
    pub(super) async fn devtools(&self, command: &'static str, params: Value) -> Result<Value> {
        let answer = self.driver.handle().cmd(DevTools { command, params }).await;
        Ok(answer.with_context(|| format!("DevTools command {command}"))?.value()?)
    }

    /// Sets the system's wish for less motion, which pages opened from now on follow.
    pub(super) async fn prefer_less_motion(&self, less: bool) -> Result<()> {
        let value = if less { "reduce" } else { "no-preference" };
        let features = json!({ "features": [{ "name": "prefers-reduced-motion", "value": value }] });
        self.devtools("Emulation.setEmulatedMedia", features).await?;
        Ok(())
    }

    /// Everything that went wrong on the page since it was opened.
    pub(super) async fn errors(&self) -> Result<Vec<String>> {
        let mut errors: Vec<String> = self.driver.execute(page_errors::READ, vec![]).await?.convert()?;
        let log = self.driver.get_log("browser").await.context("the browser's log")?;
        errors.extend(log.into_iter().filter(|entry| entry.level == "SEVERE").map(|entry| entry.message));
        Ok(errors)
    }

    /// Ends the browser.
    ///
    /// # Errors
    /// When it has gone before.
    pub async fn end(self) -> Result<()> {
        Ok(self.driver.quit().await?)
    }
}

/// chromedriver's way to the DevTools protocol.
#[derive(Debug)]
struct DevTools {
    command: &'static str,
    params: Value,
}

impl FormatRequestData for DevTools {
    fn format_request(&self, session_id: &SessionId) -> RequestData {
        RequestData::new(Method::POST, format!("/session/{session_id}/goog/cdp/execute"))
            .add_body(json!({ "cmd": self.command, "params": self.params }))
    }
}
