import assert from "node:assert/strict";
import { test } from "node:test";
import { mmPerUnit } from "./svg_path.js";

test("a unit of a drawing is what its width on paper says, and a millimetre where that says nothing", () => {
  assert.equal(mmPerUnit("210mm", "0 0 210 297"), 1);
  assert.equal(mmPerUnit("21 cm", "0,0,420,594"), 0.5);
  assert.equal(mmPerUnit("10in", "0 0 720 720"), 254 / 720);
  assert.equal(mmPerUnit("100mm", ""), 25.4 / 96);
  for (const width of ["", "100%", "500", "500px"]) {
    assert.equal(mmPerUnit(width, "0 0 500 500"), 1);
  }
});
