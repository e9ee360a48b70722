import assert from "node:assert/strict";
import { test } from "node:test";
import { hertzText, modeName, sourceText } from "#words/page.js";
import { bestHertz, countText, numbersWith } from "./numbers.js";

test("frequencies carry three figures", () => {
  assert.equal(hertzText(82.34), "82.3");
  assert.equal(hertzText(311.4), "311");
  assert.equal(hertzText(99.96), "100");
});

test("thousands are set apart by a narrow space that does not break", () => {
  assert.equal(countText(2612), "2\u202f612");
  assert.equal(countText(811), "811");
});

test("decimals have the language's mark, and what is below zero a real minus", () => {
  const { numberText, hertzText: german } = numbersWith(",");
  assert.equal(numberText(-0.25), "−0,25");
  assert.equal(numberText(2.5, 2), "2,50");
  assert.equal(german(82.34), "82,3");
});

test("a mode without a name of the trade goes by its number", () => {
  assert.equal(modeName({ number: 5, name: "ring", frequency_hz: 300, residual: 0 }), "Ring");
  assert.equal(modeName({ number: 7, name: "", frequency_hz: 400, residual: 0 }), "Mode 7");
});

test("a frequency is corrected for the mesh as soon as two meshes can tell", () => {
  const mode = { number: 1, name: "", frequency_hz: 395, residual: 0 };
  const surety = { converged_hz: 391, mesh_hz: 2, wood_hz: 30, q: 90 };
  assert.equal(bestHertz(mode, surety), 391);
  assert.equal(sourceText("standard mesh", mode, surety), "standard mesh, corrected for the mesh");
  for (const unknown of [undefined, { ...surety, converged_hz: null, mesh_hz: null }]) {
    assert.equal(bestHertz(mode, unknown), 395);
    assert.equal(sourceText("standard mesh", mode, unknown), "standard mesh");
  }
  const foreseen = { ...mode, foreseen_hz: 392 };
  assert.equal(bestHertz(foreseen, undefined), 392);
  assert.equal(bestHertz(foreseen, surety), 391);
  assert.equal(sourceText("standard mesh", foreseen, undefined), "standard mesh, corrected for it as before");
});
