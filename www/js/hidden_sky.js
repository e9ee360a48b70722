/**
 * How much of the sky the arching hides from each of its own places: what makes hollows darker than ridges under a wide light.
 *
 * Seen from a place, the surface rises to a horizon in each direction. A surface under an even sky loses the share sin² of the
 * horizon's height there (the closed form for light weighted by its cosine); the mean over the directions is lost in all.
 */
/** @import { Picture } from "./messages.js" */
import { nodeCount, nodesOf, OUTSIDE } from "./picture_nodes.js";

/** Farther wood is left to the light that comes from everywhere, mm. */
const REACH_MM = 24;
const DIRECTIONS = 16;
const INSIDE = 1;

/**
 * @param {Pick<Picture, "positions" | "kinds">} picture
 * @returns {Float32Array} (vertex) 0 under an open sky, at most 1
 */
export function hiddenSky(picture) {
  const { kinds, positions } = picture;
  const count = nodeCount(picture);
  const outside = hidden(positions.subarray(0, 3 * count), 1);
  const inside = hidden(positions.subarray(3 * count, 6 * count), -1);
  return nodesOf(picture).reduce((shares, node, vertex) => {
    // A wall lies between both faces.
    const share = kinds[vertex] === OUTSIDE ? outside[node] : kinds[vertex] === INSIDE ? inside[node] : 0.5;
    shares[vertex] = kinds[vertex] > INSIDE ? share * (outside[node] + inside[node]) : share;
    return shares;
  }, new Float32Array(kinds.length));
}

/**
 * @param {Float32Array} places (node, xyz) mm
 * @param {number} up 1 for a face that looks outwards, -1 for one that looks inwards
 * @returns {Float32Array} (node)
 */
function hidden(places, up) {
  const cells = inCells(places);
  const rises = new Float32Array(DIRECTIONS);
  return Float32Array.from({ length: places.length / 3 }, (_, node) => {
    const [x, y, z] = places.subarray(3 * node, 3 * node + 3);
    rises.fill(0);
    for (const other of near(cells, x, y)) {
      const [dx, dy] = [places[3 * other] - x, places[3 * other + 1] - y];
      const squared = dx * dx + dy * dy;
      const rise = up * (places[3 * other + 2] - z);
      if (rise > 0 && squared > 0 && squared < REACH_MM * REACH_MM) {
        const direction = Math.floor((Math.atan2(dy, dx) / (2 * Math.PI) + 1) * DIRECTIONS) % DIRECTIONS;
        // sin² of the height at which it is seen.
        rises[direction] = Math.max(rises[direction], (rise * rise) / (squared + rise * rise));
      }
    }
    return rises.reduce((sum, share) => sum + share, 0) / DIRECTIONS;
  });
}

/**
 * @param {Float32Array} places (node, xyz)
 * @returns {Map<number, number[]>} nodes by the square of the plan that they lie in
 */
function inCells(places) {
  /** @type {Map<number, number[]>} */
  const cells = new Map();
  for (let node = 0; node < places.length / 3; node++) {
    const key = cellOf(places[3 * node], places[3 * node + 1]);
    const cell = cells.get(key);
    if (cell === undefined) {
      cells.set(key, [node]);
    } else {
      cell.push(node);
    }
  }
  return cells;
}

/** Squares as wide as the reach, far fewer to a row than this. */
const ROW = 1024;

/**
 * @param {number} x
 * @param {number} y
 */
function cellOf(x, y) {
  return Math.floor(x / REACH_MM) + ROW * Math.floor(y / REACH_MM);
}

/**
 * @param {Map<number, number[]>} cells
 * @param {number} x
 * @param {number} y
 * @returns {Generator<number>} all nodes that may be within reach
 */
function* near(cells, x, y) {
  const middle = cellOf(x, y);
  for (const row of [-ROW, 0, ROW]) {
    for (const column of [-1, 0, 1]) {
      yield* cells.get(middle + row + column) ?? [];
    }
  }
}
