/**
 * Colours of what grows from little to much: part of Crameri's map batlow, which is even to the eye and to eyes that see few colours.
 *
 * Source: F. Crameri, Scientific colour maps, Zenodo, 2018, doi:10.5281/zenodo.1243862, MIT licence (its text is beside the
 * map of the motion); every sixteenth colour of `cmcrameri` 1.10 on PyPI but for the darkest, on which lines can't be read.
 */

/** Little to much. */
const COLOURS = [
  "#faccfa",
  "#fcbfd6",
  "#fdb4b4",
  "#fca890",
  "#f19d6b",
  "#db954b",
  "#be9035",
  "#9f892b",
  "#828231",
  "#677b3e",
  "#4d734d",
].map((text) => [1, 3, 5].map((start) => Number.parseInt(text.slice(start, start + 2), 16)));

/**
 * @param {number} share 0 for the least to 1 for the most
 * @returns {number[]} red, green, blue, 0 to 255
 */
export function sequentialColour(share) {
  const place = Math.min(Math.max(share, 0), 1) * (COLOURS.length - 1);
  const below = Math.min(Math.floor(place), COLOURS.length - 2);
  return COLOURS[below].map((from, k) => Math.round(from + (place - below) * (COLOURS[below + 1][k] - from)));
}

/** The whole scale as a CSS gradient. */
export function sequentialGradient() {
  return `linear-gradient(to right, ${COLOURS.map((colour) => `rgb(${colour.join(" ")})`).join(", ")})`;
}
