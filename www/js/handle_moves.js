/**
 * How far a handle's number goes for a drag or a key. Pure sums, without a page.
 */
/** @import { Handle } from "./messages.js" */

/** What a handle's number is rounded to, by its unit: a tenth of a millimetre is what a maker reads off a calliper. */
const STEPS = /** @type {Record<string, number>} */ ({ mm: 0.1, "": 0.01 });

/** What Shift and the page keys multiply a step by. */
const FAR = 10;

/**
 * The nearest whole step within the handle's limits.
 * @param {Handle} handle
 * @param {number} value
 */
export function snapped(handle, value) {
  const step = STEPS[handle.unit] ?? 1;
  const whole = Number((Math.round(value / step) * step).toFixed(2));
  return Math.min(Math.max(whole, handle.least), handle.most);
}

/**
 * @param {Handle} handle
 * @param {number} from the number when the drag began
 * @param {readonly [number, number]} along how far the handle goes on the screen when its number grows by one
 * @param {readonly [number, number]} drag how far the pointer went since, in the same lengths
 */
export function dragged(handle, from, along, drag) {
  const length = along[0] ** 2 + along[1] ** 2;
  return snapped(handle, from + (drag[0] * along[0] + drag[1] * along[1]) / length);
}

/**
 * @param {Handle} handle
 * @param {number} from the number now
 * @param {{ key: string, shiftKey: boolean }} press
 * @returns {number | undefined} undefined where the key moves nothing
 */
export function keyed(handle, from, { key, shiftKey }) {
  const step = STEPS[handle.unit] ?? 1;
  const arrow = shiftKey ? FAR * step : step;
  switch (key) {
    case "ArrowRight":
    case "ArrowUp":
      return snapped(handle, from + arrow);
    case "ArrowLeft":
    case "ArrowDown":
      return snapped(handle, from - arrow);
    case "PageUp":
      return snapped(handle, from + FAR * step);
    case "PageDown":
      return snapped(handle, from - FAR * step);
    case "Home":
      return handle.least;
    case "End":
      return handle.most;
    default:
      return undefined;
  }
}
