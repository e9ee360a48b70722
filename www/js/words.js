/**
 * Every sentence the scripts show, in one place. Plain trade words, British English; units beside every number.
 */
/** @import { Drawing, Handle, MeshSize, Mode, Problem, Solution, Surety } from "./messages.js" */

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

/**
 * The best that is known of a mode's frequency: corrected for the mesh, or as that was for its shape the last time.
 * @param {Mode} mode
 * @param {Surety | undefined} surety
 * @returns {number} Hz
 */
export function bestHertz(mode, surety) {
  return surety?.converged_hz ?? mode.foreseen_hz ?? mode.frequency_hz;
}

/**
 * How sure a frequency is: what boards differ by and what mesh and shell leave open, as independent of each other.
 * @param {Surety} surety
 * @returns {string} Hz, without the unit
 */
export function spreadText({ mesh_hz, wood_hz }) {
  return `±\u2009${countText(Math.max(Math.round(Math.hypot(mesh_hz ?? 0, wood_hz)), 1))}`;
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

/** @type {Record<string, string>} */
const STATIONS = {
  upper_bout: "Upper bout",
  upper_corners: "Upper corners",
  waist: "Waist",
  lower_corners: "Lower corners",
  lower_bout: "Lower bout",
};

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
  mass: (mass_g) => `${mass_g.toFixed(1)} g of wood`,
  /**
   * @param {unknown} rim as the design has it
   * @param {string} mesh
   */
  basis: (rim, mesh) =>
    `${rim === "free" ? "Free top" : "Top held at its rim"}, ${mesh}. ±: how far boards differ, and the mesh; Q: how long it rings.`,
  /**
   * @param {string} mesh
   * @param {number} count
   */
  following: (mesh, count) =>
    `Preview: the lowest ${count} modes on the ${mesh}, set right by the last standard figures. Not proven complete until the standard mesh is worked out.`,
  /** @param {number | undefined} left_s estimated; undefined when it takes longer than that */
  time_left: (left_s) => (left_s === undefined ? "longer than estimated" : `about ${left_s} s left`),
  /**
   * @param {Solution} solution
   * @param {Mode} mode
   */
  settled: ({ modes }, mode) =>
    `${modes.length} modes worked out. ${modeName(mode)}: ${hertzText(bestHertz(mode, undefined))} Hz.`,
  /**
   * How large the motion is drawn, and what is known of its true size.
   * @param {number} exaggeration_mm
   */
  drawn_scale: (exaggeration_mm) =>
    exaggeration_mm === 0
      ? "Drawn at rest."
      : `The place that moves most is drawn ${exaggeration_mm} mm out and in, all others in proportion. A mode has no true size: it says how the top bends, not how far.`,
  scale_ends: /** @type {const} */ (["100 % inward", "100 % outward"]),
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
  reset: "Back to the demonstration design. Undo brings yours back.",
  drawings: { plan: "plan", long_arch: "long arch", cross_arches: "cross arches" },
  true_scale: "True to scale: the bar is 50 mm long when printed at 100 %.",
  handles_hint: "Drag a point, or choose it with Tab and press the arrow keys.",
  /** @param {Handle} handle */
  handle_name: ({ what }) => what.charAt(0).toUpperCase() + what.slice(1),
  /** @type {(handle: Handle, value: number) => string} */
  handle_value: ({ unit }, value) => (unit === "" ? value.toFixed(2) : `${value.toFixed(1)} ${unit}`),
  /** @param {Drawing["labels"][number]} label */
  label: ({ name, value_mm, minor }) =>
    minor ? String(Math.round(value_mm)) : [STATIONS[name] ?? "", value_mm.toFixed(1)].join(" ").trim(),
  arching: {
    apex: "Apex",
    /** @param {string} rise */
    above_edge: (rise) => `above the ribs; ${rise} above the edge`,
    channel: "Channel depth",
    steepest: "Steepest slope",
    hollow: "Tightest hollow, radius",
    round: "Tightest round, radius",
    /** @type {(station_mm: number, across_mm: number) => string} */
    place: (station_mm, across_mm) =>
      `${station_mm} mm from the bottom edge, ${across_mm === 0 ? "on the centreline" : `${across_mm} mm off the centreline`}`,
    turn: "Turn from convex to concave,",
    sides: ["bass hole", "treble hole"],
    both_sides: "both holes",
    /** @type {(distance: string, above: boolean, on_stem: boolean) => string} */
    crosses: (distance, above, on_stem) =>
      `crosses the ${on_stem ? "stem" : "hole’s end"} ${distance} ${above ? "above" : "below"} the nicks`,
    within: "falls within the hole",
    /** @type {(distance: string, inside: boolean) => string} */
    misses: (distance, inside) =>
      `misses the hole by ${distance}, on the side of the ${inside ? "centreline" : "edge"}`,
    should_fall_within: "Makers let the turn fall within the hole (common practice).",
  },
  not_loaded: "This part of the page can’t be loaded. Check the connection, then close and open it again.",
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
    not_a_number: (label, unit) => ({ kind: "not_a_number", message: `${label} needs a number in ${unit}.` }),
  },
};
