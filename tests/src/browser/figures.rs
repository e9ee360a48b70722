//! Reading the page's numbers and messages, and waiting for them.

use std::time::Duration;

use anyhow::{Context, Result};

use super::find::Role;
use super::page::Page;

/// Figures that stay the same for this long are those of the last change.
const QUIET: Duration = Duration::from_millis(700);

/// Holds when the figures on the page come from the standard mesh.
const SETTLED: &str = "document.documentElement.dataset.basis === 'standard'";

/// Holds when it is known how sure they are, and what the mesh leaves is corrected.
const JUDGED: &str = "document.documentElement.dataset.surety === 'known'";

impl Page<'_> {
    /// Waits until the figures are those of the standard mesh and stay so. How sure they are comes seconds later, and only what it is
    /// about waits for that.
    ///
    /// # Errors
    /// When that takes too long.
    pub async fn settle(&self) -> Result<()> {
        loop {
            self.until("the figures come from the standard mesh", SETTLED).await?;
            let now = self.hertz().await?;
            tokio::time::sleep(QUIET).await;
            if self.hertz().await? == now && self.value(&format!("return {SETTLED};")).await? == true {
                return Ok(());
            }
        }
    }

    /// Waits until the figures are settled and judged.
    ///
    /// # Errors
    /// When that takes too long.
    pub async fn judged(&self) -> Result<()> {
        self.settle().await?;
        self.until("it is known how sure the figures are", JUDGED).await
    }

    /// Waits until the table's frequencies are other ones and have settled.
    pub(super) async fn figures_changed_from(&self, before: &[f64]) -> Result<()> {
        let before = serde_json::to_string(before)?;
        self.until("the figures change", &format!("JSON.stringify({HERTZ}) !== JSON.stringify({before})")).await?;
        self.settle().await
    }

    /// The frequencies in the mode table, in its order, in Hz, as the mesh has them: judging leaves those alone.
    pub(super) async fn hertz(&self) -> Result<Vec<f64>> {
        let hertz = self.value(&format!("return {HERTZ};")).await?;
        serde_json::from_value(hertz).context("a frequency in the table isn't a number")
    }

    /// (mode): what the table says of how sure its frequency is, ± Hz, and its quality factor.
    pub(super) async fn sureties(&self) -> Result<Vec<[f64; 2]>> {
        let script = "return [...document.querySelectorAll('#modes tbody tr')].map((row) =>
            ['.spread', '.quality'].map((cell) => Number(row.querySelector(cell).textContent.replace(/[±\\s]/g, ''))));";
        serde_json::from_value(self.value(script).await?).context("what the table says of a mode isn't a number")
    }

    /// What stands in a number field, as text.
    pub(super) async fn number(&self, name: &str) -> Result<String> {
        self.find(Role::Number, name).await?.prop("value").await?.context("a value")
    }

    /// Waits for an alert and gives its words.
    ///
    /// # Errors
    /// When none comes.
    pub async fn alert(&self) -> Result<String> {
        self.until("the page shows an alert", &format!("{ALERT} !== ''")).await?;
        self.text(&format!("return {ALERT};")).await
    }
}

/// What the cells under the heading Hz say of the mesh.
const HERTZ: &str = r"[...document.querySelectorAll('table')].flatMap((table) => {
  const column = [...(table.tHead?.rows[0]?.cells ?? [])].findIndex((cell) => cell.textContent.trim() === 'Hz');
  return column < 0 ? [] : [...table.tBodies[0].rows].map((row) => Number.parseFloat(row.cells[column].title.replace(/\s/g, '')));
})";

/// The words of whatever is announced as an alert now.
const ALERT: &str =
    "[...document.querySelectorAll('[role=alert]')].map((alert) => alert.innerText.trim()).join(' ').trim()";
