import assert from "node:assert/strict";
import { test } from "node:test";
import { FrameBudget } from "./frame_budget.js";

/**
 * Runs frames whose time grows with their pixels.
 * @param {FrameBudget} budget
 * @param {number} frames
 * @param {number} ms_at_one frame time at one canvas pixel to a CSS pixel
 * @param {number} device_ratio
 */
function run(budget, frames, ms_at_one, device_ratio) {
  for (let frame = 0; frame < frames; frame += 1) {
    const ratio = budget.movingRatio(device_ratio);
    budget.add(Math.max(16, ms_at_one * ratio * ratio), device_ratio);
  }
}

test("fast frames keep every pixel of the screen", () => {
  const budget = new FrameBudget();
  run(budget, 100, 4, 2);
  assert.equal(budget.movingRatio(2), 2);
});

test("a few slow frames are enough to give up pixels, and then no more than needed", () => {
  const budget = new FrameBudget();
  run(budget, 4, 40, 2);
  assert.ok(budget.movingRatio(2) < 2);
  run(budget, 100, 40, 2);
  const settled = budget.movingRatio(2);
  assert.ok(settled >= 0.9 && 40 * settled * settled <= 66, `${settled}`);
});

test("one hiccup among fast frames costs no pixels", () => {
  const budget = new FrameBudget();
  run(budget, 7, 4, 1);
  budget.add(500, 1);
  run(budget, 32, 4, 1);
  assert.equal(budget.movingRatio(1), 1);
});

test("in software rendering the ratio settles where frames are fast enough, and stays there", () => {
  const budget = new FrameBudget();
  run(budget, 200, 200, 1);
  const settled = budget.movingRatio(1);
  assert.ok(200 * settled * settled <= 66, `${settled}`);
  run(budget, 200, 200, 1);
  assert.equal(budget.movingRatio(1), settled);
});

test("there is a limit to coarseness", () => {
  const budget = new FrameBudget();
  run(budget, 1000, 100_000, 1);
  assert.equal(budget.movingRatio(1), 0.35);
});
