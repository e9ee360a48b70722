//! How many motions a second a hand sees that sweeps the frequency of a driven top: answered by the worker and drawn.

use std::time::{Duration, Instant};

use anyhow::{Context, Result};
use bombatura_serve::serve::Server;

use super::Row;
use crate::browser::{Backend, Chromedriver, DESKTOP, Page, Session};

/// How long it is swept each way.
const SWEEP: Duration = Duration::from_secs(8);

/// What a mouse reports at least, and what a held key repeats on most systems.
const MOVES_A_SECOND: u32 = 60;
const REPEATS_A_SECOND: u32 = 30;

/// Counts the frames that show another motion than the frame before, of the page's own drawing.
const COUNT: &str = "const done = arguments[0]; (async () => { \
    const { backend } = document.querySelector('#stage-view').dataset; \
    const { Stage } = await import(new URL(`../wasm/view_${backend}.js`, document.querySelector('script[src]').src)); \
    const { set_motion, draw } = Stage.prototype; let fresh = false; globalThis.__fields = 0; \
    Stage.prototype.set_motion = function (...motion) { fresh = true; set_motion.apply(this, motion); }; \
    Stage.prototype.draw = function (...moment) { draw.apply(this, moment); __fields += fresh ? 1 : 0; fresh = false; }; \
    done(); })();";

/// The slider of the frequency.
const SLIDER: &str = "[data-section=drive] input[type=range]";

pub(super) async fn rows(server: &Server, chromedriver: &Chromedriver) -> Result<Vec<Row>> {
    let [dragged, held] = fields_a_second(server, chromedriver, Backend::WebGpu).await?;
    let [gl_dragged, gl_held] = fields_a_second(server, chromedriver, Backend::WebGl2).await?;
    let note = format!(
        "frequency swept by a dragged slider, standard mesh at 1440x900 on WebGPU; by a key that repeats {REPEATS_A_SECOND} \
         times a second {held:.1}; WebGL 2: {gl_dragged:.1} and {gl_held:.1}; all in software"
    );
    Ok(vec![Row { id: "driven_fields_per_s", value: dragged, unit: "1/s", note }])
}

/// By the dragged slider and by the held key.
async fn fields_a_second(server: &Server, chromedriver: &Chromedriver, backend: Backend) -> Result<[f64; 2]> {
    let session = Session::start(chromedriver, backend).await?;
    let page = Page::open(&session, &server.url(), DESKTOP).await?;
    page.judged().await?;
    page.drawn().await?;
    page.open_section("Driven at any").await?;
    let told = "document.querySelectorAll('[data-section=drive] .constants td').length >= 3";
    page.until("the top is driven and all is told", told).await?;
    page.run(COUNT).await?;
    let begun = Instant::now();
    page.drag_slider(SLIDER, MOVES_A_SECOND, SWEEP).await?;
    let dragged = since(&page, begun).await?;
    let begun = Instant::now();
    page.hold_arrow(REPEATS_A_SECOND, SWEEP).await?;
    let held = since(&page, begun).await?;
    session.end().await?;
    Ok([dragged, held])
}

/// The count's rate since `begun`; it begins anew.
async fn since(page: &Page<'_>, begun: Instant) -> Result<f64> {
    let seconds = begun.elapsed().as_secs_f64();
    let fields = page.run("const done = arguments[0]; done(__fields); __fields = 0;").await?;
    Ok(fields.as_f64().context("the count of motions drawn")? / seconds)
}
