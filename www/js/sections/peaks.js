/**
 * The peaks of a curve.
 */

/**
 * @param {ArrayLike<number>} hz
 * @param {ArrayLike<number>} db as long
 * @param {number} most
 * @returns {{ hz: number, db: number }[]} the highest local maxima, by frequency
 */
export function highestPeaks(hz, db, most) {
  const peaks = [];
  for (let at = 1; at < db.length - 1; at++) {
    if (db[at] > db[at - 1] && db[at] >= db[at + 1]) {
      peaks.push({ hz: hz[at], db: db[at] });
    }
  }
  return peaks
    .toSorted((one, other) => other.db - one.db)
    .slice(0, most)
    .toSorted((one, other) => one.hz - other.hz);
}

/** A peak further than this from a mode is none of its. */
const NEAR = 0.03;

/**
 * @param {readonly number[]} modes_hz ascending
 * @param {number} hz
 * @returns {number | undefined} the number of the nearest mode, from 1
 */
export function nearestMode(modes_hz, hz) {
  let nearest = -1;
  for (let mode = 0; mode < modes_hz.length; mode++) {
    if (nearest < 0 || Math.abs(modes_hz[mode] - hz) < Math.abs(modes_hz[nearest] - hz)) {
      nearest = mode;
    }
  }
  return nearest < 0 || Math.abs(modes_hz[nearest] / hz - 1) > NEAR ? undefined : nearest + 1;
}
