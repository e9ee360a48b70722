import assert from "node:assert/strict";
import { test } from "node:test";
import { chosenMode, FIRST_WISH } from "./mode_choice.js";

/** @param {readonly string[]} names of modes in rising order */
const modes = (...names) =>
  names.map((name, index) => ({ number: index + 1, name, frequency_hz: 80 * (index + 1), residual: 0 }));

test("a named mode is found wherever it stands", () => {
  assert.equal(chosenMode(modes("twist", "x", "ring", "", ""), FIRST_WISH).number, 3);
});

test("without the name the number decides", () => {
  assert.equal(chosenMode(modes("", "", "", "", "", ""), FIRST_WISH).number, 5);
  assert.equal(chosenMode(modes("twist", "", "ring"), { name: "", number: 2 }).number, 2);
});

test("a number beyond the last mode means the last", () => {
  assert.equal(chosenMode(modes("twist", "x"), FIRST_WISH).number, 2);
});
