/**
 * What the page and a worker that reads a measured file say to each other. Lengths in mm, places in the top's frame.
 *
 * @module
 */

/**
 * What the maker says of the file and of how it lies.
 * @typedef {object} Wishes
 * @property {"mm" | "in"} [unit] once the maker has been asked
 * @property {boolean} [end_for_end]
 * @property {boolean} [upside_down]
 * @property {boolean} [mirrored]
 * @property {number} [turn_deg]
 * @property {[number, number, number]} [shift_mm]
 * @property {number} [tolerance_mm]
 * @property {number[]} [mm_from_path] of an outline in an SVG path: its transform, six numbers as in matrix(a b c d e f)
 */

/** @typedef {"outline" | "table" | "scan"} ImportKind */

/** @typedef {{ kind: ImportKind, design: string, file: Blob, wishes: Wishes }} ImportRequest */

/** @typedef {{ number: number, at: [number, number], off_mm: number }} PointOff a point of the file, numbered from 1 */

/**
 * A design with what was measured in it, and how well that fits.
 * @typedef {object} ImportFit
 * @property {string} design
 * @property {number} points
 * @property {number} rms_mm
 * @property {PointOff} largest
 * @property {number} [holes_scaled] of an outline: by how much the sound holes had to be scaled
 * @property {boolean} own_bass
 * @property {number} outlier_count
 * @property {PointOff[]} outliers the first of them
 * @property {number} [drawn_rms_mm] of heights: how far the design's own surface stays from them
 * @property {PointOff} [drawn_largest]
 * @property {{ missing_mm2: number, missing_share: number, turned_inwards: number }} [scan]
 * @property {Float32Array} outline (point, xy)
 * @property {Float32Array} shown (point, [x, y, mm off])
 */

/**
 * @typedef {{ outcome: "done", fit: ImportFit }
 *   | { outcome: "problem", problem: import("../messages.js").Problem }
 *   | { outcome: "crashed", text: string }} ImportReply
 */

export {};
