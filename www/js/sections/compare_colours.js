/**
 * Differences as something to colour by, offered while two tops are there.
 */
/** @import { Motion, Picture } from "../messages.js" */
/** @import { Side } from "./differences.js" */

import { COMPARE_WORDS as WORDS } from "#words/compare.js";
import { colourBy } from "../colour_choice.js";
import { part } from "../page_parts.js";
import { offerScalar } from "../scalar_colours.js";
import { differenceOn, readFrom } from "./differences.js";
import { nodeMotion } from "./node_motion.js";

const KINDS = /** @type {const} */ (["height", "thickness", "motion"]);

/**
 * A top as the colours need it.
 * @typedef {object} ColouredTop
 * @property {Picture} picture
 * @property {Motion | undefined} motion as it is drawn beside the other's
 * @property {number} share of the exaggeration that it is drawn with
 * @property {(what: string, places_mm: Float32Array) => Promise<Float32Array | undefined>} quantity
 */

export class CompareColours {
  #tops;
  #select = part("#colour-by", HTMLSelectElement);
  #options = KINDS.map((kind) => new Option(WORDS.colours[kind], `difference_${kind}`));

  /** @param {() => { a: ColouredTop, b: ColouredTop } | undefined} tops as they are shown now */
  constructor(tops) {
    this.#tops = tops;
    for (const kind of KINDS) {
      offerScalar(`difference_${kind}`, {
        unit: kind === "motion" ? "%" : "mm",
        decimals: kind === "motion" ? 0 : 2,
        signed: WORDS.colour_ends[kind],
        // Below a twentieth of a millimetre nobody carves; a hundredth of the motion nobody sees.
        least: kind === "motion" ? 1 : 0.05,
        moment: kind === "motion" ? "motion" : "picture",
        values: () => this.#difference(kind, "b"),
      });
    }
  }

  /** @param {boolean} offered */
  offer(offered) {
    if (offered) {
      this.#select.append(...this.#options);
      return;
    }
    const was = this.#select.value.startsWith("difference_");
    for (const option of this.#options) {
      option.remove();
    }
    if (was) {
      colourBy("motion");
    }
  }

  /**
   * (node of a): what a's wood is coloured by.
   * @param {string} by
   * @param {() => Promise<Float32Array | undefined>} own where it is no difference
   */
  ofA(by, own) {
    const kind = KINDS.find((kind) => by === `difference_${kind}`);
    return kind === undefined ? own() : this.#difference(kind, "a");
  }

  /**
   * @param {typeof KINDS[number]} kind
   * @param {"a" | "b"} on
   */
  async #difference(kind, on) {
    const tops = this.#tops();
    if (tops === undefined) {
      return undefined;
    }
    const [a, b] = [sideOf(tops.a, kind), sideOf(tops.b, kind)];
    return on === "b" ? differenceOn(b, a, 1) : differenceOn(a, b, -1);
  }
}

/**
 * @param {ColouredTop} top
 * @param {typeof KINDS[number]} kind
 * @returns {Side}
 */
function sideOf({ picture, motion, share, quantity }, kind) {
  if (kind !== "motion") {
    return { picture, quantity: (places_mm) => quantity(kind, places_mm) };
  }
  const outward = motion && nodeMotion(picture, motion).re;
  const pct = 100 * share;
  return { picture, quantity: readFrom(picture, (node) => (outward === undefined ? 0 : pct * outward[4 * node])) };
}
