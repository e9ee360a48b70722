/**
 * The sentences of the sections that open below the main measures; loaded with the first of them.
 */

/** @import { Design } from "../../design_store.js" */
import { numberText } from "./page.js";

/** @type {Record<string, string>} */
const STATIONS = {
  long_arch: "Long arch",
  upper_bout: "Upper bout",
  upper_corners: "Upper corners",
  waist: "Waist",
  lower_corners: "Lower corners",
  lower_bout: "Lower bout",
};

export const SECTION_WORDS = {
  outline: {
    groups: {
      widths: "Length and widths",
      stations: "Stations",
      upper_corner: "Upper corners",
      lower_corner: "Lower corners",
      ends: "Ends and edge",
      bass: "Bass side",
    },
    own_bass: "The bass side differs",
    widths_doubled: "The widths above are then twice the treble side’s.",
  },
  sound_holes: {
    alike: "Both sides alike",
    sides: { bass: "Bass side", treble: "Treble side" },
    both: "Both sides",
    pattern: "Pattern",
    patterns: {
      eyes_and_stem: "f-hole",
      round: "round",
      crescent: "crescent",
      slot: "straight slot",
      traced: "traced elsewhere",
      none: "none",
    },
    fair: "Another pattern opens as much wood as the f-hole it stands for, so that a comparison is fair.",
    ends: "Ends",
    cuts: { round: "rounded", sharp: "left sharp" },
    lean: "Lean of the line through the eyes, from upright",
    left_out: {
      stem_at_hooks_mm: "0.8 of it",
      stem_steeper_deg: "9",
      lower_wing_hollow_mm: "none",
      lower_wing_hollow_reach: "0.8",
    },
    /** @type {(area_mm2: number, perimeter_mm: number) => string} */
    measures: (area_mm2, perimeter_mm) =>
      `Opens ${numberText(area_mm2 / 100, 2)} cm²; ${numberText(perimeter_mm, 0)} mm round its edge.`,
    traced: "A hole traced elsewhere",
    traced_file: "Its drawing, SVG",
    traced_side: "The drawing shows the hole of the",
    traced_about:
      "The largest closed line of the drawing is cut at its true size, its middle where that side’s hole has it. Neck end up, seen from outside.",
    choose_traced: "Choose the drawing of a hole below: “A hole traced elsewhere”.",
    no_path: {
      kind: "no_path",
      message: "The drawing holds no line to cut.",
      remedy: "Save the hole as one closed path in an SVG file.",
    },
  },
  presets: {
    invented: "Invented, plausible measures; no real instrument. Undo brings your design back.",
    /** @type {(word: string, name: string) => string} the core's names are English */
    name: (_word, name) => name,
    /** @type {(design: Design, word: string) => Design} with name and note in this language */
    design: (design, _word) => design,
    choice: "Design to start from",
    start: "Start from it",
    /** @param {string} name */
    started: (name) => `Started from “${name}”. Undo brings yours back.`,
  },
  arching: {
    channel: "Heights and channel",
    apex_station_left_out: "midway",
    family: "Drawn as",
    families: {
      curtate_cycloid: "curtate cycloid",
      arc_with_reverse_arc: "arc with reverse arc",
      spline: "spline through points",
    },
    fullness: "Fullness",
    /** @type {(long: boolean) => string} */
    turn: (long) => (long ? "Turns hollow, from the apex" : "Turns hollow, from the centreline"),
    own_bass: "The bass side differs",
    points: "Points, mm",
    lower: "towards the bottom edge",
    upper: "towards the neck end",
    /** @type {(long: boolean) => string} */
    place: (long) => (long ? "from the apex" : "from the centreline"),
    height: "above the channel",
    /** @type {(number: number) => string} */
    point: (number) => `point ${number}`,
    add_point: "Add a point",
    remove_point: "Remove",
    further: "Further cross arches",
    new_station: "Station of a new cross arch, from the bottom edge",
    add_arch: "Add a cross arch",
    remove_arch: "Remove this arch",
    station: "Station, from the bottom edge",
    /**
     * @param {string} arch as the core names it
     * @returns {string}
     */
    title: (arch) => {
      const bass = arch.endsWith(".bass") ? ", bass side" : "";
      const name = arch.replace(/\.bass$/, "");
      const further = name.startsWith("extra.") ? `Further arch ${Number(name.slice(6)) + 1}` : name;
      return (STATIONS[name] ?? further) + bass;
    },
  },
};
