// Times the compute module as it is in a site's edition, outside of a browser: node solve.mjs EDITION MODES RUNS
// Prints, as JSON, times in ms of all runs but the first, which warms the engine up: `whole_ms` from a design to its
// modes, `again_ms` after a change of thickness, when the mesh and the order of its equations are there already.
import { readFile } from "node:fs/promises";
import { pathToFileURL } from "node:url";

const [edition, modes, runs] = process.argv.slice(2);
const { initSync, Workshop } = await import(pathToFileURL(`${edition}/wasm/compute.js`).href);
const { memory } = initSync({ module: await readFile(`${edition}/wasm/compute_bg.wasm`) });

const whole_ms = [];
const again_ms = [];
let nodes = 0;
for (let run = 0; run <= Number(runs); run += 1) {
  // A new one each time: nothing of the last run is there to begin with.
  const workshop = new Workshop();
  whole_ms.push(timed(() => solve(workshop)));
  const design = JSON.parse(Workshop.demo_design());
  design.graduation.centre_mm += 0.1;
  workshop.open_design(JSON.stringify(design));
  again_ms.push(timed(() => solve(workshop)));
  nodes = workshop.picture("standard", false).nodes;
  workshop.free();
}
const memory_mb = memory.buffer.byteLength / 1e6;
console.log(JSON.stringify({ whole_ms: whole_ms.slice(1), again_ms: again_ms.slice(1), nodes, memory_mb }));

function solve(workshop) {
  const solution = workshop.solve("standard", Number(modes));
  if (solution.modes.length < Number(modes)) {
    throw new Error(`${solution.modes.length} modes instead of ${modes}`);
  }
}

function timed(work) {
  const begun = performance.now();
  work();
  return performance.now() - begun;
}
