/**
 * The words of the section that reads a place, in German.
 */
/** @import * as English from "../en/place.js" */
import { numberText } from "./page.js";
import { REGION_WORDS } from "./regions.js";

/** @type {typeof English.PLACE_WORDS} */
export const PLACE_WORDS = {
  title: "Stelle auf der Decke",
  across: { label: "Von der Mittellinie, Diskantseite positiv", unit: "mm" },
  along: { label: "Von der Unterkante", unit: "mm" },
  region: "Bereich",
  off: "neben dem Holz",
  about:
    "Auf der Bühne auf die Decke zeigen oder sie berühren; der Ring zeigt die Stelle. Die Höhe ist die der Außenseite über der Zargenebene, die Stärke senkrecht zur Fläche gemessen, die Neigung gegen die Waagrechte.",
  rows: ({ height_mm, thickness_mm, slope_deg, curvature_per_m, region }, outward) => [
    [PLACE_WORDS.region, REGION_WORDS.name(region)],
    ["Höhe", `${numberText(height_mm, 1)} mm`],
    ["Stärke", `${numberText(thickness_mm, 2)} mm`],
    ["Neigung", `${numberText(slope_deg, 1)}°`],
    ["Mittlere Krümmung", `${numberText(curvature_per_m, 1)} /m, ${curvature_per_m > 0 ? "hohl" : "rund"}`],
    ["Bewegung", outward === undefined ? "in Ruhe" : motionText(outward)],
  ],
};

/** @param {[number, number]} outward */
function motionText([re, im]) {
  const size = Math.hypot(re, im);
  const phase = numberText((Math.atan2(im, re) * 180) / Math.PI, 0);
  return `${numberText(100 * size, size < 0.1 ? 1 : 0)} % der größten, Phase ${phase}°`;
}
