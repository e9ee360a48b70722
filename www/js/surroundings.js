/**
 * What of a top needs to be known of each vertex's surroundings: purfling and the shade in hollows. Loaded once the first figures
 * are there, since the top is read without it.
 */
/** @import { Picture } from "./messages.js" */
/** @import { Stage } from "./stage.js" */
import { hiddenSky } from "./hidden_sky.js";
import { edgeDistances } from "./purfling.js";

/** A top that has kept its shape for this long is not under a moving handle, ms. */
const STILL_MS = 250;

/** @param {Stage} stage */
export function dress(stage) {
  /** @type {Picture | undefined} that was dressed last */
  let dressed;
  let later = 0;
  const lay = async () => {
    const { picture } = stage;
    if (picture === undefined) {
      return;
    }
    dressed = picture;
    const surroundings = await surroundingsOf(picture);
    if (stage.picture === picture) {
      stage.look((view) => view.set_surroundings(surroundings));
    }
  };
  stage.listen("picture", () => {
    clearTimeout(later);
    // The view keeps what it has for a picture of the same vertices: under a moving handle that is near enough.
    if (stage.picture === dressed || stage.picture?.kinds.length !== dressed?.kinds.length) {
      void lay();
    } else {
      later = setTimeout(lay, STILL_MS);
    }
  });
  void lay();
}

/**
 * @param {Picture} picture
 * @returns {Promise<Float32Array>} (vertex, [mm from the outline, share of the sky hidden])
 */
export async function surroundingsOf(picture) {
  const distances = edgeDistances(picture);
  const hidden = await hiddenSky(picture);
  const both = new Float32Array(2 * distances.length);
  distances.forEach((distance, vertex) => {
    both[2 * vertex] = distance;
    both[2 * vertex + 1] = hidden[vertex];
  });
  return both;
}
