/**
 * How a worker that computes, and so hears nothing, learns that nobody waits for what it does any more: by memory that it shares with the page.
 */

/**
 * The number of the newest request that was called off, with all before it.
 * @typedef {Int32Array} Recall
 */

/** @returns {Recall | undefined} none where the host doesn't send the headers of an isolated page, for then memory can't be shared */
export function sharedRecall() {
  return globalThis.crossOriginIsolated ? new Int32Array(new SharedArrayBuffer(4)) : undefined;
}

/**
 * @param {Recall} recall
 * @param {number} id of the newest request so far
 */
export function callOff(recall, id) {
  Atomics.store(recall, 0, id);
}

/**
 * @param {Recall | undefined} recall
 * @param {number} id
 */
export function isWanted(recall, id) {
  return recall === undefined || id > Atomics.load(recall, 0);
}
