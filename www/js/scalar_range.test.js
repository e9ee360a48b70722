import assert from "node:assert/strict";
import { test } from "node:test";
import { rangeOf } from "./scalar_range.js";

const values = Float32Array.from({ length: 101 }, (_, i) => (i * 37) % 101);

test("a scale spans all values, or all but the few largest", () => {
  assert.deepEqual(rangeOf(values, { signed: false, clipped: false }), { least: 0, most: 100 });
  assert.deepEqual(rangeOf(values, { signed: false, clipped: true }), { least: 0, most: 98 });
});

test("a signed scale has zero in its middle", () => {
  const signed = values.map((value) => value - 70);
  assert.deepEqual(rangeOf(signed, { signed: true, clipped: false }), { least: -70, most: 70 });
});
