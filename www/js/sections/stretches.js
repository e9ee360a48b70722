/**
 * The stretches of a cut that lie in one region each.
 */

/** @typedef {{ key: string, from_mm: number, to_mm: number }} Stretch */

/**
 * @param {readonly number[]} places_mm along the cut, rising, at least one
 * @param {readonly string[]} keys (place) region
 * @returns {Stretch[]} they meet half way between places of different regions
 */
export function stretchesOf(places_mm, keys) {
  /** @type {Stretch[]} */
  const stretches = [];
  places_mm.forEach((place_mm, at) => {
    const last = stretches.at(-1);
    if (last?.key === keys[at]) {
      last.to_mm = place_mm;
    } else {
      const from_mm = last === undefined ? place_mm : (last.to_mm + place_mm) / 2;
      if (last !== undefined) {
        last.to_mm = from_mm;
      }
      stretches.push({ key: keys[at], from_mm, to_mm: place_mm });
    }
  });
  return stretches;
}

/**
 * The stretches of all pieces with the holes between them. Where the wood on both sides is of one region, a notch of the edge is
 * between, as beside a corner, and no hole.
 * @param {readonly Stretch[][]} pieces from left to right
 * @returns {Stretch[]}
 */
export function withHoles(pieces) {
  return pieces.flatMap((stretches, at) => {
    const [left, right] = [pieces[at - 1]?.at(-1), stretches[0]];
    const hole = left !== undefined && left.key !== right.key;
    return hole ? [{ key: "hole", from_mm: left.to_mm, to_mm: right.from_mm }, ...stretches] : stretches;
  });
}
