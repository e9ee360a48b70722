import assert from "node:assert/strict";
import { test } from "node:test";
import { dragged, keyed, snapped } from "./handle_moves.js";

const width = {
  paths: ["w"],
  what: "width",
  unit: "mm",
  value: 206,
  least: 85,
  most: 480,
  at: [103, 0],
  along: [0.5, 0],
};
const fullness = { ...width, unit: "", value: 0.53, least: 0.4, most: 0.7 };

test("numbers go by tenths of a millimetre and stay within their limits", () => {
  assert.equal(snapped(width, 206.04), 206);
  assert.equal(snapped(width, 206.06), 206.1);
  assert.equal(snapped(width, 500), 480);
  assert.equal(snapped(fullness, 0.534), 0.53);
});

test("a width grows by twice what one side is dragged", () => {
  assert.equal(dragged(width, 206, [0.5, 0], [3, 40]), 212);
  assert.equal(dragged(width, 206, [0.5, 0], [-3, 0]), 200);
});

test("a drag counts along the handle's own direction only", () => {
  assert.equal(dragged(width, 206, [0, -2], [50, -4]), 208);
});

test("arrows go by a step, with Shift by ten, Home and End to the limits", () => {
  const press = (key, shiftKey = false) => keyed(width, 206, { key, shiftKey });
  assert.equal(press("ArrowUp"), 206.1);
  assert.equal(press("ArrowLeft"), 205.9);
  assert.equal(press("ArrowRight", true), 207);
  assert.equal(press("PageDown"), 205);
  assert.equal(press("Home"), 85);
  assert.equal(press("End"), 480);
  assert.equal(press("a"), undefined);
  assert.equal(keyed(fullness, 0.53, { key: "ArrowUp", shiftKey: false }), 0.54);
});
