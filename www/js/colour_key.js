/**
 * What the top is coloured by, and the key to the colours. All but the motion's is loaded when it is first chosen.
 */
/** @import { ScalarColours } from "./scalar_colours.js" */
/** @import { Bench } from "./sections.js" */

import { WORDS } from "#words/page.js";
import { part } from "./page_parts.js";

/** Stops of the painted scale; between two of them the colours are straight enough. */
const STOPS = 16;

/** Shows one scale at a time. */
export class ColourKey {
  #bench;
  #choice = part("#colour-by", HTMLSelectElement);
  /** @type {Uint8Array} of the motion: (step, rgb), from full inward to full outward */
  #motion = new Uint8Array(3);
  /** @type {ScalarColours | undefined} once loaded */
  #scalars;

  /** @param {Bench} bench */
  constructor(bench) {
    this.#bench = bench;
    this.#choice.addEventListener("change", () => void this.#choose());
  }

  /**
   * Begins, once something is there that draws.
   * @param {Uint8Array} colours of the motion
   */
  open(colours) {
    this.#motion = colours;
    part("#colour-key", HTMLElement).hidden = false;
    void this.#choose();
  }

  async #choose() {
    const by = this.#choice.value;
    const { stage } = this.#bench;
    this.#scalars?.stop();
    if (by === "motion" || by === "wood") {
      stage.hold("colour", (view) => view.set_colour(by));
      this.show(this.#motion, WORDS.scale_ends);
      part("#colour-scale", HTMLElement).hidden = by === "wood";
      return;
    }
    try {
      const { ScalarColours } = await import("./scalar_colours.js");
      this.#scalars ??= new ScalarColours(this.#bench, this);
    } catch (reason) {
      console.error(reason);
      this.#bench.say(WORDS.not_loaded);
    }
    if (by === this.#choice.value) {
      this.#scalars?.show(by, this.#motion);
    }
  }

  /**
   * @param {Uint8Array} colours (step, rgb), evenly from one end to the other
   * @param {readonly [string, string]} ends what the ends stand for
   */
  show(colours, ends) {
    const last = colours.length / 3 - 1;
    const stops = Array.from({ length: STOPS + 1 }, (_, stop) => {
      const at = 3 * Math.round((stop / STOPS) * last);
      return `rgb(${colours[at]} ${colours[at + 1]} ${colours[at + 2]})`;
    });
    const scale = part("#colour-scale", HTMLElement);
    const [low, bar, high] = /** @type {HTMLCollectionOf<HTMLElement>} */ (scale.children);
    [low.textContent, high.textContent] = ends;
    bar.style.background = `linear-gradient(to right, ${stops.join(", ")})`;
    scale.hidden = false;
  }
}
