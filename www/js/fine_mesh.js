/**
 * The fine mesh on request: a button, and while it is worked out a bar with the time left, and a way to give it up.
 */
/** @import { Solution } from "./messages.js" */

import { WORDS } from "#words/page.js";
import { part } from "./page_parts.js";

/**
 * How many times the standard mesh's time the fine one takes, until one has been timed here: three times the nodes in a factor that
 * grows faster than they, and twice as many modes.
 */
const FIRST_RATIO = 11;

/** Often enough for a bar to run smoothly, seldom enough for a screen reader to ignore. */
const TICK_MS = 250;

/**
 * What is left of a wait whose end is estimated.
 * @param {number} elapsed_ms
 * @param {number} estimate_ms
 * @returns {{ share: number, left_s: number } | undefined} undefined once it takes longer than estimated
 */
export function progressOf(elapsed_ms, estimate_ms) {
  const left_ms = estimate_ms - elapsed_ms;
  return left_ms > 0 ? { share: elapsed_ms / estimate_ms, left_s: Math.ceil(left_ms / 1000) } : undefined;
}

/** Connects the button, the bar and what they stand for. */
export class FineMesh {
  #button = part("#fine", HTMLButtonElement);
  #running = part("#fine-running", HTMLElement);
  #bar = part("#fine-bar", HTMLProgressElement);
  #left = part("#fine-left", HTMLElement);
  #standard_ms = 0;
  #ratio = FIRST_RATIO;

  /**
   * @param {() => Promise<unknown>} work done, given up or failed when it resolves
   * @param {() => void} give_up
   */
  constructor(work, give_up) {
    this.#button.addEventListener("click", () => void this.#run(work));
    part("#fine-cancel", HTMLButtonElement).addEventListener("click", () => {
      give_up();
      this.#button.focus();
    });
  }

  /** @param {Solution} solution that is shown now */
  show({ size, solve_ms }) {
    this.#button.disabled = size !== "standard";
    if (size === "standard") {
      this.#standard_ms = solve_ms;
    } else if (size === "fine") {
      this.#ratio = solve_ms / this.#standard_ms;
    }
  }

  /** @param {() => Promise<unknown>} work */
  async #run(work) {
    const begun_ms = performance.now();
    const tick = () => this.#paint(performance.now() - begun_ms);
    this.#reveal(true);
    tick();
    const ticking = setInterval(tick, TICK_MS);
    await work();
    clearInterval(ticking);
    this.#reveal(false);
  }

  /** @param {number} elapsed_ms */
  #paint(elapsed_ms) {
    const progress = progressOf(elapsed_ms, this.#ratio * this.#standard_ms);
    if (progress === undefined) {
      this.#bar.removeAttribute("value");
    } else {
      this.#bar.value = progress.share;
    }
    this.#left.textContent = WORDS.time_left(progress?.left_s);
  }

  /** @param {boolean} running */
  #reveal(running) {
    this.#button.hidden = running;
    this.#running.hidden = !running;
    if (running) {
      part("#fine-cancel", HTMLButtonElement).focus();
    }
  }
}
