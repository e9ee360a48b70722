/**
 * Designs on the way from one to another, so that the stage shows a change instead of jumping to it.
 */

/**
 * @template T
 * @param {T} before
 * @param {T} after of the same keys, see {@link sameKeys}
 * @param {number} share of the way, 0 to 1
 * @returns {T} numbers in between, all else as after
 */
export function inBetween(before, after, share) {
  if (typeof before === "number" && typeof after === "number") {
    return /** @type {T} */ (before + share * (after - before));
  }
  if (!isStructure(before) || !isStructure(after)) {
    return after;
  }
  const parts = Object.entries(after).map(([key, value]) => [key, inBetween(before[key], value, share)]);
  return /** @type {T} */ (Array.isArray(after) ? parts.map(([, value]) => value) : Object.fromEntries(parts));
}

/**
 * Whether two designs differ in numbers alone: a hole that is cut or a bar that is glued in has no halves.
 * @param {unknown} before
 * @param {unknown} after
 * @returns {boolean}
 */
export function sameKeys(before, after) {
  if (!isStructure(before) || !isStructure(after)) {
    return typeof before === "number" ? typeof after === "number" : before === after;
  }
  const keys = Object.keys(before);
  return (
    keys.length === Object.keys(after).length && keys.every((key) => key in after && sameKeys(before[key], after[key]))
  );
}

/**
 * @param {unknown} value
 * @returns {value is Record<string, unknown>}
 */
function isStructure(value) {
  return typeof value === "object" && value !== null;
}
