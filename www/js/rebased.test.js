import assert from "node:assert/strict";
import { test } from "node:test";

import { rebased } from "./rebased.js";

const BOTH = { arch: { height: 15, depth: 1 }, bar: { width: 5 }, post: { width: 6 }, masses: [1, 2] };

test("each of two edits of one design is kept, whatever they edit", () => {
  const { post: _, ...no_post } = BOTH;
  const { bar: __, ...no_bar } = BOTH;
  assert.deepEqual(rebased(BOTH, no_bar, no_post), { arch: BOTH.arch, masses: BOTH.masses });
  const higher = { ...BOTH, arch: { ...BOTH.arch, height: 16 } };
  const deeper = { ...BOTH, arch: { ...BOTH.arch, depth: 2 } };
  assert.deepEqual(rebased(BOTH, higher, deeper), { ...BOTH, arch: { height: 16, depth: 2 } });
  const added = { ...no_post, post: { width: 7 } };
  assert.deepEqual(rebased(no_post, added, { ...no_post, masses: [] }), { ...added, masses: [] });
  assert.deepEqual(rebased(no_post, { ...no_post, masses: [] }, added), { ...added, masses: [] });
});

test("of two edits of one thing the later one holds", () => {
  assert.deepEqual(rebased(BOTH, { ...BOTH, masses: [3] }, { ...BOTH, masses: [1] }).masses, [3]);
  assert.deepEqual(rebased(BOTH, { ...BOTH, post: { width: 9 } }, { ...BOTH, post: { width: 8 } }).post, { width: 9 });
});

test("an edit of the very thing is what it is", () => {
  const { bar: _, ...no_bar } = BOTH;
  assert.equal(rebased(BOTH, no_bar, BOTH), no_bar);
});
