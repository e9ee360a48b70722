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
  const lay = () => {
    const { picture } = stage;
    if (picture !== undefined) {
      dressed = picture;
      const [distances, hidden] = [edgeDistances(picture), hiddenSky(picture)];
      const both = Float32Array.from(
        { length: 2 * distances.length },
        (_, at) => (at % 2 === 0 ? distances : hidden)[at >> 1],
      );
      stage.look((view) => view.set_surroundings(both));
    }
  };
  stage.listen("picture", () => {
    clearTimeout(later);
    // The view keeps what it has for a picture of the same vertices: under a moving handle that is near enough.
    if (stage.picture === dressed || stage.picture?.kinds.length !== dressed?.kinds.length) {
      lay();
    } else {
      later = setTimeout(lay, STILL_MS);
    }
  });
  lay();
}
