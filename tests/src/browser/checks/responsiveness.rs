//! The page's thread stays free while the worker solves.

use anyhow::{Result, bail};

use super::controls::move_slider;
use super::{Place, Run};
use crate::browser::Backend;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    // Software WebGL 2 rasterises on the page's thread (WebGPU does not): one frame of the new shape alone takes 50 to 120 ms
    // there, whatever the page does. Without graphics hardware drawing is left aside there.
    let drawn = run.backend != Backend::WebGl2;
    run.check("solving never blocks the page for more than 50 ms", page_stays_free(place, drawn)).await;
}

/// Collects the browser's `longtask` entries: tasks of the page's thread that took more than 50 ms (W3C Long Tasks).
const OBSERVE: &str = r#"
globalThis.__long_tasks = [];
globalThis.__observer?.disconnect();
globalThis.__observer = new PerformanceObserver((list) => {
  for (const task of list.getEntries()) __long_tasks.push(task.duration);
});
__observer.observe({ type: "longtask" });
"#;

/// A machine busy with other things stretches any task, but not at the same point every time; a page that blocks does
/// so at every try.
const TRIES: usize = 3;

/// Drawing in software takes the thread's time without a graphics card, so the top stands still in a small window: what
/// is left of the page's work is taking results in and showing them once.
async fn page_stays_free(place: &Place<'_>, drawn: bool) -> Result<()> {
    let page = place.still_page().await?;
    if !drawn {
        page.value("document.querySelector('#stage-view').style.transform = 'translateY(-300vh)';").await?;
    }
    let mut seen = Vec::new();
    for _ in 0..TRIES {
        page.value(OBSERVE).await?;
        move_slider(&page, "Thickness").await?;
        let tasks: Vec<f64> = serde_json::from_value(page.value("return __long_tasks;").await?)?;
        if tasks.is_empty() {
            return page.without_errors().await;
        }
        seen.push(tasks);
    }
    bail!("tasks of more than 50 ms at every one of {TRIES} solves (ms): {seen:?}");
}
