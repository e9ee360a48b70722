import assert from "node:assert/strict";
import { test } from "node:test";
import { highestPeaks, nearestMode } from "./peaks.js";

test("the highest maxima come in the order of their frequencies, ends are none", () => {
  const peaks = highestPeaks([1, 2, 3, 4, 5, 6, 7], [9, 1, 3, 1, 5, 2, 8], 2);
  assert.deepEqual(peaks, [
    { hz: 3, db: 3 },
    { hz: 5, db: 5 },
  ]);
  assert.deepEqual(highestPeaks([1, 2, 3, 4, 5], [0, 3, 0, 5, 0], 1), [{ hz: 4, db: 5 }]);
});

test("a peak belongs to the mode beside it, or to none", () => {
  assert.equal(nearestMode([100, 200, 300], 203), 2);
  assert.equal(nearestMode([100, 200, 300], 250), undefined);
  assert.equal(nearestMode([], 250), undefined);
});
