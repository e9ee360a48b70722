/**
 * What the drawings say, and what the arching does, in German.
 */
/** @import * as English from "../en/drawings.js" */
import { numberText } from "./page.js";

/** @type {Record<string, string>} */
const STATIONS = {
  upper_bout: "Oberbug",
  upper_corners: "Obere Ecken",
  waist: "Mittelbug",
  lower_corners: "Untere Ecken",
  lower_bout: "Unterbug",
};

/** @type {typeof English.DRAWING_WORDS} */
export const DRAWING_WORDS = {
  drawings: { plan: "Grundriss", long_arch: "Längswölbung", cross_arches: "Querwölbungen" },
  true_scale: "Maßstabsgetreu: mit 100 % gedruckt ist der Strich 50 mm lang.",
  handles_hint: "Einen Punkt ziehen, oder ihn mit der Tabulatortaste wählen und die Pfeiltasten drücken.",
  label: ({ name, value_mm, minor }) =>
    minor ? String(Math.round(value_mm)) : [STATIONS[name] ?? "", numberText(value_mm, 1)].join(" ").trim(),
  arching: {
    apex: "Scheitel",
    above_edge: (rise) => `über den Zargen; ${rise} über dem Rand`,
    channel: "Tiefe der Hohlkehle",
    steepest: "Steilste Neigung",
    hollow: "Engste Höhlung, Radius",
    round: "Engste Rundung, Radius",
    place: (station_mm, across_mm) =>
      `${station_mm} mm von der Unterkante, ${across_mm === 0 ? "auf der Mittellinie" : `${across_mm} mm neben der Mittellinie`}`,
    turn: "Wende von rund zu hohl,",
    sides: ["Bassloch", "Diskantloch"],
    both_sides: "beide F-Löcher",
    crosses: (distance, above, on_stem) =>
      `kreuzt ${on_stem ? "den Schaft" : "das Ende des Lochs"} ${distance} ${above ? "über" : "unter"} den Kerben`,
    within: "fällt in das Loch",
    misses: (distance, inside) =>
      `verfehlt das Loch um ${distance}, auf der Seite ${inside ? "der Mittellinie" : "des Randes"}`,
    should_fall_within: "Üblich ist, dass die Wende in das Loch fällt (Werkstattbrauch).",
  },
};
