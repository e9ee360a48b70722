import assert from "node:assert/strict";
import { test } from "node:test";
import { stretchesOf, withHoles } from "./stretches.js";

test("neighbours of one region are one stretch, and stretches meet", () => {
  assert.deepEqual(stretchesOf([0, 2, 4, 10, 11], ["flank", "flank", "island", "island", "island"]), [
    { key: "flank", from_mm: 0, to_mm: 3 },
    { key: "island", from_mm: 3, to_mm: 11 },
  ]);
});

test("a single place is a stretch of no length", () => {
  assert.deepEqual(stretchesOf([5], ["wing"]), [{ key: "wing", from_mm: 5, to_mm: 5 }]);
});

test("between pieces of different regions is a hole", () => {
  const [flank, island] = [
    { key: "flank_bass", from_mm: -80, to_mm: -40 },
    { key: "island", from_mm: -34, to_mm: 34 },
  ];
  assert.deepEqual(withHoles([[flank], [island]]), [flank, { key: "hole", from_mm: -40, to_mm: -34 }, island]);
  const corner = { key: "flank_bass", from_mm: -90, to_mm: -85 };
  assert.deepEqual(withHoles([[corner], [flank]]), [corner, flank]);
});
