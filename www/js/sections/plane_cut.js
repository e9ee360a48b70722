/**
 * The wood where a plane across the top, or along it, cuts it: closed loops of points on the picture's faces, each with its motion.
 */
/** @import { Motion, Picture } from "../messages.js" */
import { MOTION_COMPONENTS, OUTSIDE } from "../picture_nodes.js";

/**
 * A plane: across the top where y is `at_mm`, or along it where x is.
 * @typedef {{ across: boolean, at_mm: number }} Plane
 */

/**
 * One piece of the cut wood, its points in order round it. Places and motions are (point, [along the cut, outward]) in mm; the motion
 * is that of the motion field.
 * @typedef {object} CutPiece
 * @property {Float64Array} rest
 * @property {Float64Array} re
 * @property {Float64Array} im
 * @property {number[]} outside where its outer side has points along the cut, rising, from end to end; mm
 */

/**
 * @param {Pick<Picture, "positions" | "triangles" | "kinds">} picture
 * @param {Pick<Motion, "re" | "im"> | undefined} motion none at rest
 * @param {Plane} plane
 * @returns {CutPiece[]} from left to right
 */
export function cutPieces({ positions, triangles, kinds }, motion, plane) {
  const [across_axis, along_axis] = plane.across ? [1, 0] : [0, 1];
  const beyond = (/** @type {number} */ vertex) => positions[3 * vertex + across_axis] >= plane.at_mm;
  /** @type {Map<string, { end: string, edge: Edge }>} by the name of the point that a segment starts at */
  const segments = new Map();
  for (let corner = 0; corner < triangles.length; corner += 3) {
    const corners = triangles.subarray(corner, corner + 3);
    /** @type {Edge | undefined} */
    let from;
    /** @type {Edge | undefined} */
    let to;
    for (let k = 0; k < 3; k++) {
      const [a, b] = [corners[k], corners[(k + 1) % 3]];
      if (beyond(a) && !beyond(b)) {
        from = edge(positions, a, b);
      } else if (!beyond(a) && beyond(b)) {
        to = edge(positions, a, b);
      }
    }
    if (from !== undefined && to !== undefined) {
      segments.set(from.name, { end: to.name, edge: from });
    }
  }
  const pieces = loops(segments).map((edges) => {
    const at = (/** @type {Float32Array} */ field, /** @type {number} */ stride) => {
      return crossings(edges, positions, plane.at_mm, across_axis, field, stride, along_axis);
    };
    const rest = at(positions, 3);
    const [re, im] = motion
      ? [motion.re, motion.im].map((field) => at(field, MOTION_COMPONENTS))
      : [new Float64Array(rest.length), new Float64Array(rest.length)];
    const us = edges.map((_, point) => rest[2 * point]);
    const inner = us.filter((_, point) => edges[point].ends.every((vertex) => kinds[vertex] === OUTSIDE));
    const outside = [Math.min(...us), ...inner, Math.max(...us)].sort((one, other) => one - other);
    return { rest, re, im, outside };
  });
  return pieces.sort((one, other) => one.outside[0] - other.outside[0]);
}

/**
 * An edge that the plane crosses, its lower end first, so that faces that meet in it find the same point to the last digit.
 * @typedef {{ name: string, ends: [number, number] }} Edge
 */

/**
 * @param {Float32Array} positions
 * @param {number} a
 * @param {number} b
 * @returns {Edge}
 */
function edge(positions, a, b) {
  // By place: where outside and wall meet, each has vertices of its own.
  const place = (/** @type {number} */ vertex) => positions.subarray(3 * vertex, 3 * vertex + 3).join();
  const [one, other] = [place(a), place(b)];
  return one < other ? { name: `${one};${other}`, ends: [a, b] } : { name: `${other};${one}`, ends: [b, a] };
}

/**
 * @param {Map<string, { end: string, edge: Edge }>} segments
 * @returns {Edge[][]}
 */
function loops(segments) {
  /** @type {Edge[][]} */
  const found = [];
  for (const start of segments.keys()) {
    /** @type {Edge[]} */
    const loop = [];
    let at = segments.get(start);
    while (at !== undefined) {
      segments.delete(at.edge.name);
      loop.push(at.edge);
      at = segments.get(at.end);
    }
    if (loop.length > 2) {
      found.push(loop);
    }
  }
  return found;
}

/**
 * What a field is where the plane crosses edges.
 * @param {readonly Edge[]} edges
 * @param {Float32Array} positions
 * @param {number} at_mm
 * @param {number} across_axis
 * @param {Float32Array} field (vertex, stride), xyz first
 * @param {number} stride
 * @param {number} along_axis
 * @returns {Float64Array} (edge, [along the cut, outward])
 */
function crossings(edges, positions, at_mm, across_axis, field, stride, along_axis) {
  const values = edges.flatMap(({ ends: [a, b] }) => {
    const [low, high] = [positions[3 * a + across_axis], positions[3 * b + across_axis]];
    const share = (at_mm - low) / (high - low);
    return [along_axis, 2].map((axis) => {
      const [from, to] = [field[stride * a + axis], field[stride * b + axis]];
      return from + share * (to - from);
    });
  });
  return Float64Array.from(values);
}

/**
 * SVG path data of a piece at a moment; heights go up.
 * @param {CutPiece} piece
 * @param {number} phase_rad
 * @param {number} exaggeration 0 for rest
 */
export function piecePath({ rest, re, im }, phase_rad, exaggeration) {
  const [cos, sin] = [exaggeration * Math.cos(phase_rad), exaggeration * Math.sin(phase_rad)];
  let path = "";
  for (let point = 0; point < rest.length; point += 2) {
    const [u, v] = [point, point + 1].map((at) => rest[at] + re[at] * cos - im[at] * sin);
    path += `${point === 0 ? "M" : "L"}${hundredths(u)} ${hundredths(-v)}`;
  }
  return `${path}Z`;
}

/** @param {number} value */
function hundredths(value) {
  return Math.round(100 * value) / 100;
}
