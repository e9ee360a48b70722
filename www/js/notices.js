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
  #remedy = part("#alert-remedy", HTMLElement);

  constructor() {
    part("#alert-close", HTMLButtonElement).addEventListener("click", () => this.clear());
  }

  /** @param {string} text a result or a confirmation, read out when the reader is free */
  say(text) {
    this.#status.textContent = text;
  }

  /**
   * @param {Problem} problem
   * @param {string} [consequence] what became of the person's work
   */
  warn(problem, consequence = "") {
    const remedy = problem.remedy !== undefined && !problem.message.includes(problem.remedy) ? problem.remedy : "";
    this.#text.textContent = sentence(problem.message);
    this.#remedy.textContent = [sentence(remedy), consequence].filter((text) => text !== "").join(" ");
    this.#alert.hidden = false;
  }

  clear() {
    this.#alert.hidden = true;
    this.#text.textContent = "";
    this.#remedy.textContent = "";
  }
}

/**
 * The core's messages begin in small letters, so that they can stand inside others.
 * @param {string} text
 */
function sentence(text) {
  // A message that begins with a place in the file keeps that as it is written there.
  const place = /^[\w"]*[._"]/.test(text);
  const begun = place ? text : text.charAt(0).toUpperCase() + text.slice(1);
  return begun === "" || /[.!?…]$/.test(begun) ? begun : `${begun}.`;
}
