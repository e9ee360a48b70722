/**
 * The words of the section that reads a place.
 */
/** @import { PlaceFigures } from "../messages.js" */
import { REGION_WORDS } from "./region_words.js";

export const PLACE_WORDS = {
  title: "Place on the top",
  across: { label: "From the centreline, treble side positive", unit: "mm" },
  along: { label: "From the bottom edge", unit: "mm" },
  region: "Region",
  off: "off the wood",
  about:
    "Point at the top on the stage, or touch it; the ring shows the place. Height is the outside’s above the plane of the ribs, thickness along its normal, slope from level.",
  /**
   * @param {PlaceFigures} wood
   * @param {[number, number] | undefined} outward re and im, of the largest motion; undefined at rest
   * @returns {[string, string][]}
   */
  rows: ({ height_mm, thickness_mm, slope_deg, curvature_per_m, region }, outward) => [
    [PLACE_WORDS.region, REGION_WORDS.name(region)],
    ["Height", `${height_mm.toFixed(1)} mm`],
    ["Thickness", `${thickness_mm.toFixed(2)} mm`],
    ["Slope", `${slope_deg.toFixed(1)}°`],
    [
      "Mean curvature",
      `${curvature_per_m.toFixed(1).replace("-", "−")} /m, ${curvature_per_m > 0 ? "hollow" : "round"}`,
    ],
    ["Motion", outward === undefined ? "at rest" : motionText(outward)],
  ],
};

/**
 * How far a place moves and when: ahead of the phase's zero by its own phase.
 * @param {[number, number]} outward
 */
function motionText([re, im]) {
  const size = Math.hypot(re, im);
  const phase = ((Math.atan2(im, re) * 180) / Math.PI).toFixed(0).replace("-", "−");
  return `${(100 * size).toFixed(size < 0.1 ? 1 : 0)} % of the largest, phase ${phase}°`;
}
