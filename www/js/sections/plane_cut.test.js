import assert from "node:assert/strict";
import { test } from "node:test";
import { cutPieces, piecePath } from "./plane_cut.js";

/** A box from x = left to right, y 0 to 10, z 0 to 4, its faces with vertices of their own as a picture's are; triangles
 * counter-clockwise seen from the air. */
function box(left, right) {
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].map((k) => [k & 1 ? right : left, k & 2 ? 10 : 0, k & 4 ? 4 : 0]);
  const faces = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  const positions = faces.flatMap((face) => face.flatMap((corner) => corners[corner]));
  const triangles = faces.flatMap((_, face) => [0, 1, 2, 0, 2, 3].map((k) => 4 * face + k));
  return { positions, triangles };
}

const [one, other] = [box(-6, -1), box(1, 6)];
const picture = {
  kinds: new Uint32Array(48),
  positions: Float32Array.from([...one.positions, ...other.positions]),
  triangles: Uint32Array.from([
    ...one.triangles,
    ...other.triangles.map((vertex) => vertex + one.positions.length / 3),
  ]),
};

/** Area inside a loop, by Gauss' formula. */
function area(rest) {
  let twice = 0;
  for (let k = 0; k < rest.length; k += 2) {
    const [u, v] = [rest[(k + 2) % rest.length], rest[(k + 3) % rest.length]];
    twice += rest[k] * v - u * rest[k + 1];
  }
  return Math.abs(twice) / 2;
}

test("a cut across two boxes is two rectangles, from left to right", () => {
  const pieces = cutPieces(picture, undefined, { across: true, at_mm: 3.7 });
  assert.equal(pieces.length, 2);
  assert.ok(Math.max(...pieces[0].rest.filter((_, k) => k % 2 === 0)) < 0);
  assert.ok(Math.abs(pieces[1].outside[0] - 1) < 1e-6 && Math.abs(pieces[1].outside.at(-1) - 6) < 1e-6);
  for (const { rest } of pieces) {
    assert.ok(Math.abs(area(rest) - 20) < 1e-4, `${area(rest)} mm2`);
  }
});

test("a cut along one box is its other side, and one beside them nothing", () => {
  const [piece, ...others] = cutPieces(picture, undefined, { across: false, at_mm: 2 });
  assert.equal(others.length, 0);
  assert.ok(Math.abs(area(piece.rest) - 40) < 1e-4);
  assert.equal(cutPieces(picture, undefined, { across: false, at_mm: 0 }).length, 0);
});

test("a lift moves the whole piece, by the phase's cosine", () => {
  const vertices = picture.positions.length / 3;
  const lift = Float32Array.from({ length: 6 * vertices }, (_, k) => (k % 6 === 2 ? 1 : 0));
  const motion = { re: lift, im: new Float32Array(6 * vertices) };
  const [piece] = cutPieces(picture, motion, { across: true, at_mm: 5 });
  const heights = (/** @type {string} */ path) => path.match(/ -?[\d.]+/g).map((text) => -Number(text));
  const rest = heights(piecePath(piece, 0, 0));
  for (const [phase, moved] of [
    [0, 12],
    [Math.PI / 3, 6],
    [Math.PI, -12],
  ]) {
    heights(piecePath(piece, phase, 12)).forEach((height, k) => {
      assert.ok(Math.abs(height - rest[k] - moved) < 0.02);
    });
  }
});
