/**
 * What each node of the mesh does in the motion that is shown, from the picture's two faces.
 */
/** @import { Motion, Picture } from "../messages.js" */
import { MOTION_COMPONENTS, nodeCount, outsideTriangles } from "../picture_nodes.js";

/**
 * @param {Picture} picture
 * @param {Motion} motion on it
 * @returns {{ nodes: Float32Array, re: Float32Array, im: Float32Array }} nodes (node, [x, y, volume]) mm and mm³, re and im
 * (node, [outward, x, y, z]) of the wood's middle, in the motion field's millimetres
 */
export function nodeMotion(picture, motion) {
  const count = nodeCount(picture);
  const volumes = nodeVolumes(picture, count);
  const nodes = new Float32Array(3 * count);
  for (let node = 0; node < count; node++) {
    nodes.set([picture.positions[3 * node], picture.positions[3 * node + 1], volumes[node]], 3 * node);
  }
  const middle = (/** @type {Float32Array} */ field) => {
    const values = new Float32Array(4 * count);
    for (let node = 0; node < count; node++) {
      for (let axis = 0; axis < 3; axis++) {
        const [outside, inside] = [node, node + count].map((vertex) => field[MOTION_COMPONENTS * vertex + axis]);
        values[4 * node + 1 + axis] = (outside + inside) / 2;
        values[4 * node] += picture.normals[3 * node + axis] * values[4 * node + 1 + axis];
      }
    }
    return values;
  };
  return { nodes, re: middle(motion.re), im: middle(motion.im) };
}

/**
 * @param {Picture} picture
 * @param {number} count of nodes
 * @returns {Float64Array} (node) a third of the outer area of each triangle that meets there, times the thickness, mm³
 */
function nodeVolumes({ positions, triangles }, count) {
  const volumes = new Float64Array(count);
  const side = (/** @type {number} */ a, /** @type {number} */ b) => {
    return [0, 1, 2].map((axis) => positions[3 * b + axis] - positions[3 * a + axis]);
  };
  for (const [a, b, c] of outsideTriangles(triangles, count)) {
    const [[ux, uy, uz], [vx, vy, vz]] = [side(a, b), side(a, c)];
    const area = Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) / 2;
    for (const node of [a, b, c]) {
      volumes[node] += (area / 3) * Math.hypot(...side(node, node + count));
    }
  }
  return volumes;
}
