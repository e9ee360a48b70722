/**
 * What the drawings say, and what the arching does.
 */
/** @import { Drawing } from "../../messages.js" */
import { numberText } from "./page.js";

/** @type {Record<string, string>} */
const STATIONS = {
  upper_bout: "Upper bout",
  upper_corners: "Upper corners",
  waist: "Waist",
  lower_corners: "Lower corners",
  lower_bout: "Lower bout",
};

export const DRAWING_WORDS = {
  drawings: { plan: "plan", long_arch: "long arch", cross_arches: "cross arches" },
  true_scale: "True to scale: the bar is 50 mm long when printed at 100 %.",
  handles_hint: "Drag a point, or choose it with Tab and press the arrow keys.",
  /** @param {Drawing["labels"][number]} label */
  label: ({ name, value_mm, minor }) =>
    minor ? String(Math.round(value_mm)) : [STATIONS[name] ?? "", numberText(value_mm, 1)].join(" ").trim(),
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
};
