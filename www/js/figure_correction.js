/** @import { Mode, Surety } from "./messages.js" */

/**
 * Sets figures right by what better meshes last made of the same modes, known by their shapes: a mode lies higher or lower there by a
 * ratio that changes little while the top does.
 */
export class FigureCorrection {
  /** @type {Map<number, number>} by the mode's identity: standard mesh over quick figure */
  #standard = new Map();
  /** @type {Map<number, number>} by the mode's identity: corrected for the mesh over standard mesh */
  #converged = new Map();

  /**
   * @param {readonly Mode[]} quick of a design
   * @param {readonly Mode[]} thorough of the same on the standard mesh, with the identities of the quick ones
   */
  learn(quick, thorough) {
    for (const { identity, frequency_hz } of thorough) {
      const same = quick.find((mode) => mode.identity === identity);
      if (identity !== 0 && same !== undefined) {
        this.#standard.set(identity, frequency_hz / same.frequency_hz);
      }
    }
  }

  /**
   * @param {readonly Mode[]} thorough on the standard mesh
   * @param {readonly Surety[]} sureties (mode) of the same
   */
  judge(thorough, sureties) {
    for (const [index, { identity, frequency_hz }] of thorough.entries()) {
      const converged_hz = sureties[index]?.converged_hz;
      if (identity !== 0 && typeof converged_hz === "number") {
        this.#converged.set(identity, converged_hz / frequency_hz);
      }
    }
  }

  /**
   * @param {readonly Mode[]} quick
   * @returns {Mode[]} as the standard mesh would have them, in the same order; one that was never there stays as it is
   */
  correct(quick) {
    const corrected = quick.map((mode) => ({
      ...mode,
      frequency_hz: mode.frequency_hz * (this.#standard.get(mode.identity) ?? 1),
    }));
    return this.foresee(corrected);
  }

  /**
   * @param {readonly Mode[]} quick
   * @returns {boolean} whether the standard mesh has seen the shape of any of them
   */
  hasSeen(quick) {
    return quick.some(({ identity }) => this.#standard.has(identity));
  }

  /**
   * @param {readonly Mode[]} modes as the standard mesh has them
   * @returns {Mode[]} the same, with the figures that judging will give them, near enough
   */
  foresee(modes) {
    return modes.map((mode) => {
      const ratio = this.#converged.get(mode.identity);
      return ratio === undefined ? mode : { ...mode, foreseen_hz: mode.frequency_hz * ratio };
    });
  }
}
