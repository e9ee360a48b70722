import assert from "node:assert/strict";
import { test } from "node:test";
import { historyWish } from "./history_buttons.js";

const press = { key: "z", ctrlKey: false, metaKey: false, shiftKey: false, altKey: false };

test("Ctrl or Cmd with Z undoes, with Shift too it redoes", () => {
  assert.equal(historyWish({ ...press, ctrlKey: true }), "undo");
  assert.equal(historyWish({ ...press, metaKey: true }), "undo");
  assert.equal(historyWish({ ...press, key: "Z", ctrlKey: true, shiftKey: true }), "redo");
  assert.equal(historyWish({ ...press, key: "Z", metaKey: true, shiftKey: true }), "redo");
});

test("other keys are left alone", () => {
  assert.equal(historyWish(press), undefined);
  assert.equal(historyWish({ ...press, key: "y", ctrlKey: true }), undefined);
  assert.equal(historyWish({ ...press, ctrlKey: true, altKey: true }), undefined);
});
