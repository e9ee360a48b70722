/**
 * Keeps the design that is worked on, so that a reload, a crash or a closed window loses nothing.
 */
/** @import { DesignStore } from "./design_store.js" */
/** @import { KeptDesigns } from "./kept_designs.js" */

/** Long enough for one writing after a handle was moved, short enough for what happens next. */
const PAUSE_MS = 400;

/**
 * @param {DesignStore} store
 * @param {KeptDesigns} kept
 */
export function connectAutosave(store, kept) {
  /** @type {number | undefined} */
  let waiting;
  const write = () => {
    clearTimeout(waiting);
    waiting = undefined;
    // Where nothing can be kept, saving as a file is what is left; the designs' dialogue says so.
    kept.keepNow(store.own_text ?? store.text).catch(() => undefined);
  };
  store.subscribe(() => {
    // What nobody has changed needs no keeping.
    if (store.steps_back + store.steps_forth > 0) {
      waiting ??= setTimeout(write, PAUSE_MS);
    }
  });
  document.addEventListener("visibilitychange", () => {
    if (waiting !== undefined && document.visibilityState === "hidden") {
      write();
    }
  });
}
