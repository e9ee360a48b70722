/**
 * Where grains of sand lie on a plate that moves.
 */
import { outsideTriangles } from "../picture_nodes.js";

/** At this share of the largest outward motion a place holds 1/e of the grains that one at rest holds. */
const STILL = 0.07;

/**
 * Strewn evenly, then kept the more likely the less their place moves outwards. The same plate always gives the same grains.
 * @param {{ nodes: Float32Array, re: Float32Array, im: Float32Array, triangles: Uint32Array }} plate nodes (node, [x, y, volume]) mm;
 * re and im (node, [outward, x, y, z]); triangles of other vertices are passed over
 * @param {number} strewn how many come to lie if nothing moves
 * @returns {[number, number][]} places, mm
 */
export function grains({ nodes, re, im, triangles }, strewn) {
  const count = nodes.length / 3;
  let largest = 0;
  for (let node = 0; node < count; node++) {
    largest = Math.max(largest, Math.hypot(re[4 * node], im[4 * node]));
  }
  /** @type {[number, number, number, number][]} corners and area */
  const plate = [];
  let whole = 0;
  for (const [a, b, c] of outsideTriangles(triangles, count)) {
    const [ax, ay] = nodes.subarray(3 * a, 3 * a + 2);
    const area =
      Math.abs((nodes[3 * b] - ax) * (nodes[3 * c + 1] - ay) - (nodes[3 * c] - ax) * (nodes[3 * b + 1] - ay)) / 2;
    plate.push([a, b, c, area]);
    whole += area;
  }
  const next = sequence();
  /** @type {[number, number][]} */
  const lying = [];
  let owed = 0;
  for (const [a, b, c, area] of plate) {
    for (owed += (strewn * area) / whole; owed >= 1; owed -= 1) {
      // Even over a triangle: fold the square's other half back (common practice).
      let [u, v] = [next(), next()];
      if (u + v > 1) {
        [u, v] = [1 - u, 1 - v];
      }
      const at = (/** @type {(node: number) => number} */ of) => of(a) + u * (of(b) - of(a)) + v * (of(c) - of(a));
      // The parts pass through zero between corners, their size need not.
      const moved = Math.hypot(
        at((node) => re[4 * node]),
        at((node) => im[4 * node]),
      );
      const share = largest > 0 ? moved / largest / STILL : 0;
      if (next() < Math.exp(-(share ** 2))) {
        lying.push([at((node) => nodes[3 * node]), at((node) => nodes[3 * node + 1])]);
      }
    }
  }
  return lying;
}

/** Numbers from 0 to 1, always the same: Lehmer's generator with multiplier 48271 (Park, Miller and Stockmeyer 1993). */
function sequence() {
  let state = 1;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
