//! Watching the stage: what moves, what stands, what became another picture.

use std::time::{Duration, Instant};

use anyhow::{Result, ensure};

use super::find::Role;
use super::page::Page;
use super::pixels::Picture;

/// Above this share of changed pixels two pictures show different motion. A still picture drawn twice does not change
/// at all, and the smallest motion looked for sweeps the top's outline over far more.
const MOVED: f64 = 0.002;

/// How long a new picture may take on a loaded machine that draws in software.
const PATIENCE: Duration = Duration::from_secs(20);

impl Page<'_> {
    /// Stops the motion and waits until the last frame is through.
    pub(super) async fn pause(&self) -> Result<()> {
        self.find(Role::Button, "Pause").await?.click().await?;
        self.find(Role::Button, "Play").await?;
        let mut last = self.picture().await?;
        let begun = Instant::now();
        loop {
            tokio::time::sleep(Duration::from_millis(300)).await;
            let now = self.picture().await?;
            if now.share_changed(&last)? == 0.0 {
                return Ok(());
            }
            ensure!(begun.elapsed() < PATIENCE, "the top still moves {PATIENCE:?} after Pause");
            last = now;
        }
    }

    /// Waits until the stage shows something else than now.
    pub(super) async fn see_change(&self, what: &str) -> Result<()> {
        let before = self.picture().await?;
        self.changed_from(&before, what).await
    }

    /// Waits until the stage shows something else than `before`.
    pub(super) async fn changed_from(&self, before: &Picture, what: &str) -> Result<()> {
        let begun = Instant::now();
        loop {
            let share = self.picture().await?.share_changed(before)?;
            if share > MOVED {
                return Ok(());
            }
            ensure!(begun.elapsed() < PATIENCE, "{what}: only {:.3} % of the canvas changed", 100.0 * share);
            tokio::time::sleep(Duration::from_millis(100)).await;
        }
    }
}
