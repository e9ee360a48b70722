/**
 * The range that a scale of colours spans.
 */

/** Share of the values beyond the end of a clipped scale: the few nodes at eyes and stem's ends, where it peaks. */
const BEYOND = 0.02;

/**
 * @param {Float32Array} values not empty
 * @param {{ signed: boolean, clipped: boolean }} form signed: from its middle, zero, as far down as up; clipped: without
 * the largest, whatever their sign
 * @returns {{ least: number, most: number }}
 */
export function rangeOf(values, { signed, clipped }) {
  const sorted = Float32Array.from(values, (value) => (signed ? Math.abs(value) : value)).sort();
  const last = sorted.length - 1;
  const most = sorted[last - (clipped ? Math.round(BEYOND * last) : 0)];
  return { least: signed ? -most : sorted[0], most };
}
