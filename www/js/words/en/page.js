/**
 * What the page says from its first moment. Plain trade words, British English; units beside every number. What is said later
 * has modules of its own beside this one; each language has the same.
 */
/** @import { Design } from "../../design_store.js" */
/** @import { MeshSize, Mode, Problem, Solution, Surety } from "../../messages.js" */

import { bestHertz, countText, numbersWith } from "../numbers.js";

export const { numberText, hertzText } = numbersWith(".");

/** @type {Record<string, string>} */
const MODE_NAMES = { twist: "Twist", x: "X", ring: "Ring" };

/**
 * @param {Pick<Mode, "name" | "number">} mode
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

/**
 * What a frequency on the stage comes from.
 * @param {string} mesh
 * @param {Mode} mode
 * @param {Surety | undefined} surety
 */
export function sourceText(mesh, mode, surety) {
  if (typeof surety?.converged_hz === "number") {
    return `${mesh}, corrected for the mesh`;
  }
  return surety === undefined && mode.foreseen_hz !== undefined ? `${mesh}, corrected for it as before` : mesh;
}

export const WORDS = {
  play: "Play",
  pause: "Pause",
  /** @param {Mode} mode */
  title: (mode) => (mode.name === "" ? modeName(mode) : `${modeName(mode)} mode`),
  /** @param {Mode} mode */
  on_mesh: (mode) => `${hertzText(mode.frequency_hz)} Hz on the mesh, before it is corrected for it`,
  /** @type {(frequency_hz: number, spread?: string) => string} */
  hertz: (frequency_hz, spread = "") => `${hertzText(frequency_hz)} ${spread}${spread === "" ? "" : " "}Hz`,
  /** @param {number} mass_g */
  mass: (mass_g) => `${numberText(mass_g, 1)} g of wood`,
  /**
   * @param {unknown} rim as the design has it
   * @param {string} mesh
   */
  basis: (rim, mesh) =>
    `${rim === "free" ? "Free top" : "Top held at its rim"}, ${mesh}. ±: how far boards differ, and the mesh; Q: how long it rings.`,
  /**
   * @param {string} mesh
   * @param {number} count
   * @param {boolean} [set_right]
   */
  following: (mesh, count, set_right) =>
    `Preview: the lowest ${count} modes on the ${mesh}, ${set_right ? "set right by the last standard figures" : "up to some 5 % off"}. Not proven complete until the standard mesh is worked out.`,
  /** @param {number | undefined} left_s estimated; undefined when it takes longer than that */
  time_left: (left_s) => (left_s === undefined ? "longer than estimated" : `about ${left_s} s left`),
  /**
   * @param {Solution} solution
   * @param {Mode} mode
   * @param {Surety | undefined} surety
   */
  settled: ({ modes }, mode, surety) =>
    `${modes.length} modes worked out. ${modeName(mode)}: ${hertzText(bestHertz(mode, surety))} Hz.`,
  /**
   * How large the motion is drawn, and what is known of its true size.
   * @param {number} exaggeration_mm
   */
  drawn_scale: (exaggeration_mm) =>
    exaggeration_mm === 0
      ? "Drawn at rest."
      : `The place that moves most is drawn ${numberText(exaggeration_mm)} mm out and in, all others in proportion. A mode has no true size: it says how the top bends, not how far.`,
  scale_ends: /** @type {[string, string]} */ (["100 % inward", "100 % outward"]),
  restarted: "Computing stopped and was started again. Your design is as it was.",
  /** @param {string} name */
  opened: (name) => `Opened “${name}”.`,
  /** @param {string} file */
  saved: (file) => `Saved as ${file}.`,
  /** @param {number} left */
  undone: (left) => `Undone.${left > 0 ? "" : " That was the first step."}`,
  /** @param {number} left */
  redone: (left) => `Done again.${left > 0 ? "" : " That was the last step."}`,
  /** @param {string} name */
  resumed: (name) => `“${name}” is as you left it. Reset goes to the demonstration.`,
  unread_design: "Could not be read at the last visit",
  /** @type {(design: Design) => Design} the demonstration, whose name and note are English in the core */
  demonstration: (design) => design,
  reset: "Back to the demonstration design. Undo brings yours back.",
  not_loaded: "This part of the page can’t be loaded. Check the connection, then close and open it again.",
  /** @type {(label: string, unit: string) => string} a field's name for a screen reader */
  in_unit: (label, unit) => `${label} in ${unit === "deg" ? "degrees" : unit}`,
  /** @type {Record<string, { label: string, meaning: string }>} where and how the main measures are measured */
  measures: {
    "arch-height": { label: "Arch height", meaning: "Highest point above the gluing plane." },
    "lower-eye": { label: "Lower eye to edge", meaning: "The narrows: wood left beside each lower eye." },
    thickness: { label: "Thickness in the centre", meaning: "Between the holes; the flanks stay as they are." },
  },
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
    measured_file: {
      kind: "measured_file",
      message: "This is a measured file, not a design.",
      remedy: "Open “Read a measured top” below the measures and choose it there.",
    },
    /** @type {Problem} */
    file_unreadable: {
      kind: "file_unreadable",
      message: "The file can't be read.",
      remedy: "Check that it still exists and that you may read it.",
    },
    /** @type {(label: string, unit: string) => Problem} */
    not_a_number: (label, unit) => ({ kind: "no_number", message: `${label} needs a number in ${unit}.` }),
  },
};
