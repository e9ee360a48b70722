import assert from "node:assert/strict";
import { test } from "node:test";
import { sequentialColour } from "./sequential_colours.js";

/** CIE 1976 L*, from sRGB (IEC 61966-2-1). */
function lightness([r, g, b]) {
  const linear = [r, g, b].map((value) => {
    const share = value / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  const y = 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
  return 116 * Math.cbrt(y) - 16;
}

test("more is darker, evenly", () => {
  const steps = Array.from({ length: 11 }, (_, i) => lightness(sequentialColour(i / 10)));
  for (let i = 1; i < steps.length; i++) {
    const darker = steps[i - 1] - steps[i];
    assert.ok(darker > 2 && darker < 7, `step ${i}: ${darker}`);
  }
});

test("beyond the ends the colours are the ends'", () => {
  assert.deepEqual(sequentialColour(-1), sequentialColour(0));
  assert.deepEqual(sequentialColour(2), sequentialColour(1));
});
