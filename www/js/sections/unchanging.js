/**
 * What the core answers alike however often it is asked. Asked once for all sections: of two requests of one kind only the newer is
 * answered.
 */
/** @import { Bench } from "../sections.js" */
import { FITTING_WORDS } from "#words/fittings.js";

export const allMeasures = once((bench) => bench.board().ask("measures", {}));

export const allPresets = once((bench) => bench.board().ask("presets", {}));

export const allSpecies = once((bench) => bench.board().ask("species", {}));

/**
 * @param {Bench} bench
 * @returns {Promise<Record<string, string>>} names by the species' keys
 */
export async function speciesNames(bench) {
  return Object.fromEntries((await allSpecies(bench)).map(({ key, name }) => [key, FITTING_WORDS.species(key, name)]));
}

/**
 * @template T
 * @param {(bench: Bench) => Promise<T>} ask
 * @returns {(bench: Bench) => Promise<T>} the same answer each time; a failed request may be tried again
 */
function once(ask) {
  /** @type {Promise<T> | undefined} */
  let asked;
  return (bench) => {
    if (asked === undefined) {
      asked = ask(bench);
      asked.catch(() => {
        asked = undefined;
      });
    }
    return asked;
  };
}
