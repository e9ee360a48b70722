/**
 * Every sentence the scripts show, in one place. Plain trade words, British English; units beside every number.
 */
/** @import { MeshSize, Mode, Problem, Solution } from "./messages.js" */

/** Groups of three digits are set apart by a narrow space that does not break. */
const COUNT = new Intl.NumberFormat("en-GB", { useGrouping: true });

/**
 * @param {number} count
 * @returns {string} for example "2 612"
 */
export function countText(count) {
  return COUNT.format(count).replaceAll(",", "\u202f");
}

/**
 * Three figures: the mesh alone moves the fourth.
 * @param {number} frequency_hz
 * @returns {string} without the unit
 */
export function hertzText(frequency_hz) {
  // What rounds to 100.0 is written 100.
  return frequency_hz < 99.95 ? frequency_hz.toFixed(1) : countText(Math.round(frequency_hz));
}

/** @type {Record<string, string>} */
const MODE_NAMES = { twist: "Twist", x: "X", ring: "Ring" };

/**
 * @param {Mode} mode
 * @returns {string} the mode's name, or its number where the shape has no name in the trade
 */
export function modeName(mode) {
  const known = MODE_NAMES[mode.name];
  return known ?? (mode.name === "" ? `Mode ${mode.number}` : mode.name);
}

/** @type {Record<MeshSize, string>} */
const MESHES = { preview: "preview mesh", standard: "standard mesh", fine: "fine mesh" };

/**
 * @param {MeshSize} size
 * @param {number} nodes
 */
export function meshText(size, nodes) {
  return `${MESHES[size]}, ${countText(nodes)} nodes`;
}

export const WORDS = {
  play: "Play",
  pause: "Pause",
  /** @param {Mode} mode */
  title: (mode) => (mode.name === "" ? modeName(mode) : `${modeName(mode)} mode`),
  /** @param {number} frequency_hz */
  hertz: (frequency_hz) => `${hertzText(frequency_hz)} Hz`,
  /** @param {number} mass_g */
  mass: (mass_g) => `${mass_g.toFixed(1)} g of wood`,
  /**
   * @param {unknown} rim as the design has it
   * @param {string} mesh
   */
  basis: (rim, mesh) =>
    `${rim === "free" ? "Free top" : "Top held at its rim"}, ${mesh}. How far one board differs from the next is not counted.`,
  /** @param {string} mesh */
  solving: (mesh) => `Figures from the ${mesh}; working out the standard mesh…`,
  /**
   * @param {Solution} solution
   * @param {Mode} mode
   */
  settled: ({ modes }, mode) =>
    `${modes.length} modes worked out. ${modeName(mode)}: ${hertzText(mode.frequency_hz)} Hz.`,
  /** @param {number} exaggeration_mm */
  drawn_scale: (exaggeration_mm) =>
    exaggeration_mm === 0
      ? "At rest."
      : `Drawn up to ${exaggeration_mm} mm each way. A mode says how the top bends, not how far: the real motion is far too small to see.`,
  restarted: "Computing stopped and was started again. Your design is as it was.",
  /** @param {string} name */
  opened: (name) => `Opened “${name}”.`,
  /** @param {string} file */
  saved: (file) => `Saved as ${file}.`,
  sides_differ: "Bass and treble side differ in this design; a change here sets both.",
  design_kept: "The top on the stage is still the one you had.",
  no_view:
    "This browser offers neither WebGPU nor WebGL 2, so the top can't be drawn here. The modes and their figures work as usual; a current browser with graphics acceleration turned on will draw them.",
  view_lost: "The graphics device was lost; the picture was set up again.",
  problems: {
    /** @type {Problem} */
    crashed: {
      kind: "crashed",
      message: "Computing failed on this shape and was started again.",
      remedy: "Try another value.",
    },
    /** @type {Problem} */
    no_compute: {
      kind: "no_compute",
      message: "The computing part of the page can't be started.",
      remedy: "Save the design, then load the page again; a current browser with WebAssembly is needed.",
    },
    /** @type {(limit_mb: number) => Problem} */
    file_too_large: (limit_mb) => ({
      kind: "file_too_large",
      message: `This file is larger than ${limit_mb} MB; a design takes a few kilobytes.`,
      remedy: "Choose a file that was saved with “Save design”.",
    }),
    /** @type {Problem} */
    file_unreadable: {
      kind: "file_unreadable",
      message: "The file can't be read.",
      remedy: "Check that it still exists and that you may read it.",
    },
    /** @type {(label: string, unit: string) => Problem} */
    not_a_number: (label, unit) => ({ kind: "not_a_number", message: `${label} needs a number in ${unit}.` }),
  },
};
