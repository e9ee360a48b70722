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
  const places = positions.subarray(0, 3 * count);
  const cells = inCells(places);
  const faces = [places, positions.subarray(3 * count, 6 * count)];
  const hidden = faces.map(() => new Float32Array(count));
  for (let node = 0; node < count; node++) {
    // Both faces lie over each other but for a thickness.
    const near = cells.get(cellOf(places[3 * node], places[3 * node + 1])) ?? [];
    hidden[0][node] = hiddenAt(faces[0], node, near, 1);
    hidden[1][node] = hiddenAt(faces[1], node, near, -1);
  }
  const nodes = nodesOf(picture);
  return Float32Array.from(kinds, (kind, vertex) => {
    const [outside, inside] = hidden.map((face) => face[nodes[vertex]]);
    // A wall lies between both faces.
    return kind === OUTSIDE ? outside : kind === INSIDE ? inside : (outside + inside) / 2;
  });
}

const rises = new Float64Array(DIRECTIONS);

/**
 * @param {Float32Array} places (node, xyz) mm
 * @param {number} node
 * @param {readonly number[]} near all nodes that may be within reach
 * @param {number} up 1 for a face that looks outwards, -1 for one that looks inwards
 */
function hiddenAt(places, node, near, up) {
  const [x, y, z] = [places[3 * node], places[3 * node + 1], places[3 * node + 2]];
  rises.fill(0);
  for (let at = 0; at < near.length; at++) {
    const other = 3 * near[at];
    const rise = up * (places[other + 2] - z);
    if (rise <= 0) {
      continue;
    }
    const [dx, dy] = [places[other] - x, places[other + 1] - y];
    const squared = dx * dx + dy * dy;
    if (squared > 0 && squared < REACH_MM * REACH_MM) {
      // sin² of the height at which it is seen.
      const height = (rise * rise) / (squared + rise * rise);
      const direction = sixteenth(dx, dy);
      if (height > rises[direction]) {
        rises[direction] = height;
      }
    }
  }
  let sum = 0;
  for (const share of rises) {
    sum += share;
  }
  return sum / DIRECTIONS;
}

/** Tangent of a sixteenth of a turn. */
const SIXTEENTH = Math.tan(Math.PI / 8);

/**
 * In which sixteenth of a turn a direction lies; which is which doesn't matter. An arc tangent would take most of the time.
 * @param {number} dx
 * @param {number} dy
 */
function sixteenth(dx, dy) {
  const [across, along] = [Math.abs(dx), Math.abs(dy)];
  const [more, less] = across > along ? [across, along] : [along, across];
  return (dx > 0 ? 8 : 0) + (dy > 0 ? 4 : 0) + (across > along ? 2 : 0) + (less > SIXTEENTH * more ? 1 : 0);
}

/**
 * @param {Float32Array} places (node, xyz)
 * @returns {Map<number, number[]>} by squares of the plan: the nodes in them and in those round them
 */
function inCells(places) {
  /** @type {Map<number, number[]>} */
  const cells = new Map();
  for (let node = 0; node < places.length / 3; node++) {
    const middle = cellOf(places[3 * node], places[3 * node + 1]);
    for (const row of [-ROW, 0, ROW]) {
      for (const column of [-1, 0, 1]) {
        const key = middle + row + column;
        const cell = cells.get(key);
        if (cell === undefined) {
          cells.set(key, [node]);
        } else {
          cell.push(node);
        }
      }
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
