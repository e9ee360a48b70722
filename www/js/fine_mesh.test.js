import assert from "node:assert/strict";
import { test } from "node:test";
import { progressOf } from "./fine_mesh.js";

test("the bar grows with the time, and the time left is never told as none", () => {
  assert.deepEqual(progressOf(0, 4000), { share: 0, left_s: 4 });
  assert.deepEqual(progressOf(1000, 4000), { share: 0.25, left_s: 3 });
  assert.deepEqual(progressOf(3990, 4000), { share: 0.9975, left_s: 1 });
});

test("what takes longer than estimated has no end that could be told", () => {
  assert.equal(progressOf(4000, 4000), undefined);
  assert.equal(progressOf(9000, 4000), undefined);
});
