/**
 * Which place of the top a line of sight meets, and what a place in plan lies between.
 */
/** @import { Motion, Picture } from "../messages.js" */
import { MOTION_COMPONENTS, nodeCount, nodesOf, outsideTriangles } from "../picture_nodes.js";

/**
 * The place in plan, of the outside at rest, of the wood that is met first as it is drawn.
 * @param {Picture} picture
 * @param {Motion | undefined} motion
 * @param {number} phase_rad
 * @param {number} exaggeration
 * @param {ArrayLike<number>} ray a point and a direction, xyz each
 * @returns {[number, number] | undefined} x and y, mm; undefined where nothing is met
 */
export function pickedPlace(picture, motion, phase_rad, exaggeration, ray) {
  const { positions, triangles } = picture;
  const drawn = Float64Array.from(positions);
  if (motion !== undefined) {
    const [cos, sin] = [exaggeration * Math.cos(phase_rad), exaggeration * Math.sin(phase_rad)];
    for (let at = 0; at < drawn.length; at++) {
      const moved = MOTION_COMPONENTS * Math.floor(at / 3) + (at % 3);
      drawn[at] += motion.re[moved] * cos - motion.im[moved] * sin;
    }
  }
  let nearest = Number.POSITIVE_INFINITY;
  /** @type {{ corner: number, u: number, v: number } | undefined} */
  let hit;
  for (let corner = 0; corner < triangles.length; corner += 3) {
    const met = meeting(drawn, triangles, corner, ray);
    if (met !== undefined && met.distance > 0 && met.distance < nearest) {
      nearest = met.distance;
      hit = { corner, u: met.u, v: met.v };
    }
  }
  if (hit === undefined) {
    return undefined;
  }
  const { corner, u, v } = hit;
  const nodes = nodesOf(picture);
  const shares = [1 - u - v, u, v];
  const at = (/** @type {number} */ axis) =>
    shares.reduce((sum, share, k) => sum + share * positions[3 * nodes[triangles[corner + k]] + axis], 0);
  return [at(0), at(1)];
}

/**
 * Where a ray meets a triangle: Möller and Trumbore 1997, "Fast, minimum storage ray/triangle intersection", both faces.
 * @param {Float64Array} points (vertex, xyz)
 * @param {Uint32Array} triangles
 * @param {number} corner the triangle's first
 * @param {ArrayLike<number>} ray
 */
function meeting(points, triangles, corner, ray) {
  const [a, b, c] = [0, 1, 2].map((k) => 3 * triangles[corner + k]);
  const [e1x, e1y, e1z] = [points[b] - points[a], points[b + 1] - points[a + 1], points[b + 2] - points[a + 2]];
  const [e2x, e2y, e2z] = [points[c] - points[a], points[c + 1] - points[a + 1], points[c + 2] - points[a + 2]];
  const [dx, dy, dz] = [ray[3], ray[4], ray[5]];
  const [px, py, pz] = [dy * e2z - dz * e2y, dz * e2x - dx * e2z, dx * e2y - dy * e2x];
  const determinant = e1x * px + e1y * py + e1z * pz;
  if (determinant === 0) {
    return undefined;
  }
  const [tx, ty, tz] = [ray[0] - points[a], ray[1] - points[a + 1], ray[2] - points[a + 2]];
  const u = (tx * px + ty * py + tz * pz) / determinant;
  const [qx, qy, qz] = [ty * e1z - tz * e1y, tz * e1x - tx * e1z, tx * e1y - ty * e1x];
  const v = (dx * qx + dy * qy + dz * qz) / determinant;
  return u < 0 || v < 0 || u + v > 1 ? undefined : { u, v, distance: (e2x * qx + e2y * qy + e2z * qz) / determinant };
}

/**
 * The nodes round a place in plan and their shares in it.
 * @param {Pick<Picture, "positions" | "triangles" | "kinds">} picture
 * @param {number} x
 * @param {number} y
 * @returns {[number, number][] | undefined} (node, share); undefined off the mesh
 */
export function overPlan({ positions, triangles, kinds }, x, y) {
  for (const corners of outsideTriangles(triangles, nodeCount({ kinds }))) {
    const [[ax, ay], [bx, by], [cx, cy]] = Array.from(corners, (node) => positions.subarray(3 * node, 3 * node + 2));
    const whole = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
    const u = ((x - ax) * (cy - ay) - (cx - ax) * (y - ay)) / whole;
    const v = ((bx - ax) * (y - ay) - (x - ax) * (by - ay)) / whole;
    if (u >= 0 && v >= 0 && u + v <= 1) {
      return [1 - u - v, u, v].map((share, k) => [corners[k], share]);
    }
  }
  return undefined;
}
