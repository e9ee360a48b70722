/**
 * Which node of the mesh each vertex of a picture stands on. A picture's vertices are the outside nodes, the inside nodes in the
 * same order, then the walls' by pairs, outside and inside.
 */
/** @import { Picture } from "./messages.js" */

/** A vertex's kind. */
export const OUTSIDE = 0;
const WALL = 2;

/** Numbers a vertex in a motion field: displacement and change of the normal, xyz each. */
export const MOTION_COMPONENTS = 6;

/**
 * @param {Pick<Picture, "kinds">} picture
 * @returns {number} how many nodes the picture's mesh has
 */
export function nodeCount({ kinds }) {
  const inside = kinds.findIndex((kind) => kind !== OUTSIDE);
  return inside < 0 ? kinds.length : inside;
}

/**
 * @param {Pick<Picture, "kinds" | "positions">} picture
 * @returns {Float32Array} (node, xy) mm: where its point of the outer surface stands in plan
 */
export function outsidePlaces(picture) {
  const places = new Float32Array(2 * nodeCount(picture));
  for (let node = 0; node < places.length / 2; node++) {
    places.set(picture.positions.subarray(3 * node, 3 * node + 2), 2 * node);
  }
  return places;
}

/**
 * The triangles of the outer face, whose corners are nodes.
 * @param {Uint32Array} triangles of a picture
 * @param {number} count of its nodes
 * @returns {Generator<Uint32Array>} corners
 */
export function* outsideTriangles(triangles, count) {
  for (let at = 0; at < triangles.length; at += 3) {
    const corners = triangles.subarray(at, at + 3);
    if (corners[0] < count && corners[1] < count && corners[2] < count) {
      yield corners;
    }
  }
}

/** @type {WeakMap<object, Uint32Array>} by the picture, which never changes; several ask about each */
const known_nodes = new WeakMap();

/**
 * @param {Pick<Picture, "kinds" | "positions">} picture
 * @returns {Uint32Array} (vertex) node
 */
export function nodesOf(picture) {
  const nodes = known_nodes.get(picture) ?? findNodes(picture);
  known_nodes.set(picture, nodes);
  return nodes;
}

/**
 * @param {Pick<Picture, "kinds" | "positions">} picture
 * @returns {Uint32Array} (vertex) node
 */
function findNodes({ kinds, positions }) {
  const count = nodeCount({ kinds });
  const place = (/** @type {number} */ vertex) => `${positions[3 * vertex]} ${positions[3 * vertex + 1]}`;
  /** @type {Map<string, number>} the wall's outer vertices stand exactly on the outside's */
  const nodes = new Map();
  for (let node = 0; node < count; node++) {
    nodes.set(place(node), node);
  }
  return Uint32Array.from(kinds, (kind, vertex) => {
    if (kind !== WALL) {
      return vertex % count;
    }
    return nodes.get(place(vertex - (vertex % 2))) ?? 0;
  });
}

/**
 * @param {Float32Array} places (place, xy)
 * @param {Float32Array} nodes (node, xy), at least one
 * @returns {Uint32Array} (place) the nearest node; cost: each place with each node
 */
export function nearestNodes(places, nodes) {
  return Uint32Array.from({ length: places.length / 2 }, (_, place) => {
    const [x, y] = [places[2 * place], places[2 * place + 1]];
    let [nearest, least] = [0, Number.POSITIVE_INFINITY];
    for (let node = 0; node < nodes.length; node += 2) {
      const squared = (nodes[node] - x) ** 2 + (nodes[node + 1] - y) ** 2;
      if (squared < least) {
        [nearest, least] = [node / 2, squared];
      }
    }
    return nearest;
  });
}
