/**
 * The measures that can be changed on the page, in the order of making. The slider covers what is usual on violins; the
 * number beside it takes anything, and the core says where a top can no longer be made.
 */
/** @import { Path } from "./design_store.js" */

/**
 * @typedef {object} Measure
 * @property {string} id by which its words are found
 * @property {string} unit
 * @property {number} least left end of the slider
 * @property {number} most right end of the slider
 * @property {number} step
 * @property {readonly Path[]} paths the values of the design that it sets, all alike
 */

/** @type {readonly Measure[]} */
export const MEASURES = [
  {
    id: "arch-height",
    unit: "mm",
    // Makers' readings of old and present tops run from 13 to 20 mm; a little room on both sides for trying.
    least: 11,
    most: 21,
    step: 0.1,
    paths: [["arching", "apex_height_mm"]],
  },
  {
    id: "lower-eye",
    unit: "mm",
    // 12 mm is the workshop average for a full-size violin.
    least: 8,
    most: 20,
    step: 0.1,
    paths: [
      ["sound_holes", "bass", "lower_eye_to_edge_mm"],
      ["sound_holes", "treble", "lower_eye_to_edge_mm"],
    ],
  },
  {
    id: "thickness",
    unit: "mm",
    // 3 mm at the post is the workshop average; below 2 mm few tops stand, above 4.5 mm none is left.
    least: 2,
    most: 4.5,
    step: 0.05,
    paths: [["graduation", "centre_mm"]],
  },
];
