/** The worker that finds out what each vertex of a picture has round it. */
/** @import { Picture } from "./messages.js" */
import { hiddenSky } from "./hidden_sky.js";
import { edgeDistances } from "./purfling.js";

/** @typedef {Pick<Picture, "positions" | "kinds" | "triangles"> & { id: number }} SurroundingsRequest */
/** @typedef {{ id: number, surroundings: Float32Array }} SurroundingsReply (vertex, [mm from the outline, share of the sky hidden]) */

self.addEventListener("message", (/** @type {MessageEvent<SurroundingsRequest>} */ { data: picture }) => {
  const distances = edgeDistances(picture);
  const hidden = hiddenSky(picture);
  const surroundings = new Float32Array(2 * distances.length);
  for (const [vertex, distance] of distances.entries()) {
    surroundings[2 * vertex] = distance;
    surroundings[2 * vertex + 1] = hidden[vertex];
  }
  /** @type {SurroundingsReply} */
  const reply = { id: picture.id, surroundings };
  self.postMessage(reply, { transfer: [surroundings.buffer] });
});
