// Times the compute module as it is in the site, outside of a browser: node solve.mjs SITE MODES RUNS
// Prints the times of all runs but the first, in ms, as JSON. The first one warms the engine up.
import { readFile } from "node:fs/promises";
import { pathToFileURL } from "node:url";

const [site, modes, runs] = process.argv.slice(2);
const { initSync, Workshop } = await import(pathToFileURL(`${site}/wasm/compute.js`).href);
initSync({ module: await readFile(`${site}/wasm/compute_bg.wasm`) });

const times_ms = [];
let nodes = 0;
for (let run = 0; run <= Number(runs); run += 1) {
  // A new one each time: nothing of the last run is there to begin with.
  const workshop = new Workshop();
  const begun = performance.now();
  const solution = workshop.solve("standard", Number(modes));
  times_ms.push(performance.now() - begun);
  if (solution.modes.length < Number(modes)) {
    throw new Error(`${solution.modes.length} modes instead of ${modes}`);
  }
  nodes = workshop.picture("standard").nodes;
  workshop.free();
}
console.log(JSON.stringify({ times_ms: times_ms.slice(1), nodes }));
