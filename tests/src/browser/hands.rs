//! What a person does on the page, and what a person's system asks of it.

use std::time::Duration;

use anyhow::{Context, Result};
use serde_json::json;
use thirtyfour::prelude::*;

use super::find::Role;
use super::page::{Page, Screen};

impl Page<'_> {
    /// Clicks the button with this name.
    ///
    /// # Errors
    /// When there is none.
    pub async fn press(&self, button: &str) -> Result<()> {
        Ok(self.find(Role::Button, button).await?.click().await?)
    }

    /// Clicks the mode in this row of the table, counted from 0.
    ///
    /// # Errors
    /// When there is none.
    pub async fn choose_mode(&self, row: usize) -> Result<()> {
        let buttons = self.find(Role::Table, "Modes").await?.find_all(By::Css("tbody button")).await?;
        Ok(buttons.get(row).with_context(|| format!("no mode in row {row}"))?.click().await?)
    }

    /// Types a number over what stands in a field, and Enter.
    ///
    /// # Errors
    /// When there is no such field.
    pub async fn type_number(&self, field: &str, number: &str) -> Result<()> {
        let field = self.find(Role::Number, field).await?;
        field.send_keys(Key::Control + "a").await?;
        Ok(field.send_keys(number.to_owned() + Key::Enter).await?)
    }

    /// Moves a slider by a tenth of its way, in one step: several would be solved one after the other, and no sign on
    /// the page tells the last of them from those before.
    pub(super) async fn push_slider(&self, name: &str) -> Result<()> {
        Ok(self.find(Role::Slider, name).await?.send_keys(Key::PageUp).await?)
    }

    /// Sets the system's wish for dark colours.
    ///
    /// # Errors
    /// When the browser doesn't answer.
    pub async fn prefer_dark(&self, dark: bool) -> Result<()> {
        let value = if dark { "dark" } else { "light" };
        let features = json!({ "features": [{ "name": "prefers-color-scheme", "value": value }] });
        self.session.devtools("Emulation.setEmulatedMedia", features).await?;
        Ok(())
    }

    /// Makes the window as high as the page, as wide as `screen`.
    ///
    /// # Errors
    /// When the browser doesn't answer.
    pub async fn show_whole(&self, screen: Screen) -> Result<()> {
        let height = self.value("return document.documentElement.scrollHeight;").await?;
        let height = height.as_u64().and_then(|height| u32::try_from(height).ok()).context("the page's height")?;
        self.resize(Screen { height: height.max(screen.height), ..screen }).await
    }

    /// Waits until the browser has drawn a few frames.
    ///
    /// # Errors
    /// When the browser doesn't answer.
    pub async fn draw_anew(&self) -> Result<()> {
        tokio::time::sleep(Duration::from_millis(600)).await;
        let frames = "const done = arguments[0]; let left = 4; \
                      const next = () => (left-- > 0 ? requestAnimationFrame(next) : done()); next();";
        self.session.driver.execute_async(frames, vec![]).await?;
        Ok(())
    }
}
