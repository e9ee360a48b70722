import assert from "node:assert/strict";
import { test } from "node:test";
import { overPlan, pickedPlace } from "./picked_place.js";

/** A square plate of 10 by 10 mm, outside at z = 3, inside at z = 0 and shifted by 0.5 across, as under a slope. */
const corners = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];
const picture = {
  kinds: Uint32Array.from([0, 0, 0, 0, 1, 1, 1, 1]),
  positions: Float32Array.from([
    ...corners.flatMap(([x, y]) => [x, y, 3]),
    ...corners.flatMap(([x, y]) => [x + 0.5, y, 0]),
  ]),
  normals: new Float32Array(24),
  triangles: Uint32Array.from([0, 1, 2, 0, 2, 3, 4, 6, 5, 4, 7, 6]),
  nodes: 4,
  mass_g: 1,
};
const near = (/** @type {number[] | undefined} */ found, /** @type {number[]} */ place) => {
  assert.ok(found !== undefined && Math.hypot(found[0] - place[0], found[1] - place[1]) < 1e-9, `${found}`);
};

test("a line of sight from above meets the outside, one from below the same node's place", () => {
  near(pickedPlace(picture, undefined, 0, 0, [2, 7, 50, 0, 0, -1]), [2, 7]);
  near(pickedPlace(picture, undefined, 0, 0, [2.5, 7, -50, 0, 0, 1]), [2, 7]);
  assert.equal(pickedPlace(picture, undefined, 0, 0, [20, 7, 50, 0, 0, -1]), undefined);
  assert.equal(pickedPlace(picture, undefined, 0, 0, [2, 7, 50, 0, 0, 1]), undefined);
});

test("the top is met where it is drawn, and the place is that of rest", () => {
  // All of it slides by 4 mm across at the start of the phase.
  const slide = Float32Array.from({ length: 48 }, (_, k) => (k % 6 === 0 ? 1 : 0));
  const motion = { mode: 1, re: slide, im: new Float32Array(48) };
  near(pickedPlace(picture, motion, 0, 4, [6, 7, 50, 0, 0, -1]), [2, 7]);
  near(pickedPlace(picture, motion, Math.PI / 2, 4, [6, 7, 50, 0, 0, -1]), [6, 7]);
});

test("shares of the nodes round a place give it back", () => {
  const shares = overPlan(picture, 3, 8) ?? [];
  const at = (/** @type {number} */ axis) =>
    shares.reduce((sum, [node, share]) => sum + share * corners[node][axis], 0);
  near([at(0), at(1)], [3, 8]);
  assert.equal(overPlan(picture, 11, 5), undefined);
});
