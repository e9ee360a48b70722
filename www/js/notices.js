/**
 * What the page says unasked: new results and confirmations in the status region, problems as an alert that stays until
 * it is solved or closed.
 */
/** @import { Problem } from "./messages.js" */
import { part } from "./page_parts.js";

/** Writes into the page's two live regions. */
export class Notices {
  #status = part("#status", HTMLElement);
  #alert = part("#alert", HTMLElement);
  #text = part("#alert-text", HTMLElement);
  #english = part("#alert-english", HTMLElement);
  #remedy = part("#alert-remedy", HTMLElement);
  /** @type {Problem | undefined} the last one that came up, until it is cleared */
  #last;

  constructor() {
    part("#alert-close", HTMLButtonElement).addEventListener("click", () => this.clear());
  }

  /** @param {string} text a result or a confirmation, read out when the reader is free */
  say(text) {
    this.#status.textContent = text;
  }

  /**
   * Says something in the place of what it sets right, where that still stands there.
   * @param {string} before
   * @param {string} text
   */
  amend(before, text) {
    // The same text set again would be read out again.
    if (before !== text && this.#status.textContent === before) {
      this.say(text);
    }
  }

  /**
   * @param {Problem} problem
   * @param {string} [consequence] what became of the person's work
   */
  async warn(problem, consequence = "") {
    this.#last = problem;
    // Where it can't be loaded the connection is gone; what is said of that is the page's own, in its language.
    const { told } = await import("#words/problems.js").catch(() => ({ told: asItIs }));
    // Meanwhile it may have been cleared, or something else is to be said.
    if (this.#last === problem) {
      const { message, remedy, english = "" } = told(problem);
      this.#text.textContent = message;
      this.#english.textContent = english;
      this.#remedy.textContent = `${remedy} ${consequence}`.trim();
      this.#alert.hidden = false;
    }
  }

  clear() {
    this.#last = undefined;
    this.#alert.hidden = true;
    for (const line of [this.#text, this.#english, this.#remedy]) {
      line.textContent = "";
    }
  }
}

/**
 * @param {Problem} problem
 * @returns {{ message: string, remedy: string, english?: string }}
 */
function asItIs({ message, remedy = "" }) {
  return { message, remedy };
}
