//! What a first visit downloads until the modes are there, as the server sent it to a real browser.

use std::time::{Duration, UNIX_EPOCH};

use anyhow::{Context, Result, ensure};
use bombatura_serve::serve::Server;

use super::Row;
use crate::browser::{Backend, Chromedriver, DESKTOP, Page, Session};

/// When the later of the top and its modes was there, ms since 1970.
const BOTH_THERE_MS: &str = r#"
const marks = ["bombatura:first-top", "bombatura:first-modes"].map((name) => performance.getEntriesByName(name)[0].startTime);
return performance.timeOrigin + Math.max(...marks);
"#;

pub(super) async fn rows(server: &Server, chromedriver: &Chromedriver) -> Result<Vec<Row>> {
    let mut rows = Vec::new();
    for (backend, id) in
        [(Backend::WebGpu, "transfer_webgpu_brotli_bytes"), (Backend::WebGl2, "transfer_webgl2_brotli_bytes")]
    {
        let session = Session::start(chromedriver, backend).await?;
        server.take_served();
        let page = Page::open(&session, &server.url(), DESKTOP).await?;
        // Whichever comes first, a fair count holds the view and the modes.
        page.modes_shown().await?;
        page.drawn().await?;
        let there_ms = page.value(BOTH_THERE_MS).await?.as_f64().context("when the page was there")?;
        let there = UNIX_EPOCH + Duration::from_secs_f64(1e-3 * there_ms);
        let mut served = server.take_served();
        // The page goes on with what it has waited with: drawings, a worker that judges.
        served.retain(|answer| answer.at <= there);
        ensure!(served.iter().all(|answer| answer.status == 200), "not every file was there: {served:?}");
        let view = format!("wasm/view_{}_bg.wasm", backend.name());
        ensure!(served.iter().any(|answer| answer.target.ends_with(&view)), "{view} was not asked for: {served:?}");
        let bytes: u64 = served.iter().map(|answer| answer.bytes).sum();
        let note = format!("bodies of {} answers to a first visit, brotli, without headers", served.len());
        rows.push(Row { id, value: bytes as f64, unit: "bytes", note });
        session.end().await?;
    }
    Ok(rows)
}
