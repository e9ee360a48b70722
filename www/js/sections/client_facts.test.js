import assert from "node:assert/strict";
import { test } from "node:test";
import { narrowest, timesTheMean } from "./client_facts.js";

const REGIONS = [
  { key: "island", mass_g: 10, narrowest_mm: 40 },
  { key: "upper_wing_bass", mass_g: 1, narrowest_mm: 9 },
  { key: "upper_wing_treble", mass_g: 1, narrowest_mm: 8 },
  { key: "flank_bass", mass_g: 28, narrowest_mm: 5 },
  { key: "upper_bout", mass_g: 40, narrowest_mm: null },
  { key: "bar_line", mass_g: 20, narrowest_mm: null },
];
const even = REGIONS.slice(0, 5).map(({ key, mass_g }) => ({ key, share: mass_g / 80 }));

test("a top that moves as one piece has every part at the mean", () => {
  for (const part of [/^island$/, /_wing_/, /bout/]) {
    assert.ok(Math.abs(timesTheMean(part, even, REGIONS) - 1) < 1e-12);
  }
});

test("a part with twice its share of the energy is at twice the mean, and one that isn't there at nothing", () => {
  const shares = even.map((one) => (one.key === "upper_wing_bass" ? { ...one, share: 3 * one.share } : one));
  assert.ok(Math.abs(timesTheMean(/_wing_/, shares, REGIONS) - 2) < 1e-12);
  assert.equal(timesTheMean(/narrows/, shares, REGIONS), 0);
});

test("the narrower of two sides is told, of each kind that there is", () => {
  const found = narrowest(REGIONS, ["upper_wing", "lower_wing", "flank", "upper_bout"]);
  assert.deepEqual(
    found.map(({ key }) => key),
    ["upper_wing_treble", "flank_bass"],
  );
});
