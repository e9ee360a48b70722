/**
 * What the design's measures are called. The core's table has their English names.
 */

/**
 * @param {string} _path where the measure stands in the design, keys joined by dots
 * @param {string} what the core's name
 * @returns {string} as a label begins
 */
export function measureName(_path, what) {
  return what.charAt(0).toUpperCase() + what.slice(1);
}

/**
 * @param {string} least as it is written
 * @param {string} most
 * @param {string} unit empty for a pure number
 */
export function measureRange(least, most, unit) {
  return `It may be ${least} to ${most}${unit === "" ? "" : ` ${unit === "deg" ? "degrees" : unit}`}.`;
}
