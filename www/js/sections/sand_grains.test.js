import assert from "node:assert/strict";
import { test } from "node:test";
import { grains } from "./sand_grains.js";

/** A strip of 200 by 10 mm whose outward motion is x / 100 from end to end. */
const steps = 40;
const nodes = [];
const re = [];
const triangles = [];
for (let i = 0; i <= steps; i++) {
  for (const y of [0, 10]) {
    const x = -100 + (200 * i) / steps;
    nodes.push(x, y, 1);
    re.push(x / 100, 0, 0, x / 100);
  }
  if (i < steps) {
    const a = 2 * i;
    triangles.push(a, a + 2, a + 3, a, a + 3, a + 1);
  }
}
const plate = {
  nodes: Float32Array.from(nodes),
  re: Float32Array.from(re),
  im: new Float32Array(re.length),
  triangles: Uint32Array.from(triangles),
};

test("grains lie along the nodal line, alike on both sides", () => {
  const places = grains(plate, 20000).map(([x]) => x);
  // Of a density exp(-(x / 7)^2), as the law asks for, erf(1) = 0.8427 lies within 7 mm (Abramowitz and Stegun 1964, table 7.1).
  const within = places.filter((x) => Math.abs(x) < 7).length / places.length;
  assert.ok(Math.abs(within - 0.8427) < 0.03, `${within}`);
  const right = places.filter((x) => x > 0).length / places.length;
  assert.ok(Math.abs(right - 0.5) < 0.05, `${right}`);
});

test("the same plate has the same grains, and one at rest keeps them all", () => {
  assert.deepEqual(grains(plate, 500), grains(plate, 500));
  const rest = { ...plate, re: new Float32Array(re.length) };
  assert.ok(Math.abs(grains(rest, 500).length - 500) <= 1);
});
