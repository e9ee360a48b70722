/**
 * The sentences of the graduation's section.
 */

import { numberText } from "./page.js";

export const GRADUATION_WORDS = {
  zones: "Thickness by zones",
  left_out: {
    upper_bout_mm: "flanks’",
    lower_bout_mm: "flanks’",
    channel_mm: "between",
    around_holes_mm: "none",
    wings_mm: "none",
  },
  /** @type {(thin: number, thick: number) => string} */
  map: (thin, thick) =>
    `Thickness over the plan, from ${numberText(thin, 1)} to ${numberText(thick, 1)} mm, a line every 0.2 mm`,
  /** @type {(mass_g: number, density: number) => string} */
  mass: (mass_g, density) =>
    `${numberText(mass_g, 1)} g of wood without the bar, at ${numberText(density, 0)} kg/m³. Boards differ: weigh yours.`,
  target: "Toward a mass",
  wish: "Mass wished for, without the bar",
  no_wish: "–",
  reach: "Change every thickness alike",
  target_about: "The same is added or taken off everywhere, edge and zones too. Undo brings the old thicknesses back.",
  /** @type {(change_mm: number, mass_g: number) => string} */
  reached: (change_mm, mass_g) =>
    `${change_mm < 0 ? "Thinner" : "Thicker"} by ${numberText(Math.abs(change_mm), 2)} mm everywhere: ${numberText(mass_g, 1)} g.`,
  paint: "Paint by points",
  paint_about:
    "Press on the map, or set the brush down by numbers. It counts fully at its point and fades to its reach.",
  brush: {
    thickness_mm: "Thickness of the brush",
    reach_mm: "Its reach",
    across_mm: "From the centreline, bass side below zero",
    station_mm: "From the bottom edge",
  },
  paint_there: "Paint there",
  /** @type {(thickness: number, reach: number, across: number, station: number) => string} */
  painted: (thickness, reach, across, station) =>
    `${numberText(thickness)} mm at ${numberText(across)}, ${numberText(station)}; reaches ${numberText(reach)} mm`,
  remove: "Remove",
  measured: "A measured map",
  measured_file: "Measured thicknesses, CSV",
  /** @type {(count: number) => string} */
  measured_stands: (count) => `${count} measured thicknesses stand for all zones; painted ones lie over them.`,
  /** @type {(count: number) => string} */
  measured_taken: (count) => `${count} measured thicknesses taken over.`,
  measured_drop: "Go back to the zones",
  measured_about:
    "Lines of across, along, thickness in mm (centreline at 0, bottom edge at 0), or a grid. At least 20 points; of more than 500 every so many are kept.",
  too_large: {
    kind: "file_too_large",
    message: "The file is larger than 2 MB, far more than a table of thicknesses.",
    remedy: "Choose the table of thicknesses.",
  },
  caution:
    "Thickness that is gone can’t be put back. Go by your own wood: leave more, tap, weigh, and take off little by little.",
};
