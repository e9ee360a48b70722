/**
 * The words of the section about a mode's motion.
 */
import { numberText } from "./page.js";
import { REGION_WORDS } from "./regions.js";

export const MOVEMENT_WORDS = {
  moved: "How far the island lifts and the wings flap",
  moved_columns: ["Region", "of the largest motion"],
  shares: "Kinetic energy",
  share_columns: ["Region", "share of it"],
  /** @param {string} key */
  region: (key) => REGION_WORDS.name(key),
  /** @param {number} share */
  percent: (share) => `${numberText(100 * share, share < 0.1 ? 1 : 0)} %`,
  /**
   * Signed where all moves in step; else how large, and by how much it is ahead.
   * @param {readonly [number, number]} amplitude
   */
  amplitude: ([re, im]) => {
    const percent = (/** @type {number} */ value) => `${numberText(100 * value, 0)} %`;
    return im === 0 ? percent(re) : `${percent(Math.hypot(re, im))} at ${phaseText(re, im)}`;
  },
  about:
    "Of the largest motion anywhere on the top; positive is outward when the phase is 0°. The island’s lift is its mean. A wing’s flap is what its farthest place does beyond going along with the island as one stiff piece. The energy is the wood’s, without bar and added masses; its shares add up to 100 %, and a part with a large share for its size swings most.",
};

/**
 * @param {number} re
 * @param {number} im
 */
function phaseText(re, im) {
  return `${numberText((Math.atan2(im, re) * 180) / Math.PI, 0)}°`;
}
