import assert from "node:assert/strict";
import { test } from "node:test";
import { FrameBudget, IN_HAND_MS } from "./frame_budget.js";

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

test("what a hand moves keeps thirty pictures a second where fewer pixels can do it", () => {
  const moving = new FrameBudget();
  run(moving, 200, 60, 1);
  assert.equal(moving.movingRatio(1), 1);
  const in_hand = new FrameBudget(IN_HAND_MS);
  run(in_hand, 200, 60, 1);
  const settled = in_hand.movingRatio(1);
  assert.ok(60 * settled * settled <= 1000 / 29 && settled >= 0.5, `${settled}`);
});

test("pixels that are not what takes the time are given back at once", () => {
  const budget = new FrameBudget();
  for (let frame = 0; frame < 24; frame += 1) {
    budget.add(120, 1);
  }
  assert.equal(budget.movingRatio(1), 1);
});

test("a busy moment's loss of pixels is made good once frames have long been fast", () => {
  const budget = new FrameBudget();
  run(budget, 40, 200, 1);
  assert.ok(budget.movingRatio(1) < 1);
  run(budget, 400, 4, 1);
  assert.equal(budget.movingRatio(1), 1);
});

test("between too slow and fast it tries more pixels ever more rarely", () => {
  const budget = new FrameBudget();
  // Of the ratios it may have, one gives fast frames and the next slow ones.
  const frame = () => {
    const slow = budget.movingRatio(1) > 0.7072;
    budget.add(slow ? 80 : 20, 1);
    return slow;
  };
  for (let frames = 0; frames < 4000; frames += 1) {
    frame();
  }
  let slow = 0;
  for (let frames = 0; frames < 4000; frames += 1) {
    slow += frame() ? 1 : 0;
  }
  assert.ok(slow < 4000 / 50, `${slow} of 4000`);
});
