/** @import { Mode, Solution } from "./messages.js" */
import { part } from "./page_parts.js";
import { meshText, WORDS } from "./words.js";

/** Writes the figures that stand on the stage and under the table, each with the mesh that it came from. */
export class ResultText {
  /** @type {Solution | undefined} */
  #solution;

  /**
   * @param {Solution} solution
   * @param {Mode} chosen
   * @param {unknown} rim how the design holds it
   */
  show(solution, chosen, rim) {
    this.#solution = solution;
    const { size, picture } = solution;
    const mesh = meshText(size, picture.nodes);
    part("#mass", HTMLElement).textContent = WORDS.mass(picture.mass_g);
    part("#basis", HTMLElement).textContent = size === "standard" ? WORDS.basis(rim, mesh) : WORDS.solving(mesh);
    this.choose(chosen);
  }

  /** @param {Mode} chosen of the solution that is shown */
  choose(chosen) {
    if (this.#solution !== undefined) {
      const { size, picture } = this.#solution;
      part("#stage-title", HTMLElement).textContent = WORDS.title(chosen);
      part("#stage-hertz", HTMLElement).textContent = WORDS.hertz(chosen.frequency_hz);
      part("#stage-mesh", HTMLElement).textContent = meshText(size, picture.nodes);
    }
  }
}
