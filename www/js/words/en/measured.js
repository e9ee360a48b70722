/**
 * The sentences about measured files.
 */
/** @import { Problem } from "../../messages.js" */
import { countText } from "../numbers.js";
import { numberText } from "./page.js";

export const MEASURED_WORDS = {
  outline: "Outline",
  outline_file: "Points (CSV) or a drawing (SVG)",
  outline_about: "Columns x and y, or the largest path of a drawing. It may lie anyhow and start anywhere.",
  tolerance: "Fit within",
  heights: "Heights of the outside",
  heights_file: "Table (CSV) or scan (STL)",
  heights_about:
    "Columns x, y, z; or a grid; or a gauge’s readings, x in the first column, the others headed upper bout, upper corners, waist, lower corners, lower bout. x from the centreline, y from the bottom edge. A scan may lie anyhow. Read this top’s outline first.",
  /** @type {(file: string) => string} */
  reading: (file) => `Reading ${file}…`,
  /** @type {(file: string) => string} */
  read: (file) => `${file} is read; nothing is taken over yet.`,
  stop: "Stop",
  result: "What was read",
  points: "Points read",
  fit: "Distance from the points, rms",
  smooth: "Smooth surface through the points, rms",
  drawn: "The arching drawn from it, rms",
  largest: "largest",
  /** @type {(number: number, across_mm: number, station_mm: number) => string} */
  where: (number, across_mm, station_mm) =>
    `point ${countText(number)}, ${across(across_mm)}, ${numberText(station_mm, 0)} mm from the bottom edge`,
  /** @type {(within: boolean, tolerance_mm: number) => string} */
  within: (within, tolerance_mm) =>
    within
      ? `Everywhere within ${numberText(tolerance_mm)} mm, as asked for.`
      : `Not everywhere within the ${numberText(tolerance_mm)} mm asked for: arcs between workshop measures don’t follow this outline more nearly. Look where, and judge.`,
  own_bass: "Bass and treble side differ by more than that; the bass side gets measures of its own.",
  /** @param {number} by */
  holes_scaled: (by) => `The sound holes don’t fit this outline as they are; they are scaled by ${numberText(by, 3)}.`,
  /** @param {number} count */
  outliers: (count) => (count === 0 ? "No outliers." : `${countText(count)} outliers, left out of the surface:`),
  /** @param {number} count */
  more_outliers: (count) => `and ${countText(count)} more`,
  /** @type {(area_mm2: number, share: number) => string} */
  missing: (area_mm2, share) =>
    area_mm2 === 0
      ? "No part of the top is missing."
      : `${numberText(area_mm2 / 100, 0)} cm² of the top (${numberText(100 * share, 1)} %) have no point within 10 mm; the surface is carried on across them.`,
  /** @param {number} share */
  turned_inwards: (share) =>
    `${numberText(100 * share, 0)} % of the scan’s triangles face inwards. That does no harm: its shape says which side is outside.`,
  laid: "How it lies",
  picture: "The points on the outline, seen from outside, neck end up",
  key: {
    near: "near",
    above: "too high, or off the line",
    below: "too low",
    outlier: "outlier",
    largest: "largest distance",
  },
  end_for_end: "Neck end and bottom are exchanged",
  upside_down: "Outside and inside are exchanged",
  mirrored: "Bass and treble side are exchanged",
  turn: "Turn, counter-clockwise",
  shifts: ["Shift to the treble side", "Shift to the neck end", "Shift upwards"],
  take: "Take it over",
  leave: "Leave it",
  /** @param {string} what */
  taken: (what) => `${what} taken over. Undo brings back what was there.`,
  inches: "Inches",
  millimetres: "Millimetres",
  /** @type {(limit_mb: number) => Problem} */
  too_large: (limit_mb) => ({
    kind: "file_too_large",
    message: `This file is larger than ${limit_mb} MB, more than a browser can work on.`,
    remedy: "Thin the scan: a point every millimetre is plenty. Save a scan as binary STL.",
  }),
  /** @type {Problem} */
  failed: {
    kind: "reading_failed",
    message: "The file could not be read: its reading was cut off, mostly for want of memory.",
    remedy: "Thin the scan, or close other pages and try again.",
  },
  /** @type {Problem} */
  no_path: {
    kind: "no_path",
    message: "This drawing holds no path.",
    remedy: "Turn its shapes into paths, or give the outline’s points as a table.",
  },
};

/** @param {number} across_mm */
function across(across_mm) {
  const off = numberText(Math.abs(across_mm), 0);
  return off === "0" ? "on the centreline" : `${off} mm on the ${across_mm < 0 ? "bass" : "treble"} side`;
}
