/**
 * What the numbers that colour the top are told in.
 */

export const COLOUR_WORDS = {
  /** What lies at either end of what goes both ways. */
  curvature: /** @type {[string, string]} */ (["round", "hollow"]),
  /** Times the mean. */
  times_mean: "× mean",
};
