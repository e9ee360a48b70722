/** @import { Mode } from "./messages.js" */

/**
 * Sets the quick figures of a moving handle right by what the standard mesh last made of them: the same mode, known by its
 * shape, lies higher or lower there by a ratio that changes little while the top does.
 */
export class PreviewCorrection {
  /** @type {Map<number, number>} by the mode's identity */
  #ratios = new Map();

  /**
   * @param {readonly Mode[]} quick of a design
   * @param {readonly Mode[]} thorough of the same, with the identities of the quick ones
   */
  learn(quick, thorough) {
    for (const { identity, frequency_hz } of thorough) {
      const same = quick.find((mode) => mode.identity === identity);
      if (identity !== 0 && same !== undefined) {
        this.#ratios.set(identity, frequency_hz / same.frequency_hz);
      }
    }
  }

  /**
   * @param {readonly Mode[]} quick
   * @returns {Mode[]} in the same order; one that was never on the standard mesh stays as it is
   */
  correct(quick) {
    return quick.map((mode) => ({
      ...mode,
      frequency_hz: mode.frequency_hz * (this.#ratios.get(mode.identity) ?? 1),
    }));
  }
}
