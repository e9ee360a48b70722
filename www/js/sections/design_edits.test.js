import assert from "node:assert/strict";
import { test } from "node:test";
import { archPath, at, changed, withBassArch, withBassSide, withExtraArch, withoutExtraArch } from "./design_edits.js";

const corner = { station_mm: 230, reach_mm: 77 };
const design = {
  outline: {
    upper_width_mm: 168,
    waist_width_mm: 112,
    lower_width_mm: 206,
    upper_corner: corner,
    lower_corner: corner,
  },
  arching: {
    cross_arches: { waist: { fullness: 0.57 } },
    extra_arches: [{ station_mm: 110, arch: { fullness: 0.5 } }],
  },
};

test("a value is changed, added and taken away, and the design it came from stays", () => {
  const before = JSON.stringify(design);
  assert.equal(at(changed(design, "arching.extra_arches.0.station_mm", 111), "arching.extra_arches.0.station_mm"), 111);
  const apex = changed(design, "arching.apex_station_mm", 180);
  assert.equal(at(apex, "arching.apex_station_mm"), 180);
  assert.equal("apex_station_mm" in at(changed(apex, "arching.apex_station_mm", undefined), "arching"), false);
  assert.equal(changed(design, "bar.width_mm", 5), design, "a bar that isn't there has no width");
  assert.equal(JSON.stringify(design), before);
});

test("a bass side of its own begins as the treble side and goes again", () => {
  const own = withBassSide(design, true);
  assert.deepEqual(at(own, "outline.bass.lower_half_width_mm"), 103);
  assert.deepEqual(at(own, "outline.bass.upper_corner"), corner);
  assert.deepEqual(withBassSide(own, false), design);
  const arch = withBassArch(design, "waist", true);
  assert.deepEqual(at(arch, "arching.cross_arches.waist.bass"), { fullness: 0.57 });
  assert.deepEqual(withBassArch(arch, "waist", false), design);
});

test("arches are found by their names, further ones come and go", () => {
  assert.equal(archPath("waist.bass"), "arching.cross_arches.waist.bass");
  assert.equal(archPath("extra.1.bass"), "arching.extra_arches.1.arch.bass");
  const more = withExtraArch(design, 260);
  assert.deepEqual(at(more, "arching.extra_arches.1"), { station_mm: 260, arch: { fullness: 0.57 } });
  assert.deepEqual(at(withoutExtraArch(more, 0), "arching.extra_arches.0.station_mm"), 260);
  assert.equal(at(withoutExtraArch(design, 0), "arching.extra_arches"), undefined);
});
