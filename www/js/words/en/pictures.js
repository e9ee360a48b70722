/**
 * The words of the section that makes pictures.
 */

import { numberText } from "./page.js";

export const PICTURE_WORDS = {
  title: "Picture of the stage",
  size: "Size",
  /** @param {Record<string, [number, number]>} sizes */
  sizes: (sizes) =>
    Object.fromEntries(Object.entries(sizes).map(([word, [width, height]]) => [word, `${word}, ${width} × ${height}`])),
  still: "Save picture (PNG)",
  film: "Save film of one period (WebM)",
  recording: "Recording…",
  about:
    "As it is looked at now, with design, mode and frequency below it. The film begins and ends at phase 0°, so that it runs round without a jump.",
  no_film: "This browser can’t record films; pictures work.",
  /** @param {string} file */
  saved: (file) => `Saved as ${file}.`,
  failed: {
    kind: "no_picture",
    message: "The browser gave no picture.",
    remedy: "Try a smaller size, or a browser that draws the top.",
  },
  /** @type {(design: string, mode: string, hertz: string, exaggeration_mm: number) => string} */
  caption: (design, mode, hertz, exaggeration_mm) =>
    `${design}: ${mode}, ${hertz}; computed, largest motion drawn ${numberText(exaggeration_mm)} mm`,
};
