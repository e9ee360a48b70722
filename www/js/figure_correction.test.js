import assert from "node:assert/strict";
import { test } from "node:test";
import { FigureCorrection } from "./figure_correction.js";

/** @param {readonly (readonly [number, number])[]} figures identity and Hz */
const modes = (...figures) =>
  figures.map(([identity, frequency_hz], index) => ({
    number: index + 1,
    name: "",
    frequency_hz,
    residual: 0,
    identity,
  }));

test("a mode keeps its own ratio when it has passed another", () => {
  const correction = new FigureCorrection();
  correction.learn(modes([1, 100], [2, 110]), modes([2, 99], [1, 102]));
  const corrected = correction.correct(modes([2, 120], [1, 130]));
  assert.deepEqual(
    corrected.map(({ frequency_hz }) => frequency_hz.toFixed(6)),
    ["108.000000", "132.600000"],
  );
});

test("what the standard mesh has never seen stays as it is", () => {
  const correction = new FigureCorrection();
  correction.learn(modes([1, 100], [3, 200]), modes([1, 101], [0, 150]));
  const quick = modes([2, 120], [3, 210], [0, 300]);
  assert.deepEqual(correction.correct(quick), quick);
  assert.equal(correction.hasSeen(quick), false);
  assert.equal(correction.hasSeen(modes([2, 120], [1, 130])), true);
});

test("the last ratio counts", () => {
  const correction = new FigureCorrection();
  correction.learn(modes([1, 100]), modes([1, 110]));
  correction.learn(modes([1, 100]), modes([1, 98]));
  assert.equal(correction.correct(modes([1, 200]))[0].frequency_hz, 196);
});

test("what judging made of a mode is foreseen for the next figures of its shape", () => {
  const correction = new FigureCorrection();
  correction.learn(modes([1, 100], [2, 200]), modes([1, 102], [2, 210]));
  const surety = { mesh_hz: 1, wood_hz: 9, q: 60 };
  correction.judge(modes([1, 102], [2, 210]), [
    { ...surety, converged_hz: 101.49 },
    { ...surety, converged_hz: null },
  ]);
  const [quick, unjudged] = correction.correct(modes([1, 110], [2, 220]));
  assert.equal(quick.frequency_hz.toFixed(6), "112.200000");
  assert.equal(quick.foreseen_hz?.toFixed(6), "111.639000");
  assert.equal(unjudged.foreseen_hz, undefined);
  assert.equal(correction.foresee(modes([1, 200]))[0].foreseen_hz?.toFixed(6), "199.000000");
});
