import assert from "node:assert/strict";
import { test } from "node:test";
import { edgeDistances } from "./purfling.js";

/** A square of 40 by 40 mm with a node in the middle and one 3 mm from its lower edge; outline first, then the wall of a hole. */
const places = [
  [0, 0],
  [40, 0],
  [40, 40],
  [0, 40],
  [20, 20],
  [20, 3],
];
const wall = (/** @type {number[]} */ ring, /** @type {number} */ first) =>
  ring.flatMap((_, index) => {
    const [top, next] = [first + 2 * index, first + 2 * ((index + 1) % ring.length)];
    return [top, top + 1, next + 1, top, next + 1, next];
  });
const walls = [0, 1, 2, 3, 4, 5, 4];
const picture = {
  kinds: Uint32Array.from([...places.map(() => 0), ...places.map(() => 1), ...walls.flatMap(() => [2, 2])]),
  positions: Float32Array.from(
    [...places, ...places, ...walls.flatMap((node) => [places[node], places[node]])].flatMap(([x, y]) => [x, y, 0]),
  ),
  triangles: Uint32Array.from([...wall([0, 1, 2, 3], 12), ...wall([4, 5, 4], 20)]),
};

test("distances are from the outline alone, and no farther than is drawn", () => {
  const distances = edgeDistances(picture);
  assert.deepEqual([...distances.subarray(0, 6)], [0, 0, 0, 0, 12, 3]);
  assert.equal(distances.length, picture.kinds.length);
});
