import assert from "node:assert/strict";
import { test } from "node:test";
import { DesignStore, valueAt, withValueAt } from "./design_store.js";

const design = Object.freeze({
  name: "A top",
  arching: Object.freeze({ apex_height_mm: 15.5 }),
  holes: Object.freeze({ bass: null }),
});

test("values are found by path, and missing ones are undefined", () => {
  assert.equal(valueAt(design, ["arching", "apex_height_mm"]), 15.5);
  assert.equal(valueAt(design, ["holes", "bass", "lower_eye_to_edge_mm"]), undefined);
});

test("a change leaves the old design as it was and shares what it does not touch", () => {
  const changed = withValueAt(design, ["arching", "apex_height_mm"], 17);
  assert.equal(changed.arching.apex_height_mm, 17);
  assert.equal(design.arching.apex_height_mm, 15.5);
  assert.equal(changed.holes, design.holes);
});

test("a change to a value that is not there changes nothing", () => {
  assert.equal(withValueAt(design, ["holes", "bass", "lower_eye_to_edge_mm"], 12).holes.bass, null);
  assert.deepEqual(withValueAt(design, ["bar", "height_mm"], 12), design);
});

test("settled designs are steps, trials and designs put back are not", () => {
  const store = new DesignStore();
  const high = (mm) => withValueAt(design, ["arching", "apex_height_mm"], mm);
  store.settle(design);
  assert.equal(store.undo(), false);
  store.replace(high(16));
  store.replace(high(17));
  store.settle(high(17));
  store.settle(high(17));
  store.settle(high(18));
  assert.equal(store.steps_back, 2);
  assert.equal(store.undo(), true);
  assert.equal(store.design.arching.apex_height_mm, 17);
  assert.equal(store.undo(), true);
  assert.equal(store.design, design);
  assert.equal(store.redo(), true);
  assert.equal(store.steps_forth, 1);
  store.settle(high(12));
  assert.equal(store.steps_forth, 0);
  assert.equal(store.redo(), false);
  store.withdraw();
  assert.equal(store.design.arching.apex_height_mm, 17);
  assert.deepEqual([store.steps_back, store.steps_forth], [1, 0]);
});

test("an edit starts from what is being tried, and undo gives that up before it steps back", () => {
  const store = new DesignStore();
  const high = (mm) => withValueAt(design, ["arching", "apex_height_mm"], mm);
  store.settle(design);
  store.settle(high(16));
  assert.equal(store.edited, store.design);
  store.tried = high(17);
  assert.equal(store.edited.arching.apex_height_mm, 17);
  assert.equal(store.undo(), true);
  assert.equal(store.edited, store.design);
  assert.equal(store.design.arching.apex_height_mm, 16);
  store.tried = high(17);
  store.replace(store.tried);
  assert.equal(store.tried, undefined);
  assert.equal(store.undo(), true);
  assert.equal(store.design, design);
  store.tried = high(18);
  assert.equal(store.redo(), true);
  assert.equal(store.edited, store.design);
});

test("the first design is known, and the one before the last change, settled or under the hand", () => {
  const store = new DesignStore();
  const high = (mm) => withValueAt(design, ["arching", "apex_height_mm"], mm);
  store.settle(design);
  assert.deepEqual([store.first, store.before], [design, design]);
  store.settle(high(16));
  store.settle(high(17));
  assert.equal(store.first, design);
  assert.equal(store.before.arching.apex_height_mm, 16);
  store.replace(high(18));
  assert.equal(store.before.arching.apex_height_mm, 17);
});

test("listeners hear of each replacement, and the text is the design", () => {
  const store = new DesignStore();
  /** @type {unknown[]} */
  const heard = [];
  store.subscribe((now) => heard.push(now));
  store.replace(design);
  assert.deepEqual(heard, [design]);
  store.tried = { ...design, name: "A newer top" };
  store.replace(design);
  assert.deepEqual(heard, [design, store.tried]);
  assert.deepEqual(JSON.parse(store.text), design);
  assert.equal(store.name, "A top");
});
