/**
 * What of a top needs to be known of each vertex's surroundings: purfling and the shade in hollows. Loaded once the first figures
 * are there, since the top is read without it.
 */
/** @import { Picture } from "./messages.js" */
/** @import { Stage } from "./stage.js" */
/** @import { SurroundingsReply } from "./surroundings_worker.js" */

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
      performance.mark("bombatura:dressed");
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

/** @type {Map<number, (surroundings: Float32Array) => void>} by the number of what was asked */
const waiting = new Map();
let asked = 0;
/** @type {Worker | undefined} */
let worker;

/**
 * @param {Picture} picture
 * @returns {Promise<Float32Array>} (vertex, [mm from the outline, share of the sky hidden]); some 40 ms of work, which a worker of its own does
 */
export function surroundingsOf({ positions, kinds, triangles }) {
  worker ??= start();
  asked += 1;
  worker.postMessage({ id: asked, positions, kinds, triangles });
  return new Promise((resolve) => waiting.set(asked, resolve));
}

function start() {
  const started = new Worker(new URL("./surroundings_worker.js", import.meta.url), { type: "module" });
  started.addEventListener(
    "message",
    (/** @type {MessageEvent<SurroundingsReply>} */ { data: { id, surroundings } }) => {
      waiting.get(id)?.(surroundings);
      waiting.delete(id);
    },
  );
  return started;
}
