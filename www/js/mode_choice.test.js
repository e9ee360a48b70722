import assert from "node:assert/strict";
import { test } from "node:test";
import { chosenMode, FIRST_WISH } from "./mode_choice.js";

/** @param {readonly string[]} names of modes in rising order */
const modes = (...names) =>
  names.map((name, index) => ({
    number: index + 1,
    name,
    frequency_hz: 80 * (index + 1),
    residual: 0,
    identity: 31 + index,
  }));

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

test("while a handle moves the shape decides, whatever name or number it has by then", () => {
  assert.equal(chosenMode(modes("twist", "ring", "x"), { name: "ring", number: 2, identity: 33 }).number, 3);
  assert.equal(chosenMode(modes("twist", "ring"), { name: "ring", number: 1, identity: 40 }).number, 2);
});

test("modes that are not known by their shape are not taken for each other", () => {
  const unknown = modes("twist", "ring").map((mode) => ({ ...mode, identity: 0 }));
  assert.equal(chosenMode(unknown, { name: "ring", number: 1, identity: 0 }).number, 2);
});
