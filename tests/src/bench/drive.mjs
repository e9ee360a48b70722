// Times the driven top's module as it is in a site's edition, outside of a browser: node drive.mjs EDITION RUNS
// Prints, as JSON, times in ms of all runs but the first: `ready_ms` from a design on its ribs to all modes, `motion_ms` for a frequency's
// motion with all that is told beside it, `curves_ms` for all five curves at 500 frequencies.
import { readFile } from "node:fs/promises";
import { pathToFileURL } from "node:url";

const [edition, runs] = process.argv.slice(2);
const drive = await import(pathToFileURL(`${edition}/wasm/drive.js`).href);
drive.initSync({ module: await readFile(`${edition}/wasm/drive_bg.wasm`) });
const compute = await import(pathToFileURL(`${edition}/wasm/compute.js`).href);
compute.initSync({ module: await readFile(`${edition}/wasm/compute_bg.wasm`) });

const design = JSON.parse(compute.Workshop.demo_design());
design.rim = "hinged";
const text = JSON.stringify(design);
const [ready_ms, motion_ms, curves_ms] = [[], [], []];
let modes = 0;
for (let run = 0; run <= Number(runs); run += 1) {
  let top;
  ready_ms.push(timed(() => {
    top = new drive.DrivenTop(text);
  }));
  modes = top.about().modes;
  const times = Array.from({ length: 31 }, (_, step) => timed(() => top.motion("bow", 0, 0, 200 * 1.1 ** step)));
  motion_ms.push(times.sort((one, other) => one - other)[15]);
  curves_ms.push(timed(() => top.curves("bow", 0, 0, 0, 160, 100, 6000, 500)));
  top.free();
}
const measured = (list) => list.slice(1);
console.log(JSON.stringify({ ready_ms: measured(ready_ms), motion_ms: measured(motion_ms), curves_ms: measured(curves_ms), modes }));

function timed(work) {
  const begun = performance.now();
  work();
  return performance.now() - begun;
}
