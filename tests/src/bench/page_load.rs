//! How long a first visit waits for the drawn top and for the modes.

use anyhow::Result;
use bombatura_serve::serve::Server;

use super::{Row, median};
use crate::browser::{Backend, Chromedriver, DESKTOP, Page, Session};

/// First visits on each backend. Odd, for the median.
const VISITS: usize = 5;

/// Marks that the page sets when what they name is on the screen.
const MARKS: [(&str, &str); 2] =
    [("page_first_top_ms", "bombatura:first-top"), ("page_first_modes_ms", "bombatura:first-modes")];

pub(super) async fn rows(server: &Server, chromedriver: &Chromedriver) -> Result<Vec<Row>> {
    let webgpu = medians(server, chromedriver, Backend::WebGpu).await?;
    let webgl2 = medians(server, chromedriver, Backend::WebGl2).await?;
    let row = |((id, _), (webgpu, webgl2)): ((&'static str, &str), (f64, f64))| Row {
        id,
        value: webgpu,
        unit: "ms",
        note: format!("WebGPU drawn in software, 1440x900, median of {VISITS} first visits; WebGL 2: {webgl2:.0} ms"),
    };
    Ok(MARKS.into_iter().zip(webgpu.into_iter().zip(webgl2)).map(row).collect())
}

/// The median of each mark, in ms after navigation began.
async fn medians(server: &Server, chromedriver: &Chromedriver, backend: Backend) -> Result<Vec<f64>> {
    let mut times = vec![Vec::new(); MARKS.len()];
    for _ in 0..VISITS {
        // A browser of its own for each visit: compiled wasm stays in a running one's memory.
        let session = Session::start(chromedriver, backend).await?;
        let page = Page::open(&session, &server.url(), DESKTOP).await?;
        page.modes_shown().await?;
        page.drawn().await?;
        for ((_, mark), times) in MARKS.iter().zip(&mut times) {
            times.push(page.mark_ms(mark).await?);
        }
        session.end().await?;
    }
    Ok(times.into_iter().map(median).collect())
}
