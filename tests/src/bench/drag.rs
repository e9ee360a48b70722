//! From a handle's new value to its answer on the page, with the page's own worker: drawing is not counted.

use anyhow::{Context, Result};
use bombatura_serve::serve::Server;
use serde::Deserialize;

use super::{Row, median, percentile};
use crate::browser::{Backend, Chromedriver, Page, SMALL, Session};

/// What the script in the page gives: ms of each answer.
#[derive(Deserialize)]
struct Times {
    arch_ms: Vec<f64>,
    arch_standard_ms: Vec<f64>,
    eye_ms: Vec<f64>,
    standard_ms: Vec<f64>,
    fine_ms: Vec<f64>,
    abandoned_ms: Vec<f64>,
    preview_nodes: usize,
    standard_nodes: usize,
    fine_nodes: usize,
    modes: usize,
}

/// Moves handles up and down by tenths of a millimetre, each value sent when the answer to the last is there. The first answers of
/// each kind warm the engine up and don't count. Then abandons solves at different moments and asks the same worker for something that costs
/// nothing.
const SCRIPT: &str = r#"
const done = arguments[arguments.length - 1];
(async () => {
  const at = (path) => new URL(`../${path}`, document.querySelector("script[src]").src);
  const { WorkshopClient } = await import(at("js/workshop_client.js").href);
  const client = new WorkshopClient(at("js/compute_worker.js"), at("wasm/compute_bg.wasm"), () => {});
  const demo = await client.ask("demo", {});
  const wish = { name: "ring", number: 5 };
  const nodes = {};
  const timed = async (kind, change, size, count, warm_up, steps) => {
    const times = [];
    for (let step = 0; step < warm_up + steps; step += 1) {
      const design = JSON.parse(demo);
      change(design, Math.abs((step % 40) - 20));
      const begun = performance.now();
      const answer = await client.ask(kind, { design: JSON.stringify(design), size, count, wish });
      if (step >= warm_up) times.push(performance.now() - begun);
      nodes[size] = answer.picture.nodes;
    }
    return times;
  };
  const arch = (design, tenths) => { design.arching.apex_height_mm += tenths / 10; };
  const eye = (design, tenths) => {
    for (const side of ["bass", "treble"]) design.sound_holes[side].lower_eye_to_edge_mm += tenths / 10;
  };
  const modes = 12;
  const arch_ms = await timed("follow", arch, "preview", modes, 20, 100);
  const eye_ms = await timed("follow", eye, "preview", modes, 10, 40);
  const arch_standard_ms = await timed("follow", arch, "standard", modes, 10, 40);
  const standard_ms = await timed("solve", arch, "standard", 26, 2, 9);
  const fine_ms = await timed("solve", arch, "fine", 60, 0, 3);
  if (!crossOriginIsolated) throw new Error("the page isn't isolated: an abandoned worker is replaced while it computes on");
  const abandoned_ms = [];
  for (let run = 0; run < 60; run += 1) {
    const design = JSON.parse(demo);
    arch(design, 30 + run);
    client.ask("solve", { design: JSON.stringify(design), size: "fine", count: 60, wish }).catch(() => {});
    await new Promise((wait) => setTimeout(wait, 20 + 30 * run));
    const begun = performance.now();
    client.abandon();
    await client.ask("demo", {});
    abandoned_ms.push(performance.now() - begun);
  }
  done({
    arch_ms, arch_standard_ms, eye_ms, standard_ms, fine_ms, abandoned_ms, modes,
    preview_nodes: nodes.preview, standard_nodes: nodes.standard, fine_nodes: nodes.fine,
  });
})();
"#;

pub(super) async fn rows(server: &Server, chromedriver: &Chromedriver) -> Result<Vec<Row>> {
    let session = Session::start(chromedriver, Backend::Nothing).await?;
    let page = Page::open(&session, &server.url(), SMALL).await?;
    page.modes_shown().await?;
    page.judged().await?;
    let times: Times = serde_json::from_value(page.run(SCRIPT).await?).context("what the drags took")?;
    session.end().await?;
    let preview = format!("{} nodes, {} modes, headless Chromium", times.preview_nodes, times.modes);
    let standard = format!("{} nodes, headless Chromium", times.standard_nodes);
    let ms = |id, value, note: &str| Row { id, value, unit: "ms", note: note.to_owned() };
    Ok(vec![
        ms("drag_arch_p50_ms", median(times.arch_ms.clone()), &preview),
        ms("drag_arch_p95_ms", percentile(times.arch_ms, 95), &preview),
        ms("drag_arch_standard_p50_ms", median(times.arch_standard_ms), &format!("{standard}, {} modes", times.modes)),
        ms("drag_eye_p50_ms", median(times.eye_ms), &format!("{preview}, the mesh goes along")),
        ms(
            "standard_26_modes_wasm_ms",
            median(times.standard_ms),
            &format!("{standard}, from the change to the result"),
        ),
        ms("fine_60_modes_wasm_ms", median(times.fine_ms), &format!("{} nodes, headless Chromium", times.fine_nodes)),
        ms(
            "abandon_p95_ms",
            percentile(times.abandoned_ms.clone(), 95),
            &format!(
                "until the worker of a fine solve, abandoned at {} moments, answers something else; median {:.1} ms",
                times.abandoned_ms.len(),
                median(times.abandoned_ms)
            ),
        ),
    ])
}
