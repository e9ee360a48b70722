//! A handful of scenes against pictures kept in `tests/pictures/scenes`: the stage draws what it drew when a person last looked, and the
//! same whatever draws.
//!
//! The kept pictures are our own. They say that nothing changed unasked, not that it is right; that is for whoever looks at a new one
//! before keeping it.

use std::path::{Path, PathBuf};
use std::time::Instant;

use anyhow::{Context, Result, ensure};
use bombatura_serve::Workspace;

use super::{Place, Run};
use crate::browser::find::Role;
use crate::browser::firefox;
use crate::browser::page::Page;
use crate::browser::pixels::Picture;
use crate::outcome::Outcome;

/// The stage's size in a scene, CSS pixels.
pub(in crate::browser) const WIDTH: u32 = 480;
pub(in crate::browser) const HEIGHT: u32 = 360;

/// Largest share of pixels that may look different. Outlines fall on other samples from one rasteriser to the next.
const MOST_CHANGED: f64 = 0.005;

/// The scene that a first visit shows.
const FIRST: &str = "ring";

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("scenes look as they did", scenes_look_as_they_did(place)).await;
}

/// The same first scene in Firefox.
pub(super) fn run_in_firefox(site: &Path, only: Option<&str>, outcomes: &mut Vec<Outcome>) {
    let name = "scenes look as they did in Firefox";
    if only.is_none_or(|only| name.contains(only)) {
        let begun = Instant::now();
        let compared = firefox::first_visit(site).and_then(|seen| compare(FIRST, "firefox", &seen));
        outcomes.push(Outcome::record(name.to_owned(), begun, compared));
    }
}

async fn scenes_look_as_they_did(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.judged().await?;
    let backend = place.session.backend().name();
    let mut misses = Vec::new();
    let mut look = async |scene: &str| -> Result<()> {
        if let Err(miss) = compare(scene, backend, &page.stage_alone().await?) {
            misses.push(miss.to_string());
        }
        Ok(())
    };
    look(FIRST).await?;
    page.tick("Ghosts of the swing").await?;
    page.press("Bass side").await?;
    look("ghosts").await?;
    page.tick("Ghosts of the swing").await?;
    page.choose_lowest().await?;
    // Farther down the stage lies over its buttons on a narrow window.
    page.value("scrollTo(0, 0);").await?;
    page.press("Inside").await?;
    look("inside").await?;
    page.find(Role::Choice, "Colour by").await?.send_keys("nothing").await?;
    page.press("End on").await?;
    look("end_on").await?;
    page.find(Role::Choice, "Colour by").await?.send_keys("thickness").await?;
    page.press("Outside").await?;
    page.until("the thickness is there", "document.querySelector('#colour-scale').textContent.includes('mm')").await?;
    look("thickness").await?;
    ensure!(misses.is_empty(), "{}", misses.join("\n"));
    page.without_errors().await
}

impl Page<'_> {
    /// The stage at the scenes' size, nothing over it.
    async fn stage_alone(&self) -> Result<Picture> {
        let lay = format!(
            "const style = document.createElement('style'); style.id = 'alone'; style.textContent = `#stage-view {{ \
             position: fixed; inset: 0 auto auto 0; z-index: 9; inline-size: {WIDTH}px; block-size: {HEIGHT}px; }}`; \
             document.head.append(style);"
        );
        self.value(&lay).await?;
        self.draw_anew().await?;
        let seen = Picture::decode(&self.screenshot().await?)?.corner(WIDTH, HEIGHT);
        self.value("document.querySelector('#alone').remove();").await?;
        seen
    }
}

/// Holds what was seen against the kept picture; what differs is written where it can be looked at.
fn compare(scene: &str, browser: &str, seen: &Picture) -> Result<()> {
    let workspace = Workspace::find()?;
    let kept = workspace.root().join(format!("tests/pictures/scenes/{scene}.png"));
    let share = match std::fs::read(&kept) {
        Ok(png) => seen.share_changed(&Picture::decode(&png)?)?,
        Err(_) => 1.0,
    };
    if share <= MOST_CHANGED {
        return Ok(());
    }
    let folder: PathBuf = workspace.root().join("target/scenes");
    std::fs::create_dir_all(&folder)?;
    let shown = folder.join(format!("{scene}-{browser}.png"));
    std::fs::write(&shown, seen.encode()?).with_context(|| format!("writing {}", shown.display()))?;
    anyhow::bail!(
        "{:.2} % of “{scene}” look different on {browser}, {:.1} % may: compare {} with {}, and keep the new one if it is as it should be",
        100.0 * share,
        100.0 * MOST_CHANGED,
        shown.display(),
        kept.display()
    )
}
