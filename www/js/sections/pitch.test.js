import assert from "node:assert/strict";
import { test } from "node:test";
import { nearestNote, noteHertz } from "./pitch.js";

// ISO 16 for A4; a violin's open strings in equal temperament, to a tenth of a hertz, as any table of pitches has them.
test("a violin's strings have their names", () => {
  for (const [hz, name] of /** @type {const} */ ([
    [196.0, "G3"],
    [293.7, "D4"],
    [440.0, "A4"],
    [659.3, "E5"],
  ])) {
    const note = nearestNote(hz);
    assert.equal(note.name, name);
    assert.ok(Math.abs(note.cents) <= 1);
  }
  assert.ok(Math.abs(noteHertz(55) - 196.0) < 0.01);
});

test("a quarter of a tone is fifty cents off", () => {
  assert.equal(Math.abs(nearestNote(440 * 2 ** (0.499 / 12)).cents), 50);
});
