import assert from "node:assert/strict";
import { test } from "node:test";
import { drawingFile } from "./drawing_file.js";

const drawing = {
  low: [-103, -355],
  high: [103, 8],
  lines: [{ kind: "outline", path: "M0 0 L10 0 Z" }],
  labels: [{ name: "", value_mm: 206, at: [0, -71], minor: false }],
  handles: [],
};
const words = { title: 'Plan of "A & <B>"', foot: "true to scale", label: (label) => label.value_mm.toFixed(1) };

test("one unit of the file is one millimetre", () => {
  const file = drawingFile(drawing, words);
  const [, width, height] = file.match(/width="([\d.]+)mm" height="([\d.]+)mm"/);
  const [, box] = file.match(/viewBox="([^"]+)"/);
  const [, , box_width, box_height] = box.split(" ").map(Number);
  assert.equal(Number(width), box_width);
  assert.equal(Number(height), box_height);
  assert.ok(box_width >= 206 && box_height >= 363);
});

test("a name can't break the file, and handles stay on the screen", () => {
  const file = drawingFile(drawing, words);
  assert.match(file, /<title>Plan of &#34;A &#38; &#60;B&#62;&#34;<\/title>/);
  assert.match(file, /206\.0/);
  assert.doesNotMatch(file, /slider/);
});
