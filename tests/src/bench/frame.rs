//! What drawing a frame of the moving top costs the page's own thread.

use anyhow::{Result, ensure};
use bombatura_serve::serve::Server;

use super::{Row, median, percentile};
use crate::browser::{Backend, Chromedriver, DESKTOP, Page, Session};

const FRAMES: usize = 120;

/// Times everything that the page does in its animation frames: drawing, and whatever moves in step with it.
const WATCH: &str = "const done = arguments[0]; const ask = window.requestAnimationFrame; const times = []; \
    window.requestAnimationFrame = (draw) => ask.call(window, (now) => { \
        const begun = performance.now(); draw(now); times.push(performance.now() - begun); }); \
    const look = () => (times.length < FRAMES ? setTimeout(look, 50) : \
        (window.requestAnimationFrame = ask, done(times.slice(0, FRAMES)))); look();";

pub(super) async fn rows(server: &Server, chromedriver: &Chromedriver) -> Result<Vec<Row>> {
    let webgpu = times_ms(server, chromedriver, Backend::WebGpu).await?;
    let webgl2 = times_ms(server, chromedriver, Backend::WebGl2).await?;
    let note = format!(
        "standard mesh moving at 1440x900, median of {FRAMES} frames on WebGPU, 95 of 100 within {:.1} ms; WebGL 2: {:.1} and \
         {:.1} ms, in software, whose calls wait for the drawing",
        percentile(webgpu.clone(), 95),
        median(webgl2.clone()),
        percentile(webgl2, 95)
    );
    Ok(vec![Row { id: "frame_page_thread_ms", value: median(webgpu), unit: "ms", note }])
}

async fn times_ms(server: &Server, chromedriver: &Chromedriver, backend: Backend) -> Result<Vec<f64>> {
    let session = Session::start(chromedriver, backend).await?;
    let page = Page::open(&session, &server.url(), DESKTOP).await?;
    page.judged().await?;
    page.drawn().await?;
    let times: Vec<f64> = serde_json::from_value(page.run(&WATCH.replace("FRAMES", &FRAMES.to_string())).await?)?;
    session.end().await?;
    ensure!(times.len() == FRAMES, "{} frames were timed", times.len());
    Ok(times)
}
