import assert from "node:assert/strict";
import { test } from "node:test";
import { RequestQueue } from "./request_queue.js";

/**
 * @param {number} id
 * @returns {import("./messages.js").Request}
 */
const shape = (id) => ({ kind: "shape", id, design: `${id}`, size: "preview" });

/**
 * @param {number} id
 * @returns {import("./messages.js").Request}
 */
const solve = (id) => ({
  kind: "solve",
  id,
  design: `${id}`,
  size: "preview",
  count: 26,
  wish: { name: "", number: 1 },
});

test("a newer request of a kind replaces the older one", () => {
  const queue = new RequestQueue();
  assert.equal(queue.add(shape(1)), undefined);
  assert.equal(queue.add(shape(2))?.id, 1);
  assert.equal(queue.take()?.id, 2);
  assert.equal(queue.take(), undefined);
});

test("the picture comes before the figures, whichever was asked first", () => {
  const queue = new RequestQueue();
  queue.add(solve(1));
  queue.add(shape(2));
  assert.equal(queue.take()?.id, 2);
  assert.equal(queue.take()?.id, 1);
});

test("of two hundred moves of a handle the last is answered and nothing queues up", () => {
  const queue = new RequestQueue();
  for (let id = 1; id <= 200; id += 1) {
    queue.add({ ...solve(id), kind: "follow" });
  }
  assert.equal(queue.take()?.id, 200);
  assert.equal(queue.take(), undefined);
});
