import assert from "node:assert/strict";
import { test } from "node:test";
import { inBetween, sameKeys } from "./in_between.js";

const BEFORE = { arching: { apex_mm: 15, arches: [0.5, 0.6] }, rim: "hinged" };

test("numbers go from one design to the other, words stay", () => {
  const after = { arching: { apex_mm: 19, arches: [0.7, 0.6] }, rim: "hinged" };
  assert.ok(sameKeys(BEFORE, after));
  assert.deepEqual(inBetween(BEFORE, after, 0.25), { arching: { apex_mm: 16, arches: [0.55, 0.6] }, rim: "hinged" });
  assert.deepEqual(inBetween(BEFORE, after, 1), after);
});

test("what comes or goes has no halves", () => {
  assert.ok(!sameKeys(BEFORE, { ...BEFORE, rim: "free" }));
  assert.ok(!sameKeys(BEFORE, { ...BEFORE, bar: { height_mm: 12 } }));
  assert.ok(!sameKeys({ hole: { kind: "none" } }, { hole: { kind: "slot" } }));
});
