/**
 * How numbers are written. All languages set thousands apart by a narrow space; each has a decimal mark of its own.
 */
/** @import { Mode, Surety } from "../messages.js" */

const COUNT = new Intl.NumberFormat("en-GB", { useGrouping: true });

/**
 * @param {number} count
 * @returns {string} for example "2 612", the space one that does not break
 */
export function countText(count) {
  return COUNT.format(count).replaceAll(",", "\u202f");
}

/**
 * The best that is known of a mode's frequency: corrected for the mesh, or as that was for its shape the last time.
 * @param {Mode} mode
 * @param {Surety | undefined} surety
 * @returns {number} Hz
 */
export function bestHertz(mode, surety) {
  return surety?.converged_hz ?? mode.foreseen_hz ?? mode.frequency_hz;
}

/**
 * How sure a frequency is: what boards differ by and what mesh and shell leave open, as independent of each other.
 * @param {Surety} surety
 * @returns {string} Hz, without the unit
 */
export function spreadText({ mesh_hz, wood_hz }) {
  return `±\u2009${countText(Math.max(Math.round(Math.hypot(mesh_hz ?? 0, wood_hz)), 1))}`;
}

/**
 * A language's way with decimals.
 * @param {string} mark
 */
export function numbersWith(mark) {
  /** @type {(value: number, decimals?: number) => string} all decimals that the number has where none are asked for */
  const numberText = (value, decimals) =>
    (decimals === undefined ? String(value) : value.toFixed(decimals)).replace("-", "−").replace(".", mark);
  return {
    numberText,
    /** @type {(frequency_hz: number) => string} three figures, for the mesh alone moves the fourth; without the unit */
    hertzText: (frequency_hz) =>
      // What rounds to 100.0 is written 100.
      frequency_hz < 99.95 ? numberText(frequency_hz, 1) : countText(Math.round(frequency_hz)),
  };
}
