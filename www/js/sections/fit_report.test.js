import assert from "node:assert/strict";
import { test } from "node:test";
import { remarks } from "./fit_report.js";
import { takenOver } from "./measured.js";

const fit = {
  design: "",
  points: 400,
  rms_mm: 0.1,
  largest: { number: 7, at: [-50, 100], off_mm: 0.6 },
  own_bass: false,
  outlier_count: 0,
  outliers: [],
  outline: new Float32Array(),
  shown: new Float32Array(),
};

test("an outline that strays further than asked for says so, and how far that is", () => {
  assert.match(remarks("outline", fit, 0.5).join(" "), /^Not everywhere within the 0.5 mm/);
  assert.match(remarks("outline", fit, 0.6).join(" "), /^Everywhere within 0.6 mm/);
  const scaled = remarks("outline", { ...fit, own_bass: true, holes_scaled: 1.149 }, 1).join(" ");
  assert.match(scaled, /bass side gets measures of its own.*scaled by 1.149/);
});

test("what a scan lacks is told in square centimetres, and triangles that face inwards", () => {
  const scan = { missing_mm2: 2960, missing_share: 0.052, turned_inwards: 0.995 };
  const said = remarks("scan", { ...fit, scan }, 0).join(" ");
  assert.match(said, /30 cm² of the top \(5.2 %\)/);
  assert.match(said, /100 % of the scan’s triangles face inwards/);
  assert.deepEqual(remarks("table", fit, 0), []);
});

test("only what was measured is taken over", () => {
  const design = { name: "mine", outline: 1, sound_holes: 2, arching: 3, wood: 4 };
  const read = { name: "old", outline: 10, sound_holes: 20, arching: 30, wood: 40 };
  assert.deepEqual(takenOver(design, read, "outline"), { ...design, outline: 10, sound_holes: 20 });
  assert.deepEqual(takenOver(design, read, "scan"), { ...design, arching: 30 });
});
