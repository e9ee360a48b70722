//! What a person does on the page, and what a person's system asks of it.

use std::time::{Duration, Instant};

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

    /// Holds an arrow key on what has the focus for as long as `held` says, `repeats_a_second`: to the right for a second and to the
    /// left for the next, and so on.
    ///
    /// # Errors
    /// When the browser doesn't answer.
    pub async fn hold_arrow(&self, repeats_a_second: u32, held: Duration) -> Result<()> {
        let begun = Instant::now();
        let mut ticks = tokio::time::interval(Duration::from_secs(1) / repeats_a_second);
        let mut last = "";
        while begun.elapsed() < held {
            ticks.tick().await;
            let (key, code) =
                if begun.elapsed().as_secs().is_multiple_of(2) { ("ArrowRight", 39) } else { ("ArrowLeft", 37) };
            let press = json!({
                "type": "rawKeyDown", "key": key, "code": key, "windowsVirtualKeyCode": code, "autoRepeat": key == last,
            });
            self.session.devtools("Input.dispatchKeyEvent", press).await?;
            last = key;
        }
        let release = json!({ "type": "keyUp", "key": last, "code": last });
        self.session.devtools("Input.dispatchKeyEvent", release).await?;
        Ok(())
    }

    /// Drags the thumb of the slider that `selector` finds to and fro over two thirds of its way, once in four seconds, by
    /// `moves_a_second`, for as long as `held` says.
    ///
    /// # Errors
    /// When there is no such slider.
    pub async fn drag_slider(&self, selector: &str, moves_a_second: u32, held: Duration) -> Result<()> {
        let place = format!(
            "const slider = document.querySelector({selector:?}); slider.scrollIntoView({{ block: 'center' }}); \
             const {{ x, y, width, height }} = slider.getBoundingClientRect(); return [x, y + height / 2, width];"
        );
        let [left, y, width]: [f64; 3] =
            serde_json::from_value(self.value(&place).await?).context("the slider's place")?;
        let mouse = async |kind: &str, share: f64| {
            let buttons = i32::from(kind != "mouseReleased");
            let event = json!({
                "type": kind, "x": left + share * width, "y": y, "button": "left", "buttons": buttons, "clickCount": 1,
            });
            self.session.devtools("Input.dispatchMouseEvent", event).await
        };
        mouse("mousePressed", 1.0 / 6.0).await?;
        let begun = Instant::now();
        let mut ticks = tokio::time::interval(Duration::from_secs(1) / moves_a_second);
        while begun.elapsed() < held {
            ticks.tick().await;
            let way = (begun.elapsed().as_secs_f64() / 2.0).rem_euclid(2.0);
            mouse("mouseMoved", 1.0 / 6.0 + way.min(2.0 - way) * 2.0 / 3.0).await?;
        }
        mouse("mouseReleased", 0.5).await?;
        Ok(())
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
