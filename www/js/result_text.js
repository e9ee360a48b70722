/** @import { Mode, Solution, Surety } from "./messages.js" */

import { meshText, sourceText, WORDS } from "#words/page.js";
import { part } from "./page_parts.js";
import { bestHertz, spreadText } from "./words/numbers.js";

/** Writes the figures that stand on the stage and under the table, each with the mesh that it came from. */
export class ResultText {
  /** @type {Solution | undefined} */
  #solution;
  /** @type {readonly Surety[]} (mode) of the solution; none while not known */
  #sureties = [];
  /** @type {Mode | undefined} */
  #chosen;

  /**
   * @param {Solution} solution
   * @param {Mode} chosen
   * @param {unknown} rim how the design holds it
   */
  show(solution, chosen, rim) {
    this.#solution = solution;
    this.#sureties = [];
    const { size, picture, proven, modes, set_right } = solution;
    const mesh = meshText(size, picture.nodes);
    part("#mass", HTMLElement).textContent = WORDS.mass(picture.mass_g);
    const basis = proven ? WORDS.basis(rim, mesh) : WORDS.following(mesh, modes.length, set_right);
    part("#basis", HTMLElement).textContent = basis;
    this.choose(chosen);
  }

  /**
   * @param {readonly Surety[]} sureties of the solution that is shown
   * @param {boolean} on_stage whether the stage shows one of its modes, and not a driven motion
   */
  judge(sureties, on_stage) {
    this.#sureties = sureties;
    if (this.#chosen !== undefined && on_stage) {
      this.choose(this.#chosen);
    }
  }

  /** @param {Mode} chosen of the solution that is shown */
  choose(chosen) {
    this.#chosen = chosen;
    if (this.#solution !== undefined) {
      const { size, picture } = this.#solution;
      part("#stage-title", HTMLElement).textContent = WORDS.title(chosen);
      const surety = this.#sureties[chosen.number - 1];
      const hertz = WORDS.hertz(bestHertz(chosen, surety), surety && spreadText(surety));
      part("#stage-hertz", HTMLElement).textContent = hertz;
      part("#stage-mesh", HTMLElement).textContent = sourceText(meshText(size, picture.nodes), chosen, surety);
    }
  }
}
