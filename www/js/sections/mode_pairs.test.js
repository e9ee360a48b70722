import assert from "node:assert/strict";
import { test } from "node:test";
import { assurance, modePairs, sharesOfOneScale, shiftOf, shiftSpread } from "./mode_pairs.js";

const mode = (number, frequency_hz, more = {}) => ({
  number,
  name: "",
  frequency_hz,
  residual: 0,
  identity: 0,
  ...more,
});

test("modes are paired by shape, whatever their numbers, and those without a partner are named", () => {
  const [a, b] = [
    [mode(1, 100), mode(2, 200), mode(3, 300)],
    [mode(1, 190), mode(2, 110)],
  ];
  const likeness = Float32Array.from([0.1, -0.9, 0.8, 0, 0.3, 0.2]);
  const pairs = modePairs(a, b, { likeness, partners: Float32Array.from([2, 1, 0]) });
  assert.deepEqual(
    pairs.map((pair) => [pair.a?.number, pair.b?.number]),
    [
      [2, 1],
      [1, 2],
      [3, undefined],
    ],
  );
  assert.ok(Math.abs(pairs[1].likeness + 0.9) < 1e-6);
});

// 1200 cents to the octave, 100 to the equal semitone: Ellis 1885, "On the musical scales of various nations"; from memory.
test("a shift is told in per cent and cents", () => {
  const octave = shiftOf(mode(1, 220), mode(1, 440), undefined, undefined);
  assert.deepEqual([octave.pct, octave.cents, octave.corrected], [100, 1200, false]);
  const semitone = shiftOf(mode(1, 440), mode(1, 440 / 2 ** (1 / 12)), undefined, undefined);
  assert.ok(Math.abs(semitone.cents + 100) < 1e-9);
});

const surety = (converged_hz, mesh_hz, parts) => ({ converged_hz, mesh_hz, wood_hz: 0, wood_parts_pct: parts, q: 80 });

test("corrected figures are compared with corrected ones only", () => {
  const [a, b] = [mode(1, 102), mode(1, 204)];
  assert.equal(shiftOf(a, b, surety(100, 1, []), undefined).b_hz, 204);
  const both = shiftOf(a, b, surety(100, 1, []), surety(200, 1, []));
  assert.deepEqual([both.a_hz, both.b_hz, both.corrected], [100, 200, true]);
  assert.equal(shiftOf(a, { ...b, foreseen_hz: 201 }, surety(100, 1, []), undefined).b_hz, 201);
});

test("on one board what the wood does to both cancels", () => {
  const [a, b] = [surety(100, 0, [3, -4]), surety(100, 0, [3, -4])];
  const shift = shiftOf(mode(1, 100), mode(1, 100), a, b);
  assert.equal(shiftSpread(shift, a, b, true), 0);
  // Two independent standard deviations of 5 %: root of twice 25.
  assert.ok(Math.abs((shiftSpread(shift, a, b, false) ?? 0) - Math.sqrt(50)) < 1e-12);
  assert.equal(shiftSpread(shift, a, undefined, true), undefined);
  const meshes = [surety(100, 3, [0]), surety(100, 4, [0])];
  assert.equal(shiftSpread(shiftOf(mode(1, 1), mode(1, 1), meshes[0], meshes[1]), meshes[0], meshes[1], true), 5);
});

test("at one modal amplitude the motions are in proportion to their shapes", () => {
  // Shapes whose largest displacements are 2 and 5 m for a unit of modal mass are drawn as scales of 500 and 200.
  assert.deepEqual(sharesOfOneScale(500, 200), [0.4, 1]);
  assert.deepEqual(sharesOfOneScale(7, 7), [1, 1]);
});

test("the modal assurance criterion is the square of the shapes' correlation", () => {
  assert.equal(assurance(-0.5), 0.25);
});
