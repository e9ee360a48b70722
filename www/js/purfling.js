/**
 * The purfling's way: how far each vertex of the picture is from the outline.
 */
/** @import { Picture } from "./messages.js" */
import { nodeCount, nodesOf } from "./picture_nodes.js";

/** Beyond this nothing is drawn by it, mm. */
const REACH_MM = 12;

/**
 * @param {Pick<Picture, "positions" | "triangles" | "kinds">} picture whose first wall is the outline's
 * @returns {Float32Array} (vertex) mm from the outline in plan, at most some millimetres more than is drawn
 */
export function edgeDistances(picture) {
  const { positions } = picture;
  const nodes = nodesOf(picture);
  const count = nodeCount(picture);
  const ring = nodes.subarray(2 * count, firstWallEnd(picture.triangles, 2 * count)).filter((_, at) => at % 2 === 0);
  const distances = new Float32Array(count);
  for (let node = 0; node < count; node++) {
    const [x, y] = [positions[3 * node], positions[3 * node + 1]];
    let nearest = REACH_MM * REACH_MM;
    let [ax, ay] = [positions[3 * ring[ring.length - 1]], positions[3 * ring[ring.length - 1] + 1]];
    for (const next of ring) {
      const [bx, by] = [positions[3 * next], positions[3 * next + 1]];
      if (Math.abs(x - bx) < 2 * REACH_MM && Math.abs(y - by) < 2 * REACH_MM) {
        const [dx, dy] = [bx - ax, by - ay];
        const along = Math.min(Math.max(((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy), 0), 1);
        const [off_x, off_y] = [x - ax - along * dx, y - ay - along * dy];
        nearest = Math.min(nearest, off_x * off_x + off_y * off_y);
      }
      [ax, ay] = [bx, by];
    }
    distances[node] = Math.sqrt(nearest);
  }
  return Float32Array.from(nodes, (node) => distances[node]);
}

/**
 * Where the vertices of the first wall end. Its triangles come in the order of its vertices, and the last joins its end to its start.
 * @param {Uint32Array} triangles
 * @param {number} start the walls' first vertex
 */
function firstWallEnd(triangles, start) {
  for (let corner = 0; corner < triangles.length; corner += 3) {
    const [a, , c] = triangles.subarray(corner, corner + 3);
    if (a >= start && c < a) {
      return a + 2;
    }
  }
  return start;
}
