/**
 * A change made to one value, made to another.
 */

import { isObject } from "./design_store.js";

/**
 * What `to` has otherwise than `from`, in `onto`: an edit of a design, made while one before it was not yet taken.
 * @template T
 * @param {T} from what was edited; all three are JSON values
 * @param {T} to what that made of it
 * @param {T} onto what is edited in its place
 * @returns {T}
 */
export function rebased(from, to, onto) {
  if (JSON.stringify(from) === JSON.stringify(to)) {
    return onto;
  }
  if (from === onto || !isObject(from) || !isObject(to) || !isObject(onto)) {
    return to;
  }
  /** @type {Record<string, unknown>} */
  const result = {};
  for (const key of new Set([...Object.keys(onto), ...Object.keys(to)])) {
    const value = rebased(from[key], to[key], onto[key]);
    if (value !== undefined) {
      result[key] = value;
    }
  }
  return /** @type {T} */ (result);
}
