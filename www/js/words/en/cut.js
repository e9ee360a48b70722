/**
 * The words of the section that cuts the top.
 */
/** @import { Plane } from "../../sections/plane_cut.js" */
/** @import { Stretch } from "../../sections/stretches.js" */
import { numberText } from "./page.js";
import { REGION_WORDS } from "./regions.js";

export const CUT_WORDS = {
  title: "Where it is cut",
  direction: "Cut",
  directions: { across: "across the top", along: "along the grain" },
  place: { across: "From the bottom edge", along: "From the centreline, treble side positive" },
  about:
    "The wood at true shape, its motion enlarged as on the stage and in step with it; grey, the same at rest. What moves out of the plane is not seen in it.",
  /**
   * @param {Plane} plane
   * @param {number} pieces
   */
  drawing: ({ across, at_mm }, pieces) =>
    `Cut ${across ? `across, ${numberText(at_mm)} mm from the bottom edge` : `along the grain, ${numberText(at_mm)} mm from the centreline`}: ${pieces} ${pieces === 1 ? "piece" : "pieces"} of wood, moving in step with the stage`,
  /** @param {string} key */
  region: (key) => nameOf(key).replace(/, (bass|treble)$/, ""),
  /**
   * @param {Stretch} stretch
   * @param {boolean} across
   */
  stretch: ({ key, from_mm, to_mm }, across) => {
    const [from, to] = [from_mm, to_mm].map((value) => numberText(Math.round(value)));
    return `${nameOf(key)}: ${across ? "x" : "y"} ${from} to ${to} mm`;
  },
};

/** @param {string} key */
function nameOf(key) {
  return key === "hole" ? "Sound hole" : REGION_WORDS.name(key);
}
