import assert from "node:assert/strict";
import { test } from "node:test";
import { nearestNodes, nodeCount, nodesOf, outsidePlaces } from "./picture_nodes.js";

/** A triangle with a wall all round: three nodes, three pairs. */
const places = [
  [0, 0],
  [1, 0],
  [0, 1],
];
const picture = {
  kinds: Uint32Array.from([0, 0, 0, 1, 1, 1, 2, 2, 2, 2, 2, 2]),
  positions: Float32Array.from([
    ...places.flatMap(([x, y]) => [x, y, 1]),
    ...places.flatMap(([x, y]) => [x + 0.1, y, 0]),
    ...[2, 0, 1].flatMap((node) => [...places[node], 1, places[node][0] + 0.1, places[node][1], 0]),
  ]),
};

test("every vertex stands on its node", () => {
  assert.equal(nodeCount(picture), 3);
  assert.deepEqual([...nodesOf(picture)], [0, 1, 2, 0, 1, 2, 2, 2, 0, 0, 1, 1]);
  assert.deepEqual([...outsidePlaces(picture)], [0, 0, 1, 0, 0, 1]);
});

test("each place finds its nearest node", () => {
  const nodes = Float32Array.from([0, 0, 10, 0, 0, 10]);
  assert.deepEqual([...nearestNodes(Float32Array.from([1, 1, 9, 2, 4, 8]), nodes)], [0, 1, 2]);
});
