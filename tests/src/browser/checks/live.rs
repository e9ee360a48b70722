//! A handle that moves: the top answers, the last value counts, and whatever goes wrong on the way is told and got over.

use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, ensure};
use bombatura_serve::build;
use serde::Deserialize;
use serde_json::json;

use super::{Place, Run};
use crate::browser::{Backend, Page, breakage, find::Role};
use crate::chores::run;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("two hundred moves of a handle end at the last value", last_value_counts(place)).await;
    run.check("a value that can't be is told and the handle goes on", bad_value_is_got_over(place)).await;
    let died = place.session.with_script(breakage::WORKERS, workers_die_solving(place));
    run.check("workers that die in the middle of a solve start again", died).await;
    run.check("the fine mesh is worked out on request and can be given up", fine_mesh(place)).await;
    run.check("a solve that nobody waits for ends, and its worker goes on", solve_ends(place)).await;
    if run.backend == Backend::Nothing {
        run.check("two thousand moves of a handle take no more memory", async { memory_stays(place.site) }).await;
    }
}

/// Notes every frequency that the stage shows from now on.
const WATCH: &str = r##"
const hertz = document.querySelector("#stage-hertz");
globalThis.__shown = [];
new MutationObserver(() => __shown.push(hertz.textContent)).observe(hertz, { childList: true, characterData: true, subtree: true });
"##;

/// Moves the arch's slider 200 times within a second and lets it go.
const DRAG: &str = r##"
const done = arguments[arguments.length - 1];
const slider = document.querySelector("#measures input[type=range]");
const [from, to] = [Number(slider.value), Number(slider.value) + 2];
let move = 0;
const timer = setInterval(() => {
  move += 1;
  slider.value = String(from + ((to - from) * move) / 200);
  slider.dispatchEvent(new Event("input", { bubbles: true }));
  if (move === 200) {
    clearInterval(timer);
    slider.dispatchEvent(new Event("change", { bubbles: true }));
    done(slider.value);
  }
}, 5);
"##;

async fn last_value_counts(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    page.value(WATCH).await?;
    let last = page.run(DRAG).await?;
    let last = last.as_str().context("the slider has a value")?;
    page.settle().await?;
    let shown = page.value("return new Set(__shown).size;").await?.as_u64().unwrap_or(0);
    ensure!(shown >= 4, "only {shown} figures were shown for 200 moves: the top did not follow");
    let dragged = page.hertz().await?;
    ensure!(arch_height(&page).await? == last.parse::<f64>()?, "the field does not show the last value");
    page.without_errors().await?;

    // The same value typed on a fresh page: where it came from must not matter.
    let fresh = place.still_page().await?;
    let before = fresh.hertz().await?;
    fresh.type_number("Arch height", last).await?;
    fresh.figures_changed_from(&before).await?;
    let typed = fresh.hertz().await?;
    ensure!(typed == dragged, "dragged there the top has other figures: {dragged:?}, typed {typed:?}");
    fresh.without_errors().await
}

/// What the arch's field shows, mm.
async fn arch_height(page: &Page<'_>) -> Result<f64> {
    Ok(page.number("Arch height").await?.parse()?)
}

/// Sets the arch's slider to a value, its own limits aside.
fn move_to(value: f64) -> String {
    format!(
        "const slider = document.querySelector('#measures input[type=range]'); const limits = [slider.min, slider.max]; \
         slider.min = 0; slider.max = 500; slider.value = '{value}'; \
         slider.dispatchEvent(new Event('input', {{ bubbles: true }})); [slider.min, slider.max] = limits;"
    )
}

async fn bad_value_is_got_over(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let height = arch_height(&page).await?;
    page.value(&move_to(height + 1.0)).await?;
    page.until("the top follows", "document.documentElement.dataset.basis === 'preview'").await?;
    page.until(
        "the first value is shown",
        &format!("document.querySelector('#measures input[type=number]').value == {}", height + 1.0),
    )
    .await?;
    let basis = page.text("return document.querySelector('#basis').textContent;").await?;
    ensure!(basis.contains("set right by the last standard figures"), "what stands behind the figures: {basis}");
    let good = page.hertz().await?;
    page.value(&move_to(300.0)).await?;
    let words = page.alert().await?;
    ensure!(words.contains("300") && words.contains("mm"), "the message gives neither value nor limit: {words}");
    ensure!(page.hertz().await? == good, "the figures are not those of the last good value");
    ensure!(arch_height(&page).await? == height + 1.0, "the field does not show the last good value");
    page.value(&move_to(height + 2.0)).await?;
    page.value(
        "document.querySelector('#measures input[type=range]').dispatchEvent(new Event('change', { bubbles: true }));",
    )
    .await?;
    page.settle().await?;
    ensure!(arch_height(&page).await? == height + 2.0, "the handle did not go on after the bad value");
    page.without_errors().await
}

async fn workers_die_solving(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let before = page.hertz().await?;
    let height = arch_height(&page).await? + 1.0;
    page.type_number("Arch height", &height.to_string()).await?;
    page.value(breakage::BREAK_WORKERS).await?;
    page.until("the page says so", "document.body.innerText.includes('started again')").await?;
    page.figures_changed_from(&before).await?;
    ensure!(arch_height(&page).await? == height, "the change was lost with the workers");
    page.errors_are_only(&["broken by a check", "worker failed"]).await
}

async fn fine_mesh(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let standard = page.hertz().await?;
    page.press("Fine mesh").await?;
    page.until("a bar shows", "document.querySelector('progress').checkVisibility()").await?;
    page.press("Cancel the fine mesh").await?;
    page.find(Role::Button, "Fine mesh").await?;
    page.settle().await?;
    ensure!(page.hertz().await? == standard, "giving the fine mesh up changed the figures");
    page.press("Fine mesh").await?;
    page.until("the fine mesh's figures are there", "document.documentElement.dataset.basis === 'fine'").await?;
    let fine = page.hertz().await?;
    ensure!(fine.len() == 60, "{} modes on the fine mesh", fine.len());
    ensure!(page.words().await?.contains("fine mesh"), "the page does not say that these are the fine mesh's figures");
    // Standard and fine meshes differ by a few per cent at most.
    let off = fine.iter().zip(&standard).map(|(fine, standard)| (fine / standard - 1.0).abs()).fold(0.0, f64::max);
    ensure!(off > 0.0 && off < 0.03, "{off} between the modes at {fine:?} Hz and those at {standard:?} Hz before");
    super::controls::move_slider(&page, "Arch height").await?;
    ensure!(page.hertz().await?.len() == standard.len(), "a change does not lead back to the standard mesh");
    page.without_errors().await
}

/// Gives a solve up while the worker is in the midst of it. Returns how many workers were started, and what became of each request.
const GIVE_UP: &str = r#"
const done = arguments[arguments.length - 1];
const Plain = Worker;
let started = 0;
const outcomes = {};
globalThis.Worker = class extends Plain {
  constructor(...what) {
    super(...what);
    started += 1;
    this.addEventListener("message", ({ data }) => { outcomes[data.id] = data.outcome; });
  }
};
(async () => {
  const at = (path) => new URL(`../${path}`, document.querySelector("script[src]").src);
  const { Superseded, WorkshopClient } = await import(at("js/workshop_client.js").href);
  const client = new WorkshopClient(at("js/compute_worker.js"), at("wasm/compute_bg.wasm"), () => {});
  const design = await client.ask("demo", {});
  const solve = (size) => client.ask("solve", { design, size, count: 26, wish: { name: "ring", number: 5 } });
  await solve("preview");
  const given_up = solve("fine").then(() => "solved", (reason) => reason instanceof Superseded);
  await new Promise((wait) => setTimeout(wait, 200));
  client.abandon();
  const { modes } = await solve("preview");
  globalThis.Worker = Plain;
  done([started, outcomes, await given_up, modes.length]);
})();
"#;

async fn solve_ends(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let said = page.run(GIVE_UP).await?;
    let outcomes = json!({ "1": "done", "2": "done", "3": "superseded", "4": "done" });
    ensure!(said == json!([1, outcomes, true, 26]), "{said}");
    page.without_errors().await
}

/// What the timing script says of the module's memory.
#[derive(Deserialize)]
struct Memory {
    warm_memory_mb: f64,
    memory_mb: f64,
}

/// Wasm memory never shrinks, so a leak of a tenth of a step's values would show as hundreds of megabytes.
fn memory_stays(site: &Path) -> Result<()> {
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/bench/follow.mjs");
    let mut command = Command::new("node");
    command.arg(script).arg(build::edition_of(site)?).args(["preview", "12", "1000"]);
    let Memory { warm_memory_mb, memory_mb } = serde_json::from_str(&run::output(&mut command)?)?;
    ensure!(memory_mb < 1.1 * warm_memory_mb, "memory grew from {warm_memory_mb} to {memory_mb} MB");
    Ok(())
}
