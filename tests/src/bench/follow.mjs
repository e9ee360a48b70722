// Times the steps of a dragged handle in the compute module as it is in a site's edition, outside of a browser:
// node follow.mjs EDITION SIZE MODES STEPS
// Prints, as JSON, ms of every step after the first ten of each handle, which warm the engine up, and the module's memory after
// the first hundred steps and at the end.
import { readFile } from "node:fs/promises";
import { pathToFileURL } from "node:url";

const [edition, size, modes, steps] = process.argv.slice(2);
const { initSync, Workshop } = await import(pathToFileURL(`${edition}/wasm/compute.js`).href);
const { memory } = initSync({ module: await readFile(`${edition}/wasm/compute_bg.wasm`) });
const WARM_UP = 10;

/** What a handle moves, by tenths of a millimetre up and down two millimetres. */
const HANDLES = {
  eye: {
    by_mm: 0.1,
    set: (design, by_mm) => {
      for (const side of ["bass", "treble"]) {
        design.sound_holes[side].lower_eye_to_edge_mm += by_mm;
      }
    },
  },
  arch: {
    by_mm: 0.1,
    set: (design, by_mm) => {
      design.arching.apex_height_mm += by_mm;
    },
  },
};

const times = {};
const megabytes = () => memory.buffer.byteLength / 1e6;
let warm_memory_mb;
let taken = 0;
let nodes = 0;
const workshop = new Workshop();
for (const [name, { by_mm, set }] of Object.entries(HANDLES)) {
  times[name] = [];
  for (let step = 0; step < Number(steps) + WARM_UP; step += 1) {
    const design = JSON.parse(Workshop.demo_design());
    set(design, by_mm * Math.abs((step % 40) - 20));
    const text = JSON.stringify(design);
    const begun = performance.now();
    workshop.open_design(text);
    const { modes: found } = workshop.follow(size, Number(modes));
    workshop.motion(found[4].number, true);
    nodes = workshop.picture(size, true).nodes;
    workshop.signatures();
    taken += 1;
    if (taken === 100) warm_memory_mb = megabytes();
    if (step >= WARM_UP) times[name].push(performance.now() - begun);
  }
}
console.log(JSON.stringify({ times_ms: times, nodes, warm_memory_mb, memory_mb: megabytes() }));
