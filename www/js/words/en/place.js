/**
 * The words of the section that reads a place.
 */
/** @import { PlaceFigures } from "../../messages.js" */
import { numberText } from "./page.js";
import { REGION_WORDS } from "./regions.js";

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
    ["Height", `${numberText(height_mm, 1)} mm`],
    ["Thickness", `${numberText(thickness_mm, 2)} mm`],
    ["Slope", `${numberText(slope_deg, 1)}°`],
    ["Mean curvature", `${numberText(curvature_per_m, 1)} /m, ${curvature_per_m > 0 ? "hollow" : "round"}`],
    ["Motion", outward === undefined ? "at rest" : motionText(outward)],
  ],
};

/**
 * How far a place moves and when: ahead of the phase's zero by its own phase.
 * @param {[number, number]} outward
 */
function motionText([re, im]) {
  const size = Math.hypot(re, im);
  const phase = numberText((Math.atan2(im, re) * 180) / Math.PI, 0);
  return `${numberText(100 * size, size < 0.1 ? 1 : 0)} % of the largest, phase ${phase}°`;
}
