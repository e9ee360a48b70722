import assert from "node:assert/strict";
import { test } from "node:test";
import { nodeMotion } from "./node_motion.js";

/** A square plate of 10 by 10 mm, 3 mm thick, two triangles a face. */
const corners = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];
const picture = {
  kinds: Uint32Array.from([0, 0, 0, 0, 1, 1, 1, 1]),
  positions: Float32Array.from([3, 0].flatMap((z) => corners.flatMap(([x, y]) => [x, y, z]))),
  normals: Float32Array.from([1, -1].flatMap((z) => corners.flatMap(() => [0, 0, z]))),
  triangles: Uint32Array.from([0, 1, 2, 0, 2, 3, 4, 6, 5, 4, 7, 6]),
  nodes: 4,
  mass_g: 1,
};

test("nodes share the volume, and the middle moves by the mean of both faces", () => {
  // Both faces lift by 0.5 and slide apart across: the middle only lifts.
  const field = (/** @type {number} */ lift) =>
    Float32Array.from(picture.kinds).reduce((all, kind, vertex) => {
      all.set([kind === 0 ? 0.2 : -0.2, 0, lift], 6 * vertex);
      return all;
    }, new Float32Array(48));
  const { nodes, re, im } = nodeMotion(picture, { mode: 1, re: field(0.5), im: field(-0.25) });
  const volume = nodes.filter((_, k) => k % 3 === 2).reduce((sum, own) => sum + own, 0);
  assert.ok(Math.abs(volume - 300) < 1e-3, `${volume} mm3`);
  for (let node = 0; node < 4; node++) {
    assert.deepEqual([...re.subarray(4 * node, 4 * node + 4)], [0.5, 0, 0, 0.5]);
    assert.deepEqual([...im.subarray(4 * node, 4 * node + 4)], [-0.25, 0, 0, -0.25]);
  }
});
