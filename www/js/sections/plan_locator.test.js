import assert from "node:assert/strict";
import { test } from "node:test";
import { PlanLocator, placeLike } from "./plan_locator.js";

/** A grid of nodes 1 mm apart in two triangles a square, with one square left out: a hole. */
function grid(across, along) {
  const positions = [];
  const triangles = [];
  for (let row = 0; row <= along; row++) {
    for (let column = 0; column <= across; column++) {
      positions.push(column, row, 0);
      if (row < along && column < across && !(row === 2 && column === 1)) {
        const first = row * (across + 1) + column;
        triangles.push(first, first + 1, first + across + 2, first, first + across + 2, first + across + 1);
      }
    }
  }
  return {
    positions: Float32Array.from(positions),
    triangles: Uint32Array.from(triangles),
    kinds: new Uint32Array(positions.length / 3),
  };
}

test("a linear field is read exactly anywhere on the wood, edges included", () => {
  const picture = grid(6, 9);
  const locator = new PlanLocator(picture);
  const field = (node) => 2 * picture.positions[3 * node] - picture.positions[3 * node + 1] + 1;
  for (const [x, y] of [
    [0, 0],
    [6, 9],
    [0.3, 4.9],
    [5.999, 0.001],
    [3, 3],
    [2.5, 7],
  ]) {
    const found = locator.at(x, y);
    assert.ok(found !== undefined, `${x} ${y}`);
    const read = found.reduce((sum, [node, share]) => sum + share * field(node), 0);
    assert.ok(Math.abs(read - (2 * x - y + 1)) < 1e-5, `${x} ${y}: ${read}`);
  }
});

test("there is nothing in a hole or beside the wood", () => {
  const locator = new PlanLocator(grid(6, 9));
  for (const [x, y] of [
    [1.5, 2.5],
    [-0.1, 3],
    [6.2, 3],
    [3, 9.5],
  ]) {
    assert.equal(locator.at(x, y), undefined, `${x} ${y}`);
  }
});

test("a place beyond a slanting edge is off the wood, though the edge's box covers it", () => {
  const corner = {
    positions: Float32Array.from([0, 0, 0, 4, 0, 0, 0, 4, 0]),
    triangles: Uint32Array.from([0, 1, 2]),
    kinds: new Uint32Array(3),
  };
  const locator = new PlanLocator(corner);
  assert.ok(locator.at(1.9, 1.9) !== undefined);
  assert.equal(locator.at(2.2, 2.2), undefined);
});

test("places on another outline keep their shares of length and width", () => {
  const from = { low: [-100, 0], high: [100, 360] };
  assert.deepEqual(placeLike(from, { low: [-50, 10], high: [50, 190] }, 20, 90), [10, 55]);
  const [x, y] = placeLike(from, from, 12.3, 45.6);
  assert.ok(Math.abs(x - 12.3) < 1e-12 && Math.abs(y - 45.6) < 1e-12);
});
