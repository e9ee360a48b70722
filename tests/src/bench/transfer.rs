//! What a first visit downloads until the modes are there, as the server sent it to a real browser.

use anyhow::{Result, ensure};
use bombatura_serve::serve::Server;

use super::Row;
use crate::browser::{Backend, Chromedriver, DESKTOP, Page, Session};

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
        let served = server.take_served();
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
