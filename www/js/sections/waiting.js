/**
 * What a section says while it waits for an answer, and when there is none.
 */
import { ProblemError } from "../workshop_client.js";
import { problemText } from "./driven_client.js";
import { note } from "./fields.js";

/** A line of words and a bar that runs while something is worked out. */
export class Waiting {
  /** What is laid into the page. */
  parts;
  #line = note("");
  #bar = document.createElement("progress");
  #words;

  /** @param {string} words while it runs */
  constructor(words) {
    this.#words = words;
    this.#line.setAttribute("role", "status");
    this.#bar.setAttribute("aria-label", words);
    this.#bar.hidden = true;
    this.parts = [this.#line, this.#bar];
  }

  /** @param {string} text */
  say(text) {
    this.#line.textContent = text;
  }

  /**
   * Runs the bar until the work is done. A problem is told here; that a newer request came is none.
   * @param {() => Promise<void>} work
   */
  async run(work) {
    this.#bar.hidden = false;
    this.say(this.#words);
    await this.tell(work);
    this.#bar.hidden = true;
  }

  /**
   * The same without the bar, for what takes no time to speak of.
   * @param {() => Promise<void>} work
   */
  async tell(work) {
    try {
      await work();
    } catch (reason) {
      if (reason instanceof ProblemError) {
        this.say(problemText(reason.problem));
      }
    }
  }
}
