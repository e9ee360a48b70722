/**
 * Which triangle of a picture's outer face covers a place in plan, found without looking at all of them.
 */
/** @import { Picture } from "../messages.js" */
import { nodeCount, outsideTriangles } from "../picture_nodes.js";

/** Cells along the shorter side: with some five thousand triangles a few lie in each. */
const CELLS = 40;

/** Rounding must leave no slit between neighbouring triangles. */
const SLACK = 1e-6;

/** Looks up places of one picture. */
export class PlanLocator {
  #positions;
  /** @type {Uint32Array[][]} (cell) corners of the triangles whose boxes touch it */
  #cells = [];
  #columns = 1;
  #rows = 1;
  #step = 1;
  /** @type {readonly [number, number]} */
  low;
  /** @type {readonly [number, number]} */
  high;

  /** @param {Pick<Picture, "positions" | "triangles" | "kinds">} picture */
  constructor({ positions, triangles, kinds }) {
    this.#positions = positions;
    const count = nodeCount({ kinds });
    const end = (/** @type {number} */ axis, /** @type {(a: number, b: number) => number} */ farther) => {
      let found = positions[axis];
      for (let node = 1; node < count; node++) {
        found = farther(found, positions[3 * node + axis]);
      }
      return found;
    };
    this.low = [end(0, Math.min), end(1, Math.min)];
    this.high = [end(0, Math.max), end(1, Math.max)];
    const [width, length] = [this.high[0] - this.low[0], this.high[1] - this.low[1]];
    this.#step = Math.min(width, length) / CELLS || 1;
    this.#columns = Math.floor(width / this.#step) + 1;
    this.#rows = Math.floor(length / this.#step) + 1;
    this.#cells = Array.from({ length: this.#columns * this.#rows }, () => []);
    for (const corners of outsideTriangles(triangles, count)) {
      const [xs, ys] = [0, 1].map((axis) => Array.from(corners, (node) => positions[3 * node + axis]));
      const [left, bottom] = this.#cellOf(Math.min(...xs), Math.min(...ys));
      const [right, top] = this.#cellOf(Math.max(...xs), Math.max(...ys));
      for (let row = bottom; row <= top; row++) {
        for (let column = left; column <= right; column++) {
          this.#cells[row * this.#columns + column].push(corners);
        }
      }
    }
  }

  /**
   * @param {number} x mm
   * @param {number} y mm
   * @returns {[number, number][] | undefined} (node, share) of the triangle there; undefined off the wood
   */
  at(x, y) {
    const outside = x < this.low[0] || x > this.high[0] || y < this.low[1] || y > this.high[1];
    const [column, row] = this.#cellOf(x, y);
    for (const corners of outside ? [] : this.#cells[row * this.#columns + column]) {
      const [[ax, ay], [bx, by], [cx, cy]] = Array.from(corners, (node) =>
        this.#positions.subarray(3 * node, 3 * node + 2),
      );
      const whole = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
      const u = ((x - ax) * (cy - ay) - (cx - ax) * (y - ay)) / whole;
      const v = ((bx - ax) * (y - ay) - (x - ax) * (by - ay)) / whole;
      if (u >= -SLACK && v >= -SLACK && u + v <= 1 + SLACK) {
        return [1 - u - v, u, v].map((share, corner) => [corners[corner], share]);
      }
    }
    return undefined;
  }

  /**
   * @param {number} x
   * @param {number} y
   * @returns {[number, number]} column and row of the nearest cell
   */
  #cellOf(x, y) {
    const cell = (/** @type {number} */ along, /** @type {number} */ count) =>
      Math.min(Math.max(Math.floor(along / this.#step), 0), count - 1);
    return [cell(x - this.low[0], this.#columns), cell(y - this.low[1], this.#rows)];
  }
}

/**
 * A place at the same shares of length and width of another outline.
 * @param {Pick<PlanLocator, "low" | "high">} from
 * @param {Pick<PlanLocator, "low" | "high">} to
 * @param {number} x
 * @param {number} y
 * @returns {[number, number]} unmoved where both outlines fill the same box
 */
export function placeLike(from, to, x, y) {
  const along = (/** @type {number} */ axis, /** @type {number} */ at) => {
    const ratio = (to.high[axis] - to.low[axis]) / (from.high[axis] - from.low[axis]);
    return to.low[axis] + (at - from.low[axis]) * ratio;
  };
  return [along(0, x), along(1, y)];
}
