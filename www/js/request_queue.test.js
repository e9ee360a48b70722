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
  assert.equal(queue.add(shape(1), 0), undefined);
  assert.equal(queue.add(shape(2), 1)?.id, 1);
  assert.equal(queue.take(2)?.id, 2);
  assert.equal(queue.take(3), undefined);
});

test("the picture comes before the figures, whichever was asked first", () => {
  const queue = new RequestQueue();
  queue.add(solve(1), 0);
  queue.add(shape(2), 1);
  assert.equal(queue.take(2)?.id, 2);
  assert.equal(queue.take(2)?.id, 1);
});

test("under a stream of pictures the figures still come, with the newest design", () => {
  const queue = new RequestQueue();
  const answered = [];
  for (let now_ms = 0; now_ms < 1000; now_ms += 16) {
    queue.add(shape(now_ms), now_ms);
    queue.add(solve(now_ms + 0.5), now_ms);
    answered.push({ now_ms, request: queue.take(now_ms) });
  }
  const solves = answered.filter(({ request }) => request?.kind === "solve");
  assert.equal(solves.length, 3);
  for (const { now_ms, request } of solves) {
    assert.equal(request?.id, now_ms + 0.5);
  }
});
