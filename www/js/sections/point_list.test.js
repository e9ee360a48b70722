import assert from "node:assert/strict";
import { test } from "node:test";
import { withOneMore } from "./point_list.js";

test("one more point stands in the widest gap, in order", () => {
  const points = [
    { place: 0.2, height: 0.9 },
    { place: 0.8, height: 0.1 },
  ];
  assert.deepEqual(withOneMore(points), [points[0], { place: 0.5, height: 0.5 }, points[1]]);
  assert.deepEqual(withOneMore([{ place: 0.3, height: 0.7 }])[1], { place: 0.65, height: 0.35 });
});
