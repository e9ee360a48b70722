import assert from "node:assert/strict";
import { test } from "node:test";
import { archingLines } from "./arching_text.js";

const arching = {
  apex_mm: 15.5,
  rise_mm: 11.5,
  channel_depth_mm: 0.8,
  steepest: { value: 27.4, at: [-40.2, 195] },
  hollow_radius: { value: 41.6, at: [50, 190] },
  round_radius: null,
  holes: [],
};
const crossing = (from_nicks_mm, on_stem = true) => ({ crossings: [{ from_nicks_mm, on_stem }], misses: null });

test("figures carry units and places", () => {
  const lines = archingLines(arching).map((line) => line.join(" | "));
  assert.match(lines[0], /15\.5 mm .*11\.5 mm/);
  assert.match(lines[2], /27° .*195 mm .*40 mm/);
  assert.equal(lines.length, 4);
});

test("holes alike on both sides are told once, others each", () => {
  const hole = (treble_side, meeting) => ({ treble_side, ...meeting });
  const alike = { ...arching, holes: [hole(false, crossing(-4.21)), hole(true, crossing(-4.2))] };
  const [, text, note] = archingLines(alike).at(-1);
  assert.equal(archingLines(alike).length, 5);
  assert.match(text, /stem 4\.2 mm below the nicks/);
  assert.equal(note, undefined);
  const unlike = { ...arching, holes: [hole(false, crossing(4.2)), hole(true, crossing(20, false))] };
  assert.equal(archingLines(unlike).length, 6);
});

test("a turn that misses its hole is said in words, with the practice", () => {
  const missing = { ...arching, holes: [{ treble_side: true, crossings: [], misses: { inside: true, by_mm: 3.14 } }] };
  const [, text, note] = archingLines(missing).at(-1);
  assert.match(text, /3\.1 mm/);
  assert.match(text, /centreline/);
  assert.match(note, /common practice/);
});
