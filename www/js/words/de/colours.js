/**
 * What the numbers that colour the top are told in, in German.
 */
/** @import * as English from "../en/colours.js" */

/** @type {typeof English.COLOUR_WORDS} */
export const COLOUR_WORDS = {
  curvature: ["rund", "hohl"],
  times_mean: "× Mittel",
};
